package trivet.site;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;

/**
 * A place of business.
 *
 * @param dayEnds the hour, inclusive, at which the business day of the date before ends; bakers begin before others' midnight
 */
public record Site(String id, String name, String address, ZoneId zone, LocalTime dayEnds, boolean demo) {

    /** The business day that a moment belongs to. */
    public LocalDate dayOf(Instant moment) {
        var local = moment.atZone(zone);
        return local.toLocalTime().isBefore(dayEnds) ? local.toLocalDate().minusDays(1) : local.toLocalDate();
    }

    /** The first moment of a business day, also where the clocks change. */
    public Instant start(LocalDate day) {
        return day.atTime(dayEnds).atZone(zone).toInstant();
    }

    /** The first moment after a business day. */
    public Instant end(LocalDate day) {
        return start(day.plusDays(1));
    }
}
