package trivet.deviation;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
 *
 * @param last what was noted last
 */
public record ProgrammeRecord(Plan.Attention programme, Optional<Check> check, Optional<Told> last, List<Deviation> deviations) {

    /** When a programme is looked at on a day; common practice, no source. */
    private static final LocalTime TIME = LocalTime.of(9, 0);

    static ProgrammeRecord of(Plan.Attention programme, Instant known, Site site, LocalDate day, boolean baking, List<Entry> entries, Instant now) {
        List<Told> noted = Told.of(entries, true).stream().filter(told -> told.kind().equals("programme-check") && told.data().text("item").map(programme.id()::equals).orElse(false)).toList();
        Optional<Told> last = noted.isEmpty() ? Optional.empty() : Optional.of(noted.get(noted.size() - 1));
        Instant end = site.end(day);
        Optional<Told> today = noted.stream().filter(told -> !told.at().isBefore(site.start(day)) && told.at().isBefore(end)).findFirst();
        Instant since = noted.stream().filter(told -> told.at().isBefore(site.start(day))).map(Told::at).reduce((a, b) -> b).orElse(known);
        boolean due = programme.often().equals("daily") ? baking : !site.dayOf(since).plusDays(days(programme.often())).isAfter(day);
        Optional<Check> check = today.isEmpty() && !due ? Optional.empty() : Optional.of(check(programme, site, day, today, now));
        return new ProgrammeRecord(programme, check, last, deviations(programme, noted, entries));
    }

    private static Check check(Plan.Attention programme, Site site, LocalDate day, Optional<Told> today, Instant now) {
        Instant due = day.atTime(TIME).atZone(site.zone()).toInstant();
        return new Check(Ids.derived("programme/" + programme.id() + "/" + day), Check.PROGRAMME + programme.id() + "-1", programme.id(), programme.title(), due, Check.state(due, today.map(Told::at), site.end(day), now),
                today.map(told -> told.entry().id()), Optional.empty(), "");
    }

    private static long days(String often) {
        return switch (often) {
            case "weekly" -> Duration.ofDays(7).toDays();
            case "monthly" -> Duration.ofDays(30).toDays();
            default -> Duration.ofDays(365).toDays();
        };
    }

    private static List<Deviation> deviations(Plan.Attention programme, List<Told> noted, List<Entry> entries) {
        List<Deviation> deviations = new ArrayList<>();
        Answers answers = new Answers(entries, Optional.empty());
        for (Told told : noted) {
            if (!told.data().flag("good")) {
                deviations.add(answers.of(new Matter(Ids.derived("programme/" + told.entry().id()), programme.id(), programme.title(), true, Check.PROGRAMME + programme.id(), Words.say("j_own_check_not_good", programme.title(), told.data().text("words").orElse("–")),
                        programme.what(), told.at(), List.of(), List.of("hold", "destroy"))));
            }
        }
        return deviations;
    }
}
