package trivet.alarm;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** How many alarms there were, and what causes most of them: a limit or delay that rings often is set wrong, or something in the kitchen is. */
@ApplicationScoped
public class Tally {

    private static final int WEEKS = 4;

    @Inject
    Alarms alarms;
    @Inject
    Clock clock;

    /** Seven days, and the alarms in them. */
    public record Week(Instant from, Instant to, int count) {
    }

    /** A cause and how many alarms of the weeks looked at it was behind. */
    public record Cause(String kind, String cause, int count) {
    }

    /**
     * What was counted.
     *
     * @param weeks the last weeks, the latest first
     * @param most the cause of most alarms in them; empty where there was none
     */
    public record Count(List<Week> weeks, Optional<Cause> most, int total) {
    }

    /** Counts the last four weeks. */
    public Count count() {
        Instant now = clock.instant();
        List<Week> weeks = new ArrayList<>();
        List<Alarms.Raised> all = alarms.between(now.minus(Duration.ofDays(7L * WEEKS)), now.plusSeconds(1));
        for (int i = 0; i < WEEKS; i++) {
            Instant to = now.minus(Duration.ofDays(7L * i));
            Instant from = to.minus(Duration.ofDays(7));
            weeks.add(new Week(from, to, (int) all.stream().filter(one -> !one.raisedAt().isBefore(from) && (one.raisedAt().isBefore(to) || to.equals(now))).count()));
        }
        Map<String, List<Alarms.Raised>> causes = all.stream().collect(Collectors.groupingBy(one -> one.alarm().kind().word() + " " + one.alarm().cause()));
        Optional<Cause> most = causes.values().stream().map(list -> new Cause(list.get(0).alarm().kind().word(), list.get(0).alarm().cause(), list.size()))
                .max(java.util.Comparator.comparingInt(Cause::count).thenComparing(Cause::cause));
        return new Count(List.copyOf(weeks), most, all.size());
    }
}
