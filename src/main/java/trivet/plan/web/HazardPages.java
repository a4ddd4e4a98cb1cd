package trivet.plan.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import trivet.flow.Flow;
import trivet.flow.Step;
import trivet.form.Parts;
import trivet.hazard.DecisionTree;
import trivet.hazard.RiskMatrix;
import trivet.plan.Drafts;
import trivet.study.Decision;
import trivet.study.Proposals;
import trivet.study.Study;
import trivet.study.Study.Answer;
import trivet.study.Study.Control;
import trivet.study.Study.Hazard;
import trivet.words.Words;

/** The hazard analysis: what is proposed at each step, and for each accepted hazard its weight, the answers of the tree and what controls it. */
@Path("/owner/plans/{product}/hazards")
@Produces(MediaType.TEXT_HTML)
public class HazardPages {

    private static final Map<String, String> LIMIT_OF_KIND = Map.of("bake", "core-cook", "cool", "cooling", "store-ready", "chilled-storage", "hot-hold", "hot-holding", "reheat", "reheat", "freeze", "frozen-storage");

    @Inject
    @Location("plan/hazards.html")
    Template page;
    @Inject
    @Location("plan/hazard.html")
    Template one;
    @Inject
    @Location("plan/compare.html")
    Template compare;
    @Inject
    Editing editing;

    /** A hazard in the list. */
    public record Row(Hazard hazard, String level, String needs, boolean done) {
    }

    /** A step with its hazards and what is proposed there. */
    public record AtStep(Step step, List<Row> rows, List<Proposals.Proposal> waiting) {
    }

    /** A question of a tree with its answer. */
    public record Asked(String name, String question, String words, String answer, String reason) {
    }

    /** A tree as far as it is answered. */
    public record Walked(String tree, List<Asked> path, Asked next, String outcome, String reason) {
    }

    @GET
    public TemplateInstance list(@PathParam("product") String product) {
        Drafts.Text text = editing.text(product);
        Study study = editing.study(text);
        Set<String> open = editing.open(study).stream().filter(point -> point.part().equals("hazards")).map(point -> point.at()).collect(Collectors.toSet());
        List<Proposals.Proposal> waiting = new Proposals(study, editing.knowledge()).waiting();
        List<AtStep> steps = study.steps().stream().map(step -> new AtStep(step, study.hazards().stream().filter(hazard -> hazard.step().equals(step.id())).map(hazard -> row(study, hazard, !open.contains(hazard.id()))).toList(),
                waiting.stream().filter(proposal -> proposal.step().equals(step.id())).toList())).toList();
        List<Row> lost = study.hazards().stream().filter(hazard -> study.steps().stream().noneMatch(step -> step.id().equals(hazard.step()))).map(hazard -> row(study, hazard, false)).toList();
        return page.data("text", text).data("study", study).data("steps", steps).data("lost", lost).data("waiting", waiting.size());
    }

    private static Row row(Study study, Hazard hazard, boolean done) {
        if (!hazard.accepted()) {
            return new Row(hazard, "", Words.named("choice", hazard.decision().isEmpty() ? "undecided" : hazard.decision()), done);
        }
        Decision decision = Decision.of(study.method(), hazard);
        return new Row(hazard, decision.level().map(String::valueOf).orElse(""), Words.named("needs", decision.needs(hazard).name()), done);
    }

    @POST
    public Response decide(@PathParam("product") String product, MultivaluedMap<String, String> form) {
        String act = form.getFirst("act");
        String step = form.getFirst("step");
        String kind = form.getFirst("kind");
        String reason = form.getFirst("reason") == null ? "" : form.getFirst("reason").strip();
        editing.change(product, null, Study::format, study -> {
            List<Hazard> hazards = new ArrayList<>(study.hazards());
            if (act.equals("add")) {
                String title = form.getFirst("title") == null || form.getFirst("title").isBlank() ? Words.say("j_a_hazard") : form.getFirst("title").strip();
                hazards.add(new Hazard(newId(hazards, step + "-" + title), step, form.getFirst("sort"), title, "", Words.say("j_added_by", editing.myName()), "", "accepted", "", "", "", "", "", "", "", "", List.of(), "", List.of(), List.of()));
            }
            for (Proposals.Proposal proposal : new Proposals(study, editing.knowledge()).waiting()) {
                boolean meant = proposal.step().equals(step) && (act.equals("accept-all") || proposal.hazard().id().equals(kind));
                if (meant && !act.equals("add")) {
                    hazards.add(taken(hazards, proposal, act.equals("reject") ? "rejected" : "accepted", act.equals("reject") ? reason : ""));
                }
            }
            return study.with("hazards", hazards);
        });
        return Response.seeOther(URI.create("/owner/plans/" + product + "/hazards#step-" + step)).build();
    }

    private static Hazard taken(List<Hazard> hazards, Proposals.Proposal proposal, String decision, String reason) {
        var kind = proposal.hazard();
        boolean accepted = decision.equals("accepted");
        return new Hazard(newId(hazards, proposal.step() + "-" + kind.id()), proposal.step(), kind.sort(), kind.title(), kind.id(), String.join(" ", proposal.whys()), String.join("; ", proposal.sources()), decision, reason, "",
                accepted ? kind.severity() : "", "", accepted ? kind.acceptable() : "", accepted ? kind.acceptableSource() : "", accepted ? proposal.control() : "", "", List.of(), "", List.of(), List.of());
    }

    private static String newId(List<Hazard> hazards, String wish) {
        return PartList.newId(wish, hazards.stream().map(Hazard::id).collect(Collectors.toSet()));
    }

    /** A hazard under both trees. */
    public record Compared(Hazard hazard, String step, String first, String second, boolean differ) {
    }

    /** Every hazard that reaches a tree, under both. */
    @GET
    @Path("both-trees")
    public TemplateInstance both(@PathParam("product") String product) {
        Drafts.Text text = editing.text(product);
        Study study = editing.study(text);
        Flow flow = study.flow(editing.knowledge());
        List<Compared> rows = study.hazards().stream().filter(hazard -> hazard.accepted() && Decision.of(study.method(), hazard).tree().isPresent()).map(hazard -> {
            String first = outcome(study, DecisionTree.CODEX_2022, hazard);
            String second = outcome(study, DecisionTree.CODEX_2003, hazard);
            return new Compared(hazard, flow.title(hazard.step()), first, second, !first.isEmpty() && !second.isEmpty() && !first.equals(second));
        }).toList();
        return compare.data("text", text).data("study", study).data("rows", rows);
    }

    private static String outcome(Study study, DecisionTree tree, Hazard hazard) {
        return Decision.by(study.method(), tree, hazard).tree().flatMap(DecisionTree.Result::outcome).map(outcome -> Words.named("treeoutcome", outcome.word())).orElse("");
    }

    @GET
    @Path("{id}")
    public TemplateInstance hazard(@PathParam("product") String product, @PathParam("id") String id) {
        return hazard(product, id, null, List.of(), null);
    }

    private TemplateInstance hazard(String product, String id, Hazard mine, List<String> problems, String stale) {
        Drafts.Text text = editing.text(product);
        Study study = editing.study(text);
        Hazard saved = study.hazard(id).orElseThrow(NotFoundException::new);
        Hazard hazard = mine == null ? saved : mine;
        Decision decision = Decision.of(study.method(), saved);
        RiskMatrix matrix = RiskMatrix.find(study.method().matrix()).orElse(RiskMatrix.EU_NOTICE_2022);
        DecisionTree tree = tree(study);
        DecisionTree other = tree == DecisionTree.CODEX_2022 ? DecisionTree.CODEX_2003 : DecisionTree.CODEX_2022;
        Flow flow = study.flow(editing.knowledge());
        Map<String, Fields.Field> fields = Fields.of(hazard, study, editing.knowledge()).stream().collect(Collectors.toMap(Fields.Field::key, field -> field, (a, b) -> a, LinkedHashMap::new));
        List<String> lacks = editing.open(study).stream().filter(point -> point.at().equals(id)).map(point -> point.words()).toList();
        return one.data("text", text).data("study", study).data("h", saved).data("stepTitle", flow.title(saved.step())).data("fields", fields).data("scale", IntStream.rangeClosed(1, matrix.highest()).boxed().toList()).data("matrix", matrix.id())
                .data("decision", decision).data("needs", decision.needs(saved).name()).data("walked", decision.tree().isPresent() ? walked(tree, saved) : null).data("compared", decision.tree().isPresent() ? walked(other, saved) : null)
                .data("later", study.steps().stream().filter(step -> flow.downstream(saved.step()).contains(step.id())).toList()).data("lacks", lacks).data("problems", problems).data("stale", stale);
    }

    private static DecisionTree tree(Study study) {
        return DecisionTree.find(study.method().tree()).orElse(DecisionTree.CODEX_2022);
    }

    private static Walked walked(DecisionTree tree, Hazard hazard) {
        DecisionTree.Result result = tree.decide(Decision.reached(tree, hazard));
        List<Asked> path = result.path().stream().map(question -> asked(tree, question, hazard)).toList();
        return new Walked(tree.id(), path, result.asks().map(question -> asked(tree, question, hazard)).orElse(null), result.outcome().map(outcome -> Words.named("treeoutcome", outcome.word())).orElse(""), result.reason());
    }

    private static Asked asked(DecisionTree tree, String question, Hazard hazard) {
        String name = Decision.name(tree, question);
        var answer = hazard.answer(name);
        return new Asked(name, question.toUpperCase(java.util.Locale.ROOT), tree.words(question), answer.map(Answer::answer).orElse(""), answer.map(Answer::reason).orElse(""));
    }

    @POST
    @Path("{id}")
    public Response save(@PathParam("product") String product, @PathParam("id") String id, MultivaluedMap<String, String> form) {
        String act = form.getFirst("act") == null ? "save" : form.getFirst("act");
        List<String> problems = new ArrayList<>();
        Hazard[] mine = new Hazard[1];
        String[] to = {"/owner/plans/" + product + "/hazards/" + id};
        try {
            editing.change(product, form.getFirst("base"), study -> study.hazard(id), study -> {
                Hazard hazard = study.hazard(id).orElseThrow(NotFoundException::new);
                if (act.equals("control")) {
                    Control control = control(study, hazard, form.getFirst("sort"));
                    to[0] = "/owner/plans/" + product + "/part/controls?item=" + control.id() + "#item-" + control.id();
                    return with(study, Parts.with(hazard, "controls", plus(hazard.controls(), control.id()))).with("controls", plus(study.controls(), control));
                }
                mine[0] = act.equals("answer") ? answered(hazard, form, problems) : Fields.read(hazard, form, problems);
                return problems.isEmpty() ? with(study, mine[0]) : study;
            });
        } catch (Editing.Meanwhile meanwhile) {
            Hazard wanted = act.equals("save") ? Fields.read(editing.study(editing.text(product)).hazard(id).orElseThrow(NotFoundException::new), form, problems) : null;
            return Response.status(409).entity(hazard(product, id, wanted, List.of(), meanwhile.getMessage()).render()).build();
        }
        if (!problems.isEmpty()) {
            return Response.status(422).entity(hazard(product, id, mine[0], problems, null).render()).build();
        }
        return Response.seeOther(URI.create(to[0] + (act.equals("answer") ? "#tree" : ""))).build();
    }

    private static Study with(Study study, Hazard changed) {
        return study.with("hazards", study.hazards().stream().map(hazard -> hazard.id().equals(changed.id()) ? changed : hazard).toList());
    }

    private static <T> List<T> plus(List<T> list, T more) {
        List<T> all = new ArrayList<>(list);
        all.add(more);
        return all;
    }

    /** A changed answer stands, and those after it that its path does not reach are taken away: they are asked anew. */
    private static Hazard answered(Hazard hazard, MultivaluedMap<String, String> form, List<String> problems) {
        String name = form.getFirst("question");
        String answer = form.getFirst("answer");
        String reason = form.getFirst("reason") == null ? "" : form.getFirst("reason").strip();
        if (answer == null || reason.isEmpty()) {
            problems.add(Words.say("j_answer_needs_reason"));
            return hazard;
        }
        DecisionTree tree = DecisionTree.ALL.stream().filter(one -> name.startsWith(one.id() + "-")).findFirst().orElseThrow(NotFoundException::new);
        List<Answer> answers = new ArrayList<>(hazard.answers().stream().filter(one -> !one.question().equals(name)).toList());
        boolean changed = hazard.answer(name).map(before -> !before.answer().equals(answer)).orElse(true);
        answers.add(new Answer(name, answer, reason));
        Hazard next = Parts.with(hazard, "answers", answers);
        Set<String> reached = Decision.reached(tree, next).keySet();
        List<String> order = tree.questions();
        String asked = name.substring(tree.id().length() + 1);
        List<Answer> kept = answers.stream().filter(one -> !one.question().startsWith(tree.id() + "-")
                || (reached.contains(one.question().substring(tree.id().length() + 1)) && !(changed && order.indexOf(one.question().substring(tree.id().length() + 1)) > order.indexOf(asked))))
                .sorted(java.util.Comparator.comparing(Answer::question)).toList();
        return Parts.with(next, "answers", kept);
    }

    /** A new row of the worksheet at the hazard's step, with what the day's work usually checks there. */
    private Control control(Study study, Hazard hazard, String sort) {
        String kind = study.steps().stream().filter(step -> step.id().equals(hazard.step())).findFirst().map(Step::kind).orElse("");
        String limit = LIMIT_OF_KIND.getOrDefault(kind, "");
        String title = study.flow(editing.knowledge()).title(hazard.step());
        Control empty = Parts.with(Parts.empty(Control.class), "id", PartList.newId(title, study.controls().stream().map(Control::id).collect(Collectors.toSet())));
        List<String> offers = switch (limit) {
            case "core-cook", "reheat" -> List.of("back-in-oven", "hold", "destroy");
            case "cooling" -> List.of("hold", "use-otherwise", "destroy");
            case "chilled-storage", "hot-holding", "frozen-storage" -> List.of("probe-food", "move", "hold", "destroy");
            default -> List.of();
        };
        Control control = Parts.with(Parts.with(Parts.with(Parts.with(empty, "sort", "oprp".equals(sort) ? "oprp" : "ccp"), "step", hazard.step()), "title", title), "limit", limit);
        return Parts.with(Parts.with(Parts.with(control, "on-breach", offers), "every", "batch"), "who", "");
    }
}
