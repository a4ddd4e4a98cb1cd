package trivet.demo;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import trivet.device.Devices;
import trivet.device.Devices.Probe;
import trivet.device.Unit;
import trivet.ledger.Ledger;
import trivet.limit.Problem;
import trivet.limit.Rulebooks;
import trivet.limit.file.YamlNode;
import trivet.people.People;
import trivet.people.Person;
import trivet.people.Role;
import trivet.plan.Plans;
import trivet.site.Site;
import trivet.site.Sites;
import trivet.words.Words;

/** Thornfold Bakehouse, which does not exist: its people, units, October 2026, and some batches under way. */
@ApplicationScoped
public class DemoBakery {

    private static final ZoneId ZONE = ZoneId.of("Europe/London");
    private static final Instant BEFORE = Instant.parse("2026-09-28T08:00:00Z");

    @Inject
    People people;
    @Inject
    Devices devices;
    @Inject
    Sites sites;
    @Inject
    Plans plans;
    @Inject
    Rulebooks rulebooks;
    @Inject
    Ledger ledger;
    @Inject
    Clock clock;
    @ConfigProperty(name = "trivet.demo", defaultValue = "false")
    boolean demo;

    void start(@Observes @Priority(200) StartupEvent event) {
        if (demo && !people.hasOwner()) {
            setUp();
            record();
        }
    }

    private void setUp() {
        List<Problem> problems = new ArrayList<>();
        YamlNode cast = YamlNode.read("demo-data/bakery.yaml", text(), problems);
        sites.write(new Site("site", cast.required("name"), cast.required("address"), ZONE, LocalTime.of(3, 0), true), "demo");
        people.setPassword("olive", cast.required("owner-password"), "demo");
        for (YamlNode unit : cast.list("units")) {
            devices.write(new Unit(unit.required("id"), unit.required("name"), Unit.Kind.valueOf(unit.required("kind")), true), "demo");
        }
        cast.list("probes").forEach(probe -> devices.write(new Probe(probe.required("id"), probe.required("name"), true), "demo"));
        Set<String> adopted = new HashSet<>();
        String rulebook = cast.required("rulebook");
        rulebooks.find(rulebook).orElseThrow().limits().forEach(limit -> adopted.add(limit.id()));
        sites.confirm(rulebook, adopted, List.of(), "olive", BEFORE);
        plans.drafts().forEach(draft -> plans.approve(draft.product(), "olive", BEFORE, Words.say("j_demo_meaning")));
        for (YamlNode person : cast.list("people")) {
            Set<Role> roles = person.required("role").equals("OWNER") ? EnumSet.of(Role.OWNER, Role.BAKER) : EnumSet.of(Role.valueOf(person.required("role")));
            people.setPin(person.required("id"), person.required("pin"), "demo");
            people.write(new Person(person.required("id"), person.required("name"), person.required("initials"), roles, true), "demo");
        }
        if (!problems.isEmpty()) {
            throw new IllegalStateException(problems.toString());
        }
    }

    private static String text() {
        try (InputStream in = DemoBakery.class.getClassLoader().getResourceAsStream("demo-data/bakery.yaml")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    /** Sends the whole tape through the one way in, each batch in its order, many at once so that they share a sync. */
    private void record() {
        Month month = new Month(ZONE);
        month.october();
        live(month);
        List<List<Map.Entry<Long, Tape.Line>>> strands = strands(month.tape.ordered());
        ExecutorService pool = Executors.newFixedThreadPool(32);
        try {
            List<Future<?>> sent = new ArrayList<>();
            for (List<Map.Entry<Long, Tape.Line>> strand : strands) {
                sent.add(pool.submit(() -> strand.forEach(numbered -> ledger.put(numbered.getValue().id(), month.tape.json(numbered.getValue(), numbered.getKey()),
                        "A", numbered.getValue().entered().plusMillis(400)))));
            }
            for (Future<?> one : sent) {
                one.get();
            }
        } catch (Exception failed) {
            throw new IllegalStateException("The demo's records could not be written.", failed);
        } finally {
            pool.shutdown();
        }
    }

    private static List<List<Map.Entry<Long, Tape.Line>>> strands(List<Tape.Line> lines) {
        Map<String, List<Map.Entry<Long, Tape.Line>>> byBatch = new java.util.LinkedHashMap<>();
        long sequence = 0;
        for (Tape.Line line : lines) {
            String strand = line.batch() == null ? line.kind() : line.batch();
            byBatch.computeIfAbsent(strand, key -> new ArrayList<>()).add(Map.entry(++sequence, line));
        }
        return List.copyOf(byBatch.values());
    }

    /** Batches under way at this moment: one in the oven, two cooling, one too slow and on hold, one in the fridge. */
    private void live(Month month) {
        Instant now = clock.instant();
        LocalDate today = sites.current().orElseThrow().dayOf(now);
        for (String probe : List.of("P1", "P2")) {
            Instant checked = now.minus(Duration.ofHours(26));
            month.tape.add("probe-check", "ana", null, probe, checked, checked.plusSeconds(30), Map.of("probe", probe, "method", "ice", "temperature", Tape.celsius(0.2)));
        }
        int i = 0;
        for (int ago : new int[] {48, 75, 105, 170, 190}) {
            Instant start = now.minus(Duration.ofMinutes(ago));
            month.batch(today, i, start, now, i == 3);
            i++;
        }
    }

    /** What the console says of the demo: PINs and the owner's password, all invented. */
    public List<String> greeting() {
        return demo ? List.of("Demo bakery. PINs: Ana 1111, Ben 2222, Chidi 3333, Pat (second person) 4444, Olive (owner) 5555.",
                "Owner's id olive, password thornfold-demo, also for /reports/month/2026-10 by HTTP Basic.") : List.of();
    }
}
