package trivet.check;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Optional;
import trivet.batch.Told;
import trivet.limit.Verdict;
import trivet.measure.Temperature;

/**
 * One measured value as it stands. An impossible one is kept, marked and not judged.
 *
 * @param adjust whether it is within the critical limit and past the operating one, so that the process asks for an adjustment
 */
public record Reading(Told told, Temperature temperature, Optional<Integer> piece, Optional<BigDecimal> held, Verdict verdict, String words,
        boolean adjust) {

    private static final Temperature HIGHEST = Temperature.celsius("120");
    private static final Temperature LOWEST = Temperature.celsius("-40");

    /** A reading that asks for no adjustment. */
    public Reading(Told told, Temperature temperature, Optional<Integer> piece, Optional<BigDecimal> held, Verdict verdict, String words) {
        this(told, temperature, piece, held, verdict, words, false);
    }

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

    /** The same reading, asking for an adjustment. */
    public Reading adjusting(String more) {
        return new Reading(told, temperature, piece, held, verdict, words + " " + more, true);
    }

    /** The same reading with a sentence more. */
    public Reading adding(String more) {
        return new Reading(told, temperature, piece, held, verdict, words + " " + more, adjust);
    }

    /** The same reading with what was said of it. */
    public Reading judged(Verdict said, String saidWords) {
        return new Reading(told, temperature, piece, held, said, saidWords);
    }
}
