package trivet.alarm.web;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import trivet.people.People;
import trivet.plan.Translations;
import trivet.site.web.Moments;

/** The words for times and people on the wall. */
@ApplicationScoped
public class WallScreen {

    @Inject
    Translations translations;
    @Inject
    Moments moments;
    @Inject
    People people;

    /** A text of a plan, in the language of whoever reads where it was translated. */
    public String text(String text) {
        return translations.in(text);
    }

    /** The clock time at the site. */
    public String time(Instant at) {
        return moments.time(at);
    }

    /** How long ago a moment was, in words. */
    public String past(Instant at) {
        return moments.past(at);
    }

    /** The initials of a person. */
    public String initials(String person) {
        return people.initials(person);
    }
}
