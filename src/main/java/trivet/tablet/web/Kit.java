package trivet.tablet.web;

import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trivet.ledger.VersionRef;
import trivet.limit.AlternativesLimit;
import trivet.limit.Bound;
import trivet.limit.RangeLimit;
import trivet.limit.StagedCooling;
import trivet.people.Secret;

/**
 * What a tablet takes along so that it can work without a network: the limits in force, plans, people, units, probes, the batches under way and what
 * falls due in the next days. Moments are milliseconds since 1970. It is a copy as of a moment; the service's own verdict counts.
 *
 * @param number the last record that is in it
 * @param texts by language, what texts of plans are told as
 */
@JsonNaming(SnakeCaseStrategy.class)
record Kit(int format, long number, long madeAt, String device, long sequence, int lastCode, Place site, Ref rulebook, List<StageNumbers> cooling, Map<String, Range> ranges,
        Product unplanned, List<Product> plans, List<Worker> people, List<UnitDays> units, List<Probe> probes, List<Batch> batches, List<Matter> unitDeviations, List<Due> programmes, List<Programme> programmeTexts, List<Handover> handovers, Map<String, Map<String, String>> texts) {

    @JsonNaming(SnakeCaseStrategy.class)
    record Place(String name, String zone, String dayEnds, boolean demo) {
    }

    record Ref(String id, int version, String sha256) {
        static Ref of(VersionRef ref) {
            return new Ref(ref.id(), ref.version(), ref.sha256());
        }
    }

    /** A bound with its numbers as printed. */
    record Number(boolean min, boolean incl, String c, String f, String words) {
        static Number of(Bound bound) {
            return new Number(bound.minimum(), bound.inclusive(), bound.celsius().value().toPlainString(), bound.fahrenheit().map(f -> f.value().toPlainString()).orElse(null), bound.words());
        }

        static Number of(Optional<Bound> bound) {
            return bound.map(Number::of).orElse(null);
        }
    }

    @JsonNaming(SnakeCaseStrategy.class)
    record StageNumbers(Number from, Number to, String minutes, String counted, boolean inForce, String standing, String breach, String words) {
        static StageNumbers of(StagedCooling.Stage stage) {
            return new StageNumbers(Number.of(stage.from()), Number.of(stage.to()), stage.minutes().toPlainString(), stage.countedFrom().word(), stage.basis().adopted(), stage.basis().standing().word(),
                    stage.basis().standing().breachWords(), stage.words());
        }
    }

    @JsonNaming(SnakeCaseStrategy.class)
    record Range(Number minimum, Number maximum, Number operating, boolean inForce, String breach, String words) {
        static Range of(RangeLimit limit) {
            return new Range(Number.of(limit.minimum()), Number.of(limit.maximum()), Number.of(limit.operating()), limit.inForce(), limit.basis().standing().breachWords(), limit.words());
        }
    }

    @JsonNaming(SnakeCaseStrategy.class)
    record Row(Number least, String seconds, boolean inForce) {
    }

    /**
     * Rows of a limit for one kind of food.
     *
     * @param withinMinutes the time within which the food must be brought there; null where the rule gives none
     */
    @JsonNaming(SnakeCaseStrategy.class)
    record Rows(List<Row> rows, Number operating, String withinMinutes, String words) {
        static Rows of(AlternativesLimit limit, Optional<String> food) {
            List<AlternativesLimit.Row> rows = limit.rowsFor(food);
            return new Rows(rows.stream().map(row -> new Row(Number.of(row.least()), row.seconds().stripTrailingZeros().toPlainString(), row.basis().adopted())).toList(), Number.of(limit.operating()),
                    limit.withinMinutes().map(minutes -> minutes.stripTrailingZeros().toPlainString()).orElse(null),
                    String.join(" / ", rows.stream().map(AlternativesLimit.Row::words).toList()));
        }
    }

    record Own(String id, String title, boolean before, String what, String how, String limit) {
    }

    @JsonNaming(SnakeCaseStrategy.class)
    record Product(Ref ref, String product, String title, String line, Rows core, Rows reheat, int usualBakeMinutes, int bakeAgainMinutes, int reheatMinutes, int coolEveryMinutes, String useBy, Number storage,
            Map<String, Range> ranges, List<Own> own, Map<String, List<String>> offers) {
    }

    @JsonNaming(SnakeCaseStrategy.class)
    record Worker(String id, String name, String initials, boolean owner, boolean outsider, Long ends, String language, Pin pin, Integer digits, Pin badge) {
    }

    /** Batches that somebody handed over and nobody has taken. */
    record Handover(String id, String from, String to, int batches) {
    }

    record Pin(String salt, int iterations, String hash) {
        static Pin of(Secret secret) {
            return new Pin(secret.salt(), secret.iterations(), secret.hash());
        }
    }

    record Due(String id, String key, String subject, String label, long due, long missed, String state, String taken, String handed, String why) {
    }

    @JsonNaming(SnakeCaseStrategy.class)
    record UnitDays(String id, String name, String kind, String limit, Last last, List<Due> checks) {
    }

    record Last(String text, String verdict, long at) {
    }

    /**
     * A probe.
     *
     * @param blocked why it is not to be trusted now, or empty
     * @param blockedFrom from when on it will not be trusted, unless it is checked before; null where that is not known
     * @param blockedThen why, then
     */
    @JsonNaming(SnakeCaseStrategy.class)
    record Probe(String id, String name, String blocked, Long blockedFrom, String blockedThen) {
    }

    /** A prerequisite programme that is looked at on its days. */
    record Programme(String id, String title, String what) {
    }

    record Stop(String id, String words, long since, boolean food) {
    }

    @JsonNaming(SnakeCaseStrategy.class)
    record Matter(String id, String subject, String label, String limit, String words, String limitWords, String state, boolean breach, long since, List<String> offers, Map<String, Object> answer) {
    }

    /**
     * A reading as the service judged it.
     *
     * @param doubt why its probe is not to be trusted; empty where it is
     */
    record Measured(String id, long at, String value, String unit, String held, Integer piece, String verdict, String words, String doubt) {
    }

    /**
     * A reheat that is going on: the record that began it, its count, its core readings and its returns to the oven.
     *
     * @param ovenBefore when the batch came out of the oven before the cooling that it ended; null where that was not recorded
     */
    @JsonNaming(SnakeCaseStrategy.class)
    record Reheating(String id, long begun, int number, Long ovenBefore, List<Measured> core, List<Long> backs) {
    }

    record Told(String id, String kind, long at, String person, String value, String unit, String words) {
    }

    @JsonNaming(SnakeCaseStrategy.class)
    record Batch(String id, String code, String title, String product, Ref plan, boolean unplanned, String line, int trays, int pieces, String by, long started, String life, String act, String next, List<Stop> holds,
            String useBy, String unit, Long putAway, Long oven, Long firstOven, long dayEnd, String cookVerdict, List<Measured> cook, List<Long> backs, String coolingVerdict, List<Measured> cooling, int run, boolean reheatOffered,
            String reheatRefused, Reheating reheat, boolean hot, Long splitAt, List<Matter> deviations, List<Due> checks, List<Told> told) {
    }

    static Long millis(Optional<Instant> at) {
        return at.map(Instant::toEpochMilli).orElse(null);
    }
}
