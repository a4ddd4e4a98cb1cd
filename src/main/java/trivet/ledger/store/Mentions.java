package trivet.ledger.store;

import java.util.LinkedHashSet;
import java.util.Set;
import java.util.stream.Stream;
import trivet.ledger.Entry;
import trivet.ledger.Fields;

/** The records, batches, checks and deviations that a record names beside its own batch. */
final class Mentions {

    private Mentions() {
    }

    static Set<String> of(Entry entry) {
        Fields data = entry.data();
        Set<String> named = new LinkedHashSet<>();
        Stream.of("of", "correction", "deviation", "reading", "proof", "recheck_of", "probe").forEach(name -> data.text(name).ifPresent(named::add));
        Stream.of("holds", "deviations", "checks", "records").forEach(name -> named.addAll(data.texts(name)));
        data.objects("parts").forEach(part -> part.text("batch").ifPresent(named::add));
        named.removeIf(text -> text.length() > 100);
        return named;
    }
}
