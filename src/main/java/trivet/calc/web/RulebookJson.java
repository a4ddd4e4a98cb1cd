package trivet.calc.web;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import trivet.limit.AlternativesLimit;
import trivet.limit.Basis;
import trivet.limit.Bound;
import trivet.limit.Limit;
import trivet.limit.RangeLimit;
import trivet.limit.StagedCooling;
import trivet.limit.TimeOutLimit;
import trivet.limit.UseByRule;

/** A limit as JSON: temperatures as text, minutes and seconds as numbers, each number with what it rests on. */
final class RulebookJson {

    private RulebookJson() {
    }

    static String celsius(Bound bound) {
        return bound.celsius().value().toPlainString();
    }

    static BigDecimal plain(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    static Map<String, Object> limit(Limit limit) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("id", limit.id());
        if (limit instanceof RangeLimit range) {
            map.put("shape", "range");
            range.minimum().ifPresent(bound -> bound(map, "minimum", bound));
            range.maximum().ifPresent(bound -> bound(map, "maximum", bound));
            range.operating().ifPresent(bound -> bound(map, "operating", bound));
        } else if (limit instanceof AlternativesLimit alternatives) {
            map.put("shape", "alternatives");
            map.put("rows", alternatives.rows().stream().map(RulebookJson::row).toList());
            alternatives.withinMinutes().ifPresent(minutes -> map.put("within_minutes", plain(minutes)));
            alternatives.operating().ifPresent(bound -> bound(map, "operating", bound));
        } else if (limit instanceof StagedCooling cooling) {
            map.put("shape", "stages");
            map.put("stages", cooling.stages().stream().map(RulebookJson::stage).toList());
        } else if (limit instanceof TimeOutLimit timeOut) {
            map.put("shape", "time-out");
            map.put("bands", timeOut.bands().stream().map(RulebookJson::band).toList());
        } else if (limit instanceof UseByRule useBy) {
            map.put("shape", "use-by");
            map.put("preparation_is_day", useBy.preparationIsDayOne() ? 1 : 0);
            map.put("most_days", useBy.mostDays().isPresent() ? useBy.mostDays().getAsInt() : null);
        }
        basis(map, limit.basis());
        return map;
    }

    static List<Map<String, Object>> limits(List<Limit> limits) {
        return limits.stream().map(RulebookJson::limit).toList();
    }

    private static void bound(Map<String, Object> map, String name, Bound bound) {
        map.put(name + "_celsius", celsius(bound));
        bound.fahrenheit().ifPresent(f -> map.put(name + "_fahrenheit", f.value().toPlainString()));
        map.put(name + "_inclusive", bound.inclusive());
    }

    private static Map<String, Object> row(AlternativesLimit.Row row) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("food", row.food().orElse(null));
        map.put("celsius", celsius(row.least()));
        row.least().fahrenheit().ifPresent(f -> map.put("fahrenheit", f.value().toPlainString()));
        map.put("seconds", plain(row.seconds()));
        map.put("inclusive", row.least().inclusive());
        basis(map, row.basis());
        return map;
    }

    private static Map<String, Object> stage(StagedCooling.Stage stage) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("from_celsius", stage.from().map(RulebookJson::celsius).orElse(null));
        stage.from().flatMap(Bound::fahrenheit).ifPresent(f -> map.put("from_fahrenheit", f.value().toPlainString()));
        map.put("to_celsius", celsius(stage.to()));
        stage.to().fahrenheit().ifPresent(f -> map.put("to_fahrenheit", f.value().toPlainString()));
        map.put("inclusive", stage.to().inclusive());
        map.put("limit_minutes", plain(stage.minutes()));
        map.put("counted_from", stage.countedFrom().word());
        basis(map, stage.basis());
        return map;
    }

    private static Map<String, Object> band(TimeOutLimit.Band band) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("limit_minutes", plain(band.minutes()));
        map.put("inclusive", band.inclusive());
        band.notAbove().ifPresent(bound -> map.put("not_above_celsius", celsius(bound)));
        map.put("then", band.then());
        return map;
    }

    private static void basis(Map<String, Object> map, Basis basis) {
        map.put("standing", basis.standing().word());
        map.put("source", basis.source());
        map.put("read", basis.read());
        map.put("suggestion", basis.suggestion());
    }
}
