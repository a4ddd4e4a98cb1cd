package trivet.outlook;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import trivet.batch.Told;
import trivet.check.CoolingRun;
import trivet.check.Minutes;
import trivet.check.Reading;
import trivet.cooling.StageVerdict;
import trivet.deviation.BatchRecord;
import trivet.deviation.Daybook;
import trivet.device.Devices;
import trivet.device.Unit;
import trivet.forecast.CoolingForecast;
import trivet.forecast.PlacesForecast;
import trivet.limit.Verdict;
import trivet.words.Words;

/**
 * Forecasts the cooling of batches by one fit over the places they stood in, with a prior for each learnt from the product's own
 * accepted batches in the same kind of place, or a recipe's default with fewer than three. The air is not known and is
 * estimated too, around what is usual in such a place (common practice, no source).
 */
@ApplicationScoped
public class Outlooks {

    private static final double SIGMA = 0.5;
    private static final double LEVEL = 0.95;
    private static final CoolingForecast.Prior DEFAULT = new CoolingForecast.Prior(Math.log(75), 0.5);
    private static final int FEWEST = 3;
    private static final double LEAST_SD = 0.15;
    private static final Duration LEARN_FROM = Duration.ofDays(60);
    private static final Duration LEARN_AGAIN = Duration.ofHours(6);

    @Inject
    Daybook daybook;
    @Inject
    Devices devices;
    @Inject
    Clock clock;

    private final Map<String, Learnt> learnt = new ConcurrentHashMap<>();

    private record Learnt(Instant at, CoolingForecast.Prior prior) {
    }

    /** The usual air of a place, °C. */
    private record Air(double celsius, double sd) {
    }

    private static Air air(Optional<Unit.Kind> place) {
        return switch (place.orElse(Unit.Kind.COOLING_RACK)) {
            case BLAST_CHILLER -> new Air(-1, 2);
            case FRIDGE -> new Air(4, 1.5);
            case FREEZER -> new Air(-18, 3);
            default -> new Air(20, 3);
        };
    }

    private record Move(Instant at, Optional<Unit.Kind> place) {
    }

    /** Where the run's food stood, in order: first wherever it came to from the oven, then each place it was moved to. */
    private List<Move> moves(BatchRecord batch, CoolingRun run) {
        List<Move> moves = new ArrayList<>(List.of(new Move(run.origin(), Optional.empty())));
        for (Told told : batch.told()) {
            if (told.kind().equals("moved") && !told.at().isBefore(run.origin())) {
                moves.removeIf(move -> !move.at().isBefore(told.at()));
                moves.add(new Move(told.at(), place(told)));
            }
        }
        return moves;
    }

    private Optional<Unit.Kind> place(Told told) {
        return told.data().text("place").flatMap(devices::unit).map(Unit::kind);
    }

    /** The outlook for each stage that waits, of the curve with the latest arrival; empty without a reading. */
    public List<Outlook> of(BatchRecord batch) {
        List<Outlook> worst = new ArrayList<>();
        for (CoolingRun run : batch.runs()) {
            if (!run.ended() && run.verdict().waiting()) {
                List<Outlook> own = of(batch, run);
                if (worst.isEmpty() || (!own.isEmpty() && own.get(0).eta().isAfter(worst.get(0).eta()))) {
                    worst = own;
                }
            }
        }
        return worst;
    }

    private List<Outlook> of(BatchRecord batch, CoolingRun run) {
        List<Reading> readings = run.readings().stream().filter(r -> !r.at().isBefore(run.origin()) && !Reading.impossible(r.temperature())).toList();
        List<StageVerdict> open = run.verdict().stages().stream().filter(stage -> stage.waiting() && stage.deadline().isPresent()).toList();
        if (readings.isEmpty() || open.isEmpty()) {
            return List.of();
        }
        Instant zero = run.origin();
        double[] minutes = readings.stream().mapToDouble(r -> Minutes.between(zero, r.at()).doubleValue()).toArray();
        double[] celsius = readings.stream().mapToDouble(r -> r.temperature().inCelsius().doubleValue()).toArray();
        List<CoolingForecast.Target> targets = open.stream().map(stage -> new CoolingForecast.Target(stage.stage().to().celsius().inCelsius().doubleValue(),
                Math.max(0.01, stage.deadline().get().doubleValue()))).toList();
        List<PlacesForecast.Place> places = moves(batch, run).stream().map(move -> {
            Air air = air(move.place());
            return new PlacesForecast.Place(Minutes.between(zero, move.at()).doubleValue(), air.celsius(), air.sd(), prior(batch, move.place()));
        }).toList();
        CoolingForecast.Forecast forecast = PlacesForecast.of(places, SIGMA, LEVEL, targets, minutes, celsius);
        List<Outlook.Flagged> flagged = forecast.flags().stream().map(flag -> new Outlook.Flagged(readings.get(flag.reading() - 1).at(), flag.why())).toList();
        List<Outlook> all = new ArrayList<>();
        for (CoolingForecast.Arrival arrival : forecast.arrivals()) {
            if (Double.isFinite(arrival.etaMinutes())) {
                all.add(new Outlook(arrival.celsius(), after(zero, arrival.etaMinutes()), after(zero, arrival.low()), after(zero, arrival.high()), arrival.probabilityLate(), words(arrival), flagged));
            }
        }
        return all;
    }

    private static Instant after(Instant zero, double minutes) {
        return Minutes.after(zero, BigDecimal.valueOf(Math.min(minutes, 100_000)));
    }

    private static String words(CoolingForecast.Arrival arrival) {
        double late = arrival.probabilityLate();
        return late >= Outlook.MISS ? Words.say("j_outlook_will_miss") : late >= Outlook.ACT ? Words.say("j_outlook_act_now")
                : late <= Outlook.ON_COURSE ? Words.say("j_outlook_on_course") : Words.say("j_outlook_open");
    }

    private CoolingForecast.Prior prior(BatchRecord batch, Optional<Unit.Kind> place) {
        String key = batch.title() + "/" + place.map(Enum::name).orElse("");
        Learnt known = learnt.get(key);
        if (known == null || known.at().plus(LEARN_AGAIN).isBefore(clock.instant())) {
            known = new Learnt(clock.instant(), learn(batch.title(), place));
            learnt.put(key, known);
        }
        return known.prior();
    }

    private CoolingForecast.Prior learn(String title, Optional<Unit.Kind> place) {
        Instant now = clock.instant();
        List<Double> taus = new ArrayList<>();
        double air = air(place).celsius();
        for (BatchRecord past : daybook.begun(now.minus(LEARN_FROM), now)) {
            if (!past.title().equals(title) || past.cooling() != Verdict.WITHIN || past.held()) {
                continue;
            }
            for (CoolingRun run : past.runs()) {
                List<Move> moves = moves(past, run);
                for (int k = 0; k < moves.size(); k++) {
                    if (moves.get(k).place().equals(place)) {
                        lnTau(run, moves.get(k).at(), k + 1 < moves.size() ? moves.get(k + 1).at() : Instant.MAX, air).ifPresent(taus::add);
                    }
                }
            }
        }
        if (taus.size() < FEWEST) {
            return DEFAULT;
        }
        double mean = taus.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
        double variance = taus.stream().mapToDouble(t -> (t - mean) * (t - mean)).sum() / (taus.size() - 1);
        return new CoolingForecast.Prior(mean, Math.max(LEAST_SD, Math.sqrt(variance * (1 + 1.0 / taus.size()))));
    }

    private static Optional<Double> lnTau(CoolingRun run, Instant from, Instant to, double air) {
        List<Reading> readings = run.readings().stream().filter(r -> !r.at().isBefore(from) && !r.at().isAfter(to) && r.temperature().inCelsius().doubleValue() > air + 1).toList();
        if (readings.size() < 2) {
            return Optional.empty();
        }
        Reading first = readings.get(0);
        Reading last = readings.get(readings.size() - 1);
        double fall = Math.log((first.temperature().inCelsius().doubleValue() - air) / (last.temperature().inCelsius().doubleValue() - air));
        double minutes = Minutes.between(first.at(), last.at()).doubleValue();
        return fall > 0.05 && minutes > 1 ? Optional.of(Math.log(minutes / fall)) : Optional.empty();
    }
}
