package trivet.deviation;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import trivet.batch.Told;
import trivet.instrument.BoilingPoint;
import trivet.instrument.ProbeResult;
import trivet.ledger.Fields;
import trivet.limit.RangeLimit;
import trivet.limit.Verdict;
import trivet.measure.Temperature;
import trivet.site.Site;
import trivet.words.Words;

/**
 * Which probe may be trusted when. One that failed its last check, or whose check is overdue, is blocked for control points
 * until it passes: what it measures within a limit counts as unjudged.
 */
final class ProbeBook implements ProbeTrust {

    /** How long a passed check holds; common practice, no source. */
    static final Duration HOLDS = Duration.ofDays(7);
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM HH:mm", Locale.ROOT);
    private static final double BOILS = 100;
    private final List<Told> checks;
    private final Surroundings.Rules rules;
    private final Site site;
    private final Function<String, Optional<Instant>> knownSince;

    ProbeBook(List<Told> checks, Surroundings.Rules rules, Site site, Function<String, Optional<Instant>> knownSince) {
        this.checks = checks.stream().filter(told -> told.kind().equals("probe-check")).toList();
        this.rules = rules;
        this.site = site;
        this.knownSince = knownSince;
    }

    @Override
    public Optional<String> blocked(String probe, Instant at) {
        Optional<Told> last = lastOf(probe, at);
        if (last.isPresent() && !passed(last.get().data(), last.get().at())) {
            String value = last.get().data().temperature("temperature").map(t -> ", " + t).orElse("");
            return Optional.of(Words.say("j_probe_failed_its_check_of_what", probe, moment(last.get().at()), value));
        }
        return due(probe, last).filter(due -> !at.isBefore(site.end(site.dayOf(due)))).map(due -> Words.say("j_probe_was_to_be_checked_on", probe, site.dayOf(due)));
    }

    @Override
    public Optional<Instant> trustedUntil(String probe, Instant at) {
        return blocked(probe, at).isPresent() ? Optional.empty() : due(probe, lastOf(probe, at)).map(due -> site.end(site.dayOf(due)));
    }

    private Optional<Instant> due(String probe, Optional<Told> last) {
        return last.map(Told::at).map(passed -> passed.plus(HOLDS)).or(() -> knownSince.apply(probe));
    }

    /** The last check of a probe up to a moment. */
    Optional<Told> lastOf(String probe, Instant at) {
        return checks.stream().filter(told -> !told.at().isAfter(at) && told.data().text("probe").map(probe::equals).orElse(false)).reduce((a, b) -> b);
    }

    /** Whether a check passed by the rulebook in force then; without a number in force it did not. */
    boolean passed(Fields data, Instant at) {
        Optional<Temperature> read = data.temperature("temperature").map(temperature -> atSeaLevel(temperature, data));
        Optional<RangeLimit> limit = limit(data, at).filter(RangeLimit::inForce);
        return read.isPresent() && limit.isPresent() && limit.get().judge(read.get()) == Verdict.WITHIN;
    }

    /** The error and the probability of conformance of a check, about 0 °C in ice and 100 °C in boiling water; empty without limits. */
    Optional<ProbeResult> result(Fields data, Instant at) {
        boolean boiling = data.text("method").map("boiling"::equals).orElse(false);
        double right = boiling ? BOILS : 0;
        Optional<RangeLimit> limit = limit(data, at);
        Optional<Temperature> read = data.temperature("temperature").map(temperature -> atSeaLevel(temperature, data));
        if (limit.isEmpty() || read.isEmpty() || limit.get().minimum().isEmpty() || limit.get().maximum().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(ProbeResult.of(read.get().inCelsius().doubleValue() - right, limit.get().minimum().get().celsius().inCelsius().doubleValue() - right,
                limit.get().maximum().get().celsius().inCelsius().doubleValue() - right));
    }

    private Optional<RangeLimit> limit(Fields data, Instant at) {
        return rules.at(at).flatMap(c -> c.rulebook().range("probe-" + data.text("method").orElse("")));
    }

    /**
     * A reading in boiling water as it would be at 100 °C: raised by what the pressure at the place, or else the height above the
     * sea, lowers the boiling point.
     */
    private static Temperature atSeaLevel(Temperature read, Fields data) {
        Optional<Double> pressure = data.decimal("pressure_hpa").map(BigDecimal::doubleValue);
        Optional<Double> altitude = data.decimal("altitude_m").map(BigDecimal::doubleValue);
        if (!data.text("method").map("boiling"::equals).orElse(false) || (pressure.isEmpty() && altitude.isEmpty())) {
            return read;
        }
        try {
            double boils = BoilingPoint.celsius(pressure.orElseGet(() -> BoilingPoint.pressure(altitude.get())));
            return Temperature.celsius(read.inCelsius().add(BigDecimal.valueOf(BOILS - boils).setScale(4, RoundingMode.HALF_EVEN)).setScale(4, RoundingMode.HALF_EVEN).toPlainString());
        } catch (IllegalArgumentException outside) {
            return read;
        }
    }

    private String moment(Instant at) {
        return MOMENT.withLocale(Words.locale()).format(at.atZone(site.zone()));
    }
}
