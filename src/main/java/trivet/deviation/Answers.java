package trivet.deviation;

import java.time.Instant;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import trivet.check.Reading;
import trivet.deviation.Deviation.State;
import trivet.ledger.Entry;
import trivet.ledger.Fields;
import trivet.words.Words;

/**
 * What was answered to deviations, and by whom closed. A form is complete when it says what happened, the cause, how
 * control was restored, the disposition, who decided it and how it is prevented. It is closed by somebody who did not
 * write it, who verifies or releases; destroying the batch needs no second person. It does not matter which record came first.
 */
final class Answers {

    private static final List<String> NEEDED = List.of("what_happened", "cause", "control_restored", "disposition", "decided_by", "prevention");
    private final List<Entry> entries;
    private final Optional<Entry> destroyed;

    Answers(List<Entry> entries, Optional<Entry> destroyed) {
        this.entries = entries;
        this.destroyed = destroyed;
    }

    /** A matter that opens a deviation. */
    record Matter(String id, String subject, String label, boolean breach, String limit, String words, String limitWords, Instant since,
            List<Reading> readings, List<String> offers) {
    }

    Deviation of(Matter matter) {
        Map<String, Object> form = new LinkedHashMap<>();
        Set<String> writers = new HashSet<>();
        Entry last = null;
        for (Entry entry : entries) {
            if (entry.kind().equals("deviation-answer") && entry.data().text("deviation").map(matter.id()::equals).orElse(false)) {
                form.putAll(entry.data().asMap());
                writers.add(entry.person());
                last = entry;
            }
        }
        Fields answer = Fields.of(form);
        boolean complete = NEEDED.stream().allMatch(field -> answer.text(field).isPresent());
        Optional<Entry> closing = complete ? closing(matter.id(), answer, writers) : Optional.empty();
        State state = closing.isPresent() ? State.CLOSED : complete ? State.ANSWERED : State.OPEN;
        return new Deviation(matter.id(), matter.subject(), matter.label(), matter.breach(), matter.limit(), matter.words(), matter.limitWords(),
                matter.since(), matter.readings(), state, answer, Optional.ofNullable(last).map(Entry::person), closing.map(Answers::how),
                closing.map(Entry::person), closing.map(Entry::claimedAt), matter.offers());
    }

    private Optional<Entry> closing(String id, Fields answer, Set<String> writers) {
        String disposition = answer.text("disposition").orElse("");
        if (destroyed.isPresent() && disposition.equals("destroy")) {
            return destroyed;
        }
        if (disposition.equals("release")) {
            return release(id, writers);
        }
        return entries.stream().filter(entry -> entry.kind().equals("deviation-verified") && !writers.contains(entry.person())
                && entry.data().text("deviation").map(id::equals).orElse(false)).findFirst().or(() -> release(id, writers));
    }

    private Optional<Entry> release(String id, Set<String> writers) {
        return entries.stream().filter(entry -> released(entry, id) && !writers.contains(entry.person())).findFirst();
    }

    /** Whether a record is a release with evidence that lists the id. */
    static boolean released(Entry entry, String id) {
        return entry.kind().equals("released") && entry.data().text("evidence").isPresent()
                && (entry.data().texts("deviations").contains(id) || entry.data().texts("holds").contains(id) || entry.data().texts("checks").contains(id));
    }

    private static String how(Entry entry) {
        return switch (entry.kind()) {
            case "destroyed" -> Words.say("j_closed_destroyed");
            case "released" -> Words.say("j_closed_released");
            default -> Words.say("j_closed_verified");
        };
    }

    /** The number of the last release that lists the id; 0 for none. */
    long releasedAs(String id) {
        return entries.stream().filter(entry -> released(entry, id)).mapToLong(Entry::receiveNumber).max().orElse(0);
    }

    /** Whether a hold that a person laid was ended by another. */
    boolean ended(String hold, String laidBy) {
        return entries.stream().anyMatch(entry -> released(entry, hold) && !entry.person().equals(laidBy));
    }
}
