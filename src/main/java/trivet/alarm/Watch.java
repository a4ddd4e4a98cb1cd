package trivet.alarm;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import trivet.batch.Life;
import trivet.check.Check;
import trivet.deviation.BatchRecord;
import trivet.deviation.Daybook;
import trivet.deviation.Deviation;
import trivet.deviation.DueChecks;
import trivet.deviation.Handovers;
import trivet.device.Devices;
import trivet.ledger.Heard;
import trivet.ledger.Ids;
import trivet.people.People;
import trivet.site.Sites;
import trivet.words.Words;

/** Looks for what should have been seen to by now. */
@ApplicationScoped
public class Watch {

    /** How long a deviation may be unanswered; common practice, no source. */
    static final Duration UNANSWERED = Duration.ofMinutes(30);
    /** After which time without a word a tablet is called silent while food is under way; common practice, no source. */
    public static final Duration SILENT = Duration.ofMinutes(15);

    @Inject
    Daybook daybook;
    @Inject
    DueChecks due;
    @Inject
    Handovers handovers;
    @Inject
    Devices devices;
    @Inject
    Heard heard;
    @Inject
    People people;
    @Inject
    Sites sites;
    @Inject
    ServiceClock serviceClock;
    @Inject
    Clock clock;

    /** A tablet that has not been heard of for a while. */
    public record Silent(String device, Instant lastHeard, int waiting) {
    }

    /** Everything that should have been seen to by now; nothing before the bakery is set up. */
    public List<Alarm> now() {
        if (sites.current().isEmpty()) {
            return List.of();
        }
        Instant now = clock.instant();
        List<BatchRecord> underway = daybook.underway();
        List<Alarm> all = new ArrayList<>();
        due.list(underway).stream().filter(check -> check.state() == Check.State.PAST_DUE).map(Watch::pastDue).forEach(all::add);
        Stream<Deviation> deviations = Stream.concat(underway.stream().flatMap(batch -> batch.deviations().stream()), daybook.units(daybook.today(), daybook.today()).stream().flatMap(unit -> unit.deviations().stream()));
        deviations.filter(one -> one.state() == Deviation.State.OPEN && !now.isBefore(one.since().plus(UNANSWERED))).map(Watch::unanswered).forEach(all::add);
        handovers.open().stream().filter(one -> !now.isBefore(one.at().plus(Handovers.PATIENCE))).map(this::notTaken).forEach(all::add);
        silent(underway, now).stream().map(Watch::silent).forEach(all::add);
        serviceClock.look().ifPresent(all::add);
        return all;
    }

    private static Alarm pastDue(Check check) {
        String link = switch (check.sort()) {
            case "unit", "re-check" -> "/units/" + check.subject();
            case "programme" -> "/programmes/" + check.subject();
            default -> "/batches/" + check.subject();
        };
        return new Alarm(check.id(), Alarm.Kind.PAST_DUE, check.label(), check.sort(), Words.say("alarm.past_due", check.label(), Words.named("check", check.sort())), link, check.due().plus(Check.GRACE));
    }

    private static Alarm unanswered(Deviation one) {
        return new Alarm(one.id(), Alarm.Kind.UNANSWERED, one.label(), one.limit(), Words.say("alarm.unanswered", one.label(), one.words()), "/deviations/" + one.id(), one.since().plus(UNANSWERED));
    }

    private Alarm notTaken(Handovers.Handover one) {
        return new Alarm(one.id(), Alarm.Kind.NOT_TAKEN_OVER, name(one.from()), "hand-over", Words.say("alarm.not_taken", name(one.from()), one.batches().size(), name(one.to())), "/work", one.at().plus(Handovers.PATIENCE));
    }

    private static Alarm silent(Silent one) {
        return new Alarm(Ids.derived(one.device() + "/silent/" + one.lastHeard()), Alarm.Kind.SILENT_TABLET, one.device(), "silent-tablet", Words.say("alarm.silent", one.device(), one.waiting()), "/work", one.lastHeard().plus(SILENT));
    }

    private String name(String person) {
        return people.name(person);
    }

    /** Tablets that spoke today and have been silent since, while food that must be measured is under way. */
    public List<Silent> silent(List<BatchRecord> underway, Instant now) {
        boolean awaited = underway.stream().anyMatch(batch -> !batch.life().over() && batch.life() != Life.STORED);
        Set<String> revoked = new java.util.HashSet<>(devices.tablets().stream().filter(Devices.Tablet::revoked).map(Devices.Tablet::id).toList());
        Instant today = sites.current().orElseThrow().start(daybook.today());
        return heard.words().stream().filter(word -> !revoked.contains(word.device()) && !word.at().isBefore(today) && !now.isBefore(word.at().plus(SILENT)) && (awaited || word.waiting() > 0))
                .map(word -> new Silent(word.device(), word.at(), word.waiting())).toList();
    }
}
