package trivet.check;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Optional;
import trivet.batch.Told;
import trivet.limit.Verdict;
import trivet.measure.Temperature;

/** One measured value as it stands. An impossible one is kept, marked and not judged. */
public record Reading(Told told, Temperature temperature, Optional<Integer> piece, Optional<BigDecimal> held, Verdict verdict, String words) {

    private static final Temperature HIGHEST = Temperature.celsius("120");
    private static final Temperature LOWEST = Temperature.celsius("-40");

    /** Whether no food can have this temperature, above 120 °C or below −40 °C. */
    public static boolean impossible(Temperature temperature) {
        return temperature.above(HIGHEST) || temperature.below(LOWEST);
    }

    /** When it was measured. */
    public Instant at() {
        return told.at();
    }

    /** The record behind. */
    public String id() {
        return told.entry().id();
    }

    /** The same reading with what was said of it. */
    public Reading judged(Verdict said, String saidWords) {
        return new Reading(told, temperature, piece, held, said, saidWords);
    }
}
