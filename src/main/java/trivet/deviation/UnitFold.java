package trivet.deviation;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import trivet.batch.Told;
import trivet.check.Check;
import trivet.check.Minutes;
import trivet.check.Reading;
import trivet.deviation.Answers.Matter;
import trivet.device.Unit;
import trivet.ledger.Entry;
import trivet.ledger.Ids;
import trivet.limit.RangeLimit;
import trivet.limit.Verdict;
import trivet.measure.Temperature;
import trivet.site.Confirmed;
import trivet.site.Site;
import trivet.words.Words;

/** Folds the readings of a unit: two checks a day, and an episode from the first reading past the limit to the next within. */
final class UnitFold {

    /** When a unit is checked on a day; common practice, no source. */
    private static final List<LocalTime> TIMES = List.of(LocalTime.of(6, 0), LocalTime.of(14, 0));
    private static final Duration RECHECK = Duration.ofMinutes(30);

    private UnitFold() {
    }

    static UnitRecord of(Unit unit, Site site, Surroundings.Rules rules, List<Entry> entries, List<LocalDate> days, Set<LocalDate> closed, Instant now) {
        return Told.ways(entries).stream().map(told -> of(unit, site, rules, entries, told, days, closed, now)).reduce((with, without) -> worse(with, without, entries)).orElseThrow();
    }

    private static UnitRecord worse(UnitRecord with, UnitRecord without, List<Entry> entries) {
        Map<String, Deviation> worse = new LinkedHashMap<>();
        without.deviations().forEach(deviation -> worse.put(deviation.id(), deviation));
        with.deviations().forEach(deviation -> worse.merge(deviation.id(), deviation, (a, b) -> a.state().compareTo(b.state()) <= 0 ? a : b));
        return new UnitRecord(with.unit(), with.readings(), without.checks(), List.copyOf(worse.values()), with.limitWords(), Told.waiting(entries), Told.disputes(entries));
    }

    private static UnitRecord of(Unit unit, Site site, Surroundings.Rules rules, List<Entry> entries, List<Told> all, List<LocalDate> days, Set<LocalDate> closed, Instant now) {
        List<Reading> readings = new ArrayList<>();
        for (Told told : all) {
            if (told.kind().equals("unit-reading")) {
                told.data().temperature("temperature").ifPresent(t -> readings.add(judged(unit, rules, told, t)));
            }
        }
        String words = rules.at(now).flatMap(c -> c.rulebook().range(unit.kind().limit())).map(RangeLimit::words).orElse("");
        return new UnitRecord(unit, readings, checks(unit, site, rules, readings, days, closed, now), episodes(unit, readings, words, entries), words, List.of(), List.of());
    }

    private static Reading judged(Unit unit, Surroundings.Rules rules, Told told, Temperature temperature) {
        Reading bare = new Reading(told, temperature, Optional.empty(), Optional.empty(), Verdict.UNJUDGED, "");
        Optional<RangeLimit> limit = rules.at(told.at()).map(Confirmed::rulebook).flatMap(rulebook -> rulebook.range(unit.kind().limit()));
        if (Reading.impossible(temperature) || limit.isEmpty() || !limit.get().inForce()) {
            return bare.judged(Verdict.UNJUDGED, Words.say("j_not_judged", temperature));
        }
        Verdict verdict = limit.get().judge(temperature);
        if (limit.get().asksForAdjustment(temperature)) {
            return bare.judged(verdict, Words.say("j_within", temperature, limit.get().words()))
                    .adjusting(Words.say("j_past_the_operating_limit_adjust_and", limit.get().operating().get().words()));
        }
        return bare.judged(verdict, verdict == Verdict.WITHIN ? Words.say("j_within", temperature, limit.get().words())
                : Words.say("j_the_limit_is_this_is_probe", temperature, limit.get().words(), limit.get().basis().standing().breachWords()));
    }

    private static List<Deviation> episodes(Unit unit, List<Reading> readings, String limitWords, List<Entry> entries) {
        List<Deviation> deviations = new ArrayList<>();
        Answers answers = new Answers(entries, Optional.empty());
        List<Reading> episode = new ArrayList<>();
        Optional<Reading> good = Optional.empty();
        Optional<Reading> before = Optional.empty();
        for (Reading reading : readings) {
            if (reading.verdict() == Verdict.BREACHED) {
                before = episode.isEmpty() ? good : before;
                episode.add(reading);
            } else if (reading.verdict() == Verdict.WITHIN) {
                if (!episode.isEmpty()) {
                    deviations.add(answers.of(matter(unit, episode, before, Optional.of(reading), limitWords)));
                    episode = new ArrayList<>();
                }
                good = Optional.of(reading);
            }
        }
        if (!episode.isEmpty()) {
            deviations.add(answers.of(matter(unit, episode, before, Optional.empty(), limitWords)));
        }
        return deviations;
    }

    private static Matter matter(Unit unit, List<Reading> episode, Optional<Reading> good, Optional<Reading> within, String limitWords) {
        Reading first = episode.get(0);
        Instant since = good.map(Reading::at).orElse(first.at());
        String until = within.map(r -> Words.say("j_within_again_after_at_most_min", Minutes.between(since, r.at()).setScale(0, java.math.RoundingMode.UP).toPlainString())).orElse(Words.say("j_not_within_again_yet"));
        return new Matter(Ids.derived(unit.id() + "/deviation/" + first.id()), unit.id(), unit.name(), true, unit.kind().limit(),
                Words.say("j_at", unit.name(), first.words(), until), limitWords, first.at(), List.copyOf(episode), List.of("probe-food", "move", "hold", "destroy"));
    }

    private static List<Check> checks(Unit unit, Site site, Surroundings.Rules rules, List<Reading> readings, List<LocalDate> days, Set<LocalDate> closed, Instant now) {
        List<Check> checks = new ArrayList<>();
        if (unit.kind().limit().isEmpty()) {
            return checks;
        }
        for (LocalDate day : days) {
            for (int i = 0; i < TIMES.size(); i++) {
                Instant due = day.atTime(TIMES.get(i)).atZone(site.zone()).toInstant();
                if (rules.at(due).isEmpty()) {
                    continue;
                }
                Instant from = i == 0 ? site.start(day) : due.minus(Duration.ofHours(3));
                Instant to = i + 1 < TIMES.size() ? day.atTime(TIMES.get(i + 1)).atZone(site.zone()).toInstant().minus(Duration.ofHours(3)) : site.end(day);
                Optional<Reading> taken = readings.stream().filter(r -> !r.at().isBefore(from) && r.at().isBefore(to)).findFirst();
                Check.State state = taken.isEmpty() && closed.contains(day) ? Check.State.NOT_NEEDED : Check.state(due, taken.map(Reading::at), to, now);
                checks.add(new Check(Ids.derived(unit.id() + "/" + day + "/" + i), "unit-" + (i + 1), unit.id(), unit.name(), due, to, state,
                        taken.map(Reading::id), Optional.empty(), state == Check.State.NOT_NEEDED ? Words.say("j_closed_day_storage_not_seen") : ""));
            }
        }
        recheck(unit, readings, now).ifPresent(checks::add);
        return checks;
    }

    private static Optional<Check> recheck(Unit unit, List<Reading> readings, Instant now) {
        if (readings.isEmpty() || readings.get(readings.size() - 1).verdict() != Verdict.BREACHED) {
            return Optional.empty();
        }
        Reading warm = readings.get(readings.size() - 1);
        Instant due = warm.at().plus(RECHECK);
        return Optional.of(new Check(Ids.derived(unit.id() + "/recheck/" + warm.id()), "re-check", unit.id(), unit.name(), due, due.plus(Duration.ofHours(12)),
                Check.state(due, Optional.empty(), due.plus(Duration.ofHours(12)), now), Optional.empty(), Optional.empty(), ""));
    }
}
