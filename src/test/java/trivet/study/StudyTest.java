package trivet.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trivet.study.Examples.KNOWLEDGE;
import static trivet.study.Examples.changing;
import static trivet.study.Examples.changingControl;
import static trivet.study.Examples.open;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import trivet.flow.Step;
import trivet.form.Parts;
import trivet.hazard.DecisionTree;
import trivet.study.Study.Answer;
import trivet.study.Study.Control;
import trivet.study.Study.Hazard;

/** The hazard plan: recipe, proposals, decisions, and what it lacks. */
class StudyTest {

    private static final Study QUICHE = Examples.study("deep-quiche");

    @ParameterizedTest
    @ValueSource(strings = {"deep-quiche", "gluten-free-quiche", "meat-roll", "cheese-slice"})
    void a_shipped_plan_is_complete_and_has_every_column_of_the_codex_worksheet(String product) {
        Study study = Examples.study(product);
        assertEquals(List.of(), open(study));
        // Codex CXC 1-1969, diagram 3, from memory: CCP, significant hazards, critical limits, monitoring (what, how, when, who), corrective actions, verification, records
        for (Control control : study.controls()) {
            List<String> hazards = study.hazards().stream().filter(h -> h.controls().contains(control.id())).map(Hazard::title).toList();
            assertFalse(hazards.isEmpty(), control.id());
            for (String column : List.of(study.number(control), control.limit() + control.ownLimit(), control.what(), control.how(), control.every(), control.who(), control.corrective(), control.verification(), control.record())) {
                assertFalse(column.isBlank(), control.id());
            }
        }
        assertEquals(List.of("CCP 1", "CCP 2", "CCP 3"), study.controls().stream().filter(Control::ccp).map(study::number).toList());
    }

    @Test
    void the_flows_of_the_demo_say_what_the_trade_does() {
        // Common practice, no source: a shell is baked blind about 15 min at 150 °C and stands 15 to 20 min; a quiche bakes 30 to 40 min at about 200 °C, turned halfway
        for (String product : List.of("deep-quiche", "gluten-free-quiche")) {
            Map<String, Step> steps = Examples.study(product).steps().stream().collect(java.util.stream.Collectors.toMap(Step::id, s -> s));
            assertEquals("about 15 min, 150 °C oven", steps.get("blind-bake").time() + ", " + steps.get("blind-bake").temperature());
            assertEquals("15 to 20 min", steps.get("take-beans").time());
            assertTrue(steps.get("bake").time().equals("30 to 40 min") && steps.get("bake").temperature().contains("200 °C") && steps.get("bake").title().contains("turned halfway"));
        }
        assertTrue(QUICHE.control("cook").orElseThrow().how().contains("side of the oven that bakes slower"));
    }

    @Test
    void a_recipe_gives_bakers_per_cent_yield_scale_and_allergens() {
        Recipe recipe = QUICHE.recipe();
        // By hand: 1,500 g of butter on 3,000 g of flour are 50.0 %; 16,446 g less 9 % are 14,965.86 g, 24 pieces of 600 g
        assertEquals(new BigDecimal("50.0"), recipe.bakersPercent(recipe.item("butter").orElseThrow(), KNOWLEDGE).orElseThrow());
        assertTrue(recipe.bakersPercent(recipe.item("cream").orElseThrow(), KNOWLEDGE).isEmpty(), "the filling has no flour");
        assertEquals(0, new BigDecimal("16446").compareTo(recipe.total()));
        assertEquals(0, new BigDecimal("14965.86").compareTo(recipe.sold()));
        assertEquals(24, recipe.piecesByWeight().orElseThrow());
        assertEquals(new BigDecimal("1500.0"), recipe.forPieces(12).get("flour"));
        assertEquals(new TreeSet<>(Set.of("wheat", "milk", "egg")), recipe.contains(KNOWLEDGE));
        assertEquals(new TreeSet<>(Set.of("soya", "mustard", "celery")), recipe.mayContain(KNOWLEDGE), "what it may contain stands apart");
        assertEquals(List.of("gluten", "eggs", "milk"), KNOWLEDGE.region("uk").orElseThrow().groups(recipe.contains(KNOWLEDGE)).stream().map(g -> g.id()).toList());
    }

    private static Set<String> proposed(Study study, String step) {
        return new TreeSet<>(new Proposals(study, KNOWLEDGE).all().stream().filter(p -> p.step().equals(step)).map(p -> p.hazard().id()).toList());
    }

    @Test
    void hazards_are_proposed_by_ingredient_step_equipment_and_product_with_why_and_source() {
        assertTrue(proposed(QUICHE, "bake").containsAll(Set.of("salmonella", "listeria", "stec")));
        assertTrue(proposed(QUICHE, "cool").containsAll(Set.of("perfringens", "cereus", "listeria")));
        assertTrue(proposed(QUICHE, "blind-bake").contains("ceramic"));
        assertFalse(proposed(QUICHE, "pastry").contains("gluten-contact"), "a wheat product claims nothing");
        assertTrue(proposed(Examples.study("gluten-free-quiche"), "pastry").contains("gluten-contact"));
        assertTrue(proposed(Examples.study("meat-roll"), "bake").contains("yersinia-parasites"));
        Study sour = QUICHE.with("description", Parts.with(Parts.with(QUICHE.description(), "ph", "4.2"), "phSource".replace("S", "-s"), "measured"));
        assertFalse(proposed(sour, "cool").contains("perfringens"), "too sour to grow");
        assertTrue(proposed(sour, "bake").contains("salmonella"));
        new Proposals(QUICHE, KNOWLEDGE).all().forEach(p -> assertTrue(!p.whys().isEmpty() && !p.sources().isEmpty(), p.toString()));
        assertTrue(new Proposals(QUICHE, KNOWLEDGE).waiting().isEmpty());
        Study without = QUICHE.with("hazards", QUICHE.hazards().stream().filter(h -> !h.id().equals("bake-salmonella")).toList());
        assertEquals(1, new Proposals(without, KNOWLEDGE).waiting().size());
        assertTrue(open(without).toString().contains("proposed hazards wait"));
    }

    @Test
    void a_changed_answer_reopens_what_depended_on_it_and_two_trees_stand_side_by_side() {
        Hazard bake = Examples.hazard(QUICHE, "bake-salmonella");
        assertEquals(Decision.Needs.CCP, Decision.of(QUICHE.method(), bake).needs(bake));
        Hazard changed = Parts.with(bake, "answers", bake.answers().stream().map(a -> a.question().equals("codex-2022-q2") ? new Answer("codex-2022-q2", "no", "tried") : a).toList());
        assertEquals(List.of("q1", "q2"), Decision.of(QUICHE.method(), changed).tree().orElseThrow().path());
        Hazard again = Parts.with(bake, "answers", List.of(new Answer("codex-2022-q1", "no", "x"), new Answer("codex-2003-q1", "yes", "x"), new Answer("codex-2003-q2", "yes", "x")));
        assertEquals("q2", Decision.of(QUICHE.method(), again).tree().orElseThrow().asks().orElseThrow());
        assertEquals("ccp", Decision.by(QUICHE.method(), DecisionTree.CODEX_2003, again).tree().orElseThrow().outcome().orElseThrow().word());
    }

    @Test
    void the_notice_routes_by_risk_level() {
        Study.Method notice = new Study.Method("full", "eu-notice-2022", "risk-level", "codex-2022", "eu");
        Hazard bare = Parts.with(Parts.empty(Hazard.class), "decision", "accepted");
        assertEquals(Decision.Needs.WEIGHT, Decision.of(notice, bare).needs(bare));
        assertEquals(Decision.Needs.GHP, needs(notice, weighed(bare, 1, 2)));
        assertEquals(Decision.Needs.ENOUGH, needs(notice, weighed(bare, 1, 3)));
        assertEquals(Decision.Needs.OPRP, needs(notice, Parts.with(weighed(bare, 2, 3), "enough", "false")));
        assertEquals(Decision.Needs.GHP, needs(notice, Parts.with(weighed(bare, 2, 3), "enough", "true")));
        assertEquals(Decision.Needs.ANSWER, needs(notice, weighed(bare, 3, 3)));
        Study.Method byTree = new Study.Method("full", "eu-notice-2022", "tree", "codex-2022", "eu");
        assertEquals(Decision.Needs.ANSWER, needs(byTree, weighed(bare, 1, 3)));
    }

    private static Hazard weighed(Hazard hazard, int likelihood, int severity) {
        return Parts.with(Parts.with(hazard, "likelihood", "" + likelihood), "severity", "" + severity);
    }

    private static Decision.Needs needs(Study.Method method, Hazard hazard) {
        return Decision.of(method, hazard).needs(hazard);
    }

    static Stream<Arguments> lacks() {
        return Stream.of(
                lack("a CCP without a limit", "has no limit", s -> changingControl(s, "cook", "limit", "")),
                lack("an own limit without evidence", "its limit has no evidence", s -> changingControl(s, "label", "evidence", List.of())),
                lack("a hazard without a control", "has no CCP for it", s -> changing(s, "bake-salmonella", "controls", List.of())),
                lack("a control nobody checks", "nobody is responsible", s -> changingControl(s, "cook", "who", "")),
                lack("no deputy", "nobody stands in", s -> changingControl(s, "cooling", "deputy", "")),
                lack("no frequency of verification", "no frequency of verification", s -> changingControl(s, "cooling", "verification-often", "")),
                lack("a life without evidence", "The life of 3 days has no evidence", s -> s.with("description", Parts.with(s.description(), "life-evidence", ""))),
                lack("a claim without evidence", "gluten-free has no evidence", s -> s.with("description", Parts.with(s.description(), "claims", List.of("gluten-free")))),
                lack("gluten in a gluten-free product", "contains Wheat", s -> s.with("description", Parts.with(s.description(), "claims", List.of("gluten-free")))),
                lack("a chain that ends without a CCP", "has no critical control point for this hazard", s -> changing(s, "receive-cold-salmonella", "later-step", "cool")),
                lack("a later step that is not later", "does not come later", s -> changing(s, "bake-salmonella", "answers", List.of(new Answer("codex-2022-q1", "no", "x"), new Answer("codex-2022-q2", "yes", "x"), new Answer("codex-2022-q3", "yes", "x")))
                        .with("hazards", changing(changing(s, "bake-salmonella", "answers", List.of(new Answer("codex-2022-q1", "no", "x"), new Answer("codex-2022-q2", "yes", "x"), new Answer("codex-2022-q3", "yes", "x"))), "bake-salmonella", "later-step", "fill").hazards())),
                lack("an answer without a reason", "has no reason", s -> changing(s, "bake-salmonella", "answers", List.of(new Answer("codex-2022-q1", "yes", "")))),
                lack("a rejection without a reason", "rejected without a reason", s -> changing(s, "sell-insects", "reason", "")),
                lack("no acceptable level", "no acceptable level", s -> changing(s, "bake-salmonella", "acceptable", "")),
                lack("a level without a source", "acceptable level has no source", s -> changing(s, "bake-salmonella", "acceptable-source", "")),
                lack("no justification", "no justification", s -> changing(s, "bake-salmonella", "justification", "")),
                lack("modify", "must be modified", s -> changing(s, "bake-salmonella", "answers", List.of(new Answer("codex-2022-q1", "no", "x"), new Answer("codex-2022-q2", "yes", "x"), new Answer("codex-2022-q3", "no", "x"), new Answer("codex-2022-q4", "no", "x")))),
                lack("no CCP at all by the note to the tree", "no later step is a CCP", s -> changing(s, "store-listeria", "answers", List.of(new Answer("codex-2022-q1", "no", "x"), new Answer("codex-2022-q2", "no", "x")))),
                lack("a flow that changed after the walk", "Walk them again", s -> s.with("steps", s.steps().stream().map(step -> step.id().equals("bake") ? Parts.with(step, "time", "20 min") : step).toList())),
                lack("no walk", "Nobody has walked", s -> s.with("walk", Parts.empty(Study.Walk.class))),
                lack("a missing programme", "The programme \"Waste\" is missing", s -> s.with("programmes", s.programmes().stream().filter(p -> !p.topic().equals("waste")).toList())),
                lack("too few own trials", "asks for 3 batches", s -> s.with("evidence", List.of(new Study.Evidence("life", "own-trials", "Trials", "", "", "cold in time", List.of("A1"), "3")))),
                lack("no team", "Nobody is in the team", s -> s.with("team", List.of())),
                lack("copied parts", "was copied from", s -> s.with("decide-anew", List.of("recipe")).with("copied-from", "meat-roll")));
    }

    private static Arguments lack(String name, String says, UnaryOperator<Study> change) {
        return Arguments.of(name, says, change);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("lacks")
    void what_a_plan_lacks_is_an_open_point(String name, String says, UnaryOperator<Study> change) {
        List<String> open = open(change.apply(QUICHE));
        assertTrue(open.stream().anyMatch(words -> words.contains(says)), name + ": " + open);
    }

    @Test
    void without_a_confirmed_rulebook_nothing_is_complete() {
        assertFalse(OpenPoints.of(QUICHE, KNOWLEDGE, java.util.Optional.empty(), codes -> 9).isEmpty());
    }

    @Test
    void the_simplified_route_says_when_it_is_not_enough() {
        Study small = QUICHE.with("method", Parts.with(QUICHE.method(), "route", "small"));
        assertTrue(open(small).stream().anyMatch(words -> words.startsWith("Simplified route:")));
        List<Answer> answers = SmallRoute.QUESTIONS.stream().map(q -> new Answer(q, q.equals("usual") ? "yes" : "no", "")).toList();
        assertEquals(List.of(), open(small.with("small", answers)));
        Study unweighed = small.with("small", answers).with("hazards", QUICHE.hazards().stream().map(h -> Parts.with(Parts.with(h, "likelihood", ""), "answers", List.of())).toList());
        assertTrue(open(unweighed).stream().noneMatch(words -> words.contains("weighed")), "hazards are not ranked on it");
        Study week = small.with("small", answers).with("description", Parts.with(QUICHE.description(), "use-by", "7 days"));
        assertTrue(open(week).toString().contains("simplified route is not enough"));
        Study raw = small.with("small", answers.stream().map(a -> a.question().equals("raw-after") ? new Answer("raw-after", "yes", "") : a).toList());
        assertTrue(open(raw).toString().contains("raw goes onto it"));
    }
}
