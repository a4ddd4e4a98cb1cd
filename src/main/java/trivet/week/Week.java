package trivet.week;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import trivet.ledger.Entry;
import trivet.ledger.Journal;
import trivet.people.People;
import trivet.sign.Signs;
import trivet.site.Sites;
import trivet.words.Words;

/** Looks through a month of unit readings for what is worth a question; the rate of false alarms is controlled over the month. */
@ApplicationScoped
public class Week {

    private static final Duration LOOKED_AT = Duration.ofDays(30);
    private static final double SHARE = 0.001;
    private static final double RESOLUTION = 0.1;
    private static final Duration TOO_NEAR = Duration.ofSeconds(20);
    private static final int BURST = 5;
    /** How much the times between readings vary when people take them, at the least; common practice, no source. */
    private static final double PLAUSIBLE_SPREAD_MINUTES = 1;

    @Inject
    Journal journal;
    @Inject
    Sites sites;
    @Inject
    People people;
    @Inject
    Clock clock;

    /** A sign: what was seen, where, and the probability of something as odd by chance; NaN for what is simply counted. */
    public record Sign(String where, String words, double probability) {
    }

    /** The signs of the last 30 days. */
    public List<Sign> signs() {
        Instant now = clock.instant();
        List<Entry> readings = journal.ofKind("unit-reading", now.minus(LOOKED_AT), now.plusSeconds(1));
        List<Sign> tested = new ArrayList<>();
        readings.stream().collect(Collectors.groupingBy(e -> e.data().text("unit").orElse("?"), TreeMap::new, Collectors.toList())).forEach((unit, own) -> tested.addAll(tests(unit, own)));
        regular(journal.ofKind("cooling-reading", now.minus(LOOKED_AT), now.plusSeconds(1))).ifPresent(tested::add);
        boolean[] out = Signs.standOut(tested.stream().mapToDouble(Sign::probability).toArray(), SHARE);
        List<Sign> signs = new ArrayList<>();
        for (int i = 0; i < out.length; i++) {
            if (out[i]) {
                signs.add(tested.get(i));
            }
        }
        signs.addAll(counted(readings, journal.between(now.minus(LOOKED_AT), now.plusSeconds(1))));
        return signs;
    }

    private List<Sign> tests(String unit, List<Entry> own) {
        List<Sign> tested = new ArrayList<>();
        List<Entry> ordered = own.stream().filter(e -> e.data().temperature("temperature").isPresent()).sorted(Comparator.comparing(Entry::claimedAt)).toList();
        double[] values = ordered.stream().mapToDouble(e -> e.data().temperature("temperature").orElseThrow().inCelsius().doubleValue()).toArray();
        if (values.length < Signs.FEWEST) {
            return tested;
        }
        if (Signs.digitsTestable(values, RESOLUTION)) {
            int[] digits = new int[10];
            for (double value : values) {
                digits[(int) Math.abs(Math.round(value / RESOLUTION) % 10)]++;
            }
            tested.add(new Sign(unit, Words.say("j_sign_digits"), Signs.lastDigits(digits).probability()));
        }
        int same = 0;
        int run = 1;
        int longest = 1;
        for (int i = 1; i < values.length; i++) {
            same += values[i] == values[i - 1] ? 1 : 0;
            run = values[i] == values[i - 1] ? run + 1 : 1;
            longest = Math.max(longest, run);
        }
        double p = Math.max(1.0 / values.length, chanceOfSame(values));
        if (longest > 2) {
            tested.add(new Sign(unit, Words.say("j_sign_run", longest), Signs.runOfSame(values.length, longest, Math.min(0.95, p))));
        }
        long heaped = ordered.stream().filter(e -> e.claimedAt().atZone(sites.current().orElseThrow().zone()).getMinute() % 15 == 0).count();
        tested.add(new Sign(unit, Words.say("j_sign_quarters", heaped, ordered.size()), Signs.atLeast(ordered.size(), (int) heaped, 4.0 / 60)));
        return tested;
    }

    /** Whether the times between the readings of cooling trays are more alike than hands can make them. */
    private static Optional<Sign> regular(List<Entry> readings) {
        List<Double> intervals = new ArrayList<>();
        readings.stream().filter(e -> e.batch().isPresent()).collect(Collectors.groupingBy(e -> e.batch().get())).values().forEach(own -> {
            List<Entry> ordered = own.stream().sorted(Comparator.comparing(Entry::claimedAt)).toList();
            for (int i = 1; i < ordered.size(); i++) {
                intervals.add(Duration.between(ordered.get(i - 1).claimedAt(), ordered.get(i).claimedAt()).toSeconds() / 60.0);
            }
        });
        return intervals.size() < Signs.FEWEST ? Optional.empty() : Optional.of(new Sign("", Words.say("j_sign_regular", intervals.size()),
                Signs.tooRegular(intervals.stream().mapToDouble(Double::doubleValue).toArray(), PLAUSIBLE_SPREAD_MINUTES)));
    }

    /** How often two values drawn from the unit's own history are the same. */
    private static double chanceOfSame(double[] values) {
        Map<Double, Integer> counts = new LinkedHashMap<>();
        for (double value : values) {
            counts.merge(value, 1, Integer::sum);
        }
        double n = values.length;
        return counts.values().stream().mapToDouble(c -> c * (c - 1) / (n * (n - 1))).sum();
    }

    private List<Sign> counted(List<Entry> readings, List<Entry> all) {
        List<Sign> signs = new ArrayList<>();
        List<Entry> ordered = readings.stream().sorted(Comparator.comparing(Entry::claimedAt)).toList();
        int near = 0;
        for (int i = 1; i < ordered.size(); i++) {
            boolean other = !ordered.get(i).data().text("unit").equals(ordered.get(i - 1).data().text("unit"));
            near += other && Duration.between(ordered.get(i - 1).claimedAt(), ordered.get(i).claimedAt()).compareTo(TOO_NEAR) < 0 ? 1 : 0;
        }
        if (near > 0) {
            signs.add(new Sign("", Words.say("j_sign_near", near), Double.NaN));
        }
        Map<String, Long> late = all.stream().filter(Entry::writtenLater).collect(Collectors.groupingBy(e -> sites.current().orElseThrow().dayOf(e.claimedAt()) + ", " + people.initials(e.person()), TreeMap::new, Collectors.counting()));
        late.forEach((day, count) -> {
            if (count >= BURST) {
                signs.add(new Sign(day, Words.say("j_sign_burst", count), Double.NaN));
            }
        });
        Map<String, List<String>> days = new LinkedHashMap<>();
        ordered.stream().collect(Collectors.groupingBy(e -> sites.current().orElseThrow().dayOf(e.claimedAt()).toString(), TreeMap::new, Collectors.mapping(
                e -> e.data().text("unit").orElse("") + e.data().temperature("temperature").map(t -> t.inCelsius().setScale(2, java.math.RoundingMode.HALF_EVEN)).orElse(BigDecimal.ZERO), Collectors.joining(","))))
                .forEach((day, values) -> {
                    if (values.split(",").length >= BURST) {
                        days.computeIfAbsent(values, key -> new ArrayList<>()).add(day);
                    }
                });
        days.values().stream().filter(same -> same.size() > 1).forEach(same -> signs.add(new Sign(String.join(", ", same), Words.say("j_sign_same_days"), Double.NaN)));
        return signs;
    }
}
