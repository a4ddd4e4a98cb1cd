package trivet.deviation;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import trivet.check.CoolingRun;
import trivet.check.Reading;
import trivet.device.Devices;
import trivet.device.Unit;
import trivet.ledger.Entry;
import trivet.ledger.Fields;
import trivet.ledger.Judge;
import trivet.ledger.VersionRef;
import trivet.limit.Verdict;
import trivet.measure.Temperature;
import trivet.site.Confirmed;
import trivet.site.Sites;
import trivet.words.Words;

/** What is said of a record at its receipt: the verdict, the words, and the rulebook that judged it. */
@ApplicationScoped
public class ReceiptJudge implements Judge {

    private static final Set<String> LOOKED_AT = Set.of("plan-check", "programme-check");
    private static final Set<String> COOLING = Set.of("cooling-reading", "food-reading");

    @Inject
    Daybook daybook;
    @Inject
    Devices devices;
    @Inject
    Sites sites;

    @Override
    public Fields verdict(Entry received) {
        if (LOOKED_AT.contains(received.kind()) && sites.current().isPresent()) {
            boolean good = received.data().flag("good");
            return said(received, good ? Verdict.WITHIN : Verdict.BREACHED, null, good ? Words.say("j_as_it_should_be") : Words.say("j_not_as_it_should_be", received.data().text("words").orElse("")));
        }
        Optional<Temperature> temperature = received.data().temperature("temperature");
        if (temperature.isEmpty() || sites.current().isEmpty()) {
            return said(received, Verdict.UNJUDGED, "not-a-reading", "");
        }
        if (received.kind().equals("probe-check")) {
            boolean within = daybook.probePassed(received.data(), received.claimedAt());
            return said(received, within ? Verdict.WITHIN : Verdict.BREACHED, null, within ? Words.say("j_the_probe_is_right", temperature.get())
                    : Words.say("j_the_probe_is_off_do_not", temperature.get()));
        }
        if (received.kind().equals("unit-reading")) {
            return unit(received);
        }
        return received.batch().flatMap(id -> daybook.batch(id, List.of(received))).map(batch -> batch(received, batch))
                .orElseGet(() -> said(received, Verdict.UNJUDGED, "batch-not-known", Words.say("j_the_batch_of_this_reading_has")));
    }

    private Fields unit(Entry received) {
        Optional<Unit> unit = received.data().text("unit").flatMap(devices::unit);
        if (unit.isEmpty()) {
            return said(received, Verdict.UNJUDGED, "unit-not-known", Words.say("j_this_unit_is_not_known_here"));
        }
        UnitRecord record = UnitFold.of(unit.get(), sites.current().orElseThrow(), daybook.rules(), List.of(received), List.of(), Set.of(), received.receivedAt().plus(Duration.ofMinutes(1)));
        Reading reading = record.readings().get(0);
        return said(received, reading.verdict(), reading.verdict() == Verdict.UNJUDGED ? "no-limit" : null, reading.words());
    }

    private Fields batch(Entry received, BatchRecord batch) {
        Optional<Reading> cook = batch.cookReadings().stream().filter(reading -> reading.id().equals(received.id())).findFirst();
        if (cook.isPresent()) {
            return said(received, cook.get().verdict(), cook.get().verdict() == Verdict.UNJUDGED ? "not-judged" : null, cook.get().words());
        }
        if (COOLING.contains(received.kind())) {
            for (CoolingRun run : batch.runs()) {
                Optional<Reading> reading = run.readings().stream().filter(r -> r.id().equals(received.id())).findFirst();
                if (reading.isPresent()) {
                    String reason = run.verdict().stages().stream().flatMap(stage -> stage.reason().stream()).findFirst().map(r -> r.word()).orElse(null);
                    return said(received, run.verdict().whole(), run.verdict().whole() == Verdict.UNJUDGED ? reason : null,
                            reading.get().temperature().words() + ". " + reading.get().words());
                }
            }
        }
        Optional<Reading> other = Stream.of(batch.reheatReadings(), batch.hotReadings(), batch.foodReadings()).flatMap(List::stream)
                .filter(reading -> reading.id().equals(received.id())).findFirst();
        return other.map(reading -> said(received, reading.verdict(), reading.verdict() == Verdict.UNJUDGED ? "not-judged" : null, reading.words()))
                .orElseGet(() -> said(received, Verdict.UNJUDGED, "not-judged", ""));
    }

    private Fields said(Entry received, Verdict verdict, String reason, String words) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("verdict", verdict.word());
        map.put("reason", reason);
        map.put("words", words);
        Optional<VersionRef> ref = sites.inForceAt(received.claimedAt()).map(Confirmed::ref);
        map.put("rulebook", ref.map(r -> Map.of("id", r.id(), "version", r.version(), "sha256", r.sha256())).orElse(null));
        return Fields.of(map);
    }
}
