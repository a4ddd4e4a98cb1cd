package trivet.cooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trivet.limit.AlternativesLimit;
import trivet.limit.Verdict;
import trivet.limit.file.TestRulebooks;
import trivet.measure.Scale;
import trivet.measure.Temperature;

/** Cooking by the published rows: UK equivalents (FSA), Food Code 3-401.11, Scotland's and the US reheat. */
class CookJudgeTest {

    private static AlternativesLimit rows(String rulebook, String limit) {
        return TestRulebooks.find(rulebook).withSuggestions().alternatives(limit).orElseThrow();
    }

    private static CookPiece piece(String celsius, Integer held) {
        return new CookPiece(Temperature.celsius(celsius), Optional.ofNullable(held).map(BigDecimal::valueOf));
    }

    @ParameterizedTest
    @CsvSource({"60,2700,WITHIN", "60,2699,BREACHED", "59.9,2700,BREACHED", "65,600,WITHIN", "65,599,BREACHED", "70,120,WITHIN", "70,119,BREACHED",
        "75,30,WITHIN", "74.9,30,BREACHED", "75,29,BREACHED", "80,6,WITHIN", "79.9,6,BREACHED", "80,5,BREACHED", "90,,UNJUDGED", "60,,UNJUDGED", "59.9,,BREACHED"})
    void uk_rows_below_on_above_and_missing(String celsius, Integer held, Verdict expected) {
        assertEquals(expected, CookJudge.judge(rows("england-wales-ni", "core-cook"), Optional.empty(), List.of(piece(celsius, held))).verdict());
    }

    @ParameterizedTest
    @CsvSource({"egg-mix,68,17,WITHIN", "egg-mix,68,16,BREACHED", "egg-mix,70,,WITHIN", "egg-mix,69.9,,UNJUDGED", "poultry-or-stuffed,74,0,WITHIN",
        "poultry-or-stuffed,73.9,600,BREACHED", "fish,63,15,WITHIN", "meat-comminuted,66,60,WITHIN", ",73.9,60,BREACHED", ",74,0,WITHIN"})
    void food_code_rows_by_kind_of_food_and_the_strictest_without(String food, String celsius, Integer held, Verdict expected) {
        assertEquals(expected, CookJudge.judge(rows("us-food-code-2022", "core-cook"), Optional.ofNullable(food), List.of(piece(celsius, held))).verdict());
    }

    @Test
    void the_worse_piece_decides_and_says_what_is_short() {
        CookVerdict verdict = CookJudge.judge(rows("england-wales-ni", "core-cook"), Optional.empty(), List.of(piece("76.1", 30), piece("74.9", 30)));
        assertEquals(Verdict.BREACHED, verdict.verdict());
        assertEquals(2, verdict.decidingPiece());
        assertEquals(0, new BigDecimal("0.1").compareTo(verdict.shortByCelsius().orElseThrow()));
        assertEquals(0, new BigDecimal("90").compareTo(verdict.shortBySeconds().orElseThrow()));
        assertTrue(verdict.row().isEmpty());
        assertEquals("74.9 °C. 0.1 °C short of 75 °C for 30 s. Back in the oven, then probe again.", verdict.words());
    }

    @Test
    void reheating_asks_82_in_scotland_and_74_for_15_s_in_the_us() {
        assertEquals(Verdict.BREACHED, CookJudge.judge(rows("scotland", "reheat"), Optional.empty(), List.of(piece("81.9", 60))).verdict());
        assertEquals(Verdict.WITHIN, CookJudge.judge(rows("scotland", "reheat"), Optional.empty(), List.of(piece("82", 0))).verdict());
        assertEquals(Verdict.BREACHED, CookJudge.judge(rows("us-food-code-2022", "reheat"), Optional.empty(), List.of(piece("74", 14))).verdict());
        assertEquals(Verdict.WITHIN, CookJudge.judge(rows("us-food-code-2022", "reheat"), Optional.empty(), List.of(piece("74", 15))).verdict());
    }

    @Test
    void a_reading_in_fahrenheit_is_judged_by_the_printed_number() {
        CookPiece on = new CookPiece(new Temperature(new BigDecimal("165"), Scale.FAHRENHEIT), Optional.of(BigDecimal.ZERO));
        CookPiece below = new CookPiece(new Temperature(new BigDecimal("164.9"), Scale.FAHRENHEIT), Optional.of(BigDecimal.ZERO));
        AlternativesLimit limit = rows("us-food-code-2022", "core-cook");
        assertEquals(Verdict.WITHIN, CookJudge.judge(limit, Optional.of("poultry-or-stuffed"), List.of(on)).verdict());
        assertEquals(Verdict.BREACHED, CookJudge.judge(limit, Optional.of("poultry-or-stuffed"), List.of(below)).verdict());
    }
}
