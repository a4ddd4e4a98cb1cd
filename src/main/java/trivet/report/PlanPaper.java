package trivet.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import trivet.flow.Flow;
import trivet.form.Parts;
import trivet.hazard.DecisionTree;
import trivet.knowledge.Knowledge;
import trivet.limit.Rulebook;
import trivet.study.Decision;
import trivet.study.OpenPoints;
import trivet.study.Recipe;
import trivet.study.Study;
import trivet.study.Study.Answer;
import trivet.study.Study.Control;
import trivet.study.Study.Hazard;
import trivet.words.Words;

/** A hazard plan on paper: chapters of paragraphs, tables and drawings, in the order of the twelve steps. */
public final class PlanPaper {

    private final Study study;
    private final Knowledge knowledge;
    private final Optional<Rulebook> rulebook;
    private final Flow flow;

    private PlanPaper(Study study, Knowledge knowledge, Optional<Rulebook> rulebook) {
        this.study = study;
        this.knowledge = knowledge;
        this.rulebook = rulebook;
        this.flow = study.flow(knowledge);
    }

    /** A chapter. */
    public record Chapter(String title, List<Piece> pieces) {

        /** Whether it begins with a drawing, which wants a page of its own. */
        public boolean drawn() {
            return !pieces.isEmpty() && pieces.get(0).sort().equals("flow");
        }
    }

    /**
     * A piece of a chapter.
     *
     * @param sort text, table, flow or rooms
     * @param widths the columns' shares of the width
     */
    public record Piece(String sort, String text, List<Integer> widths, List<String> head, List<List<String>> rows) {
    }

    private static Piece text(String words) {
        return new Piece("text", words, List.of(), List.of(), List.of());
    }

    private static Piece table(List<Integer> widths, List<String> head, List<List<String>> rows) {
        return new Piece("table", "", widths, head, rows);
    }

    /** The chapters of a plan. */
    public static List<Chapter> of(Study study, Knowledge knowledge, Optional<Rulebook> rulebook, List<OpenPoints.OpenPoint> open, List<List<String>> versions) {
        PlanPaper paper = new PlanPaper(study, knowledge, rulebook);
        List<Chapter> chapters = new ArrayList<>();
        chapters.add(new Chapter(Words.named("chapter", "team"), paper.team()));
        chapters.add(new Chapter(Words.named("chapter", "product"), paper.product()));
        chapters.add(new Chapter(Words.named("chapter", "flow"), paper.flow()));
        chapters.add(new Chapter(Words.named("chapter", "hazards"), List.of(text(Words.named("basis", study.method().matrix())), table(List.of(20, 24, 36, 18, 28, 28, 26), hazardHead(), paper.hazards()))));
        chapters.add(new Chapter(Words.say("j_paper_trees"), paper.trees()));
        chapters.add(new Chapter(Words.named("chapter", "controls"), paper.controls()));
        chapters.add(new Chapter(Words.say("j_paper_evidence"), List.of(table(List.of(28, 44, 44, 64), words("evidence.sort", "evidence.title", "evidence.reference", "evidence.says"), study.evidence().stream()
                .map(e -> List.of(choice(e.sort()) + " " + e.date(), e.title(), e.reference() + (e.batches().isEmpty() ? "" : " " + String.join(", ", e.batches())), e.says())).toList()))));
        chapters.add(new Chapter(Words.named("chapter", "programmes"), List.of(table(List.of(32, 62, 34, 18, 34), words("programme.title", "programme.what", "programme.who", "programme.often", "programme.evidence"), study.programmes().stream()
                .map(p -> List.of(p.title() + (p.greaterAttention().equals("true") ? " *" : ""), p.what(), p.who() + " / " + p.deputy(), choice(p.often()), p.evidence())).toList()), text(Words.say("j_paper_greater")))));
        chapters.add(new Chapter(Words.say("j_paper_versions"), List.of(table(List.of(14, 34, 44, 88), List.of(Words.say("j_paper_version"), Words.say("j_paper_signed"), Words.say("j_paper_meaning"), "SHA-256"), versions),
                table(List.of(36, 30, 60, 54), words("review.asked", "review.by", "review.looked-at", "review.outcome"), study.reviews().stream().map(r -> List.of(choice(r.asked()) + " " + r.on(), r.by(), r.lookedAt(), r.outcome())).toList()))));
        if (!open.isEmpty()) {
            chapters.add(0, new Chapter(Words.say("j_paper_open", open.size()), open.stream().map(point -> text("• " + point.words())).toList()));
        }
        return chapters;
    }

    private static List<String> words(String... fields) {
        return Stream.of(fields).map(field -> Words.named("field", field)).toList();
    }

    private static String choice(String word) {
        return word.isEmpty() ? "–" : Words.named("choice", word);
    }

    /** The said fields of a record as label and value. */
    private List<List<String>> said(Record record, List<String> without) {
        String type = record.getClass().getSimpleName().toLowerCase(Locale.ROOT);
        return Parts.fields(record.getClass()).stream().filter(field -> field.record() == null && !without.contains(field.key())).map(field -> {
            Object value = Parts.value(record, field);
            List<String> all = value instanceof List<?> list ? list.stream().map(String::valueOf).toList() : List.of(String.valueOf(value));
            String shown = all.stream().map(one -> field.kind() == trivet.form.Kind.CHOICE && !one.isEmpty() ? Words.named("choice", one) : study.evidence(one).map(Study.Evidence::title).orElse(one)).collect(Collectors.joining(", "));
            return List.of(Words.named("field", type + "." + field.key()), shown);
        }).filter(row -> !row.get(1).isEmpty()).toList();
    }

    private List<Piece> team() {
        List<Piece> pieces = new ArrayList<>();
        pieces.add(table(List.of(60, 120), List.of(), Stream.concat(said(study.scope(), List.of()).stream(), said(study.method(), List.of()).stream()).toList()));
        pieces.add(table(List.of(40, 50, 90), words("member.name", "member.role", "member.competence"), study.team().stream().map(m -> List.of(m.name() + (m.outside().equals("true") ? " (" + Words.named("field", "member.outside") + ")" : ""), m.role(), m.competence())).toList()));
        return pieces;
    }

    private List<Piece> product() {
        Recipe recipe = study.recipe();
        List<List<String>> rows = recipe.items().stream().map(item -> List.of(item.title(), item.part(), item.grams(), recipe.bakersPercent(item, knowledge).map(p -> p.toPlainString() + " %").orElse("–"),
                names(Recipe.contains(item, knowledge)), names(item.mayContain()), item.supplier() + ", " + item.specification() + " " + item.specificationDate())).toList();
        String groups = knowledge.region(study.method().region()).map(region -> region.groups(recipe.contains(knowledge)).stream().map(g -> g.title()).collect(Collectors.joining(", "))).orElse("–");
        String may = knowledge.region(study.method().region()).map(region -> region.groups(recipe.mayContain(knowledge)).stream().map(g -> g.title()).collect(Collectors.joining(", "))).orElse("–");
        return List.of(table(List.of(60, 120), List.of(), said(study.description(), List.of())),
                table(List.of(34, 18, 14, 16, 28, 26, 44), List.of(Words.named("field", "item.title"), Words.named("field", "item.part"), Words.say("s_grams"), Words.say("s_bakers_per_cent"), Words.say("s_contains"), Words.say("s_may_contain"), Words.named("field", "item.specification")), rows),
                text(Words.say("s_the_mix_weighs_sold_pieces", recipe.total().stripTrailingZeros().toPlainString(), recipe.sold().stripTrailingZeros().toPlainString(), recipe.piecesByWeight().map(String::valueOf).orElse("–"))),
                text(Words.say("s_contains") + ": " + groups + ". " + Words.say("s_may_contain") + ": " + (may.isEmpty() ? "–" : may) + "."));
    }

    private String names(java.util.Collection<String> substances) {
        return substances.stream().map(knowledge::substance).collect(Collectors.joining(", "));
    }

    private List<Piece> flow() {
        List<Piece> pieces = new ArrayList<>();
        pieces.add(new Piece("flow", "", List.of(), List.of(), List.of()));
        int[] number = {0};
        pieces.add(table(List.of(8, 48, 34, 30, 30, 30), List.of("", Words.named("field", "step.title"), Words.named("field", "step.inputs"), Words.named("field", "step.time"), Words.named("field", "step.temperature"), Words.named("field", "step.equipment")),
                study.steps().stream().map(step -> List.of(String.valueOf(++number[0]), step.title() + (step.note().isEmpty() ? "" : ". " + step.note()), step.inputs().stream().map(id -> study.recipe().item(id).map(Recipe.Item::title).orElse(id)).collect(Collectors.joining(", ")),
                        step.time(), step.temperature(), step.equipment().stream().map(id -> knowledge.equipment(id).map(row -> row.title()).orElse(id)).collect(Collectors.joining(", ")))).toList()));
        if (!study.rooms().isEmpty()) {
            pieces.add(new Piece("rooms", "", List.of(), List.of(), List.of()));
        }
        Study.Walk walk = study.walk();
        pieces.add(text(walk.by().isEmpty() ? Words.say("j_open_walk") : Words.say("s_walked_by_on", walk.by(), walk.on()) + (walk.differed().isEmpty() ? "" : " " + walk.differed())));
        return pieces;
    }

    /** The heads of the hazard analysis. */
    public static List<String> hazardHead() {
        return List.of(Words.named("field", "hazard.step"), Words.named("field", "hazard.title"), Words.say("j_paper_why_and_source"), Words.say("j_paper_weight"), Words.named("field", "hazard.justification"), Words.named("field", "hazard.acceptable"), Words.say("j_paper_control"));
    }

    /** The hazard analysis as rows of cells. */
    public static List<List<String>> hazards(Study study, Knowledge knowledge) {
        return new PlanPaper(study, knowledge, Optional.empty()).hazards();
    }

    private List<List<String>> hazards() {
        List<List<String>> rows = new ArrayList<>();
        for (var step : study.steps()) {
            study.hazards().stream().filter(hazard -> hazard.step().equals(step.id())).forEach(hazard -> rows.add(row(hazard)));
        }
        return rows;
    }

    private List<String> row(Hazard hazard) {
        String title = hazard.title() + " (" + choice(hazard.sort()) + ")";
        if (!hazard.accepted()) {
            return List.of(flow.title(hazard.step()), title, hazard.why() + " " + hazard.source(), "–", choice(hazard.decision().isEmpty() ? "undecided" : hazard.decision()) + ": " + hazard.reason(), "–", "–");
        }
        Decision decision = Decision.of(study.method(), hazard);
        String weight = hazard.likelihood().isEmpty() ? "–" : hazard.likelihood() + " / " + hazard.severity() + decision.level().map(level -> ": " + level).orElse("");
        String controls = Stream.concat(hazard.controls().stream().map(id -> study.control(id).map(study::number).orElse(id)), hazard.programmes().stream().map(id -> study.programmes().stream().filter(p -> p.id().equals(id)).map(Study.Programme::title).findFirst().orElse(id))).collect(Collectors.joining(", "));
        return List.of(flow.title(hazard.step()), title, hazard.why() + " " + hazard.source(), weight, hazard.justification(), hazard.acceptable() + (hazard.acceptableSource().isEmpty() ? "" : " (" + hazard.acceptableSource() + ")"),
                Words.named("needs", decision.needs(hazard).name()) + (hazard.laterStep().isEmpty() ? "" : ": " + flow.title(hazard.laterStep())) + ". " + hazard.measures() + (controls.isEmpty() ? "" : " [" + controls + "]"));
    }

    private List<Piece> trees() {
        DecisionTree tree = DecisionTree.find(study.method().tree()).orElse(DecisionTree.CODEX_2022);
        List<Piece> pieces = new ArrayList<>(List.of(text(choice(tree.id()) + ":")));
        tree.questions().forEach(question -> pieces.add(text(question.toUpperCase(Locale.ROOT) + ". " + tree.words(question))));
        List<List<String>> rows = new ArrayList<>();
        for (Hazard hazard : study.hazards()) {
            Decision decision = Decision.of(study.method(), hazard);
            if (hazard.accepted() && decision.tree().isPresent()) {
                String answers = decision.tree().get().path().stream().map(question -> {
                    Optional<Answer> answer = hazard.answer(Decision.name(tree, question));
                    return question.toUpperCase(Locale.ROOT) + " " + answer.map(a -> Words.say(a.answer().equals("yes") ? "s_yes" : "s_no") + ": " + a.reason()).orElse("–");
                }).collect(Collectors.joining("  "));
                String numbers = hazard.controls().stream().flatMap(id -> study.control(id).stream()).map(study::number).collect(Collectors.joining(", "));
                rows.add(List.of(flow.title(hazard.step()), hazard.title(), answers, decision.tree().get().outcome().map(outcome -> Words.named("treeoutcome", outcome.word())).orElse("–") + (numbers.isEmpty() ? "" : ": " + numbers)));
            }
        }
        pieces.add(table(List.of(32, 38, 76, 34), List.of(Words.named("field", "hazard.step"), Words.named("field", "hazard.title"), Words.named("field", "hazard.answers"), Words.say("j_paper_control")), rows));
        return pieces;
    }

    /** The heads of the worksheet: the columns of Codex CXC 1-1969, diagram 3 (from memory). */
    public static List<String> controlHead() {
        return List.of(Words.say("j_paper_control"), Words.say("j_paper_hazards"), Words.say("j_paper_limit"), Words.say("j_paper_monitoring"), Words.named("field", "control.corrective"), Words.named("field", "control.verification"), Words.named("field", "control.record"));
    }

    /** The worksheet as rows of cells. */
    public static List<List<String>> controls(Study study, Knowledge knowledge, Optional<Rulebook> rulebook) {
        return study.controls().stream().map(new PlanPaper(study, knowledge, rulebook)::row).toList();
    }

    private List<String> row(Control control) {
        String hazards = study.hazards().stream().filter(h -> h.accepted() && h.controls().contains(control.id())).map(Hazard::title).distinct().collect(Collectors.joining("; "));
        String limit = (control.limit().isEmpty() ? "" : byRulebook(control)) + control.ownLimit() + (control.operating().isEmpty() ? "" : ". " + Words.named("field", "control.operating") + ": " + control.operating())
                + control.evidence().stream().map(id -> study.evidence(id).map(Study.Evidence::title).orElse(id)).collect(Collectors.joining(", ", " [", "]")).replace(" []", "");
        String monitoring = control.what() + ". " + control.how() + ". " + (control.often().isEmpty() ? choice(control.every()) : control.often()) + ". " + control.who() + " / " + control.deputy() + (control.instrument().isEmpty() ? "" : ". " + control.instrument());
        return List.of(study.number(control) + " " + control.title() + " (" + flow.title(control.step()) + ")", hazards, limit, monitoring, control.corrective() + (control.onBreach().isEmpty() ? "" : " [" + control.onBreach().stream().map(offer -> Words.named("offer", offer)).collect(Collectors.joining(", ")) + "]"),
                control.verification() + ". " + control.verificationOften() + ". " + control.verifiedBy(), control.record());
    }

    private String byRulebook(Control control) {
        String numbers = rulebook.map(book -> book.words(control.limit(), study.food(book.id()))).orElse("");
        return Words.say("j_paper_by_rulebook", Words.named("limit", control.limit()), numbers.isEmpty() ? "–" : numbers, rulebook.map(Rulebook::title).orElse("–"));
    }

    private List<Piece> controls() {
        return List.of(table(List.of(24, 24, 26, 38, 26, 24, 18), controlHead(), study.controls().stream().map(this::row).toList()), table(List.of(120, 60), List.of(), said(study.day(), List.of())));
    }

    /** The title that says what plan this is: an id, a version and its state. */
    public static Map<String, String> heading(Study study, boolean approved) {
        return Map.of("title", study.title(), "state", approved ? Words.say("j_paper_approved", study.version()) : Words.say("j_paper_draft", study.version()));
    }
}
