package trivet.calc.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import trivet.check.Check;
import trivet.measure.web.ProblemException;
import trivet.words.Words;

/** What the answers of the models have in common: cautions and source, null for what there is none of, and refusals. */
final class Science {

    private Science() {
    }

    /** An answer that ends with its cautions and source; a NaN becomes null. */
    static Map<String, Object> answer(Map<String, Object> map, String source, String... cautions) {
        List<String> all = new ArrayList<>();
        for (String caution : cautions) {
            if (caution != null) {
                all.add(Words.named("caution", caution));
            }
        }
        all.add(Words.named("caution", "person"));
        map.put("cautions", all);
        map.put("source", source);
        return map;
    }

    static Double plain(double value) {
        return Double.isFinite(value) ? value : null;
    }

    static List<Double> plain(double[] values) {
        List<Double> list = new ArrayList<>(values.length);
        for (double value : values) {
            list.add(plain(value));
        }
        return list;
    }

    /** What a calculation refuses with a sentence becomes a 422 of that field. */
    static <T> T refusing(String field, Supplier<T> work) {
        try {
            return work.get();
        } catch (IllegalArgumentException refused) {
            throw new ProblemException(422, field, refused.getMessage());
        }
    }

    static void finite(String field, double... values) {
        for (double value : values) {
            if (!Double.isFinite(value)) {
                throw new ProblemException(422, field, "These numbers lead out of all bounds. Check them.");
            }
        }
    }

    static void positive(String field, double value) {
        if (!(value > 0)) {
            throw new ProblemException(422, field, "This is above 0.");
        }
    }
}
