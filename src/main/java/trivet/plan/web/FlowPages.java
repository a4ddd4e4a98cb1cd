package trivet.plan.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.RawString;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import trivet.flow.Flow;
import trivet.flow.FlowEdits;
import trivet.flow.Step;
import trivet.plan.Drafts;
import trivet.study.FlowText;
import trivet.study.OpenPoints;
import trivet.study.Study;
import trivet.words.Words;

/** The flow diagram: a tap on a step, then what to do with it; no dragging. And its confirmation on site. */
@Path("/owner/plans/{product}/flow")
@Produces(MediaType.TEXT_HTML)
public class FlowPages {

    @Inject
    @Location("plan/flow.html")
    Template page;
    @Inject
    @Location("plan/walk.html")
    Template walk;
    @Inject
    Editing editing;

    /** A way that leads to or from the chosen step. */
    public record Way(String from, String to, String words, boolean rework) {
    }

    @GET
    public TemplateInstance show(@PathParam("product") String product, @QueryParam("step") @DefaultValue("") String step) {
        Drafts.Text text = editing.text(product);
        return page(text, editing.study(text), step, List.of(), null);
    }

    private TemplateInstance page(Drafts.Text text, Study study, String chosen, List<String> problems, String stale) {
        Optional<Step> step = study.steps().stream().filter(one -> one.id().equals(chosen)).findFirst();
        Flow flow = study.flow(editing.knowledge());
        List<Way> ways = new ArrayList<>();
        step.ifPresent(at -> {
            at.after().forEach(before -> ways.add(new Way(before, at.id(), Words.say("j_way_from", flow.title(before)), false)));
            at.reworkFrom().forEach(before -> ways.add(new Way(before, at.id(), Words.say("j_way_rework_from", flow.title(before)), true)));
            study.steps().stream().filter(other -> other.after().contains(at.id())).forEach(other -> ways.add(new Way(at.id(), other.id(), Words.say("j_way_to", other.title()), false)));
            study.steps().stream().filter(other -> other.reworkFrom().contains(at.id())).forEach(other -> ways.add(new Way(at.id(), other.id(), Words.say("j_way_rework_to", other.title()), true)));
        });
        List<String> lacks = OpenPoints.ofFlow(study, editing.knowledge()).stream().map(OpenPoints.OpenPoint::words).toList();
        return page.data("text", text).data("study", study).data("drawing", new RawString(study.steps().isEmpty() ? "" : PlanDrawings.flow(study, editing.knowledge(), true, chosen))).data("step", step.orElse(null)).data("ways", ways)
                .data("fields", step.map(at -> fields(at, study)).orElse(List.of())).data("others", study.steps().stream().filter(other -> !other.id().equals(chosen)).toList()).data("kinds", editing.knowledge().steps())
                .data("lacks", lacks).data("problems", problems).data("stale", stale);
    }

    /** The ways are changed by keys of their own; equipment is chosen from the knowledge base. */
    private List<Fields.Field> fields(Step step, Study study) {
        return Fields.of(step, study, editing.knowledge()).stream().filter(field -> !List.of("after", "rework-from").contains(field.key()))
                .map(field -> field.key().equals("equipment") ? new Fields.Field(field.key(), field.label(), "some", "", editing.knowledge().equipment().stream()
                        .map(row -> new Fields.Option(row.id(), row.title(), step.equipment().contains(row.id()))).toList(), field.help()) : field).toList();
    }

    @POST
    public Response change(@PathParam("product") String product, @HeaderParam("Trivet-Swap") String swap, MultivaluedMap<String, String> form) {
        String act = form.getFirst("act") == null ? "" : form.getFirst("act");
        String id = form.getFirst("step") == null ? "" : form.getFirst("step");
        String other = form.getFirst("other") == null ? "" : form.getFirst("other");
        List<String> problems = new ArrayList<>();
        String[] chosen = {id};
        try {
            editing.change(product, act.equals("save") ? form.getFirst("base") : null, study -> act.equals("save") ? study.flow(editing.knowledge()).step(id) : study.format(), study -> {
                List<Step> steps = study.steps();
                Step fresh = fresh(study, form);
                List<Step> changed = switch (act) {
                    case "begin" -> FlowEdits.begin(steps, fresh);
                    case "after" -> FlowEdits.insertAfter(steps, id, fresh);
                    case "split" -> FlowEdits.split(steps, id, fresh);
                    case "join" -> FlowEdits.join(steps, id, other);
                    case "rework" -> FlowEdits.rework(steps, id, other);
                    case "part" -> FlowEdits.part(steps, form.getFirst("from"), form.getFirst("to"));
                    case "move" -> FlowEdits.moveAfter(steps, id, other);
                    case "up", "down" -> FlowEdits.shift(steps, id, act.equals("up"));
                    case "remove" -> FlowEdits.remove(steps, id);
                    case "save" -> steps.stream().map(step -> step.id().equals(id) ? Fields.read(step, form, problems) : step).toList();
                    default -> steps;
                };
                if (List.of("begin", "after", "split").contains(act) && changed.size() > steps.size()) {
                    chosen[0] = fresh.id();
                }
                if (act.equals("remove")) {
                    chosen[0] = "";
                }
                return problems.isEmpty() ? study.with("steps", changed) : study;
            });
        } catch (Editing.Meanwhile meanwhile) {
            Drafts.Text now = editing.text(product);
            return Response.status(409).entity(page(now, editing.study(now), id, List.of(), meanwhile.getMessage()).render()).build();
        }
        if (!problems.isEmpty()) {
            Drafts.Text now = editing.text(product);
            return Response.status(422).entity(page(now, editing.study(now), id, problems, null).render()).build();
        }
        String at = "/owner/plans/" + product + "/flow" + (chosen[0].isEmpty() ? "" : "?step=" + chosen[0] + "#chosen");
        if (swap == null) {
            return Response.seeOther(URI.create(at)).build();
        }
        Drafts.Text now = editing.text(product);
        return Response.ok(page(now, editing.study(now), chosen[0], List.of(), null).render()).header("Trivet-At", at).build();
    }

    private Step fresh(Study study, MultivaluedMap<String, String> form) {
        String kind = form.getFirst("kind") == null ? "other" : form.getFirst("kind");
        String typed = form.getFirst("title") == null ? "" : form.getFirst("title").strip();
        String title = typed.isEmpty() ? editing.knowledge().step(kind).map(row -> row.title()).orElse(kind) : typed;
        return Step.named(PartList.newId(title, study.steps().stream().map(Step::id).collect(Collectors.toSet())), title, kind);
    }

    @GET
    @Path("walk")
    public TemplateInstance walk(@PathParam("product") String product) {
        Drafts.Text text = editing.text(product);
        Study study = editing.study(text);
        boolean confirmed = !study.walk().by().isEmpty() && study.walk().flow().equals(FlowText.sha256(study));
        return walk.data("text", text).data("study", study).data("drawing", new RawString(PlanDrawings.flow(study, editing.knowledge()))).data("rooms", new RawString(RoomDrawing.svg(study))).data("confirmed", confirmed)
                .data("today", editing.today()).data("me", editing.myName()).data("flow", FlowText.sha256(study)).data("problem", null);
    }

    @POST
    @Path("walk")
    public Response walked(@PathParam("product") String product, MultivaluedMap<String, String> form) {
        String by = form.getFirst("by") == null ? "" : form.getFirst("by").strip();
        String on = form.getFirst("on") == null ? "" : form.getFirst("on").strip();
        String differed = form.getFirst("differed") == null ? "" : form.getFirst("differed").strip();
        String seen = form.getFirst("flow");
        Study study = editing.study(editing.text(product));
        String problem = by.isEmpty() || on.isEmpty() ? Words.say("j_walk_needs_name_and_date") : on.compareTo(editing.today()) > 0 ? Words.say("j_walk_in_the_future") : !FlowText.sha256(study).equals(seen) ? Words.say("j_walk_of_another_flow") : null;
        if (problem != null) {
            return Response.status(422).entity(walk(product).data("problem", problem).render()).build();
        }
        editing.change(product, null, Study::format, now -> now.with("walk", new Study.Walk(by, on, differed, seen)));
        return Response.seeOther(URI.create("/owner/plans/" + product)).build();
    }
}
