package trivet.plan.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.RawString;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import trivet.plan.ApprovedPlan;
import trivet.plan.Drafts;
import trivet.plan.Plans;
import trivet.plan.UnderWay;
import trivet.study.Differences;
import trivet.study.Study;
import trivet.words.Words;

/** The signature under a plan, its versions, and what differs between them. */
@Path("/owner/plans/{product}/approval")
@Produces(MediaType.TEXT_HTML)
public class ApprovalPages {

    private static final Duration SLACK = Duration.ofMinutes(5);
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM yyyy HH:mm");

    @Inject
    @Location("plan/approval.html")
    Template page;
    @Inject
    Plans plans;
    @Inject
    UnderWay underWay;
    @Inject
    Editing editing;

    /** A version as the page shows it. */
    public record Version(int number, String sha256, String by, String signed, String from, String meaning, List<Differences.Difference> differs) {
    }

    private ZoneId zone() {
        return editing.sites().current().orElseThrow().zone();
    }

    @GET
    public TemplateInstance show(@PathParam("product") String product) {
        return page(product, null);
    }

    private TemplateInstance page(String product, String problem) {
        Drafts.Text text = editing.text(product);
        Study study = editing.study(text);
        List<ApprovedPlan> history = plans.history(product);
        Optional<ApprovedPlan> last = history.isEmpty() ? Optional.empty() : Optional.of(history.get(history.size() - 1));
        boolean same = last.map(plan -> plan.ref().sha256().equals(text.sha256())).orElse(false);
        boolean edited = !same && last.map(plan -> String.valueOf(plan.ref().version()).equals(study.version())).orElse(false);
        List<Differences.Difference> differs = last.flatMap(ApprovedPlan::study).map(before -> Differences.between(before, study)).orElse(List.of());
        List<Version> versions = new java.util.ArrayList<>();
        for (int i = history.size() - 1; i >= 0; i--) {
            versions.add(version(history.get(i), i == 0 ? Optional.empty() : history.get(i - 1).study()));
        }
        return page.data("text", text).data("study", study).data("open", editing.open(study)).data("versions", versions).data("same", same).data("edited", edited).data("differs", differs).data("batches", last.map(plan -> underWay.count(product)).orElse(0))
                .data("now", LocalDateTime.ofInstant(editing.clock().instant(), zone()).withNano(0).withSecond(0).toString()).data("me", editing.myName()).data("problem", problem)
                .data("drawings", differs.stream().anyMatch(difference -> difference.part().equals("steps")) ? List.of(new RawString(PlanDrawings.flow(last.flatMap(ApprovedPlan::study).orElseThrow(), editing.knowledge())), new RawString(PlanDrawings.flow(study, editing.knowledge()))) : List.of());
    }

    private Version version(ApprovedPlan plan, Optional<Study> before) {
        List<Differences.Difference> differs = before.flatMap(old -> plan.study().map(now -> Differences.between(old, now))).orElse(List.of());
        String name = editing.people().name(plan.by());
        return new Version(plan.ref().version(), plan.ref().sha256(), name, MOMENT.withLocale(Words.locale()).format(plan.signedAt().atZone(zone())), MOMENT.withLocale(Words.locale()).format(plan.from().atZone(zone())), plan.meaning(), differs);
    }

    @POST
    public Response approve(@PathParam("product") String product, @FormParam("meaning") String meaning, @FormParam("because") String because, @FormParam("from") String from, @FormParam("base") String base, @FormParam("sure") String sure) {
        Drafts.Text text = editing.text(product);
        try {
            if (!text.sha256().equals(base)) {
                throw new IllegalArgumentException(Words.say("j_approval_of_another_text"));
            }
            if (sure == null || meaning == null || meaning.isBlank()) {
                throw new IllegalArgumentException(Words.say("j_approval_needs_a_yes"));
            }
            boolean first = plans.approved().stream().noneMatch(plan -> plan.ref().id().equals(product));
            if (!first && (because == null || because.isBlank())) {
                throw new IllegalArgumentException(Words.say("j_approval_needs_a_reason"));
            }
            Instant now = editing.clock().instant();
            Instant moment = from == null || from.isBlank() ? now : LocalDateTime.parse(from).atZone(zone()).toInstant();
            if (moment.isBefore(now.minus(SLACK))) {
                throw new IllegalArgumentException(Words.say("j_approval_in_the_past"));
            }
            plans.approve(product, editing.me(), moment.isBefore(now) ? now : moment, meaning.strip() + (first || because == null ? "" : " " + Words.say("j_because", because.strip())));
            return Response.seeOther(URI.create("/owner/plans/" + product + "/approval")).build();
        } catch (java.time.format.DateTimeParseException unreadable) {
            return Response.status(422).entity(page(product, Words.say("j_a_date_is_expected", from)).render()).build();
        } catch (IllegalArgumentException refused) {
            return Response.status(422).entity(page(product, refused.getMessage()).render()).build();
        }
    }

    /** The exact text of a version, with its hash as the file's name. */
    @GET
    @Path("{version}.yaml")
    @Produces("application/yaml")
    public Response text(@PathParam("product") String product, @PathParam("version") int version) {
        ApprovedPlan plan = plans.history(product).stream().filter(one -> one.ref().version() == version).reduce((a, b) -> b).orElseThrow(NotFoundException::new);
        return Response.ok(plan.text()).type("application/yaml;charset=UTF-8").header("Content-Disposition", "attachment; filename=\"" + product + "-" + version + "-" + plan.ref().sha256().substring(0, 12) + ".yaml\"").build();
    }
}
