package trivet.alarm.web;

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
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import trivet.alarm.Alarms;
import trivet.alarm.Watch;
import trivet.batch.Life;
import trivet.check.Check;
import trivet.deviation.BatchRecord;
import trivet.deviation.Daybook;
import trivet.deviation.DueChecks;
import trivet.ledger.Journal;
import trivet.people.Person;
import trivet.site.Sites;
import trivet.site.web.Caller;
import trivet.words.Words;

/** The sheet on the wall: what is due, what cools, what is past due and who is silent; and the word that somebody has seen a matter. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
public class WallPages {

    private static final Duration LONGEST_SLEEP = Duration.ofHours(18);
    private static final int SHOWN = 12;

    @Inject
    @Location("alarm/wall.html")
    Template wall;
    @Inject
    @Location("alarm/alarms.html")
    Template list;
    @Inject
    WallScreen screen;
    @Inject
    Daybook daybook;
    @Inject
    DueChecks due;
    @Inject
    Watch watch;
    @Inject
    Alarms alarms;
    @Inject
    Journal journal;
    @Inject
    Sites sites;
    @Inject
    Caller caller;
    @Inject
    Clock clock;

    @GET
    @Path("wall")
    public TemplateInstance show() {
        Instant now = clock.instant();
        List<BatchRecord> underway = daybook.underway();
        List<Check> checks = due.list(underway);
        boolean tested = !journal.ofKind("sound-tested", sites.current().orElseThrow().start(daybook.today()), now.plusSeconds(60)).isEmpty();
        return wall.data("screen", screen).data("device", caller.tablet().map(t -> t.id()).orElse("")).data("alarms", alarms.open()).data("now", checks.stream().filter(check -> check.state().open()).limit(SHOWN).toList())
                .data("next", checks.stream().filter(check -> !check.state().open()).limit(SHOWN).toList()).data("cooling", underway.stream().filter(batch -> batch.life() == Life.COOLING).toList())
                .data("silent", watch.silent(underway, now)).data("tested", tested).data("past", checks.stream().filter(check -> check.state() == Check.State.PAST_DUE).count()).data("due", checks.stream().filter(check -> check.state() == Check.State.DUE).count())
                .data("moment", now);
    }

    /** What became due or was missed while a screen slept, in order of time: since a moment in milliseconds, at most 18 h back. */
    @GET
    @Path("wall/missed.json")
    @Produces(MediaType.APPLICATION_JSON)
    public List<Map<String, String>> missed(@QueryParam("since") long since) {
        Instant now = clock.instant();
        Instant from = Instant.ofEpochMilli(Math.max(since, now.minus(LONGEST_SLEEP).toEpochMilli()));
        List<Check> list = new ArrayList<>(due.all(daybook.underway()).filter(check -> check.due().isAfter(from) && !check.due().isAfter(now) && check.state() != Check.State.NOT_NEEDED && check.state() != Check.State.TAKEN).toList());
        list.sort(Comparator.comparing(Check::due));
        return list.stream().map(check -> Map.of("time", screen.time(check.due()), "words", check.label() + ": " + Words.named("check", check.sort()) + ", " + Words.named("state", check.state().word()))).toList();
    }

    /** The matters that still ask for somebody. */
    @GET
    @Path("alarms")
    public TemplateInstance list() {
        return list.data("screen", screen).data("alarms", alarms.open());
    }

    /** Somebody signed in has seen a matter. */
    @POST
    @Path("alarms/{id}/seen")
    public Response seen(@PathParam("id") String id) {
        String person = caller.person().map(Person::id).orElseThrow(NotFoundException::new);
        alarms.seen(id, person);
        return Response.seeOther(URI.create("/alarms")).build();
    }
}
