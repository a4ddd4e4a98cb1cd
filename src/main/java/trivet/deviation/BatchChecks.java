package trivet.deviation;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import trivet.batch.Life;
import trivet.batch.Told;
import trivet.check.Check;
import trivet.check.CoolingRun;
import trivet.check.Minutes;
import trivet.check.Reading;
import trivet.ledger.Entry;
import trivet.ledger.Ids;
import trivet.plan.ApprovedPlan;
import trivet.plan.Plan;

/** When the checks of a batch fall due, and what became of each. */
final class BatchChecks {

    private static final Duration BEFORE_DEADLINE = Duration.ofMinutes(10);
    /** How often what is kept hot is probed; common practice, no source. */
    private static final Duration HOT_EVERY = Duration.ofHours(2);
    private final BatchFold fold;
    private final List<CoolingRun> runs;
    private final Optional<ApprovedPlan> plan;
    private final Instant dayEnd;

    BatchChecks(BatchFold fold, List<CoolingRun> runs) {
        this.fold = fold;
        this.runs = runs;
        this.plan = fold.plan;
        this.dayEnd = fold.dayEnd();
    }

    List<Check> all() {
        List<Check> checks = new ArrayList<>();
        if (fold.life == Life.STRUCK_OUT) {
            return checks;
        }
        Instant coreDue = fold.cooling.firstOven().orElse(fold.start.claimedAt().plus(Duration.ofMinutes(plan.map(p -> p.plan().usualBakeMinutes()).orElse(45))));
        Optional<Reading> core = fold.cook.readings().stream().findFirst();
        checks.add(check("core", coreDue, core.map(Reading::at), core.map(Reading::id), dayEnd));
        own(checks);
        if (fold.hot) {
            hot(checks);
        } else {
            cooling(checks);
            Instant deadline = lastDeadline().orElse(dayEnd);
            checks.add(check("put-away", deadline.isBefore(dayEnd) ? deadline : dayEnd, fold.putAway.map(Told::at), fold.putAway.map(t -> t.entry().id()), dayEnd));
        }
        return checks;
    }

    /** What the plan has looked at by its own criteria: before the batch, or when it is put away. */
    private void own(List<Check> checks) {
        for (Plan.OwnCheck own : plan.map(p -> p.plan().ownChecks()).orElse(List.of())) {
            Optional<Told> taken = fold.ownChecks(own.id()).stream().findFirst();
            Instant away = fold.putAway.map(Told::at).or(this::lastDeadline).filter(at -> at.isBefore(dayEnd)).orElse(dayEnd);
            Check check = check(Check.OWN + own.id() + "-1", own.before() ? fold.start.claimedAt() : away, taken.map(Told::at), taken.map(told -> told.entry().id()), dayEnd);
            checks.add(new Check(check.id(), check.key(), check.subject(), check.label() + " · " + own.title(), check.due(), check.missedAt(), check.state(), check.takenBy(), check.handedTo(), check.why()));
        }
    }

    private void hot(List<Check> checks) {
        Instant from = fold.split.map(Told::at).orElse(fold.start.claimedAt());
        Instant until = fold.over.map(Told::at).orElse(dayEnd);
        int number = 1;
        for (Instant due = from.plus(HOT_EVERY); due.isBefore(until) && due.isBefore(dayEnd); due = due.plus(HOT_EVERY)) {
            Instant after = due.minus(HOT_EVERY.dividedBy(2));
            Instant next = due.plus(HOT_EVERY.dividedBy(2));
            Optional<Reading> taken = fold.hotReadings.stream().filter(reading -> !reading.at().isBefore(after) && reading.at().isBefore(next)).findFirst();
            checks.add(check("hot-" + number++, due, taken.map(Reading::at), taken.map(Reading::id), next.isBefore(dayEnd) ? next : dayEnd));
        }
    }

    private Optional<Instant> lastDeadline() {
        return runs.isEmpty() ? Optional.empty() : runs.get(runs.size() - 1).verdict().stages().stream()
                .flatMap(stage -> stage.deadline().stream()).map(minute -> Minutes.after(runs.get(runs.size() - 1).origin(), minute)).max(Instant::compareTo);
    }

    private Instant settledAt() {
        if (runs.isEmpty()) {
            return dayEnd;
        }
        CoolingRun run = runs.get(runs.size() - 1);
        boolean allReached = run.verdict().stages().stream().allMatch(stage -> stage.reached().isPresent());
        Optional<BigDecimal> reached = run.verdict().stages().stream().flatMap(stage -> stage.reached().stream()).max(BigDecimal::compareTo);
        Optional<Instant> settled = allReached ? reached.map(minute -> Minutes.after(run.origin(), minute)) : Optional.empty();
        return settled.or(() -> fold.putAway.filter(t -> !run.verdict().waiting()).map(Told::at)).or(this::lastDeadline).orElse(dayEnd);
    }

    private void cooling(List<Check> checks) {
        if (runs.isEmpty()) {
            return;
        }
        CoolingRun run = runs.get(runs.size() - 1);
        Instant clock = run.verdict().stages().stream().flatMap(stage -> stage.clock().stream()).min(BigDecimal::compareTo)
                .map(minute -> Minutes.after(run.origin(), minute)).orElse(run.origin());
        Optional<Instant> last = lastDeadline();
        int every = plan.map(p -> p.plan().coolEveryMinutes()).orElse(45);
        TreeSet<Instant> due = new TreeSet<>();
        run.verdict().stages().forEach(stage -> stage.deadline().ifPresent(minute -> due.add(Minutes.after(run.origin(), minute).minus(BEFORE_DEADLINE))));
        for (Instant at = clock.plus(Duration.ofMinutes(every)); last.isPresent() && at.isBefore(last.get()); at = at.plus(Duration.ofMinutes(every))) {
            Instant point = at;
            if (due.stream().noneMatch(d -> Duration.between(d, point).abs().compareTo(Check.GRACE) < 0)) {
                due.add(point);
            }
        }
        Instant settled = settledAt();
        List<Instant> points = due.stream().filter(at -> at.minus(Check.GRACE).isBefore(settled)).toList();
        List<Reading> left = new ArrayList<>(run.readings().stream().filter(reading -> reading.at().isAfter(clock)).toList());
        for (int i = 0; i < points.size(); i++) {
            Instant at = points.get(i);
            Instant next = i + 1 < points.size() ? points.get(i + 1) : last.filter(at::isBefore).map(d -> d.plus(Check.GRACE)).orElse(dayEnd);
            Instant upTo = i + 1 < points.size() ? middle(at, next) : dayEnd;
            Optional<Reading> taken = left.stream().filter(reading -> reading.at().isBefore(upTo)).findFirst();
            left.removeIf(reading -> reading.at().isBefore(upTo));
            if (taken.isEmpty() && !at.isBefore(settled)) {
                continue;
            }
            checks.add(check("cool-" + (i + 1), at, taken.map(Reading::at), taken.map(Reading::id), next.isBefore(dayEnd) ? next : dayEnd));
        }
    }

    private static Instant middle(Instant from, Instant to) {
        return from.plus(Duration.between(from, to).dividedBy(2));
    }

    private Check check(String key, Instant due, Optional<Instant> taken, Optional<String> by, Instant missedAt) {
        String check = Ids.derived(fold.id + "/" + key);
        Optional<Entry> notNeeded = fold.told.stream().map(Told::entry).filter(e -> e.kind().equals("not-needed") && e.check().map(check::equals).orElse(false)).findFirst();
        Optional<String> handed = fold.told.stream().map(Told::entry).filter(e -> e.kind().equals("handed-over") && e.check().map(check::equals).orElse(false))
                .reduce((a, b) -> b).flatMap(e -> e.data().text("to"));
        boolean dropped = taken.isEmpty() && fold.life.over() && fold.around.now().isAfter(due) && fold.life != Life.GONE;
        Check.State state = notNeeded.isPresent() || dropped ? Check.State.NOT_NEEDED : Check.state(due, taken, missedAt, fold.around.now());
        String why = notNeeded.map(e -> e.data().text("reason").orElse("") + " (" + e.person() + ")").orElse(dropped ? fold.life.word() : "");
        return new Check(check, key, fold.id, fold.code, due, missedAt, state, by, handed, why);
    }
}
