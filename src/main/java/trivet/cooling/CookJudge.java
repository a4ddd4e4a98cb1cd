package trivet.cooling;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import trivet.limit.AlternativesLimit.Row;
import trivet.limit.AlternativesLimit;
import trivet.limit.Verdict;
import trivet.measure.Quantity;
import trivet.measure.Scale;
import trivet.measure.Temperature;
import trivet.words.Words;

/** Judges core temperatures by published rows: every piece must meet one for its kind of food, as printed. */
public final class CookJudge {

    private static final BigDecimal FIVE = BigDecimal.valueOf(5);
    private static final BigDecimal NINE = BigDecimal.valueOf(9);

    private CookJudge() {
    }

    /** The verdict on at least one piece; refuses an empty list. */
    public static CookVerdict judge(AlternativesLimit limit, Optional<String> food, List<CookPiece> pieces) {
        if (pieces.isEmpty()) {
            throw new IllegalArgumentException(Words.say("j_at_least_one_piece_must_be"));
        }
        List<Row> rows = limit.rowsFor(food);
        List<CookVerdict> verdicts = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            verdicts.add(piece(rows, pieces.get(i), i + 1));
        }
        return verdicts.stream().max(Comparator.comparing(CookVerdict::verdict)
                .thenComparing(verdict -> pieces.get(verdict.decidingPiece() - 1).lowest(), Comparator.reverseOrder())
                .thenComparing(CookVerdict::decidingPiece, Comparator.reverseOrder())).orElseThrow();
    }

    private static CookVerdict piece(List<Row> rows, CookPiece piece, int number) {
        Temperature seen = piece.lowest();
        if (!rows.stream().allMatch(row -> row.basis().adopted())) {
            return new CookVerdict(Verdict.UNJUDGED, Optional.of(Reason.NO_LIMIT), number, Optional.empty(), Optional.empty(),
                    Optional.empty(), Words.say("j_no_number_is_in_force_to", seen));
        }
        BigDecimal held = piece.heldSeconds().orElse(BigDecimal.ZERO);
        Optional<Row> met = rows.stream().filter(row -> row.meets(seen, held))
                .max(Comparator.comparing(row -> row.least().celsius()));
        if (met.isPresent()) {
            return new CookVerdict(Verdict.WITHIN, Optional.empty(), number, met, Optional.empty(), Optional.empty(),
                    Words.say("j_meets", seen, words(met.get(), seen)));
        }
        boolean warmEnough = rows.stream().anyMatch(row -> row.least().meets(seen));
        if (piece.heldSeconds().isEmpty() && warmEnough) {
            return new CookVerdict(Verdict.UNJUDGED, Optional.of(Reason.HOLD_NOT_RECORDED), number, Optional.empty(),
                    Optional.empty(), Optional.empty(),
                    Words.say("j_hot_enough_but_how_long_it", seen));
        }
        Optional<Row> nearest = rows.stream().filter(row -> held.compareTo(row.seconds()) >= 0)
                .min(Comparator.comparing(row -> row.least().celsius()));
        Optional<BigDecimal> rise = nearest.map(row -> rise(seen, row));
        Optional<BigDecimal> further = rows.stream().filter(row -> row.least().meets(seen))
                .map(row -> row.seconds().subtract(held)).min(Comparator.naturalOrder());
        return new CookVerdict(Verdict.BREACHED, Optional.empty(), number, Optional.empty(), rise, further,
                shortWords(seen, rows, nearest, rise));
    }

    private static BigDecimal rise(Temperature seen, Row row) {
        BigDecimal rise = row.least().inUnitOf(seen).scale() == seen.scale()
                ? row.least().inUnitOf(seen).value().subtract(seen.value())
                : null;
        if (rise == null) {
            Temperature number = row.least().celsius();
            BigDecimal inFahrenheit = number.value().multiply(NINE).divide(FIVE).add(BigDecimal.valueOf(32));
            rise = inFahrenheit.subtract(seen.value());
        }
        return seen.scale() == Scale.CELSIUS ? rise : rise.multiply(FIVE).divide(NINE, 2, RoundingMode.UP);
    }

    private static String shortWords(Temperature seen, List<Row> rows, Optional<Row> nearest, Optional<BigDecimal> rise) {
        String gap = nearest.isPresent()
                ? Words.say("j_c_short_of", rise.orElseThrow().stripTrailingZeros().toPlainString(), words(nearest.get(), seen))
                : Words.say("j_short_of", words(rows.stream().max(Comparator.comparing(row -> row.least().celsius())).orElseThrow(), seen));
        return Words.say("j_back_in_the_oven_then_probe", seen, gap);
    }

    private static String words(Row row, Temperature seen) {
        String number = row.least().inUnitOf(seen).toString();
        return row.seconds().signum() == 0 ? number : Words.say("j_for", number, Quantity.duration(row.seconds()));
    }
}
