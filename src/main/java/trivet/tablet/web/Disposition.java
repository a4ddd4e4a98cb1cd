package trivet.tablet.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import trivet.deviation.BatchRecord;
import trivet.deviation.Deviation;
import trivet.words.Words;

/** What may become of the food of a deviation, as its form offers it. */
public record Disposition(String value, String words) {

    private static Disposition of(String value) {
        return new Disposition(value, Words.named("disposition", value));
    }

    /** The ways that are open: a bake only for a core, a reheat only while the batch may be reheated. */
    static List<Disposition> offered(Deviation deviation, Optional<BatchRecord> batch) {
        List<Disposition> offered = new ArrayList<>(List.of(of("destroy")));
        if (deviation.limit().equals("core-cook") || deviation.limit().equals("reheat")) {
            offered.add(of("back-in-oven"));
        }
        if (deviation.limit().equals("cooling") && batch.map(BatchRecord::reheatOffered).orElse(false)) {
            offered.add(of("reheat"));
        }
        offered.add(of("use-otherwise"));
        offered.add(of("release"));
        offered.add(of("already-gone"));
        offered.add(of("none-affected"));
        return offered;
    }
}
