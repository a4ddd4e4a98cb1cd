package trivet.hazard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every path of the published trees, and every cell of the published matrix. */
class DecisionTreeTest {

    private static Map<String, String> answers(String text) {
        Map<String, String> answers = new LinkedHashMap<>();
        for (String pair : text.split(" ")) {
            answers.put(pair.split("=")[0], pair.split("=")[1]);
        }
        return answers;
    }

    @ParameterizedTest
    @CsvSource({
        // Codex CXC 1-1969 (2022): Q1, Q2 and their notes read in a copy of the printed figure, Q3 and Q4 in a second source
        "codex-2022, q1=yes, not-a-ccp",
        "codex-2022, q1=no q2=no, not-a-ccp",
        "codex-2022, q1=no q2=yes q3=yes, later-step",
        "codex-2022, q1=no q2=yes q3=no q4=yes, ccp",
        "codex-2022, q1=no q2=yes q3=no q4=no, modify",
        // CXC 1-1969 Rev. 4-2003, annex, diagram 2, from memory
        "codex-2003, q1=no q1a=yes, modify",
        "codex-2003, q1=no q1a=no, not-a-ccp",
        "codex-2003, q1=yes q2=yes, ccp",
        "codex-2003, q1=yes q2=no q3=no, not-a-ccp",
        "codex-2003, q1=yes q2=no q3=yes q4=yes, not-a-ccp",
        "codex-2003, q1=yes q2=no q3=yes q4=no, ccp"})
    void each_path_ends_as_published(String tree, String given, String outcome) {
        DecisionTree.Result result = DecisionTree.find(tree).orElseThrow().decide(answers(given));
        assertEquals(outcome, result.outcome().orElseThrow().word());
        assertEquals(List.copyOf(answers(given).keySet()), result.path());
        assertTrue(result.asks().isEmpty());
        assertFalse(result.reason().startsWith("codex"), result.reason());
        assertEquals(given.matches(".*(2022|q1=no).* q3=yes$") || given.endsWith("q4=yes") && tree.equals("codex-2003"), result.later());
    }

    @Test
    void the_rows_above_are_all_the_paths_there_are() {
        assertEquals(5, ends(DecisionTree.CODEX_2022, Map.of()));
        assertEquals(6, ends(DecisionTree.CODEX_2003, Map.of()));
    }

    private static int ends(DecisionTree tree, Map<String, String> so) {
        DecisionTree.Result result = tree.decide(so);
        if (result.outcome().isPresent()) {
            return 1;
        }
        int ends = 0;
        for (String answer : List.of("yes", "no")) {
            Map<String, String> more = new LinkedHashMap<>(so);
            more.put(result.asks().orElseThrow(), answer);
            ends += ends(tree, more);
        }
        return ends;
    }

    @Test
    void what_is_not_asked_is_refused_and_says_which() {
        DecisionTree.Refused early = assertThrows(DecisionTree.Refused.class, () -> DecisionTree.CODEX_2022.decide(Map.of("q1", "yes", "q2", "no")));
        assertEquals("q2", early.question());
        assertThrows(DecisionTree.Refused.class, () -> DecisionTree.CODEX_2022.decide(Map.of("q2", "no")));
        assertThrows(DecisionTree.Refused.class, () -> DecisionTree.CODEX_2022.decide(Map.of("q1a", "no")));
        assertThrows(DecisionTree.Refused.class, () -> DecisionTree.CODEX_2022.decide(Map.of("q1", "maybe")));
        assertEquals("q1", DecisionTree.CODEX_2022.decide(Map.of()).asks().orElseThrow());
    }

    @Property
    void a_changed_answer_leaves_only_what_the_path_still_reaches(@ForAll @Size(5) List<Boolean> yes) {
        for (DecisionTree tree : DecisionTree.ALL) {
            Map<String, String> all = new LinkedHashMap<>();
            List<String> names = new ArrayList<>(new TreeSet<>(tree.questions()));
            for (int i = 0; i < names.size(); i++) {
                all.put(names.get(i), yes.get(i) ? "yes" : "no");
            }
            Map<String, String> reached = tree.reached(all);
            DecisionTree.Result result = tree.decide(reached);
            assertEquals(List.copyOf(reached.keySet()), result.path());
            assertTrue(result.outcome().isPresent());
        }
    }

    @ParameterizedTest
    @CsvSource({"1, 1 2 3 4", "2, 2 3 4 5", "3, 3 4 5 6", "4, 4 5 6 7"})
    void all_sixteen_cells_of_the_notice(int probability, String row) {
        // Commission Notice 2022/C 355/01, read in a rendering: rows are the probability, columns the effect
        for (int effect = 1; effect <= 4; effect++) {
            int level = Integer.parseInt(row.split(" ")[effect - 1]);
            assertEquals(level, RiskMatrix.EU_NOTICE_2022.level(probability, effect));
            assertEquals(level <= 2 ? "ghp" : level <= 4 ? "ghp-or-oprp" : "control-point", RiskMatrix.EU_NOTICE_2022.route(probability, effect).word());
        }
    }

    @Test
    void the_simple_matrix_takes_the_gravest_always_seriously() {
        assertFalse(RiskMatrix.SIMPLE.significant(1, 1));
        assertFalse(RiskMatrix.SIMPLE.significant(1, 2));
        assertTrue(RiskMatrix.SIMPLE.significant(1, 3));
        assertTrue(RiskMatrix.SIMPLE.significant(3, 1));
        assertThrows(IllegalArgumentException.class, () -> RiskMatrix.SIMPLE.level(4, 1));
        assertThrows(IllegalArgumentException.class, () -> RiskMatrix.EU_NOTICE_2022.level(0, 1));
    }
}
