package trivet.measure;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The SHA-256 of bytes, as 64 lower-case hexadecimal digits. */
public final class Digest {

    private Digest() {
    }

    /** Of the UTF-8 bytes of a text. */
    public static String sha256(String text) {
        return sha256(text.getBytes(StandardCharsets.UTF_8));
    }

    /** Of bytes. */
    public static String sha256(byte[] bytes) {
        return HexFormat.of().formatHex(raw(bytes));
    }

    /** The 32 bytes themselves. */
    public static byte[] raw(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java platform has SHA-256.", impossible);
        }
    }
}
