package trivet.flow.draw;

import java.util.Locale;

/** The text of a drawing: lines put together with numbers as SVG writes them. */
public final class Svg {

    private Svg() {
    }

    /** Adds a line of a form and its values. */
    public static void add(StringBuilder svg, String form, Object... values) {
        svg.append(String.format(Locale.ROOT, form, values)).append('\n');
    }

    /** A text as it stands between tags or in double quotes. */
    public static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
    }
}
