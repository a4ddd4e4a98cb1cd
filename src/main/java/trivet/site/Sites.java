package trivet.site;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import trivet.ledger.Fields;
import trivet.ledger.Register;
import trivet.ledger.VersionRef;
import trivet.limit.LimitOverride;
import trivet.limit.Rulebook;
import trivet.limit.Rulebooks;
import trivet.limit.Standing;
import trivet.measure.Digest;

/** The site and its confirmed rulebooks, kept as versions in the register. */
@ApplicationScoped
public class Sites {

    @Inject
    Register register;
    @Inject
    Rulebooks rulebooks;

    private final Map<Long, Confirmed> parsed = new ConcurrentHashMap<>();

    /** The site, once it has been set up. */
    public Optional<Site> current() {
        return register.latest("site", "site").map(version -> new Site("site", version.body().text("name").orElse("The bakery"),
                version.body().text("address").orElse(""), ZoneId.of(version.body().text("zone").orElse("Europe/London")),
                LocalTime.parse(version.body().text("day_ends").orElse("03:00")), version.body().flag("demo")));
    }

    /** Sets the site up, or writes a further version of it. */
    public void write(Site site, String by) {
        register.write("site", "site", by, Fields.of(Map.of("name", site.name(), "address", site.address(), "zone", site.zone().getId(),
                "day_ends", site.dayEnds().toString(), "demo", site.demo())));
    }

    /** Every confirmation in order. */
    public List<Confirmed> confirmations() {
        List<Confirmed> all = new ArrayList<>();
        int number = 0;
        for (Register.Version version : register.all("rulebook")) {
            int count = ++number;
            all.add(parsed.computeIfAbsent(version.number(), key -> confirmed(version, count)));
        }
        return all;
    }

    /** The rulebook that judges what happened at a moment; empty before the first confirmation. */
    public Optional<Confirmed> inForceAt(Instant moment) {
        Optional<Confirmed> inForce = Optional.empty();
        for (Confirmed confirmed : confirmations()) {
            if (!confirmed.at().isAfter(moment)) {
                inForce = Optional.of(confirmed);
            }
        }
        return inForce;
    }

    /** The rulebooks in force at some time from one moment to another. */
    public List<Confirmed> inForceBetween(Instant from, Instant to) {
        List<Confirmed> spanning = new ArrayList<>();
        inForceAt(from).ifPresent(spanning::add);
        confirmations().stream().filter(c -> c.at().isAfter(from) && !c.at().isAfter(to)).forEach(spanning::add);
        return spanning;
    }

    /**
     * Confirms a rulebook, which judges from now on and never what was before.
     *
     * @param from the moment from which it judges; the demo's lies before its records
     */
    public void confirm(String rulebook, Set<String> adopted, List<LimitOverride> overrides, String by, Instant from) {
        Map<String, Object> body = new LinkedHashMap<>();
        String text = rulebooks.text(rulebook);
        rulebooks.read(text).confirmed(adopted, overrides);
        body.put("text", text);
        body.put("adopted", List.copyOf(new TreeSet<>(adopted)));
        body.put("overrides", overrides.stream().map(o -> Map.<String, Object>of("limit", o.limit(), "path", o.path(), "value", o.value(),
                "reason", o.reason(), "source", o.source(), "standing", o.standing().name())).toList());
        body.put("from", from.toString());
        body.put("sha256", Digest.sha256(text + "\n" + body.get("adopted") + "\n" + overrides));
        register.write("rulebook", rulebook, by, Fields.of(body));
    }

    private Confirmed confirmed(Register.Version version, int number) {
        Fields body = version.body();
        Set<String> adopted = Set.copyOf(body.texts("adopted"));
        List<LimitOverride> overrides = body.objects("overrides").stream().map(o -> new LimitOverride(o.text("limit").orElseThrow(),
                o.text("path").orElseThrow(), o.text("value").orElseThrow(), o.text("reason").orElseThrow(), o.text("source").orElseThrow(),
                Standing.valueOf(o.text("standing").orElseThrow()))).toList();
        Rulebook rulebook = rulebooks.read(body.text("text").orElseThrow()).confirmed(adopted, overrides);
        return new Confirmed(rulebook, new VersionRef(rulebook.id(), number, body.text("sha256").orElseThrow()), version.by(),
                Instant.parse(body.text("from").orElseThrow()), adopted, overrides);
    }
}
