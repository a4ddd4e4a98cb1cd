package trivet.plan;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import trivet.ledger.VersionRef;
import trivet.study.Study;
import trivet.words.Words;

/**
 * What asks for a review of an approved plan: a year has passed, the rulebook has changed, a deviation was repeated three times, or somebody
 * typed in a change of recipe, supplier or equipment, an outbreak or recall notice, or a complaint. A review answers it when it names what was
 * looked at and what came of it, on that day or later.
 */
public final class ReviewNeeds {

    /** From how many deviations of one control on it is repeated. */
    public static final int REPEATED = 3;

    private ReviewNeeds() {
    }

    /**
     * A review that is asked for.
     *
     * @param asked what asks, one of the words of {@link Study.Review}
     */
    public record Need(String asked, String words) {
    }

    /** A rulebook with the day it was confirmed. */
    public record Rules(VersionRef ref, Instant confirmed) {
    }

    /** Deviations of one control of a product since the plan was approved, in order. */
    public record Repeats(String limit, List<Instant> at) {
    }

    /** What a draft's reviews leave open, as of a moment. */
    public static List<Need> of(ApprovedPlan approved, Study draft, Optional<Rules> then, Optional<Rules> now, List<Repeats> repeats, ZoneId zone, Instant moment) {
        List<Need> needs = new ArrayList<>();
        LocalDate today = moment.atZone(zone).toLocalDate();
        LocalDate signed = approved.signedAt().isAfter(approved.from()) ? approved.from().atZone(zone).toLocalDate() : approved.signedAt().atZone(zone).toLocalDate();
        LocalDate last = draft.reviews().stream().filter(ReviewNeeds::done).map(review -> LocalDate.parse(review.on())).max(LocalDate::compareTo).filter(date -> date.isAfter(signed)).orElse(signed);
        if (!last.plusYears(1).isAfter(today)) {
            needs.add(new Need("year", Words.say("j_review_year", last)));
        }
        if (then.isPresent() && now.isPresent() && !then.get().ref().equals(now.get().ref()) && !answered(draft, "law", now.get().confirmed().atZone(zone).toLocalDate())) {
            needs.add(new Need("law", Words.say("j_review_law", now.get().ref().id(), now.get().ref().version())));
        }
        for (Repeats repeat : repeats) {
            LocalDate since = draft.reviews().stream().filter(review -> review.asked().equals("deviations") && done(review)).map(review -> LocalDate.parse(review.on())).max(LocalDate::compareTo).orElse(LocalDate.MIN);
            long count = repeat.at().stream().filter(at -> at.atZone(zone).toLocalDate().isAfter(since)).count();
            if (count >= REPEATED) {
                needs.add(new Need("deviations", Words.say("j_review_deviations", Words.named("limit", repeat.limit()), count)));
            }
        }
        draft.reviews().stream().filter(review -> !review.asked().isEmpty() && !done(review)).forEach(review -> needs.add(new Need(review.asked(), Words.say("j_review_typed", Words.named("choice", review.asked()), review.because()))));
        return needs;
    }

    private static boolean done(Study.Review review) {
        return !review.lookedAt().isBlank() && !review.outcome().isBlank() && review.on().matches("\\d{4}-\\d{2}-\\d{2}");
    }

    private static boolean answered(Study draft, String asked, LocalDate from) {
        return draft.reviews().stream().anyMatch(review -> review.asked().equals(asked) && done(review) && !LocalDate.parse(review.on()).isBefore(from));
    }
}
