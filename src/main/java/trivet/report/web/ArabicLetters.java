package trivet.report.web;

import com.ibm.icu.text.ArabicShaping;
import com.ibm.icu.text.ArabicShapingException;
import java.util.regex.Pattern;

/**
 * Arabic text with its letters in the forms in which they join (Unicode's Arabic Presentation Forms), because the printer of the reports joins none by
 * itself; and with the older marks of direction, which it understands, in place of the isolates of UAX 9. Text of other scripts stays as it is.
 */
final class ArabicLetters {

    private static final Pattern ARABIC = Pattern.compile("\\p{IsArabic}");
    private static final ArabicShaping SHAPES = new ArabicShaping(
            ArabicShaping.LETTERS_SHAPE | ArabicShaping.TASHKEEL_RESIZE | ArabicShaping.TEXT_DIRECTION_LOGICAL | ArabicShaping.LENGTH_GROW_SHRINK);

    private ArabicLetters() {
    }

    static String joined(String text) {
        if (!ARABIC.matcher(text).find()) {
            return text;
        }
        try {
            return SHAPES.shape(text).replace('\u2066', '\u202a').replace('\u2067', '\u202b').replace('\u2069', '\u202c');
        } catch (ArabicShapingException impossible) {
            throw new IllegalStateException("Arabic text could not be joined.", impossible);
        }
    }
}
