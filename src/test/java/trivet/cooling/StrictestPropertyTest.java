package trivet.cooling;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import trivet.limit.Rulebook;
import trivet.limit.StagedCooling;
import trivet.limit.Verdict;
import trivet.limit.file.TestRulebooks;
import trivet.measure.Scale;
import trivet.measure.Temperature;

/** What is within the strictest rulebook is within each; a warmer reading never betters a verdict. */
class StrictestPropertyTest {

    private static List<CoolingReading> curve(List<Integer> steps, List<Integer> drops) {
        List<CoolingReading> readings = new ArrayList<>();
        int minute = 0;
        int tenths = 760;
        for (int i = 0; i < Math.min(steps.size(), drops.size()); i++) {
            readings.add(new CoolingReading(BigDecimal.valueOf(minute), Temperature.celsius(BigDecimal.valueOf(tenths, 1).toPlainString())));
            minute += steps.get(i);
            tenths -= drops.get(i);
        }
        return readings;
    }

    private static Verdict whole(Rulebook rulebook, List<CoolingReading> readings, BigDecimal asOf) {
        return CoolingJudge.judge(rulebook.withSuggestions().cooling().orElseThrow(), Optional.of(BigDecimal.ZERO), readings, asOf).whole();
    }

    @Property
    void a_cooling_within_the_strictest_is_within_every_rulebook(@ForAll @Size(min = 2, max = 9) List<@IntRange(min = 1, max = 45) Integer> steps,
            @ForAll @Size(min = 9, max = 9) List<@IntRange(min = 0, max = 350) Integer> drops) {
        List<CoolingReading> readings = curve(steps, drops);
        BigDecimal asOf = readings.get(readings.size() - 1).minute();
        if (whole(TestRulebooks.find("strictest"), readings, asOf) == Verdict.WITHIN) {
            TestRulebooks.list().forEach(rulebook -> assertTrue(whole(rulebook, readings, asOf) == Verdict.WITHIN, rulebook.id()));
        }
    }

    @Property
    void a_bake_within_the_strictest_is_within_every_rulebook_for_every_food(@ForAll @IntRange(min = 550, max = 950) int tenths, @ForAll @IntRange(min = 0, max = 200) int held) {
        CookPiece piece = new CookPiece(Temperature.celsius(BigDecimal.valueOf(tenths, 1).toPlainString()), Optional.of(BigDecimal.valueOf(held)));
        for (String limit : List.of("core-cook", "reheat")) {
            if (cook(TestRulebooks.find("strictest"), limit, Optional.empty(), piece) != Verdict.WITHIN) {
                continue;
            }
            for (Rulebook rulebook : TestRulebooks.list()) {
                assertTrue(cook(rulebook, limit, Optional.empty(), piece) == Verdict.WITHIN, rulebook.id());
                rulebook.foods().forEach(food -> assertTrue(cook(rulebook, limit, Optional.of(food), piece) == Verdict.WITHIN, rulebook.id() + " " + food));
            }
        }
    }

    private static Verdict cook(Rulebook rulebook, String limit, Optional<String> food, CookPiece piece) {
        return CookJudge.judge(rulebook.withSuggestions().alternatives(limit).orElseThrow(), food, List.of(piece)).verdict();
    }

    @Property
    void storage_within_the_strictest_is_within_every_rulebook(@ForAll @IntRange(min = -300, max = 900) int tenths) {
        Temperature seen = Temperature.celsius(BigDecimal.valueOf(tenths, 1).toPlainString());
        for (String limit : List.of("chilled-storage", "frozen-storage", "hot-holding")) {
            if (TestRulebooks.find("strictest").range(limit).orElseThrow().judge(seen) == Verdict.WITHIN) {
                TestRulebooks.list().forEach(rulebook -> assertTrue(rulebook.range(limit).orElseThrow().judge(seen) == Verdict.WITHIN, rulebook.id() + " " + limit));
            }
        }
    }

    @Property
    void raising_a_reading_without_crossing_a_start_never_betters_a_verdict(@ForAll @Size(min = 2, max = 9) List<@IntRange(min = 1, max = 90) Integer> steps,
            @ForAll @Size(min = 9, max = 9) List<@IntRange(min = 0, max = 250) Integer> drops, @ForAll @IntRange(min = 0, max = 8) int which,
            @ForAll @IntRange(min = 1, max = 60) int tenths) {
        List<CoolingReading> readings = curve(steps, drops);
        int index = which % readings.size();
        Temperature before = readings.get(index).temperature();
        Temperature after = new Temperature(before.value().add(BigDecimal.valueOf(tenths, 1)), Scale.CELSIUS);
        List<CoolingReading> raised = new ArrayList<>(readings);
        raised.set(index, new CoolingReading(readings.get(index).minute(), after));
        BigDecimal asOf = readings.get(readings.size() - 1).minute();
        for (Rulebook rulebook : TestRulebooks.list()) {
            StagedCooling rule = rulebook.withSuggestions().cooling().orElseThrow();
            boolean crosses = rule.stages().stream().anyMatch(stage -> stage.from().isPresent()
                    && before.compareTo(stage.from().get().celsius()) <= 0 && after.compareTo(stage.from().get().celsius()) >= 0);
            if (!crosses) {
                Verdict was = whole(rulebook, readings, asOf);
                Verdict is = whole(rulebook, raised, asOf);
                assertTrue(is.compareTo(was) >= 0, rulebook.id() + " " + readings + " " + raised);
            }
        }
    }

    @Property
    void a_worse_reading_in_fahrenheit_is_worse_in_celsius(@ForAll @IntRange(min = -400, max = 2120) int a, @ForAll @IntRange(min = -400, max = 2120) int b) {
        Temperature first = new Temperature(BigDecimal.valueOf(a, 1), Scale.FAHRENHEIT);
        Temperature second = new Temperature(BigDecimal.valueOf(b, 1), Scale.FAHRENHEIT);
        assertTrue(Integer.signum(first.compareTo(second)) == Integer.compare(a, b));
        assertTrue(a == b || Integer.signum(first.inCelsius().compareTo(second.inCelsius())) * Integer.compare(a, b) >= 0);
    }
}
