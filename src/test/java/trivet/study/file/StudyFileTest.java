package trivet.study.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trivet.flow.Step;
import trivet.form.Kind;
import trivet.form.Parts;
import trivet.study.Examples;
import trivet.study.Study;
import trivet.study.Study.Answer;
import trivet.study.Study.Evidence;
import trivet.study.Study.Hazard;

/** A hazard plan as a file: the same bytes after reading and writing, and every problem with its line. */
class StudyFileTest {

    @ParameterizedTest
    @ValueSource(strings = {"deep-quiche", "gluten-free-quiche", "meat-roll", "cheese-slice"})
    void a_shipped_plan_reads_and_writes_to_the_same_bytes(String product) {
        assertEquals(Examples.text(product), StudyFile.write(Examples.study(product)));
    }

    @Provide
    Arbitrary<String> texts() {
        Arbitrary<String> traps = Arbitraries.of("yes", "no", "NULL", "~", "1e3", "0x1F", "12:30", "- a", "#", "a: b", "{", "[", "\"", "'", "\\", "\\n", "@x", "`", "é", "°C", "\u2028", "𝄞", "\t|", "!!int", "&a", "*a", "?", "=", "<<", "08");
        return Arbitraries.oneOf(traps, Arbitraries.strings().ofMaxLength(30).map(text -> text.replaceAll("[\\uD800-\\uDFFF\\u0000]", "x"))).map(Kind.TEXT::tidy);
    }

    @Property(tries = 300)
    void whatever_people_write_comes_back_as_it_was(@ForAll("texts") String a, @ForAll("texts") String b, @ForAll("texts") String c) {
        Study study = Study.named("x", one(a), "wheat");
        study = study.with("scope", new Study.Scope(one(a), one(b), b, c));
        Step step = new Step("s", one(c), "bake", "", "", List.of(), List.of(), List.of(), one(b).isEmpty() ? List.of() : List.of(one(b)), one(a), one(b), c);
        Hazard hazard = Parts.with(Parts.with(Parts.with(Parts.empty(Hazard.class), "id", "h"), "why", a), "answers", List.of(new Answer("codex-2022-q1", "yes", b)));
        Evidence evidence = Parts.with(Parts.with(Parts.empty(Evidence.class), "id", "e"), "batches", new ArrayList<>(List.of(one(a), one(b), one(c))).stream().filter(text -> !text.isEmpty()).toList());
        study = study.with("steps", List.of(step)).with("hazards", List.of(hazard)).with("evidence", List.of(evidence));
        String text = StudyFile.write(study);
        StudyFile.Outcome read = StudyFile.read("x", text);
        assertTrue(read.problems().isEmpty(), read.problems() + "\n" + text);
        assertEquals(study, read.study().orElseThrow());
        assertEquals(text, StudyFile.write(read.study().orElseThrow()));
    }

    private static String one(String text) {
        return Kind.LINE.tidy(text.replace("\n", " "));
    }

    @Test
    void an_import_reports_every_problem_with_its_line() {
        String text = Examples.text("deep-quiche").replace("\nline: wheat\n", "\nline: rye\n").replace("product: deep-quiche", "product: deep-quiche\ncolour: red").replace("after: [fill]", "after: [fil]").replace("life-evidence: life", "life-evidence: lives")
                .replaceFirst("likelihood: 2", "likelihood: often");
        StudyFile.Outcome outcome = StudyFile.strict("mine.yaml", text);
        assertTrue(outcome.study().isEmpty());
        String said = outcome.problems().toString();
        assertEquals(5, outcome.problems().size(), said);
        for (String word : List.of("line 3: The key \"colour\"", "line 6: \"rye\"", "\"fil\" is not in this plan", "\"lives\" is not in this plan", "\"often\" is no whole number")) {
            assertTrue(said.contains(word), word + " in " + said);
        }
    }
}
