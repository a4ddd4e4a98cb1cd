package trivet.site.web;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import trivet.site.Sites;
import trivet.words.Words;

/** The words of screens for moments, in the zone of the site and the language of whoever reads. */
@ApplicationScoped
public class Moments {

    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");
    private static final DateTimeFormatter DAY_CLOCK = DateTimeFormatter.ofPattern("d MMM HH:mm");
    private static final int MINUTES_ALONE = 120;

    @Inject
    Sites sites;
    @Inject
    Clock clock;

    /** The clock time. */
    public String time(Instant at) {
        return CLOCK.format(at.atZone(sites.current().orElseThrow().zone()));
    }

    /** The day of the month and the clock time. */
    public String moment(Instant at) {
        return DAY_CLOCK.withLocale(Words.locale()).format(at.atZone(sites.current().orElseThrow().zone()));
    }

    /** How long ago it was: minutes below two hours, then hours and minutes; begun minutes do not count. */
    public String past(Instant at) {
        long minutes = Duration.between(at, clock.instant()).toMinutes();
        return minutes < MINUTES_ALONE ? Words.say("j_past_minutes", minutes) : Words.say("j_past_hours", minutes / 60, minutes % 60);
    }
}
