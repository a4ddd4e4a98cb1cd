package trivet.alarm.web;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import trivet.people.People;
import trivet.site.Sites;
import trivet.words.Words;

/** The words for times and people on the wall. */
@ApplicationScoped
public class WallScreen {

    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

    @Inject
    Sites sites;
    @Inject
    People people;
    @Inject
    Clock clock;

    /** The clock time at the site. */
    public String time(Instant at) {
        return CLOCK.format(at.atZone(sites.current().orElseThrow().zone()));
    }

    /** How long ago a moment was, in words. */
    public String past(Instant at) {
        long minutes = Duration.between(at, clock.instant()).toMinutes();
        return minutes < 120 ? Words.say("j_past_minutes", minutes) : Words.say("j_past_hours", minutes / 60, minutes % 60);
    }

    /** The initials of a person. */
    public String initials(String person) {
        return people.initials(person);
    }
}
