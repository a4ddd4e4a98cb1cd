package trivet.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every language has every sentence, with the same places for values, and none of them in English. */
class LanguagesTest {

    private static final Pattern PLACE = Pattern.compile("\\{\\d}");

    private static Properties read(String name) throws IOException {
        Properties words = new Properties();
        try (var in = Files.newBufferedReader(Path.of("src/main/resources/words/" + name))) {
            words.load(in);
        }
        return words;
    }

    private static Set<String> places(String form) {
        return new TreeSet<>(PLACE.matcher(form).results().map(found -> found.group()).toList());
    }

    @ParameterizedTest
    @ValueSource(strings = {"es", "pl", "it", "ar"})
    void no_sentence_is_missing_and_each_has_the_same_places(String tag) throws IOException {
        Properties english = read("words.properties");
        Properties other = read("words_" + tag + ".properties");
        assertEquals(new TreeSet<>(english.stringPropertyNames()), new TreeSet<>(other.stringPropertyNames()));
        List<String> wrong = new ArrayList<>();
        for (String key : english.stringPropertyNames()) {
            String form = other.getProperty(key);
            if (form.isBlank() || !places(form).equals(places(english.getProperty(key)))) {
                wrong.add(key + ": " + form);
            }
            new MessageFormat(form, Locale.ROOT);
            if (form.replace("''", "").contains("'")) {
                wrong.add(key + " has a single apostrophe: " + form);
            }
        }
        assertEquals(List.of(), wrong);
    }

    @ParameterizedTest
    @ValueSource(strings = {"es", "pl", "it", "ar"})
    void a_sentence_of_three_words_or_more_is_not_left_in_english(String tag) throws IOException {
        Properties english = read("words.properties");
        Properties other = read("words_" + tag + ".properties");
        List<String> same = english.stringPropertyNames().stream().filter(key -> english.getProperty(key).equals(other.getProperty(key)) && PLACE.matcher(english.getProperty(key)).replaceAll("").split("[^A-Za-z]+").length > 3).toList();
        assertEquals(List.of(), same);
    }

    @Test
    void a_sentence_is_said_in_the_language_asked_for_with_its_decimal_sign() {
        assertEquals("Kept.", Words.say("js.kept"));
        assertEquals("Guardado.", Words.in("es", () -> Words.say("js.kept")));
        assertEquals("Centro 74,9 °C", Words.in("es", () -> Words.say("j_core", "74.9 °C")));
        assertEquals("Core 74.9 °C", Words.say("j_core", "74.9 °C"));
        assertEquals("v1.2.3", Words.in("es", () -> Words.number("v1.2.3")), "only numbers are numbers");
        assertEquals("\u2066-18 °C\u2069", Words.in("ar", () -> Words.number("-18 °C")), "UAX 9: a left-to-right isolate keeps sign and unit on their sides");
        assertEquals("en", Words.in("tlh", Words::language), "a language that is not there");
        assertTrue(Words.in("ar", Words::rightToLeft));
        assertFalse(Words.rightToLeft());
    }

    @Test
    void every_language_is_named_in_itself() {
        assertEquals(List.of("English", "Español", "Polski", "Italiano", "العربية"), List.copyOf(Words.languages().values()));
    }
}
