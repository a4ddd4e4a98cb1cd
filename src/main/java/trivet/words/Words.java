package trivet.words;

import java.math.BigDecimal;
import java.text.MessageFormat;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import java.util.TreeMap;

/**
 * The sentences of {@code words/words.properties}, each with its key and places for values, in the form of
 * {@link MessageFormat}. Numbers are put in as they are written, without grouping.
 */
public final class Words {

    private static final ResourceBundle BUNDLE = ResourceBundle.getBundle("words.words", Locale.ROOT);

    private Words() {
    }

    /** The sentence of a key with its values in place; refuses a key that is not in the bundle. */
    public static String say(String key, Object... values) {
        String form;
        try {
            form = BUNDLE.getString(key);
        } catch (MissingResourceException missing) {
            throw new IllegalArgumentException("There is no sentence \"" + key + "\" in words/words.properties.", missing);
        }
        return new MessageFormat(form, Locale.ROOT).format(Arrays.stream(values).map(Words::plain).toArray());
    }

    /** The form of a key with its places still open, for a script that puts the values in itself; refuses a key that is not in the bundle. */
    public static String form(String key) {
        if (!BUNDLE.containsKey(key)) {
            throw new IllegalArgumentException("There is no sentence \"" + key + "\" in words/words.properties.");
        }
        return BUNDLE.getString(key).replace("''", "'");
    }

    /** The sentence of a key that is put together, such as {@code kind.} and a kind of record; the bare end where there is none. */
    public static String named(String family, String name) {
        String key = family + "." + name;
        return BUNDLE.containsKey(key) ? say(key) : name;
    }

    /** Every sentence whose key begins like this, without its beginning and with its places still open. */
    public static Map<String, String> family(String beginning) {
        Map<String, String> all = new TreeMap<>();
        BUNDLE.keySet().stream().filter(key -> key.startsWith(beginning)).forEach(key -> all.put(key.substring(beginning.length()), BUNDLE.getString(key).replace("''", "'")));
        return all;
    }

    private static Object plain(Object value) {
        return value instanceof BigDecimal number ? number.toPlainString() : String.valueOf(value);
    }
}
