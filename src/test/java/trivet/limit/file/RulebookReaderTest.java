package trivet.limit.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import trivet.plan.file.PlanReader;

/** Every file under plans is read; a bad one is reported whole, with lines. */
class RulebookReaderTest {

    @Test
    void every_rulebook_under_plans_is_read_and_shipped() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("plans/rulebooks"))) {
            List<Path> all = files.toList();
            assertEquals(ShippedRulebooks.IDS.size(), all.size());
            for (Path file : all) {
                RulebookReader.Outcome outcome = RulebookReader.read(file.toString(), Files.readString(file));
                assertEquals(List.of(), outcome.problems());
                assertEquals(file.getFileName().toString(), outcome.rulebook().orElseThrow().id() + ".yaml");
                assertTrue(outcome.rulebook().get().cooling().isPresent());
            }
        }
    }

    @Test
    void every_plan_under_plans_is_read() throws IOException {
        try (Stream<Path> folders = Files.list(Path.of("plans/products"))) {
            List<Path> all = folders.toList();
            assertTrue(all.size() >= 4);
            for (Path folder : all) {
                PlanReader.Outcome outcome = PlanReader.read(folder.toString(), Files.readString(folder.resolve("plan.yaml")));
                assertEquals(List.of(), outcome.problems());
                assertEquals(folder.getFileName().toString(), outcome.plan().orElseThrow().product());
            }
        }
    }

    @Test
    void a_bad_file_is_reported_whole_with_its_lines() {
        String bad = """
                format: rulebook/1
                id: bad
                version: 1
                title: Bad
                jurisdiction: nowhere
                caution: none
                colour: red
                limits:
                  - id: hot-holding
                    shape: range
                    minimum: "63"
                    inclusive: no
                    standing: law
                    read: true
                  - id: cooling
                    shape: stages
                    standing: law
                    source: somewhere
                    read: true
                    stages:
                      - { from: "21 °C", to: "60 °C", within: "2 h", counted-from: start, inclusive: true }
                """;
        List<String> problems = RulebookReader.read("bad.yaml", bad).problems().stream().map(Object::toString).toList();
        assertTrue(problems.stream().anyMatch(p -> p.startsWith("bad.yaml, line 7:") && p.contains("colour")), problems.toString());
        assertTrue(problems.stream().anyMatch(p -> p.startsWith("bad.yaml, line 11:") && p.contains("unit")), problems.toString());
        assertTrue(problems.stream().anyMatch(p -> p.startsWith("bad.yaml, line 12:") && p.contains("true or false")), problems.toString());
        assertTrue(problems.stream().anyMatch(p -> p.contains("\"source\" is missing")), problems.toString());
        assertTrue(problems.stream().anyMatch(p -> p.startsWith("bad.yaml, line 21:") && p.contains("not below its start")), problems.toString());
    }

    @Test
    void an_operating_limit_that_is_not_stricter_than_the_critical_limit_is_a_load_error() {
        String file = """
                format: rulebook/1
                id: own
                version: 1
                title: Own
                jurisdiction: here
                caution: none
                limits:
                  - { id: chilled-storage, shape: range, maximum: "8 °C", inclusive: true, operating: "%s", standing: law, source: here, read: true }
                """;
        assertTrue(RulebookReader.read("own.yaml", file.formatted("5 °C")).problems().isEmpty());
        for (String notStricter : List.of("8 °C", "8.1 °C")) {
            String problem = RulebookReader.read("own.yaml", file.formatted(notStricter)).problems().get(0).toString();
            assertTrue(problem.startsWith("own.yaml, line 8:") && problem.contains("not stricter"), problem);
        }
    }
}
