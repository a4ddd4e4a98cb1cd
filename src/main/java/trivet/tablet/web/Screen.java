package trivet.tablet.web;

import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import trivet.device.Devices.Tablet;
import trivet.device.Devices;
import trivet.ledger.Heard;
import trivet.ledger.Journal;
import trivet.ledger.VersionRef;
import trivet.people.People;
import trivet.people.Person;
import trivet.plan.Translations;
import trivet.site.Sites;
import trivet.site.web.Caller;
import trivet.site.web.Moments;
import trivet.words.Words;

/** What every screen is given: who is signed in, on which tablet, and the words for times and people. */
@RequestScoped
public class Screen {

    @Inject
    Caller caller;
    @Inject
    Sites sites;
    @Inject
    People people;
    @Inject
    Devices devices;
    @Inject
    Journal journal;
    @Inject
    Heard heard;
    @Inject
    Translations translations;
    @Inject
    Moments moments;
    @Inject
    ShellFiles shell;
    @Inject
    Clock clock;

    /** The build of the screens that this service has. */
    public String build() {
        return shell.build();
    }

    TemplateInstance of(Template template) {
        String device = caller.tablet().map(Tablet::id).orElse("");
        return template.data("screen", this).data("device", device).data("sequence", device.isEmpty() ? 0 : Math.max(journal.lastSequence(device), heard.of(device).map(Heard.Word::sequence).orElse(0L))).data("number", journal.lastNumber());
    }

    /** The person signed in, or empty text. */
    public String personId() {
        return caller.person().map(Person::id).orElse("");
    }

    /** Whether an owner is signed in with the password. */
    public boolean owner() {
        return caller.ownerSignedIn();
    }

    /** Everybody who works here and has not left. */
    public List<Person> people() {
        return people.list().stream().filter(Person::active).toList();
    }

    /** The local date and time as a form field takes it. */
    public String field(Instant instant) {
        return instant.atZone(sites.current().orElseThrow().zone()).toLocalDateTime().truncatedTo(java.time.temporal.ChronoUnit.SECONDS).toString();
    }

    /** The rulebook in force, as a record names it; empty text before one is confirmed. */
    public String rulebookRef() {
        return sites.inForceAt(clock.instant()).map(confirmed -> ref(confirmed.ref())).orElse("");
    }

    /** A version as a record names it. */
    public String ref(VersionRef version) {
        return "{\"id\":\"" + version.id() + "\",\"version\":" + version.version() + ",\"sha256\":\"" + version.sha256() + "\"}";
    }

    /** The present moment, so that a tablet can tell how far its clock is off. */
    public long millis() {
        return clock.millis();
    }

    /** What a check asks for, in words. */
    public String check(trivet.check.Check check) {
        return Words.named("check", check.sort());
    }

    /** The name of a line. */
    public String line(String line) {
        return Words.named("line", line);
    }

    /** The name of a unit, or its bare id. */
    public String unit(String id) {
        return devices.unit(id).map(trivet.device.Unit::name).orElse(id);
    }

    /** The name of the person signed in. */
    public String personName() {
        return caller.person().map(Person::name).orElse("");
    }

    /** A text of a plan, in the language of whoever reads where it was translated. */
    public String text(String text) {
        return translations.in(text);
    }

    /** The clock time at the site. */
    public String time(Instant instant) {
        return moments.time(instant);
    }

    /** The day and clock time at the site. */
    public String moment(Instant instant) {
        return moments.moment(instant);
    }

    /** The initials of a person. */
    public String initials(String person) {
        return people.initials(person);
    }

    /** The name of a person, or the bare id. */
    public String name(String person) {
        return people.name(person);
    }

    /** How long ago a moment was, in words. */
    public String past(Instant instant) {
        return moments.past(instant);
    }

    Optional<Person> person() {
        return caller.person();
    }
}
