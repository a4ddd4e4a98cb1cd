package trivet.cooling;

import java.math.BigDecimal;
import java.util.Optional;
import trivet.limit.AlternativesLimit.Row;
import trivet.limit.Verdict;

/**
 * The verdict on the pieces of a bake, or of a reheat.
 *
 * @param decidingPiece the piece with the worst verdict and then the lowest temperature, counted from 1
 * @param row the hottest row that the deciding piece meets
 * @param shortByCelsius the smallest rise that meets a row at this hold, in °C; empty when there is none or nothing is short
 * @param shortBySeconds the smallest further hold that meets a row at this temperature; empty likewise
 */
public record CookVerdict(Verdict verdict, Optional<Reason> reason, int decidingPiece, Optional<Row> row,
        Optional<BigDecimal> shortByCelsius, Optional<BigDecimal> shortBySeconds, String words) {
}
