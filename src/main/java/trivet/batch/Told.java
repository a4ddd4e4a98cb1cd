package trivet.batch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
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

    private static final Set<String> JUDGED = Set.of("cook-reading", "cooling-reading", "reheat-reading", "food-reading", "hot-hold-reading",
            "unit-reading", "probe-check", "plan-check", "programme-check", "out-of-oven", "back-in-oven", "reheat-begun", "put-away");

    /** The records in order of their time, with every correction applied, or without those that wait for acceptance. */
    public static List<Told> of(List<Entry> entries, boolean withWaiting) {
        Accounts accounts = new Accounts(entries);
        List<Told> told = new ArrayList<>();
        for (Entry entry : entries) {
            if (entry.kind().equals("correction")) {
                continue;
            }
            boolean late = accounts.waitsAsLate(entry);
            if (late && !withWaiting) {
                continue;
            }
            one(entry, accounts, late, withWaiting, told);
        }
        told.sort(Comparator.comparing(Told::at).thenComparing(t -> t.entry().receiveNumber()));
        return told;
    }

    /** The corrections, and the records written much later, that wait for somebody who wrote neither to accept them. */
    public static List<Entry> waiting(List<Entry> entries) {
        Accounts accounts = new Accounts(entries);
        Map<String, Entry> byId = new HashMap<>();
        entries.forEach(entry -> byId.put(entry.id(), entry));
        return entries.stream().filter(entry -> {
            Entry of = entry.kind().equals("correction") ? byId.get(entry.data().text("of").orElse("")) : null;
            return of == null ? accounts.waitsAsLate(entry) : !accounts.accepted(entry.id(), Set.copyOf(List.of(of.person(), entry.person())));
        }).toList();
    }

    /** Who corrected, accepted and typed in what. */
    private static final class Accounts {
        private final Map<String, List<Entry>> corrections = new HashMap<>();
        private final Map<String, Set<String>> accepted = new HashMap<>();
        private final Map<String, Set<String>> typists = new HashMap<>();

        private Accounts(List<Entry> entries) {
            for (Entry entry : entries) {
                switch (entry.kind()) {
                    case "correction" -> entry.data().text("of").ifPresent(of -> corrections.computeIfAbsent(of, key -> new ArrayList<>()).add(entry));
                    case "accepted" -> entry.data().texts("records").forEach(id -> accepted.computeIfAbsent(id, key -> new HashSet<>()).add(entry.person()));
                    case "note" -> entry.sheet().ifPresent(sheet -> typists.computeIfAbsent(sheet, key -> new HashSet<>()).add(entry.person()));
                    default -> { }
                }
            }
        }

        private boolean accepted(String id, Set<String> writers) {
            return accepted.getOrDefault(id, Set.of()).stream().anyMatch(person -> !writers.contains(person));
        }

        private boolean waitsAsLate(Entry entry) {
            Set<String> writers = new HashSet<>(entry.sheet().map(sheet -> typists.getOrDefault(sheet, Set.of())).orElse(Set.of()));
            writers.add(entry.person());
            return JUDGED.contains(entry.kind()) && entry.writtenMuchLater() && !accepted(entry.id(), writers);
        }
    }

    private static void one(Entry entry, Accounts accounts, boolean late, boolean withWaiting, List<Told> told) {
        Map<String, Object> data = new LinkedHashMap<>(entry.data().asMap());
        Instant at = entry.claimedAt();
        List<Entry> applied = new ArrayList<>();
        boolean waiting = late;
        boolean voided = false;
        for (Entry correction : accounts.corrections.getOrDefault(entry.id(), List.of())) {
            boolean ok = accounts.accepted(correction.id(), new HashSet<>(List.of(entry.person(), correction.person())));
            if (!ok && !withWaiting) {
                continue;
            }
            waiting |= !ok;
            applied.add(correction);
            correction.data().object("data").ifPresent(changed -> data.putAll(changed.asMap()));
            voided |= correction.data().flag("void");
            Instant moved = correction.data().text("claimed_at").map(Told::instant).orElse(null);
            at = moved == null ? at : moved;
        }
        if (!voided) {
            told.add(new Told(entry, Fields.of(data), at, List.copyOf(applied), waiting));
        }
    }

    private static Instant instant(String text) {
        try {
            return java.time.OffsetDateTime.parse(text).toInstant();
        } catch (java.time.DateTimeException unreadable) {
            return null;
        }
    }

    /** Its kind. */
    public String kind() {
        return entry.kind();
    }
}
