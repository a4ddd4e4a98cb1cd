package trivet.batch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trivet.ledger.Entry;
import trivet.ledger.Fields;

/**
 * A record as it stands after its corrections.
 *
 * @param data its fields with the corrections laid over
 * @param at its claimed time, as corrected
 * @param corrections the corrections that apply to it, in the order of receipt
 * @param waiting whether it rests on a correction, or was written so much later, that it betters nothing until somebody
 *     who wrote neither accepts it
 */
public record Told(Entry entry, Fields data, Instant at, List<Entry> corrections, boolean waiting) {

    /** The records in order of their time, with every correction applied, or without those that wait for acceptance; where tablets differ, by the last of them. */
    public static List<Told> of(List<Entry> entries, boolean withWaiting) {
        return told(entries, new Accounts(entries), withWaiting, Integer.MAX_VALUE);
    }

    /** Every way in which the records may be read: with what waits, once for each version of what tablets corrected differently, and without it. */
    public static List<List<Told>> ways(List<Entry> entries) {
        Accounts accounts = new Accounts(entries);
        List<List<Told>> ways = new ArrayList<>();
        int versions = disputes(entries, accounts).stream().mapToInt(dispute -> dispute.versions().size()).max().orElse(1);
        for (int choice = versions - 1; choice >= 0; choice--) {
            ways.add(told(entries, accounts, true, choice));
        }
        if (!waiting(entries, accounts).isEmpty()) {
            ways.add(told(entries, accounts, false, 0));
        }
        return ways;
    }

    private static List<Told> told(List<Entry> entries, Accounts accounts, boolean withWaiting, int choice) {
        List<Told> told = new ArrayList<>();
        for (Entry entry : entries) {
            boolean late = accounts.waitsAsLate(entry);
            if (!entry.kind().equals("correction") && (!late || withWaiting)) {
                one(entry, accounts, late, withWaiting, choice).ifPresent(told::add);
            }
        }
        told.sort(Comparator.comparing(Told::at).thenComparing(t -> t.entry().receiveNumber()));
        return told;
    }

    private static Optional<Told> one(Entry entry, Accounts accounts, boolean late, boolean withWaiting, int choice) {
        List<Dispute.Version> versions = accounts.versions(entry);
        boolean disputed = versions.size() > 1;
        List<Entry> all = versions.isEmpty() ? List.of() : versions.get(Math.min(choice, versions.size() - 1)).corrections();
        List<Entry> applied = all.stream().filter(correction -> withWaiting || (!disputed && accounts.accepted(correction, entry))).toList();
        boolean waiting = late || applied.stream().anyMatch(correction -> disputed || !accounts.accepted(correction, entry));
        Dispute.Version version = Accounts.version(entry, applied);
        return version.voided() ? Optional.empty() : Optional.of(new Told(entry, version.data(), version.at(), applied, waiting));
    }

    /** The records that tablets corrected differently, and of which nobody has picked a version. */
    public static List<Dispute> disputes(List<Entry> entries) {
        return disputes(entries, new Accounts(entries));
    }

    private static List<Dispute> disputes(List<Entry> entries, Accounts accounts) {
        return entries.stream().filter(entry -> !entry.kind().equals("correction")).map(entry -> new Dispute(entry, accounts.versions(entry))).filter(dispute -> dispute.versions().size() > 1).toList();
    }

    /** The corrections, and the records written much later, that wait for somebody who wrote neither to accept them; a correction in dispute waits for a pick. */
    public static List<Entry> waiting(List<Entry> entries) {
        return waiting(entries, new Accounts(entries));
    }

    private static List<Entry> waiting(List<Entry> entries, Accounts accounts) {
        Map<String, Entry> byId = new HashMap<>();
        entries.forEach(entry -> byId.put(entry.id(), entry));
        return entries.stream().filter(entry -> {
            Entry of = entry.kind().equals("correction") ? byId.get(entry.data().text("of").orElse("")) : null;
            return of == null ? accounts.waitsAsLate(entry) : waits(entry, of, accounts);
        }).toList();
    }

    private static boolean waits(Entry correction, Entry of, Accounts accounts) {
        List<Dispute.Version> versions = accounts.versions(of);
        boolean stands = versions.stream().anyMatch(version -> version.corrections().contains(correction));
        return stands && (versions.size() > 1 || !accounts.accepted(correction, of));
    }

    /** Its kind. */
    public String kind() {
        return entry.kind();
    }
}
