package trivet.limit;

import java.util.Locale;
import trivet.words.Words;

/** What stands behind a number: an act, an authority's guidance, or the custom of the trade. */
public enum Standing {
    LAW,
    GUIDANCE,
    PRACTICE;

    /** The word used in rulebooks and answers: {@code law}, {@code guidance}, {@code practice}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The same word in the language of whoever reads. */
    public String words() {
        return Words.named("standing", word());
    }

    /** How a breach of such a number is worded: only a number of the law is "against the law". */
    public String breachWords() {
        return switch (this) {
            case LAW -> Words.say("j_past_the_legal_limit");
            case GUIDANCE -> Words.say("j_past_guidance");
            case PRACTICE -> Words.say("j_past_good_practice");
        };
    }
}
