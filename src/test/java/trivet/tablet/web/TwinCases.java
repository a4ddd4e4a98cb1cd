package trivet.tablet.web;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import trivet.check.Minutes;
import trivet.cooling.CookJudge;
import trivet.cooling.CookPiece;
import trivet.cooling.CookVerdict;
import trivet.cooling.CoolingJudge;
import trivet.cooling.CoolingReading;
import trivet.cooling.CoolingVerdict;
import trivet.cooling.Reason;
import trivet.cooling.StageVerdict;
import trivet.ledger.Ids;
import trivet.limit.AlternativesLimit;
import trivet.limit.RangeLimit;
import trivet.limit.Rulebook;
import trivet.limit.StagedCooling;
import trivet.limit.Verdict;
import trivet.limit.file.TestRulebooks;
import trivet.measure.Scale;
import trivet.measure.Temperature;
import trivet.site.Site;
import trivet.words.Words;

/** Cases with what the service's judges say of them, for the tablet's to be held against: the published tables, and many more by every shipped rulebook. */
final class TwinCases {

    private static final int RANDOM_CURVES = 400;

    private TwinCases() {
    }

    static List<Map<String, Object>> of(String name) throws IOException {
        return switch (name) {
            case "cook" -> cook();
            case "cooling" -> cooling();
            case "ranges" -> ranges();
            case "days" -> days();
            case "names" -> Stream.of("a", "0190/core", "fridge-1/2026-11-26/0", "ü/deviation/x").map(text -> Map.<String, Object>of("name", text, "id", Ids.derived(text))).toList();
            default -> throw new IllegalArgumentException(name);
        };
    }

    /** Moments around the changes of the clocks in 2026 and random ones of that year, in zones that change at different hours or not at all, with days that end at different hours. */
    private static List<Map<String, Object>> days() {
        List<Map<String, Object>> all = new ArrayList<>();
        Random random = new Random(42);
        for (String zone : List.of("Europe/London", "Europe/Madrid", "America/New_York", "America/St_Johns", "Australia/Lord_Howe", "Asia/Kolkata", "UTC")) {
            for (String ends : List.of("00:00", "01:30", "02:30", "04:00")) {
                Site site = new Site("site", "a site", "", ZoneId.of(zone), LocalTime.parse(ends), false);
                Instant year = Instant.parse("2026-01-01T00:00:00Z");
                Stream<Instant> moments = Stream.concat(random.longs(40, 0, 365L * 24 * 3600).mapToObj(year::plusSeconds),
                        Stream.of("2026-03-08", "2026-03-29", "2026-04-05", "2026-10-04", "2026-10-25", "2026-11-01").flatMap(day -> random.longs(15, -20 * 3600, 40 * 3600).mapToObj(Instant.parse(day + "T00:00:00Z")::plusSeconds)));
                moments.forEach(at -> all.add(Map.of("at", at.toEpochMilli(), "zone", zone, "day_ends", ends, "end", site.end(site.dayOf(at)).toEpochMilli())));
            }
        }
        return all;
    }

    private static List<Rulebook> rulebooks() {
        return TestRulebooks.list().stream().flatMap(book -> Stream.of(book, book.withSuggestions())).toList();
    }

    private static Map<String, Object> written(Temperature temperature) {
        return Map.of("value", temperature.value().toPlainString(), "unit", String.valueOf(temperature.scale().letter()));
    }

    private static List<Temperature> temperatures(int fromC, int toC, String step) {
        List<Temperature> all = new ArrayList<>();
        for (BigDecimal at = BigDecimal.valueOf(fromC); at.compareTo(BigDecimal.valueOf(toC)) <= 0; at = at.add(new BigDecimal(step))) {
            all.add(new Temperature(at, Scale.CELSIUS));
        }
        for (int f = fromC * 9 / 5 + 32; f <= toC * 9 / 5 + 32; f += 3) {
            all.add(new Temperature(BigDecimal.valueOf(f * 10L + 1, 1), Scale.FAHRENHEIT));
        }
        return all;
    }

    private static List<Map<String, Object>> cook() {
        List<Map<String, Object>> cases = new ArrayList<>();
        for (Rulebook book : rulebooks()) {
            for (String limit : List.of("core-cook", "reheat")) {
                Optional<AlternativesLimit> rows = book.alternatives(limit);
                if (rows.isEmpty()) {
                    continue;
                }
                for (Temperature seen : temperatures(58, 83, "1.3")) {
                    for (String held : Arrays.asList(null, "0", "6", "15", "30", "119.5", "120", "2700")) {
                        CookVerdict verdict = CookJudge.judge(rows.get(), Optional.empty(), List.of(new CookPiece(seen, Optional.ofNullable(held).map(BigDecimal::new))));
                        Map<String, Object> one = new LinkedHashMap<>(Map.of("rulebook", book.id(), "rows", Kit.Rows.of(rows.get(), Optional.empty()).rows(), "temperature", written(seen), "verdict", verdict.verdict().word(), "words", verdict.words()));
                        one.put("held", held);
                        cases.add(one);
                    }
                }
            }
        }
        return cases;
    }

    private static List<Map<String, Object>> ranges() {
        List<Map<String, Object>> cases = new ArrayList<>();
        for (Rulebook book : rulebooks()) {
            for (String limit : List.of("chilled-storage", "frozen-storage", "hot-holding")) {
                Optional<RangeLimit> range = book.range(limit);
                for (Temperature seen : range.isEmpty() ? List.<Temperature>of() : temperatures(-20, 70, "2.1")) {
                    Verdict verdict = range.get().inForce() ? range.get().judge(seen) : Verdict.UNJUDGED;
                    String words = verdict == Verdict.UNJUDGED ? Words.say("j_not_judged", seen) : verdict == Verdict.WITHIN ? Words.say("j_within", seen, range.get().words())
                            : Words.say("j_the_limit_is_this_is_probe", seen, range.get().words(), range.get().basis().standing().breachWords());
                    if (!range.get().asksForAdjustment(seen)) {
                        cases.add(Map.of("rulebook", book.id(), "limit", Kit.Range.of(range.get()), "temperature", written(seen), "verdict", verdict.word(), "words", words));
                    }
                }
            }
        }
        return cases;
    }

    private static List<Map<String, Object>> cooling() throws IOException {
        List<Map<String, Object>> cases = new ArrayList<>();
        for (String line : Files.readAllLines(Path.of("src/test/resources/cooling/verdicts.csv"))) {
            if (!line.isBlank() && !line.startsWith("#")) {
                String[] cell = line.split(";");
                StagedCooling rule = TestRulebooks.find(cell[0].strip()).withSuggestions().cooling().orElseThrow();
                Optional<BigDecimal> oven = cell[1].isBlank() ? Optional.empty() : Optional.of(new BigDecimal(cell[1].strip()));
                Map<String, Object> one = curve(rule, oven, readings(cell[3]), new BigDecimal(cell[2].strip()));
                if (!one.get("expected").equals(cell[4].strip())) {
                    throw new IllegalStateException(line + " is judged " + one.get("expected"));
                }
                cases.add(one);
            }
        }
        Random random = new Random(20261126);
        for (Rulebook book : rulebooks()) {
            if (book.cooling().isPresent()) {
                for (int i = 0; i < RANDOM_CURVES; i++) {
                    cases.add(random(book.cooling().get(), random));
                }
            }
        }
        return cases;
    }

    private static Map<String, Object> random(StagedCooling rule, Random random) {
        List<CoolingReading> readings = new ArrayList<>();
        int minute = random.nextInt(20);
        double temperature = 50 + random.nextInt(40);
        for (int n = random.nextInt(8); n > 0; n--) {
            BigDecimal value = BigDecimal.valueOf(Math.round(temperature * 10), 1);
            readings.add(new CoolingReading(BigDecimal.valueOf(minute), random.nextInt(4) == 0 ? new Temperature(BigDecimal.valueOf(Math.round((temperature * 1.8 + 32) * 10), 1), Scale.FAHRENHEIT) : new Temperature(value, Scale.CELSIUS)));
            minute += 5 + random.nextInt(90);
            temperature = random.nextInt(5) == 0 ? temperature + 2 : temperature * (0.5 + random.nextDouble() / 2);
        }
        Optional<BigDecimal> oven = random.nextInt(4) == 0 ? Optional.empty() : Optional.of(BigDecimal.valueOf(random.nextInt(5)));
        return curve(rule, oven, readings, BigDecimal.valueOf(random.nextInt(420)));
    }

    private static List<CoolingReading> readings(String text) {
        List<CoolingReading> readings = new ArrayList<>();
        for (String pair : text.strip().split(" ")) {
            String[] both = pair.split("/");
            readings.add(new CoolingReading(new BigDecimal(both[0]), Temperature.parse(both[1].replace("F", ""), both[1].endsWith("F") ? Scale.FAHRENHEIT : Scale.CELSIUS)));
        }
        return readings;
    }

    private static long millis(BigDecimal minute) {
        return Minutes.after(java.time.Instant.EPOCH, minute).toEpochMilli();
    }

    private static Map<String, Object> curve(StagedCooling rule, Optional<BigDecimal> oven, List<CoolingReading> readings, BigDecimal asOf) {
        CoolingVerdict verdict = CoolingJudge.judge(rule, oven, readings, asOf);
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("stages", rule.stages().stream().map(Kit.StageNumbers::of).toList());
        one.put("oven", oven.map(TwinCases::millis).orElse(null));
        one.put("readings", readings.stream().map(reading -> Map.of("at", millis(reading.minute()), "value", reading.temperature().value().toPlainString(), "unit", String.valueOf(reading.temperature().scale().letter()))).toList());
        one.put("as_of", millis(asOf));
        one.put("expected", String.join(" ", verdict.stages().stream().map(stage -> stage.reason().map(Reason::word).orElse(stage.verdict().word())).toList()));
        one.put("words", String.join(" | ", verdict.stages().stream().map(StageVerdict::words).toList()));
        one.put("whole", verdict.whole().word());
        return one;
    }
}
