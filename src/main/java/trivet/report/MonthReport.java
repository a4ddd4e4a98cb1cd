package trivet.report;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import trivet.check.Check;
import trivet.deviation.BatchRecord;
import trivet.deviation.Day;
import trivet.deviation.Deviation;
import trivet.deviation.ProgrammeRecord;
import trivet.deviation.UnitRecord;
import trivet.ledger.Entry;
import trivet.site.Confirmed;
import trivet.site.Site;
import trivet.words.Words;

/**
 * What an inspector is shown of some days, both inclusive: deviations first, then checks, batches, readings, units and days.
 * Every count is counted from the rows that are shown.
 */
public record MonthReport(Site site, LocalDate from, LocalDate to, Instant generatedAt, String generatedBy, List<Confirmed> rulebooks,
        List<Day> days, List<UnitRecord> units, List<Deviation> deviations, List<Check> checks) {

    private static final Set<String> ENDINGS = Set.of("released", "destroyed", "gone", "struck-out", "held");

    /** Puts a report together, deviations with the open ones on top. */
    public static MonthReport of(Site site, LocalDate from, LocalDate to, Instant at, String by, List<Confirmed> rulebooks, List<Day> days, List<UnitRecord> units,
            List<ProgrammeRecord> programmes) {
        List<Deviation> deviations = new ArrayList<>();
        days.forEach(day -> day.batches().forEach(batch -> deviations.addAll(batch.deviations())));
        units.forEach(unit -> deviations.addAll(unit.deviations()));
        programmes.stream().flatMap(programme -> programme.deviations().stream()).filter(deviation -> !deviation.since().isBefore(site.start(from)) && deviation.since().isBefore(site.end(to)))
                .filter(deviation -> deviations.stream().noneMatch(other -> other.id().equals(deviation.id()))).forEach(deviations::add);
        deviations.sort(Comparator.comparing(Deviation::state).thenComparing(Deviation::since));
        List<Check> checks = Stream.of(days.stream().flatMap(day -> day.batches().stream()).flatMap(batch -> batch.checks().stream()), units.stream().flatMap(unit -> unit.checks().stream()),
                programmes.stream().flatMap(programme -> programme.check().stream())).flatMap(stream -> stream).sorted(Comparator.comparing(Check::due)).toList();
        return new MonthReport(site, from, to, at, by, rulebooks, days, units, List.copyOf(deviations), checks);
    }

    private long count(Check.State state) {
        return checks.stream().filter(check -> check.state() == state).count();
    }

    /** Checks taken in time. */
    public long taken() {
        return count(Check.State.TAKEN);
    }

    /** Checks taken more than 15 minutes past due. */
    public long takenLate() {
        return count(Check.State.TAKEN_LATE);
    }

    /** Checks that nobody took. */
    public List<Check> missed() {
        return checks.stream().filter(check -> check.state() == Check.State.MISSED).toList();
    }

    /** Checks that were not needed, each with who said so and why. */
    public long notNeeded() {
        return count(Check.State.NOT_NEEDED);
    }

    /** Controls that could not be judged. */
    public long unjudged() {
        return deviations.stream().filter(deviation -> !deviation.breach()).count();
    }

    /** Limits breached. */
    public long breaches() {
        return deviations.stream().filter(Deviation::breach).count();
    }

    /** Checks taken more than 15 minutes past due, each. */
    public List<Check> late() {
        return checks.stream().filter(check -> check.state() == Check.State.TAKEN_LATE).toList();
    }

    /** Checks that were not needed, each with who said so and why. */
    public List<Check> spared() {
        return checks.stream().filter(check -> check.state() == Check.State.NOT_NEEDED).toList();
    }

    /** What ended or released a batch: records of release, destruction, leaving and striking out, in the order of receipt. */
    public List<Entry> endings(BatchRecord batch) {
        return batch.entries().stream().filter(entry -> ENDINGS.contains(entry.kind())).toList();
    }

    /** All batches in the order in which they were begun. */
    public List<BatchRecord> batches() {
        return days.stream().flatMap(day -> day.batches().stream()).sorted(Comparator.comparing(BatchRecord::startedAt)).toList();
    }

    private Stream<Entry> entries() {
        return days.stream().flatMap(day -> day.entries().stream());
    }

    /** All records whose claimed time lies in these days. */
    public long records() {
        return entries().count();
    }

    /** Records entered more than 15 minutes after their claimed time. */
    public List<Entry> writtenLater() {
        return entries().filter(Entry::writtenLater).toList();
    }

    /** Records of tablets whose clock was wrong, set back or never compared with the service's. */
    public List<Entry> clocks() {
        return entries().filter(entry -> !entry.time().marks().isEmpty()).toList();
    }

    /** Corrections, each naming the record that it corrects. */
    public List<Entry> corrections() {
        return entries().filter(entry -> entry.kind().equals("correction")).toList();
    }

    /** Checks of probes. */
    public List<Entry> probeChecks() {
        return entries().filter(entry -> entry.kind().equals("probe-check")).toList();
    }

    /** Days on which the site was closed. */
    public List<Day> closedDays() {
        return days.stream().filter(day -> day.closed().isPresent()).toList();
    }

    /** Days with records that nobody has looked at. */
    public List<Day> notReviewed() {
        return days.stream().filter(day -> !day.entries().isEmpty() && !day.reviewed()).toList();
    }

    /** Days that somebody has looked at. */
    public List<Day> reviewed() {
        return days.stream().filter(Day::reviewed).toList();
    }

    /** The plans that judged, by product and version, with the SHA-256 of their text. */
    public Map<String, String> plans() {
        Map<String, String> plans = new TreeMap<>();
        batches().forEach(batch -> batch.plan().ifPresent(plan -> plans.put(Words.say("j_version", plan.plan().title(), plan.ref().version()), plan.ref().sha256())));
        return plans;
    }

    /** The ids of all who recorded something, for the key of initials. */
    public List<String> persons() {
        return entries().map(Entry::person).distinct().sorted().toList();
    }
}
