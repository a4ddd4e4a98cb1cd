package trivet.deviation;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import trivet.batch.Told;
import trivet.check.Check;
import trivet.deviation.Answers.Matter;
import trivet.ledger.Entry;
import trivet.ledger.Ids;
import trivet.plan.Plan;
import trivet.site.Site;
import trivet.words.Words;

/**
 * A prerequisite programme that needs greater attention, with its check of a day and what was noted of it. A daily one falls due each day,
 * the others when their time has passed since they were last noted; a day with nothing baked asks for none.
 * What waits for acceptance betters nothing: what was not good stays a deviation until a correction of it is accepted.
 */
public record ProgrammeRecord(Plan.Attention programme, Optional<Check> check, List<Deviation> deviations) {

    /** When a programme is looked at on a day; common practice, no source. */
    private static final LocalTime TIME = LocalTime.of(9, 0);

    static ProgrammeRecord of(Plan.Attention programme, Instant known, Site site, LocalDate day, boolean baking, Noted all, Instant now) {
        List<Told> noted = of(programme, all.with());
        Instant end = site.end(day);
        Optional<Told> today = noted.stream().filter(told -> !told.at().isBefore(site.start(day)) && told.at().isBefore(end)).findFirst();
        Instant since = noted.stream().filter(told -> told.at().isBefore(site.start(day))).map(Told::at).reduce((a, b) -> b).orElse(known);
        boolean due = programme.often().equals("daily") ? baking : !site.dayOf(since).plusDays(days(programme.often())).isAfter(day);
        Optional<Check> check = today.isEmpty() && !due ? Optional.empty() : Optional.of(check(programme, site, day, today, now));
        return new ProgrammeRecord(programme, check, deviations(programme, all));
    }

    private static List<Told> of(Plan.Attention programme, List<Told> told) {
        return told.stream().filter(one -> one.kind().equals("programme-check") && one.data().text("item").map(programme.id()::equals).orElse(false)).toList();
    }

    /**
     * What was noted of all programmes, told once.
     *
     * @param with with the corrections and late records that wait for acceptance
     * @param ways every way in which they may be read
     */
    record Noted(List<Entry> entries, List<Told> with, List<List<Told>> ways) {

        static Noted of(List<Entry> entries) {
            return new Noted(entries, Told.of(entries, true), Told.ways(entries));
        }
    }

    private static Check check(Plan.Attention programme, Site site, LocalDate day, Optional<Told> today, Instant now) {
        Instant due = day.atTime(TIME).atZone(site.zone()).toInstant();
        return new Check(Ids.derived("programme/" + programme.id() + "/" + day), Check.PROGRAMME + programme.id() + "-1", programme.id(), programme.title(), due, site.end(day), Check.state(due, today.map(Told::at), site.end(day), now),
                today.map(told -> told.entry().id()), Optional.empty(), "");
    }

    private static long days(String often) {
        return switch (often) {
            case "weekly" -> 7;
            case "monthly" -> 30;
            default -> 365;
        };
    }

    private static List<Deviation> deviations(Plan.Attention programme, Noted all) {
        List<Deviation> deviations = new ArrayList<>();
        Answers answers = new Answers(all.entries(), Optional.empty());
        Set<String> seen = new HashSet<>();
        for (Told told : all.ways().stream().flatMap(way -> of(programme, way).stream()).toList()) {
            if (!told.data().flag("good") && seen.add(told.entry().id())) {
                deviations.add(answers.of(new Matter(Ids.derived("programme/" + told.entry().id()), programme.id(), programme.title(), true, Check.PROGRAMME + programme.id(), Words.say("j_own_check_not_good", programme.title(), told.data().text("words").orElse("–")),
                        programme.what(), told.at(), List.of(), List.of("hold", "destroy"))));
            }
        }
        return deviations;
    }
}
