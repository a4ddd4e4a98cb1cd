package trivet.site.web;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.Map;

/** A QR code (ISO/IEC 18004) as an SVG drawing, with its quiet zone of four modules. */
public final class QrCode {

    private QrCode() {
    }

    /** The drawing of a text. */
    public static String svg(String text) {
        try {
            BitMatrix matrix = new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 0, 0, Map.of(EncodeHintType.ERROR_CORRECTION, ErrorCorrectionLevel.M, EncodeHintType.MARGIN, 4, EncodeHintType.CHARACTER_SET, "UTF-8"));
            StringBuilder path = new StringBuilder();
            for (int y = 0; y < matrix.getHeight(); y++) {
                for (int x = 0; x < matrix.getWidth(); x++) {
                    if (matrix.get(x, y)) {
                        path.append('M').append(x).append(' ').append(y).append("h1v1h-1z");
                    }
                }
            }
            return "<svg class=\"qr\" xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + matrix.getWidth() + " " + matrix.getHeight() + "\" shape-rendering=\"crispEdges\" aria-hidden=\"true\"><path fill=\"#fff\" d=\"M0 0h"
                    + matrix.getWidth() + "v" + matrix.getHeight() + "h-" + matrix.getWidth() + "z\"/><path fill=\"#000\" d=\"" + path + "\"/></svg>";
        } catch (WriterException tooLong) {
            throw new IllegalArgumentException("This text is too long for a QR code.", tooLong);
        }
    }
}
