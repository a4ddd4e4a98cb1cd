package trivet.plan.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import trivet.form.Parts;
import trivet.limit.Problem;
import trivet.plan.ApprovedPlan;
import trivet.plan.Drafts;
import trivet.plan.Plans;
import trivet.plan.ReviewNeeds;
import trivet.plan.UnderWay;
import trivet.study.OpenPoints.OpenPoint;
import trivet.study.SmallRoute;
import trivet.study.Study;
import trivet.study.file.StudyFile;
import trivet.words.Words;

/** The plans of the products: what there is, a new one from nothing, from a similar product or from a file, and the twelve steps of one. */
@Path("/owner/plans")
@Produces(MediaType.TEXT_HTML)
public class PlanPages {

    /** What is asked anew of a copy. */
    private static final List<String> ANEW = List.of("scope", "team", "description", "recipe", "flow", "rooms", "hazards", "controls", "evidence", "programmes", "day");

    /** How far back a repeated deviation is looked for; common practice, no source. */
    private static final Duration REPEATS = Duration.ofDays(90);

    @Inject
    @Location("plan/plans.html")
    Template page;
    @Inject
    @Location("plan/plan.html")
    Template one;
    @Inject
    Plans plans;
    @Inject
    UnderWay underWay;
    @Inject
    Editing editing;

    /** A plan in the list. */
    public record Row(String product, String title, String state, boolean approved, List<String> problems, boolean study) {
    }

    /** A chapter of a plan: some of the twelve steps, with its pages and what is open there. */
    public record Chapter(String title, List<Link> links, List<Open> open) {
    }

    /** A page of a chapter. */
    public record Link(String href, String title, String says) {
    }

    /** A copied part that nobody has gone through, with its page. */
    public record Copied(String part, String href, String words) {
    }

    private static String page(String base, String part) {
        return switch (part) {
            case "flow", "hazards" -> base + "/" + part;
            case "recipe" -> base + "/part/items";
            default -> base + "/part/" + part;
        };
    }

    /** An open point with the page that closes it. */
    public record Open(String href, String words) {
    }

    @GET
    public TemplateInstance list() {
        return list(null, List.of());
    }

    private TemplateInstance list(String problem, List<Problem> problems) {
        List<Row> rows = plans.drafts().stream().map(draft -> {
            String title = draft.study().map(Study::title).or(() -> draft.plan().map(plan -> plan.title())).filter(t -> !t.isEmpty()).orElse(draft.product());
            Optional<Integer> approved = plans.approved().stream().filter(plan -> plan.ref().id().equals(draft.product())).map(plan -> plan.ref().version()).findFirst();
            String state = !draft.open().isEmpty() ? Words.say("j_plan_open_points", draft.open().size()) : draft.waiting() ? Words.say("j_plan_waits") : Words.say("j_plan_in_force", approved.orElse(0));
            String also = draft.waiting() && approved.isPresent() ? " " + Words.say("j_plan_in_force", approved.get()) : "";
            return new Row(draft.product(), title, state + also, !draft.waiting(), draft.study().isPresent() ? List.of() : draft.problems().stream().map(Problem::toString).toList(), draft.study().isPresent());
        }).toList();
        List<Study> from = Stream.concat(editing.drafts().products().stream().flatMap(product -> editing.drafts().text(product).flatMap(Drafts.Text::study).stream()), editing.drafts().examples().stream()).filter(distinct()).toList();
        return page.data("rows", rows).data("from", from).data("problem", problem).data("problems", problems);
    }

    private static java.util.function.Predicate<Study> distinct() {
        Set<String> seen = new HashSet<>();
        return study -> seen.add(study.product());
    }

    @POST
    public Response create(@FormParam("title") String title, @FormParam("line") String line, @FormParam("from") String from, @FormParam("file") String file) {
        if (file != null && !file.isBlank()) {
            return take(file);
        }
        if (title == null || title.isBlank() || line == null) {
            return Response.status(422).entity(list(Words.say("j_plan_needs_a_name"), List.of()).render()).build();
        }
        Set<String> taken = new HashSet<>(editing.drafts().products());
        String product = PartList.newId(title, taken);
        Study study = from == null || from.isEmpty() ? Study.named(product, title.strip(), line) : copy(from, product, title.strip(), line);
        editing.drafts().save(study, editing.me());
        return Response.seeOther(URI.create("/owner/plans/" + product)).build();
    }

    /** A copy: what describes the other product or another bakery is left out or has to be gone through; the walk is always made anew. */
    private Study copy(String from, String product, String title, String line) {
        Study source = editing.drafts().text(from).flatMap(Drafts.Text::study).or(() -> editing.drafts().examples().stream().filter(one -> one.product().equals(from)).findFirst()).orElseThrow(() -> new jakarta.ws.rs.NotFoundException());
        boolean example = editing.drafts().text(from).isEmpty();
        Study copy = source.with("product", product).with("title", title).with("line", line).with("version", "1").with("copied-from", from).with("decide-anew", ANEW).with("walk", Parts.empty(Study.Walk.class)).with("reviews", List.of());
        copy = copy.with("evidence", source.evidence().stream().filter(evidence -> List.of("law", "guidance").contains(evidence.sort())).toList()).with("description", Parts.with(Parts.with(copy.description(), "life-evidence", ""), "claim-evidence", ""));
        boolean lineChanges = !source.line().equals(line);
        copy = lineChanges ? copy.with("steps", copy.steps().stream().map(step -> step.line().isEmpty() ? step : Parts.with(step, "line", line)).toList()) : copy;
        return example ? withoutNames(copy) : copy;
    }

    /** An example names invented people and suppliers, which no other bakery has. */
    private static Study withoutNames(Study copy) {
        return copy.with("team", List.of()).with("programmes", copy.programmes().stream().map(programme -> Parts.with(Parts.with(programme, "who", ""), "deputy", "")).toList())
                .with("controls", copy.controls().stream().map(control -> Parts.with(control, "verified-by", "")).toList())
                .with("recipe", Parts.with(copy.recipe(), "items", copy.recipe().items().stream().map(item -> Parts.with(Parts.with(Parts.with(item, "supplier", ""), "specification", ""), "specification-date", "")).toList()));
    }

    private Response take(String file) {
        StudyFile.Outcome outcome = StudyFile.strict(Words.say("j_the_file_given"), file);
        if (outcome.study().isEmpty()) {
            return Response.status(422).entity(list(Words.say("j_import_refused", outcome.problems().size()), outcome.problems()).render()).build();
        }
        Study study = outcome.study().get();
        if (editing.drafts().products().contains(study.product())) {
            return Response.status(422).entity(list(Words.say("j_import_exists", study.product()), List.of()).render()).build();
        }
        editing.drafts().save(study, editing.me());
        return Response.seeOther(URI.create("/owner/plans/" + study.product())).build();
    }

    @GET
    @Path("{product}")
    public TemplateInstance plan(@PathParam("product") String product) {
        Drafts.Text text = editing.text(product);
        Study study = editing.study(text);
        List<OpenPoint> open = editing.open(study);
        String base = "/owner/plans/" + product;
        List<Chapter> chapters = new ArrayList<>();
        chapters.add(chapter(study, "team", open, List.of("rulebook", "scope", "team"), base, link(base, "scope", study.scope().from() + " – " + study.scope().to()), link(base, "method", Words.named("choice", study.method().tree())), link(base, "team", Words.say("j_n_people", study.team().size()))));
        chapters.add(chapter(study, "product", open, List.of("description", "recipe"), base, link(base, "description", study.description().words()), link(base, "items", Words.say("j_n_ingredients", study.recipe().items().size())), link(base, "recipe", study.recipe().pieces())));
        chapters.add(chapter(study, "flow", open, List.of("flow", "rooms", "walk"), base, new Link(base + "/flow", Words.named("part", "flow"), Words.say("j_n_steps", study.steps().size())), link(base, "rooms", Words.say("j_n_rooms", study.rooms().size())), link(base, "ways", ""),
                new Link(base + "/flow/walk", Words.named("part", "walk"), study.walk().by().isEmpty() ? "" : study.walk().by() + ", " + study.walk().on())));
        chapters.add(chapter(study, "hazards", open, List.of("hazards"), base, new Link(base + "/hazards", Words.named("part", "hazards"), Words.say("j_n_hazards", study.hazards().stream().filter(Study.Hazard::accepted).count()))));
        chapters.add(chapter(study, "controls", open, List.of("controls", "evidence", "day"), base, link(base, "controls", Words.say("j_n_controls", study.controls().stream().filter(Study.Control::ccp).count(), study.controls().stream().filter(control -> !control.ccp()).count())),
                link(base, "evidence", String.valueOf(study.evidence().size())), link(base, "day", study.day().usualBake())));
        chapters.add(chapter(study, "programmes", open, List.of("programmes"), base, link(base, "programmes", Words.say("j_n_programmes", study.programmes().size()))));
        chapters.add(chapter(study, "signing", open, List.of(), base, new Link(base + "/approval", Words.say("j_to_the_signature"), ""), link(base, "reviews", String.valueOf(study.reviews().size())),
                new Link(base + "/words", Words.say("s_texts_in_other_languages"), "")));
        List<Open> first = open.stream().filter(point -> !point.part().equals("copy")).limit(1).map(point -> new Open(href(base, point, study), point.words())).toList();
        return one.data("text", text).data("study", study).data("needs", needs(product, study)).data("chapters", chapters).data("count", open.size()).data("first", first.isEmpty() ? null : first.get(0)).data("copied", open.stream().filter(point -> point.part().equals("copy")).map(point -> new Copied(point.at(), page(base, point.at()), point.words())).toList())
                .data("small", study.method().route().equals("small") ? SmallRoute.QUESTIONS.stream().map(question -> new Answered(question, Words.named("smallquestion", question), study.small().stream().filter(a -> a.question().equals(question)).map(Study.Answer::answer).findFirst().orElse(""))).toList() : List.of());
    }

    private List<ReviewNeeds.Need> needs(String product, Study study) {
        Optional<ApprovedPlan> approved = plans.approved().stream().filter(plan -> plan.ref().id().equals(product)).findFirst();
        if (approved.isEmpty() || editing.sites().current().isEmpty()) {
            return List.of();
        }
        Instant now = editing.clock().instant();
        return ReviewNeeds.of(approved.get(), study, rules(approved.get().signedAt()), rules(now), underWay.deviations(product, now.minus(REPEATS)), editing.sites().current().get().zone(), now);
    }

    private Optional<ReviewNeeds.Rules> rules(Instant at) {
        return editing.sites().inForceAt(at).map(confirmed -> new ReviewNeeds.Rules(confirmed.ref(), confirmed.at()));
    }

    /** A question of the simplified route. */
    public record Answered(String question, String words, String answer) {
    }

    private static Link link(String base, String part, String says) {
        return new Link(base + "/part/" + part, Words.named("part", part), says);
    }

    private static Chapter chapter(Study study, String title, List<OpenPoint> open, List<String> parts, String base, Link... links) {
        return new Chapter(Words.named("chapter", title), List.of(links), open.stream().filter(point -> parts.contains(point.part())).map(point -> new Open(href(base, point, study), point.words())).toList());
    }

    private static String href(String base, OpenPoint point, Study study) {
        return switch (point.part()) {
            case "flow" -> base + "/flow" + (point.at().isEmpty() ? "" : "?step=" + point.at() + "#chosen");
            case "walk" -> base + "/flow/walk";
            case "rulebook" -> "/owner/rulebook";
            case "hazards" -> base + "/hazards" + (study != null && study.hazard(point.at()).isPresent() ? "/" + point.at() : "#step-" + point.at());
            case "recipe" -> base + "/part/items" + item(point);
            default -> base + "/part/" + point.part() + item(point);
        };
    }

    private static String item(OpenPoint point) {
        return point.at().isEmpty() ? "" : "?item=" + point.at() + "#item-" + point.at();
    }

    /** Somebody has gone through a copied part and says that it is right for this product. */
    @POST
    @Path("{product}/gone-through")
    public Response goneThrough(@PathParam("product") String product, @FormParam("part") String part) {
        editing.change(product, null, Study::format, study -> study.with("decide-anew", study.decideAnew().stream().filter(one -> !one.equals(part)).toList()));
        return Response.seeOther(URI.create("/owner/plans/" + product)).build();
    }

    @POST
    @Path("{product}/small")
    public Response small(@PathParam("product") String product, MultivaluedMap<String, String> form) {
        editing.change(product, null, Study::format, study -> study.with("small", SmallRoute.QUESTIONS.stream().map(question -> new Study.Answer(question, form.getFirst(question) == null ? "" : form.getFirst(question), ""))
                .filter(answer -> !answer.answer().isEmpty()).toList()));
        return Response.seeOther(URI.create("/owner/plans/" + product)).build();
    }
}
