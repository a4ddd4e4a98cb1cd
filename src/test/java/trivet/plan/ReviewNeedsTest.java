package trivet.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import trivet.ledger.VersionRef;
import trivet.plan.ReviewNeeds.Repeats;
import trivet.plan.ReviewNeeds.Rules;
import trivet.study.Examples;
import trivet.study.Study;
import trivet.study.Study.Review;

/** What asks for a review, and what answers it. */
class ReviewNeedsTest {

    private static final Study STUDY = Examples.study("deep-quiche");
    private static final Instant SIGNED = Instant.parse("2026-01-10T08:00:00Z");
    private static final ApprovedPlan APPROVED = new ApprovedPlan(Plan.of(STUDY), new VersionRef("deep-quiche", 1, "0".repeat(64)), "olive", SIGNED, SIGNED, "", "", Optional.of(STUDY));
    private static final Rules FIRST = new Rules(new VersionRef("eu", 1, "1".repeat(64)), SIGNED);
    private static final Rules SECOND = new Rules(new VersionRef("eu", 2, "2".repeat(64)), Instant.parse("2026-05-01T08:00:00Z"));

    private static List<String> asked(Study draft, Rules now, List<Repeats> repeats, String moment) {
        return ReviewNeeds.of(APPROVED, draft, Optional.of(FIRST), Optional.of(now), repeats, ZoneOffset.UTC, Instant.parse(moment)).stream().map(ReviewNeeds.Need::asked).toList();
    }

    private static Study reviewed(String asked, String on, String outcome) {
        return STUDY.with("reviews", List.of(new Review("r", asked, "because", on, "Olive", outcome.isEmpty() ? "" : "everything", outcome)));
    }

    @Test
    void a_year_to_the_day_and_a_review_begins_the_next() {
        assertEquals(List.of(), asked(STUDY, FIRST, List.of(), "2027-01-09T23:59:00Z"));
        assertEquals(List.of("year"), asked(STUDY, FIRST, List.of(), "2027-01-10T00:00:00Z"));
        assertEquals(List.of(), asked(reviewed("year", "2027-01-10", "no change"), FIRST, List.of(), "2027-01-10T12:00:00Z"));
    }

    @Test
    void a_changed_rulebook_until_it_was_looked_at() {
        assertEquals(List.of("law"), asked(STUDY, SECOND, List.of(), "2026-06-01T00:00:00Z"));
        assertEquals(List.of("law"), asked(reviewed("law", "2026-04-30", "too early"), SECOND, List.of(), "2026-06-01T00:00:00Z"));
        assertEquals(List.of(), asked(reviewed("law", "2026-05-01", "limits compared"), SECOND, List.of(), "2026-06-01T00:00:00Z"));
    }

    @Test
    void a_deviation_repeated_three_times_and_not_two() {
        List<Instant> two = List.of(Instant.parse("2026-03-01T08:00:00Z"), Instant.parse("2026-03-05T08:00:00Z"));
        List<Instant> three = List.of(two.get(0), two.get(1), Instant.parse("2026-03-09T08:00:00Z"));
        assertEquals(List.of(), asked(STUDY, FIRST, List.of(new Repeats("cooling", two)), "2026-04-01T00:00:00Z"));
        assertEquals(List.of("deviations"), asked(STUDY, FIRST, List.of(new Repeats("cooling", three)), "2026-04-01T00:00:00Z"));
        assertEquals(List.of(), asked(reviewed("deviations", "2026-03-10", "second chiller bought"), FIRST, List.of(new Repeats("cooling", three)), "2026-04-01T00:00:00Z"));
    }

    @Test
    void a_complaint_typed_in_stays_until_its_outcome() {
        assertEquals(List.of("complaint"), asked(reviewed("complaint", "2026-03-01", ""), FIRST, List.of(), "2026-03-02T00:00:00Z"));
        assertEquals(List.of(), asked(reviewed("complaint", "2026-03-01", "label put right"), FIRST, List.of(), "2026-03-02T00:00:00Z"));
    }
}
