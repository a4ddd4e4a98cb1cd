package trivet.check;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import trivet.batch.Told;
import trivet.cooling.CoolingJudge;
import trivet.cooling.CoolingReading;
import trivet.cooling.CoolingVerdict;
import trivet.cooling.StageVerdict;
import trivet.ledger.BestTime;
import trivet.limit.StagedCooling;
import trivet.limit.Verdict;
import trivet.measure.Temperature;
import trivet.site.Confirmed;
import trivet.words.Words;

/** The cooling of a batch: runs told apart by a recorded reheat, and within a run a curve for each piece told apart. */
public final class CoolingControl {

    /** How far off a clock may be that was never compared with another. */
    private static final Duration UNKNOWN = Duration.ofDays(1);
    private final List<Run> runs = new ArrayList<>();

    private static final class Run {
        private final List<Reading> readings = new ArrayList<>();
        private Optional<Instant> oven = Optional.empty();
        private Optional<Told> outOfOven = Optional.empty();
        private Optional<Instant> ended = Optional.empty();
    }

    /** Which rulebooks were in force at some time between two moments. */
    public interface InForce {
        List<Confirmed> between(Instant from, Instant to);
    }

    /** A control in which nothing has been recorded. */
    public CoolingControl() {
        runs.add(new Run());
    }

    private Run run() {
        return runs.get(runs.size() - 1);
    }

    /** The batch is out of the oven; a later recorded time counts instead while nothing has been measured. */
    public void outOfOven(Instant at) {
        if (run().readings.isEmpty() || run().oven.isEmpty()) {
            run().oven = Optional.of(at);
        }
    }

    /** As {@link #outOfOven(Instant)}, by a record whose clock is as sure as it says. */
    public void outOfOven(Told told) {
        outOfOven(told.at());
        run().outOfOven = run().oven.filter(told.at()::equals).map(at -> told).or(() -> run().outOfOven);
    }

    /** The batch is in the oven again before it was measured cooling. */
    public void backInOven() {
        if (run().readings.isEmpty()) {
            run().oven = Optional.empty();
        }
    }

    /** A reheat was begun: the run stays as it is and a new one begins. */
    public void reheat(Instant at) {
        run().ended = Optional.of(at);
        runs.add(new Run());
    }

    /** A reading while the batch cools. */
    public void reading(Told told, Temperature temperature) {
        run().readings.add(new Reading(told, temperature, told.data().integer("piece"), Optional.empty(), Verdict.UNJUDGED,
                Reading.impossible(temperature) ? Words.say("j_no_food_has_this_temperature_it_2", temperature) : ""));
    }

    /** Whether anything is known of the cooling. */
    public boolean begun() {
        return runs.size() > 1 || run().oven.isPresent() || !run().readings.isEmpty();
    }

    /** The time out of the oven after the bake, whatever was reheated later. */
    public Optional<Instant> firstOven() {
        return runs.get(0).oven;
    }

    /** The time out of the oven of the present run. */
    public Optional<Instant> oven() {
        return run().oven;
    }

    /**
     * Every curve of every run, judged as of a moment, or of its end where a reheat ended it, by each rulebook in force
     * meanwhile, of which the worse counts.
     *
     * @param doubt why a reading's probe is not to be trusted: the run is judged with and without them, and the worse counts
     */
    public List<CoolingRun> judged(InForce inForce, Instant asOf, Function<Reading, Optional<String>> doubt) {
        List<CoolingRun> all = new ArrayList<>();
        for (int i = 0; i < runs.size(); i++) {
            Run run = runs.get(i);
            Map<Integer, List<Reading>> curves = new LinkedHashMap<>();
            if (run.readings.isEmpty()) {
                curves.put(0, List.of());
            }
            run.readings.forEach(reading -> curves.computeIfAbsent(reading.piece().orElse(0), key -> new ArrayList<>()).add(reading));
            for (List<Reading> curve : curves.values()) {
                if (run.oven.isPresent() || !curve.isEmpty()) {
                    curve(i + 1, run, curve, inForce, run.ended.orElse(asOf), doubt).ifPresent(all::add);
                }
            }
        }
        return all;
    }

    private Optional<CoolingRun> curve(int number, Run run, List<Reading> curve, InForce inForce, Instant asOf,
            Function<Reading, Optional<String>> given) {
        Function<Reading, Optional<String>> doubt = reading -> given.apply(reading).or(() -> run.oven.filter(reading.at()::isBefore).map(out -> Words.say("j_before_it_was_out_of_the_oven")));
        Instant first = run.oven.orElseGet(() -> curve.get(0).at());
        Instant last = curve.isEmpty() ? first : curve.get(curve.size() - 1).at();
        CoolingRun worst = null;
        for (Confirmed confirmed : inForce.between(first, last)) {
            Optional<StagedCooling> rule = confirmed.rulebook().cooling();
            if (rule.isEmpty()) {
                continue;
            }
            Duration apart = curve.stream().map(reading -> apart(run.outOfOven.orElse(curve.get(0).told()), reading.told())).max(Duration::compareTo).orElse(Duration.ZERO);
            for (boolean trusting : curve.stream().anyMatch(reading -> doubt.apply(reading).isPresent()) ? new boolean[] {true, false} : new boolean[] {true}) {
                List<CoolingReading> points = curve.stream().filter(reading -> !Reading.impossible(reading.temperature()) && (trusting || doubt.apply(reading).isEmpty()))
                        .map(reading -> new CoolingReading(Minutes.between(first, reading.at()), reading.temperature())).toList();
                Optional<BigDecimal> oven = run.oven.map(at -> BigDecimal.ZERO);
                CoolingVerdict verdict = CoolingJudge.judge(rule.get(), oven, points, Minutes.between(first, asOf));
                if (worst == null || verdict.whole().compareTo(worst.verdict().whole()) > 0) {
                    Optional<Duration> decides = Optional.of(apart).filter(by -> turns(rule.get(), oven, points, verdict, by, Minutes.between(first, asOf)));
                    worst = new CoolingRun(number, first, judged(curve, verdict, first, doubt).stream().map(reading -> decides.map(by -> reading.adding(words(by))).orElse(reading)).toList(), verdict, rule.get(), confirmed.ref(), decides, run.ended.isPresent());
                }
            }
        }
        return Optional.ofNullable(worst);
    }

    /** How far the clocks of two records may be apart: nothing within one session of one tablet, or where a person stated the time. */
    private static Duration apart(Told origin, Told reading) {
        BestTime from = origin.entry().time();
        BestTime to = reading.entry().time();
        boolean same = origin.entry().device().equals(reading.entry().device()) && from.session().isPresent() && from.session().equals(to.session());
        return same || origin.entry().id().equals(reading.entry().id()) ? Duration.ZERO : unsure(origin, from).plus(unsure(reading, to));
    }

    private static Duration unsure(Told told, BestTime time) {
        return time.stated() || !told.at().equals(time.claimed()) ? Duration.ZERO : time.uncertainty().orElse(UNKNOWN);
    }

    /** Whether readings taken that much later or earlier would be judged otherwise. */
    private static boolean turns(StagedCooling rule, Optional<BigDecimal> oven, List<CoolingReading> points, CoolingVerdict said, Duration by, BigDecimal asOf) {
        if (by.compareTo(Duration.ofSeconds(1)) < 0 || said.waiting()) {
            return false;
        }
        BigDecimal minutes = Minutes.between(Instant.EPOCH, Instant.EPOCH.plus(by));
        return java.util.stream.Stream.of(minutes, minutes.negate()).anyMatch(shift -> {
            List<CoolingReading> moved = points.stream().map(point -> points.indexOf(point) == 0 && oven.isEmpty() ? point : new CoolingReading(point.minute().add(shift).max(BigDecimal.ZERO), point.temperature())).toList();
            return CoolingJudge.judge(rule, oven, moved, asOf.add(minutes)).whole() != said.whole();
        });
    }

    private static String words(Duration by) {
        return by.compareTo(UNKNOWN) >= 0 ? Words.say("j_clock_never_compared_decides") : Words.say("j_clock_doubt_decides", by.plusSeconds(59).toMinutes());
    }

    private static List<Reading> judged(List<Reading> curve, CoolingVerdict verdict, Instant origin,
            Function<Reading, Optional<String>> doubt) {
        return curve.stream().map(reading -> {
            if (Reading.impossible(reading.temperature())) {
                return reading;
            }
            Optional<StageVerdict> failed = verdict.stages().stream().filter(stage -> late(stage, Minutes.between(origin, reading.at()), reading)).findFirst();
            return failed.map(stage -> reading.judged(Verdict.BREACHED, stage.words()))
                    .or(() -> doubt.apply(reading).map(why -> reading.judged(Verdict.UNJUDGED, why)))
                    .orElseGet(() -> reading.judged(verdict.whole() == Verdict.WITHIN ? Verdict.WITHIN : Verdict.UNJUDGED, nextWords(verdict)));
        }).toList();
    }

    private static String nextWords(CoolingVerdict verdict) {
        return verdict.stages().stream().filter(stage -> stage.verdict() == Verdict.UNJUDGED).findFirst().map(StageVerdict::words)
                .orElse(Words.say("j_cooled_in_time_by_every_stage"));
    }

    private static boolean late(StageVerdict stage, BigDecimal minute, Reading reading) {
        return stage.verdict() == Verdict.BREACHED && !stage.stage().to().meets(reading.temperature())
                && stage.latestClock().map(clock -> minute.compareTo(clock.add(stage.stage().minutes())) >= 0).orElse(true);
    }
}
