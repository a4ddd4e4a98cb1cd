package trivet.cooling;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import trivet.limit.Bound;
import trivet.limit.StagedCooling;
import trivet.limit.StagedCooling.CountedFrom;
import trivet.limit.StagedCooling.Stage;
import trivet.limit.Verdict;

/**
 * Judges one run of cooling by a staged rule, by what was measured and never by what lies between.
 *
 * <p>The hot part is the first readings, all at or above the start temperature of the first stage that has one; the clock
 * starts at the last of them, or without any at the time out of the oven. Warming later never restarts a clock.
 */
public final class CoolingJudge {

    private final List<CoolingReading> readings;
    private final Optional<BigDecimal> oven;
    private final BigDecimal asOf;
    private final Optional<BigDecimal> start;

    private CoolingJudge(StagedCooling rule, Optional<BigDecimal> oven, List<CoolingReading> given, BigDecimal asOf) {
        this.readings = given.stream().sorted(Comparator.comparing(CoolingReading::minute)
                .thenComparing(CoolingReading::temperature)).toList();
        this.oven = oven;
        this.asOf = readings.isEmpty() ? asOf : asOf.max(readings.get(readings.size() - 1).minute());
        Optional<Bound> hot = rule.stages().stream().flatMap(stage -> stage.from().stream()).findFirst();
        this.start = hot.flatMap(this::lastOfHotPart).or(() -> oven);
    }

    /**
     * The verdict on a run.
     *
     * @param outOfOven the recorded minute out of the oven
     * @param given the readings of the run, in any order
     * @param asOf the present minute; a later last reading moves it on
     */
    public static CoolingVerdict judge(StagedCooling rule, Optional<BigDecimal> outOfOven, List<CoolingReading> given,
            BigDecimal asOf) {
        CoolingJudge judge = new CoolingJudge(rule, outOfOven, given, asOf);
        return CoolingVerdict.of(rule.stages().stream().map(judge::stage).toList());
    }

    private Optional<BigDecimal> lastOfHotPart(Bound hot) {
        Optional<BigDecimal> last = Optional.empty();
        for (CoolingReading reading : readings) {
            if (!hot.meets(reading.temperature())) {
                break;
            }
            last = Optional.of(reading.minute());
        }
        return last;
    }

    private StageVerdict stage(Stage stage) {
        Clocks clocks = switch (stage.countedFrom()) {
            case START -> new Clocks(start, start, false);
            case OVEN -> new Clocks(oven, oven, false);
            case PASSING -> passing(stage.from().orElseThrow());
        };
        Optional<BigDecimal> deadline = clocks.earliest().map(clock -> clock.add(stage.minutes()));
        Optional<BigDecimal> lastDeadline = clocks.latest().map(clock -> clock.add(stage.minutes()));
        Verdict verdict = verdict(stage, clocks, deadline, lastDeadline);
        Optional<Reason> reason = verdict == Verdict.UNJUDGED
                ? Optional.of(reason(stage, clocks, deadline, lastDeadline)) : Optional.empty();
        Optional<BigDecimal> left = reason.filter(r -> r == Reason.OPEN).map(r -> deadline.orElseThrow().subtract(asOf));
        Optional<BigDecimal> late = reason.filter(r -> r == Reason.TAKEN_LATE)
                .map(r -> firstMetAfter(stage, deadline.orElseThrow()).orElseThrow().subtract(deadline.get()));
        StageVerdict bare = new StageVerdict(stage, verdict, reason, clocks.earliest(), clocks.latest(), deadline,
                reached(stage), left, late, "");
        return new StageVerdict(stage, verdict, reason, clocks.earliest(), clocks.latest(), deadline, bare.reached(), left,
                late, CoolingWords.of(bare));
    }

    /** When a stage may have begun to count. */
    private record Clocks(Optional<BigDecimal> earliest, Optional<BigDecimal> latest, boolean notBegun) {
    }

    private Clocks passing(Bound from) {
        Optional<BigDecimal> above = Optional.empty();
        for (CoolingReading reading : readings) {
            int side = reading.temperature().compareTo(from.inUnitOf(reading.temperature()));
            if (side <= 0) {
                Optional<BigDecimal> latest = Optional.of(reading.minute());
                return new Clocks(side == 0 ? latest : above.or(() -> oven), latest, false);
            }
            above = Optional.of(reading.minute());
        }
        return new Clocks(Optional.empty(), Optional.empty(), true);
    }

    private Verdict verdict(Stage stage, Clocks clocks, Optional<BigDecimal> deadline, Optional<BigDecimal> lastDeadline) {
        if (!stage.basis().adopted()) {
            return Verdict.UNJUDGED;
        }
        Optional<BigDecimal> surelyLate = lastDeadline.isPresent() || clocks.notBegun() || readings.isEmpty()
                ? lastDeadline : Optional.of(readings.get(0).minute().add(stage.minutes()));
        if (surelyLate.isPresent() && readings.stream().anyMatch(reading -> reading.minute().compareTo(surelyLate.get()) >= 0
                && !stage.to().meets(reading.temperature()))) {
            return Verdict.BREACHED;
        }
        return deadline.isPresent() && metInTime(stage, deadline.get()) ? Verdict.WITHIN : Verdict.UNJUDGED;
    }

    private boolean metInTime(Stage stage, BigDecimal deadline) {
        boolean met = false;
        for (CoolingReading reading : readings) {
            boolean meets = stage.to().meets(reading.temperature());
            if (reading.minute().compareTo(deadline) <= 0) {
                met = meets;
            } else if (!meets) {
                return false;
            }
        }
        return met;
    }

    private Reason reason(Stage stage, Clocks clocks, Optional<BigDecimal> deadline, Optional<BigDecimal> lastDeadline) {
        if (!stage.basis().adopted()) {
            return Reason.NO_LIMIT;
        }
        if (clocks.notBegun()) {
            return Reason.NOT_BEGUN;
        }
        if (deadline.isEmpty()) {
            return Reason.START_UNKNOWN;
        }
        if (asOf.compareTo(deadline.get()) < 0) {
            return Reason.OPEN;
        }
        boolean passed = stage.countedFrom() == CountedFrom.PASSING && deadline.get().compareTo(lastDeadline.orElseThrow()) < 0;
        if (passed && asOf.compareTo(lastDeadline.get()) <= 0) {
            return Reason.PASSING_NOT_SEEN;
        }
        return firstMetAfter(stage, deadline.get()).isPresent() ? Reason.TAKEN_LATE : Reason.NOT_MEASURED;
    }

    private Optional<BigDecimal> firstMetAfter(Stage stage, BigDecimal deadline) {
        return readings.stream().filter(reading -> reading.minute().compareTo(deadline) > 0
                && stage.to().meets(reading.temperature())).map(CoolingReading::minute).findFirst();
    }

    private Optional<BigDecimal> reached(Stage stage) {
        List<CoolingReading> met = new ArrayList<>();
        for (CoolingReading reading : readings) {
            if (stage.to().meets(reading.temperature())) {
                met.add(reading);
            } else {
                met.clear();
            }
        }
        return met.stream().map(CoolingReading::minute).findFirst();
    }
}
