package trivet.cooling;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import trivet.limit.StagedCooling;
import trivet.limit.Verdict;
import trivet.limit.file.TestRulebooks;
import trivet.measure.Scale;
import trivet.measure.Temperature;

/** The cases of src/test/resources/cooling/verdicts.csv, each naming its rule, and the order of arrival. */
class CoolingJudgeTest {

    static StagedCooling rule(String rulebook) {
        return TestRulebooks.find(rulebook).withSuggestions().cooling().orElseThrow();
    }

    static List<CoolingReading> readings(String text) {
        List<CoolingReading> readings = new ArrayList<>();
        for (String pair : text.strip().split(" ")) {
            String[] both = pair.split("/");
            Scale scale = both[1].endsWith("F") ? Scale.FAHRENHEIT : Scale.CELSIUS;
            readings.add(new CoolingReading(new BigDecimal(both[0]), Temperature.parse(both[1].replace("F", ""), scale)));
        }
        return readings;
    }

    @TestFactory
    Stream<DynamicTest> the_table_of_cases() throws Exception {
        BufferedReader file = new BufferedReader(new InputStreamReader(CoolingJudgeTest.class.getResourceAsStream("/cooling/verdicts.csv"), StandardCharsets.UTF_8));
        return file.lines().filter(line -> !line.isBlank() && !line.startsWith("#")).map(line -> DynamicTest.dynamicTest(line, () -> check(line.split(";"))));
    }

    private static void check(String[] cell) {
        Optional<BigDecimal> oven = cell[1].isBlank() ? Optional.empty() : Optional.of(new BigDecimal(cell[1].strip()));
        CoolingVerdict verdict = CoolingJudge.judge(rule(cell[0].strip()), oven, readings(cell[3]), new BigDecimal(cell[2].strip()));
        List<String> stages = verdict.stages().stream().map(stage -> stage.reason().map(Reason::word).orElse(stage.verdict().word())).toList();
        assertEquals(cell[4].strip(), String.join(" ", stages));
    }

    @Test
    void the_same_curve_is_within_in_the_us_and_unjudged_in_australia() {
        List<CoolingReading> curve = readings("0/63.0 110/20.6 350/4.8");
        assertEquals(Verdict.WITHIN, CoolingJudge.judge(rule("us-food-code-2022"), Optional.of(BigDecimal.ZERO), curve, BigDecimal.valueOf(350)).whole());
        assertEquals(Verdict.UNJUDGED, CoolingJudge.judge(rule("australia"), Optional.of(BigDecimal.ZERO), curve, BigDecimal.valueOf(350)).whole());
    }

    @Test
    void the_order_of_arrival_does_not_matter() {
        List<CoolingReading> curve = readings("0/63 50/40 90/23 105/20.6 200/12 320/4.8");
        CoolingVerdict first = CoolingJudge.judge(rule("australia"), Optional.empty(), curve, BigDecimal.valueOf(320));
        for (int seed = 0; seed < 50; seed++) {
            List<CoolingReading> mixed = new ArrayList<>(curve);
            Collections.shuffle(mixed, new Random(seed));
            assertEquals(first, CoolingJudge.judge(rule("australia"), Optional.empty(), mixed, BigDecimal.valueOf(320)));
        }
    }
}
