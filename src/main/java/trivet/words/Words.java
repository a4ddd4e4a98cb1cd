package trivet.words;

import java.text.MessageFormat;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.math.BigDecimal;

/**
 * The sentences of {@code words/words.properties} and its translations, each with its key and places for values, in the form of
 * {@link MessageFormat}. They are said in the language of whoever asks; where nobody does, in English. Numbers are put in as they are written,
 * without grouping, with the decimal sign of the language.
 */
public final class Words {

    /** The language in which everything is said unless somebody asks in another. */
    public static final String FIRST = "en";
    private static final Map<String, String> NAMES = new LinkedHashMap<>();
    private static final Map<String, ResourceBundle> BUNDLES = new LinkedHashMap<>();
    private static final List<String> COMMA = List.of("es", "pl", "it");
    private static final Pattern NUMBER = Pattern.compile("([+-]?\\d+)\\.(\\d+)( °[CF])?");
    private static final Pattern TEMPERATURE = Pattern.compile("[+-]?\\d+(\\.\\d+)? °[CF]");
    private static final ThreadLocal<String> HERE = new ThreadLocal<>();
    private static volatile Supplier<String> asked = () -> FIRST;

    static {
        NAMES.put("en", "English");
        NAMES.put("es", "Español");
        NAMES.put("pl", "Polski");
        NAMES.put("it", "Italiano");
        NAMES.put("ar", "العربية");
        NAMES.keySet().forEach(tag -> BUNDLES.put(tag, ResourceBundle.getBundle("words.words", tag.equals(FIRST) ? Locale.ROOT : Locale.forLanguageTag(tag), ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES))));
    }

    private Words() {
    }

    /** The languages by their tags of BCP 47, each with its name in itself. */
    public static Map<String, String> languages() {
        return java.util.Collections.unmodifiableMap(NAMES);
    }

    /** From where the language of whoever asks is known. */
    public static void askedBy(Supplier<String> source) {
        asked = source;
    }

    /** The tag of the language in which is said what is said now. */
    public static String language() {
        String tag = HERE.get() != null ? HERE.get() : asked.get();
        return tag != null && NAMES.containsKey(tag) ? tag : FIRST;
    }

    /** The locale of that language, for dates; digits are Western ones. */
    public static Locale locale() {
        return language().equals(FIRST) ? Locale.UK : Locale.forLanguageTag(language() + "-u-nu-latn");
    }

    /** Whether that language is written from right to left. */
    public static boolean rightToLeft() {
        return language().equals("ar");
    }

    /** Does something in one language, whoever asks. */
    public static <T> T in(String tag, Supplier<T> work) {
        String before = HERE.get();
        HERE.set(tag);
        try {
            return work.get();
        } finally {
            if (before == null) {
                HERE.remove();
            } else {
                HERE.set(before);
            }
        }
    }

    private static ResourceBundle bundle() {
        return BUNDLES.get(language());
    }

    /** The sentence of a key with its values in place; refuses a key that is not in the bundle. */
    public static String say(String key, Object... values) {
        String form;
        try {
            form = bundle().getString(key);
        } catch (MissingResourceException missing) {
            throw new IllegalArgumentException("There is no sentence \"" + key + "\" in words/words.properties.", missing);
        }
        return new MessageFormat(form, Locale.ROOT).format(Arrays.stream(values).map(Words::plain).toArray());
    }

    /** The form of a key with its places still open, for a script that puts the values in itself; refuses a key that is not in the bundle. */
    public static String form(String key) {
        if (!bundle().containsKey(key)) {
            throw new IllegalArgumentException("There is no sentence \"" + key + "\" in words/words.properties.");
        }
        return bundle().getString(key).replace("''", "'");
    }

    /** The sentence of a key that is put together, such as {@code kind.} and a kind of record; the bare end where there is none. */
    public static String named(String family, String name) {
        String key = family + "." + name;
        return bundle().containsKey(key) ? say(key) : name;
    }

    /** Every sentence whose key begins like this, without its beginning and with its places still open. */
    public static Map<String, String> family(String beginning) {
        Map<String, String> all = new TreeMap<>();
        bundle().keySet().stream().filter(key -> key.startsWith(beginning)).forEach(key -> all.put(key.substring(beginning.length()), bundle().getString(key).replace("''", "'")));
        return all;
    }

    /**
     * A number, alone or with its unit of temperature, with the decimal sign of the language; where that is written from right to left, a temperature
     * stands between U+2066 and U+2069 of Unicode's bidirectional algorithm (UAX 9), so that its sign and unit stay on their sides. Anything else as it is.
     */
    public static String number(String text) {
        if (rightToLeft()) {
            return TEMPERATURE.matcher(text).matches() ? "\u2066" + text + "\u2069" : text;
        }
        var parts = NUMBER.matcher(text);
        return COMMA.contains(language()) && parts.matches() ? parts.group(1) + "," + parts.group(2) + (parts.group(3) == null ? "" : parts.group(3)) : text;
    }

    private static Object plain(Object value) {
        return number(value instanceof BigDecimal decimal ? decimal.toPlainString() : String.valueOf(value));
    }
}
