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
            "unit-reading", "probe-check", "out-of-oven", "back-in-oven", "reheat-begun", "put-away");

    /** The records in order of their time, with every correction applied, or without those that wait for acceptance. */
    public static List<Told> of(List<Entry> entries, boolean withWaiting) {
        Map<String, List<Entry>> corrections = new HashMap<>();
        Map<String, Set<String>> accepted = new HashMap<>();
        for (Entry entry : entries) {
            if (entry.kind().equals("correction")) {
                entry.data().text("of").ifPresent(of -> corrections.computeIfAbsent(of, key -> new ArrayList<>()).add(entry));
            } else if (entry.kind().equals("accepted")) {
                entry.data().texts("records").forEach(id -> accepted.computeIfAbsent(id, key -> new HashSet<>()).add(entry.person()));
            }
        }
        Map<String, Set<String>> typists = new HashMap<>();
        entries.stream().filter(entry -> entry.kind().equals("note") && entry.sheet().isPresent())
                .forEach(entry -> typists.computeIfAbsent(entry.sheet().get(), key -> new HashSet<>()).add(entry.person()));
        List<Told> told = new ArrayList<>();
        for (Entry entry : entries) {
            if (entry.kind().equals("correction")) {
                continue;
            }
            boolean late = JUDGED.contains(entry.kind()) && entry.writtenMuchLater() && !acceptedByAnother(accepted, entry.id(), writers(entry, typists));
            if (late && !withWaiting) {
                continue;
            }
            one(entry, corrections.getOrDefault(entry.id(), List.of()), accepted, late, withWaiting, told);
        }
        told.sort(Comparator.comparing(Told::at).thenComparing(t -> t.entry().receiveNumber()));
        return told;
    }

    /** Who measured, and who typed the paper sheet in. */
    private static Set<String> writers(Entry entry, Map<String, Set<String>> typists) {
        Set<String> writers = new HashSet<>(entry.sheet().map(sheet -> typists.getOrDefault(sheet, Set.of())).orElse(Set.of()));
        writers.add(entry.person());
        return writers;
    }

    private static void one(Entry entry, List<Entry> corrections, Map<String, Set<String>> accepted, boolean late, boolean withWaiting,
            List<Told> told) {
        Map<String, Object> data = new LinkedHashMap<>(entry.data().asMap());
        Instant at = entry.claimedAt();
        List<Entry> applied = new ArrayList<>();
        boolean waiting = late;
        boolean voided = false;
        for (Entry correction : corrections) {
            boolean ok = acceptedByAnother(accepted, correction.id(), new HashSet<>(List.of(entry.person(), correction.person())));
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

    private static boolean acceptedByAnother(Map<String, Set<String>> accepted, String id, Set<String> writers) {
        return accepted.getOrDefault(id, Set.of()).stream().anyMatch(person -> !writers.contains(person));
    }

    /** Its kind. */
    public String kind() {
        return entry.kind();
    }
}
