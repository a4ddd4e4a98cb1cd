package trivet.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every sentence that is asked for is in the bundle, none lies there unused, and no template has words of its own. */
class WordsTest {

    private static final Path TEMPLATES = Path.of("src/main/resources/templates");
    private static final Pattern ASKED = Pattern.compile("\\{w:([sj]_[a-z0-9_]+)|Words\\.say\\(\"([a-z0-9_.]+)\"|(?:(?:say|words)\\(\"|\"(?=[sj]_))([a-z0-9_]+)\"");

    private static List<Path> files(String root, String... endings) throws IOException {
        try (Stream<Path> all = Files.walk(Path.of(root))) {
            return all.filter(file -> Stream.of(endings).anyMatch(end -> file.toString().endsWith(end))).toList();
        }
    }

    private static Set<String> bundle() throws IOException {
        Properties words = new Properties();
        try (var in = Files.newBufferedReader(Path.of("src/main/resources/words/words.properties"))) {
            words.load(in);
        }
        return words.stringPropertyNames();
    }

    @Test
    void every_sentence_asked_for_is_there_and_every_one_that_is_there_is_asked_for() throws IOException {
        Set<String> asked = new TreeSet<>();
        List<Path> sources = new ArrayList<>(files("src/main/resources/templates", ".html", ".xml"));
        sources.addAll(files("src/main/java", ".java"));
        sources.addAll(files("src/main/resources/META-INF/resources/js", ".js"));
        for (Path file : sources) {
            Matcher matcher = ASKED.matcher(Files.readString(file));
            while (matcher.find()) {
                asked.add(matcher.group(1) != null ? matcher.group(1) : matcher.group(2) != null ? matcher.group(2) : matcher.group(3).matches("[sj]_.*") ? matcher.group(3) : "js." + matcher.group(3));
            }
        }
        Set<String> there = bundle();
        Set<String> missing = new TreeSet<>(asked);
        missing.removeAll(there);
        assertEquals(Set.of(), missing);
        Set<String> unused = new TreeSet<>(there);
        unused.removeIf(key -> asked.contains(key) || !key.matches("[sj]_.*|js\\..*"));
        assertEquals(Set.of(), unused);
        assertTrue(asked.size() > 400, "the search finds them: " + asked.size());
    }

    @Test
    void no_template_has_words_of_its_own() throws IOException {
        List<String> bare = new ArrayList<>();
        for (Path file : files(TEMPLATES.toString(), ".html", ".xml")) {
            String text = Files.readString(file).replaceAll("(?s)<\\?.*?\\?>", "").replaceAll("(?s)\\{#attributes}.*?\\{/attributes}", "").replaceAll("\\{[^{}]*}", "").replaceAll("<[^<>]*>", "\n")
                    .replaceAll("&[a-z]+;", "").replace("Trivet", "").replace("SHA-256", "");
            text.lines().map(String::strip).filter(line -> line.matches(".*[A-Za-z]{3,}.*")).forEach(line -> bare.add(file + ": " + line));
        }
        assertEquals(List.of(), bare);
    }

    @Test
    void every_kind_of_record_has_a_name() throws IOException {
        JsonNode schema = new ObjectMapper().readTree(Path.of("src/main/resources/schemas/record-1.json").toFile());
        Set<String> there = bundle();
        schema.path("properties").path("kind").path("enum").forEach(kind -> assertTrue(there.contains("kind." + kind.asText()), kind.asText()));
    }

    @Test
    void a_sentence_takes_its_values_as_they_are_written_and_an_unknown_key_is_refused() {
        assertEquals("Held by ana: too warm's", Words.say("j_held_by", "ana", "too warm's"));
        assertEquals("1234.50 min left.", Words.say("j_min_left", new java.math.BigDecimal("1234.50")));
        assertThrows(IllegalArgumentException.class, () -> Words.say("no_such_sentence"));
    }
}
