package trivet.tablet.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import trivet.deviation.BatchRecord;
import trivet.deviation.Deviation;

/** What may become of the food of a deviation, as its form offers it. */
public record Disposition(String value, String words) {

    /** The ways that are open: a bake only for a core, a reheat only while the batch may be reheated. */
    static List<Disposition> offered(Deviation deviation, Optional<BatchRecord> batch) {
        List<Disposition> offered = new ArrayList<>(List.of(new Disposition("destroy", "destroy")));
        if (deviation.limit().equals("core-cook") || deviation.limit().equals("reheat")) {
            offered.add(new Disposition("back-in-oven", "back in the oven"));
        }
        if (deviation.limit().equals("cooling") && batch.map(BatchRecord::reheatOffered).orElse(false)) {
            offered.add(new Disposition("reheat", "reheat once, then cool again"));
        }
        offered.add(new Disposition("use-otherwise", "use otherwise"));
        offered.add(new Disposition("release", "release after assessment"));
        offered.add(new Disposition("already-gone", "already gone; who was told stands below"));
        offered.add(new Disposition("none-affected", "no food affected"));
        return offered;
    }
}
