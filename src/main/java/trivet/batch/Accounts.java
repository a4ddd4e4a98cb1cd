package trivet.batch;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import trivet.ledger.Entry;
import trivet.ledger.Fields;

/** Who corrected, accepted, picked and typed in what. */
final class Accounts {

    private static final Set<String> JUDGED = Set.of("cook-reading", "cooling-reading", "reheat-reading", "food-reading", "hot-hold-reading",
            "unit-reading", "probe-check", "plan-check", "programme-check", "out-of-oven", "back-in-oven", "reheat-begun", "put-away");
    private final Map<String, List<Entry>> corrections = new HashMap<>();
    private final Map<String, Set<String>> accepted = new HashMap<>();
    private final Map<String, Set<String>> typists = new HashMap<>();
    private final Map<String, Entry> picks = new HashMap<>();

    Accounts(List<Entry> entries) {
        for (Entry entry : entries) {
            switch (entry.kind()) {
                case "correction" -> entry.data().text("of").ifPresent(of -> corrections.computeIfAbsent(of, key -> new ArrayList<>()).add(entry));
                case "accepted" -> entry.data().texts("records").forEach(id -> accepted.computeIfAbsent(id, key -> new HashSet<>()).add(entry.person()));
                case "picked" -> entry.data().text("of").ifPresent(of -> picks.merge(of, entry, (a, b) -> a.receiveNumber() > b.receiveNumber() ? a : b));
                case "note" -> entry.sheet().ifPresent(sheet -> typists.computeIfAbsent(sheet, key -> new HashSet<>()).add(entry.person()));
                default -> { }
            }
        }
    }

    private boolean accepted(String id, Set<String> writers) {
        return accepted.getOrDefault(id, Set.of()).stream().anyMatch(person -> !writers.contains(person));
    }

    /** Whether a correction was accepted, or picked, by somebody who wrote neither it nor what it corrects. */
    boolean accepted(Entry correction, Entry of) {
        Set<String> writers = new HashSet<>(List.of(of.person(), correction.person()));
        boolean picked = pick(of).filter(pick -> names(pick, correction) && !writers.contains(pick.person())).isPresent();
        return picked || accepted(correction.id(), writers);
    }

    boolean waitsAsLate(Entry entry) {
        Set<String> writers = new HashSet<>(entry.sheet().map(sheet -> typists.getOrDefault(sheet, Set.of())).orElse(Set.of()));
        writers.add(entry.person());
        return JUDGED.contains(entry.kind()) && entry.writtenMuchLater() && !accepted(entry.id(), writers);
    }

    private Optional<Entry> pick(Entry of) {
        return Optional.ofNullable(picks.get(of.id()));
    }

    private static boolean names(Entry pick, Entry correction) {
        return pick.data().text("correction").map(correction.id()::equals).orElse(false);
    }

    /** What each tablet's corrections make of a record, where they differ; a pick sets aside all that came before it and were not picked. */
    List<Dispute.Version> versions(Entry of) {
        List<Entry> all = corrections.getOrDefault(of.id(), List.of());
        Optional<Entry> pick = pick(of).filter(one -> all.stream().anyMatch(correction -> names(one, correction)));
        Map<String, List<Entry>> byTablet = new LinkedHashMap<>();
        String picked = pick.flatMap(one -> all.stream().filter(correction -> names(one, correction)).map(Entry::device).findFirst()).orElse("");
        long upTo = pick.flatMap(one -> all.stream().filter(correction -> names(one, correction)).map(Entry::receiveNumber).findFirst()).orElse(0L);
        for (Entry correction : all) {
            boolean stands = pick.isEmpty() || correction.receiveNumber() > pick.get().receiveNumber() || (correction.device().equals(picked) && correction.receiveNumber() <= upTo);
            if (stands) {
                byTablet.computeIfAbsent(correction.device(), key -> new ArrayList<>()).add(correction);
            }
        }
        List<Dispute.Version> versions = new ArrayList<>();
        byTablet.values().stream().map(list -> version(of, list)).forEach(versions::add);
        return versions.size() > 1 && versions.stream().allMatch(versions.get(0)::sameAs)
                ? List.of(version(of, byTablet.values().stream().flatMap(List::stream).toList())) : List.copyOf(versions);
    }

    /** What corrections make of a record, laid over it in their order. */
    static Dispute.Version version(Entry of, List<Entry> applied) {
        Map<String, Object> data = new LinkedHashMap<>(of.data().asMap());
        Instant at = of.claimedAt();
        boolean voided = false;
        for (Entry correction : applied) {
            correction.data().object("data").ifPresent(changed -> data.putAll(changed.asMap()));
            voided |= correction.data().flag("void");
            at = correction.data().text("claimed_at").flatMap(Accounts::instant).orElse(at);
        }
        return new Dispute.Version(List.copyOf(applied), Fields.of(data), at, voided);
    }

    private static Optional<Instant> instant(String text) {
        try {
            return Optional.of(OffsetDateTime.parse(text).toInstant());
        } catch (DateTimeException unreadable) {
            return Optional.empty();
        }
    }
}
