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
import trivet.check.CookControl;
import trivet.check.CoolingControl;
import trivet.check.CoolingRun;
import trivet.check.Minutes;
import trivet.check.Reading;
import trivet.deviation.BatchFold.Surroundings;
import trivet.ledger.Entry;
import trivet.ledger.Ids;
import trivet.plan.ApprovedPlan;

/** When the checks of a batch fall due, and what became of each. */
record BatchChecks(String id, String code, Surroundings around, Optional<ApprovedPlan> plan, Entry start, List<Told> told, CookControl cook,
        CoolingControl cooling, List<CoolingRun> runs, Optional<Told> putAway, Life life, Instant dayEnd, boolean hot) {

    private static final Duration BEFORE_DEADLINE = Duration.ofMinutes(10);

    List<Check> all() {
        List<Check> checks = new ArrayList<>();
        if (life == Life.STRUCK_OUT) {
            return checks;
        }
        Instant coreDue = cooling.oven().orElse(start.claimedAt().plus(Duration.ofMinutes(plan.map(p -> p.plan().usualBakeMinutes()).orElse(45))));
        Optional<Reading> core = cook.readings().stream().findFirst();
        checks.add(check("core", coreDue, core.map(Reading::at), core.map(Reading::id), dayEnd));
        if (!hot) {
            cooling(checks);
            Instant deadline = lastDeadline().orElse(dayEnd);
            checks.add(check("put-away", deadline.isBefore(dayEnd) ? deadline : dayEnd, putAway.map(Told::at), putAway.map(t -> t.entry().id()), dayEnd));
        }
        return checks;
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
        return settled.or(() -> putAway.filter(t -> !run.verdict().waiting()).map(Told::at)).or(this::lastDeadline).orElse(dayEnd);
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
        String check = Ids.derived(id + "/" + key);
        Optional<Entry> notNeeded = told.stream().map(Told::entry).filter(e -> e.kind().equals("not-needed") && e.check().map(check::equals).orElse(false)).findFirst();
        Optional<String> handed = told.stream().map(Told::entry).filter(e -> e.kind().equals("handed-over") && e.check().map(check::equals).orElse(false))
                .reduce((a, b) -> b).flatMap(e -> e.data().text("to"));
        boolean dropped = taken.isEmpty() && life.over() && around.now().isAfter(due) && life != Life.GONE;
        Check.State state = notNeeded.isPresent() || dropped ? Check.State.NOT_NEEDED : Check.state(due, taken, missedAt, around.now());
        String why = notNeeded.map(e -> e.data().text("reason").orElse("") + " (" + e.person() + ")").orElse(dropped ? life.word() : "");
        return new Check(check, key, id, code, due, state, by, handed, why);
    }
}
