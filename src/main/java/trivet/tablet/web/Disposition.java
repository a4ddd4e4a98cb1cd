package trivet.tablet.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import trivet.deviation.BatchRecord;
import trivet.deviation.Deviation;
import trivet.words.Words;

/** What may become of the food of a deviation, as its form offers it. */
public record Disposition(String value, String words) {

    /** The ways that are open: a bake only for a core, a reheat only while the batch may be reheated. */
    static List<Disposition> offered(Deviation deviation, Optional<BatchRecord> batch) {
        List<Disposition> offered = new ArrayList<>(List.of(new Disposition("destroy", "destroy")));
        if (deviation.limit().equals("core-cook") || deviation.limit().equals("reheat")) {
            offered.add(new Disposition("back-in-oven", Words.say("j_back_in_the_oven")));
        }
        if (deviation.limit().equals("cooling") && batch.map(BatchRecord::reheatOffered).orElse(false)) {
            offered.add(new Disposition("reheat", Words.say("j_reheat_once_then_cool_again")));
        }
        offered.add(new Disposition("use-otherwise", Words.say("j_use_otherwise")));
        offered.add(new Disposition("release", Words.say("j_release_after_assessment")));
        offered.add(new Disposition("already-gone", Words.say("j_already_gone_who_was_told_stands")));
        offered.add(new Disposition("none-affected", Words.say("j_no_food_affected")));
        return offered;
    }
}
