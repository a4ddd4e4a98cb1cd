package trivet.deviation;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import trivet.batch.Life;
import trivet.batch.Told;
import trivet.check.Check;
import trivet.check.CoolingRun;
import trivet.check.Reading;
import trivet.cooling.StageVerdict;
import trivet.deviation.Answers.Matter;
import trivet.ledger.Entry;
import trivet.ledger.Ids;
import trivet.limit.AlternativesLimit;
import trivet.limit.Verdict;
import trivet.plan.Plan;
import trivet.words.Words;

/** Judges what the records of a batch tell: its verdicts, the deviations that they open, and what holds it. */
final class BatchJudgement {

    private final BatchFold fold;
    private final Answers answers;
    private final List<Matter> matters = new ArrayList<>();
    private final List<Deviation> settled = new ArrayList<>();
    private final List<Hold> holds;
    private final List<CoolingRun> runs;
    private final StorageJudgement storage;
    private final HeldVersions versions;
    private final Set<String> probeFirst = new HashSet<>();
    private Verdict coolingVerdict = Verdict.UNJUDGED;

    private BatchJudgement(BatchFold fold) {
        this.fold = fold;
        this.answers = new Answers(fold.entries, fold.destroyed());
        this.holds = new ArrayList<>(fold.holds);
        this.runs = fold.hot || fold.life == Life.STRUCK_OUT ? List.of()
                : fold.cooling.judged(fold.around.rules(), fold.asOf(), reading -> fold.doubt(reading.told()).or(() -> fold.clockDoubt(reading.told())));
        this.storage = new StorageJudgement(fold, answers);
        this.versions = new HeldVersions(fold, answers);
        if (fold.life != Life.STRUCK_OUT) {
            judgeCook();
            judgeOwn();
            judgeReheats();
            judgeCooling();
            judgeStorage();
            judgeVersions();
            holds.removeIf(hold -> answers.ended(hold.id(), fold.entries.stream().filter(e -> e.id().equals(hold.id())).map(Entry::person).findFirst().orElse("")));
        }
    }

    /** The record of a batch as this reading of the doubtful entries gives it. */
    static BatchRecord of(BatchFold fold) {
        return new BatchJudgement(fold).record();
    }

    private List<String> offers(String limit) {
        List<String> offers = fold.plan.map(p -> p.plan().onBreach(limit)).filter(list -> !list.isEmpty()).orElse(List.of("hold", "destroy"));
        return offers.stream().filter(offer -> !offer.equals("reheat") || reheatRefusal().isEmpty()).toList();
    }

    private Optional<String> reheatRefusal() {
        if (runs.isEmpty()) {
            return Optional.of(Words.say("j_nothing_is_known_of_its_cooling"));
        }
        List<CoolingRun> last = runs.stream().filter(run -> run.number() == runs.get(runs.size() - 1).number()).toList();
        return Reheat.refusal(fold.plan.map(p -> p.plan().reheatMinutes()).orElse(0), last, fold.reheats.size(), fold.around.now());
    }

    private String limitWords(String limit) {
        return fold.around.rules().at(fold.start.claimedAt()).flatMap(c -> c.rulebook().alternatives(limit))
                .map(rows -> rows.basis().source() + " (" + rows.basis().standing().words() + ")").orElse(Words.say("j_no_rulebook_was_confirmed"));
    }

    private void open(String key, String limit, String words, String limitWords, Instant since, List<Reading> readings) {
        matters.add(new Matter(Ids.derived(fold.id + "/" + key), fold.id, fold.code, false, limit, words, limitWords, since, readings, offers(limit)));
    }

    private void judgeCook() {
        String words = limitWords("core-cook");
        List<Reading> all = fold.cook.readings();
        group(fold.cook.uncorrected(), "core-cook", words, reading -> Words.say("j_core", reading.words()));
        boolean unmeasured = all.isEmpty() && (fold.cooling.begun() || fold.putAway.isPresent() || !fold.around.now().isBefore(fold.dayEnd()));
        if (fold.cook.uncorrected().isEmpty() && (unmeasured || (!all.isEmpty() && fold.cook.verdict() == Verdict.UNJUDGED))) {
            String why = unmeasured ? Words.say("j_the_core_was_not_probed_a") : all.get(all.size() - 1).words();
            open("core", "core-cook", why, words, fold.start.claimedAt(), all);
        }
        if (!fold.cook.corrected().isEmpty()) {
            Reading first = fold.cook.corrected().get(0);
            Reading passed = all.get(all.size() - 1);
            settled.add(settled(first, fold.cook.corrected(), "core-cook", Words.say("j_core", first.words()), words, Words.say("j_corrected_at_the_step"), passed));
        }
    }

    private Deviation settled(Reading first, List<Reading> readings, String limit, String words, String limitWords, String how, Reading by) {
        Deviation open = answers.of(new Matter(deviationId(first), fold.id, fold.code, true, limit, words, limitWords, first.at(), readings, List.of()));
        return new Deviation(open.id(), fold.id, fold.code, true, limit, open.words(), limitWords, open.since(), readings, Deviation.State.CLOSED, open.answer(),
                Optional.of(by.told().entry().person()), Optional.of(how), Optional.of(by.told().entry().person()), Optional.of(by.at()), List.of());
    }

    /** The id of the deviation that a reading opens; the parts of a split batch share those of its readings. */
    private String deviationId(Reading reading) {
        return Ids.derived(reading.told().entry().batch().orElse(fold.id) + "/deviation/" + reading.id());
    }

    /** Failed readings of one control, in the order of receipt: they share a deviation until it is released, then open a new one. */
    private void group(List<Reading> failed, String limit, String limitWords, Function<Reading, String> words) {
        Map<String, List<Reading>> groups = new LinkedHashMap<>();
        String current = null;
        for (Reading reading : failed.stream().sorted(Comparator.comparing(r -> r.told().entry().receiveNumber())).toList()) {
            long released = current == null ? 0 : answers.releasedAs(current);
            if (current == null || (released > 0 && released < reading.told().entry().receiveNumber())) {
                current = deviationId(reading);
            }
            groups.computeIfAbsent(current, key -> new ArrayList<>()).add(reading);
        }
        boolean again = false;
        for (Map.Entry<String, List<Reading>> group : groups.entrySet()) {
            Reading first = group.getValue().get(0);
            boolean afterGone = fold.over.isPresent() && fold.life == Life.GONE && fold.over.get().entry().receiveNumber() < first.told().entry().receiveNumber();
            String when = again ? " " + Words.say("j_it_arrived_after_the_batch_was") : afterGone ? " " + Words.say("j_it_arrived_after_the_batch_had") : "";
            matters.add(new Matter(group.getKey(), fold.id, fold.code, true, limit, words.apply(first) + when, limitWords, first.at(), group.getValue(), offers(limit)));
            again = true;
        }
    }

    /** A control by the plan's own criterion that was not as it should be, until it was seen good again at the step. */
    private void judgeOwn() {
        for (Plan.OwnCheck own : fold.plan.map(p -> p.plan().ownChecks()).orElse(List.of())) {
            List<Told> seen = fold.ownChecks(own.id());
            Optional<Told> bad = seen.stream().filter(told -> !told.data().flag("good")).findFirst();
            boolean good = !seen.isEmpty() && seen.get(seen.size() - 1).data().flag("good");
            if (bad.isPresent() && !(good && own.before())) {
                matters.add(new Matter(Ids.derived(fold.id + "/" + Check.OWN + own.id()), fold.id, fold.code, true, Check.OWN + own.id(), Words.say("j_own_check_not_good", own.title(), bad.get().data().text("words").orElse("–")), own.limit(), bad.get().at(),
                        List.of(), List.of("hold", "destroy")));
            }
        }
    }

    private void judgeReheats() {
        String words = limitWords("reheat");
        for (int i = 0; i < fold.reheats.size(); i++) {
            Reheat reheat = fold.reheats.get(i);
            int number = i + 1;
            List<CoolingRun> before = runs.stream().filter(run -> run.number() == number).toList();
            Optional<String> refused = Reheat.refusal(fold.plan.map(p -> p.plan().reheatMinutes()).orElse(0), before, i, reheat.begun().at());
            if (!fold.hot && refused.isPresent()) {
                matters.add(new Matter(Ids.derived(fold.id + "/reheat/" + reheat.begun().entry().id()), fold.id, fold.code, true, "reheat",
                        Words.say("j_reheated_although_it_may_not_be", refused.get()), words, reheat.begun().at(), List.of(), List.of("hold", "destroy")));
            }
            Optional<AlternativesLimit> limit = fold.around.rules().at(reheat.begun().at()).flatMap(c -> c.rulebook().alternatives("reheat"));
            List<Reading> failed = reheat.failed(limit);
            group(failed, "reheat", words, reading -> Words.say("j_core_after_the_reheat", reading.words()));
            boolean ended = reheat.out().isPresent() || fold.reheats.size() > number || fold.putAway.filter(t -> t.at().isAfter(reheat.begun().at())).isPresent();
            boolean unjudged = reheat.core().verdict() == Verdict.UNJUDGED && (ended || !reheat.core().readings().isEmpty());
            if (failed.isEmpty() && unjudged) {
                String why = reheat.core().readings().isEmpty() ? Words.say("j_the_core_was_not_probed_after")
                        : reheat.core().readings().get(reheat.core().readings().size() - 1).words();
                open("reheat-" + number, "reheat", why, words, reheat.begun().at(), reheat.core().readings());
            }
        }
    }

    private void judgeCooling() {
        if (fold.hot) {
            coolingVerdict = Verdict.WITHIN;
            return;
        }
        if (runs.isEmpty()) {
            boolean expected = fold.putAway.isPresent() || fold.over.isPresent() || !fold.around.now().isBefore(fold.dayEnd());
            if (expected && fold.life != Life.DESTROYED) {
                open("cooling", "cooling", fold.cooling.begun() ? Words.say("j_no_rulebook_is_confirmed_so_nothing")
                        : Words.say("j_no_cooling_was_recorded_a_missing"), "", fold.start.claimedAt(), List.of());
            }
            return;
        }
        coolingVerdict = runs.stream().filter(run -> run.number() == runs.get(runs.size() - 1).number()).map(run -> run.verdict().whole()).reduce(Verdict.WITHIN, Verdict::orWorse);
        for (CoolingRun run : runs) {
            List<Reading> failed = run.readings().stream().filter(reading -> reading.verdict() == Verdict.BREACHED).toList();
            String limits = String.join("; ", run.rule().stages().stream().map(s -> s.words() + " (" + s.basis().standing().words() + ")").toList());
            group(failed, "cooling", limits, reading -> reading.temperature().words() + ". " + reading.words());
            List<StageVerdict> unanswered = run.verdict().stages().stream().filter(stage -> stage.verdict() == Verdict.UNJUDGED
                    && !(stage.waiting() && (!fold.life.over() || run.ended())) && fold.life != Life.DESTROYED).toList();
            if (!unanswered.isEmpty()) {
                String doubt = run.readings().stream().flatMap(reading -> fold.doubt(reading.told()).stream()).findFirst().map(words -> " " + words).orElse("");
                open("cooling-" + run.number(), "cooling", unanswered.get(0).words() + doubt, limits, run.origin(), run.readings());
            }
        }
    }

    private void judgeStorage() {
        group(storage.warmFood(), "chilled-storage", storage.words(), Reading::words);
        group(storage.coolHot(), "hot-holding", storage.hotWords(), Reading::words);
        storage.pastOwnLimit().forEach(episode -> {
            Reading first = episode.readings().get(0);
            if (episode.probed().isPresent()) {
                settled.add(settled(first, episode.readings(), "chilled-storage", first.words(), storage.words(), Words.say("j_food_probed_within"), episode.probed().get()));
            } else {
                probeFirst.add(Ids.derived(fold.id + "/deviation/" + first.id()));
                matters.add(new Matter(Ids.derived(fold.id + "/deviation/" + first.id()), fold.id, fold.code, true, "chilled-storage", Words.say("j_probe_the_food_of_this_batch", first.words()), storage.words(), first.at(), episode.readings(), offers("chilled-storage")));
            }
        });
        boolean dayOver = !fold.around.now().isBefore(fold.dayEnd());
        if (fold.hot && !fold.life.over() && dayOver) {
            open("hot", "hot-holding", Words.say("j_it_was_kept_hot_and_what"), storage.hotWords(), fold.dayEnd(), fold.hotReadings);
        } else if (!fold.hot && fold.putAway.isEmpty() && !fold.life.over() && dayOver) {
            open("put-away", "chilled-storage", Words.say("j_it_was_not_recorded_where_the"), "", fold.dayEnd(), List.of());
        }
        fold.useBy().filter(day -> fold.around.site().dayOf(fold.around.now()).isAfter(day) && !fold.life.over())
                .ifPresent(day -> holds.add(new Hold(Ids.derived(fold.id + "/use-by"), Words.say("j_past_its_use_by_of_it", day), fold.around.site().end(day))));
        holds.addAll(storage.warmUnit());
    }

    /** Where a tablet still held another version of the plan, and by that one comes to another verdict, a person decides. */
    private void judgeVersions() {
        for (Reading reading : Stream.of(fold.cook.readings(), reheated(), storage.judgedFood(), storage.judgedHot()).flatMap(List::stream).toList()) {
            versions.differing(reading).ifPresent(other -> matters.add(new Matter(Ids.derived(fold.id + "/version/" + reading.id()), fold.id, fold.code, false, "plan-version",
                    Words.say("j_versions_differ", inForce(reading), reading.words(), versions.held(reading).orElseThrow().ref().version(), other.words()), "", reading.at(), List.of(reading), List.of("hold", "destroy"))));
        }
    }

    private String inForce(Reading reading) {
        return fold.planAt(reading.at()).map(plan -> String.valueOf(plan.ref().version())).orElse("–");
    }

    private List<Reading> reheated() {
        return fold.reheats.stream().flatMap(reheat -> reheat.core().readings().stream()).toList();
    }

    private BatchRecord record() {
        List<Deviation> deviations = new ArrayList<>(matters.stream().map(answers::of).toList());
        deviations.addAll(settled);
        if (fold.life == Life.SPLIT) {
            deviations.removeIf(Deviation::holds);
        }
        fold.around.part().ifPresent(part -> deviations.removeIf(d -> d.closedAt().isPresent() && fold.split.isPresent() && d.closedAt().get().isBefore(fold.split.get().at())));
        List<Hold> all = new ArrayList<>(holds);
        if (fold.life.over()) {
            all.clear();
        } else {
            deviations.stream().filter(Deviation::holds).forEach(d -> all.add(new Hold(d.id(), d.words(), d.since(), probeFirst.contains(d.id()))));
        }
        String title = fold.plan.map(p -> p.plan().title()).orElseGet(() -> fold.start.data().text("product").orElse("unplanned"));
        List<Check> checks = new BatchChecks(fold, runs).all();
        boolean reheatOffered = !fold.hot && !runs.isEmpty() && !fold.life.over() && fold.putAway.isEmpty() && coolingVerdict != Verdict.WITHIN && reheatRefusal().isEmpty();
        return new BatchRecord(fold.id, fold.code, title, fold.plan.isEmpty(), fold.start.data().text("line").orElse("wheat"),
                fold.around.part().map(Surroundings.Part::trays).orElse(fold.start.data().integer("trays").orElse(0)), fold.pieces(), fold.start.person(),
                fold.start.claimedAt(), fold.around.site().dayOf(fold.start.claimedAt()), fold.plan, fold.planAt(fold.around.now()), fold.life, fold.around.part().map(Surroundings.Part::parent),
                fold.cooling.oven(), fold.putAway.map(Told::at), fold.putAway.flatMap(t -> t.data().text("unit")), fold.useBy(), fold.cook.verdict(),
                fold.cook.readings().stream().map(fold::versioned).toList(), coolingVerdict, runs, checks, deviations, all, fold.told, fold.entries, NextStep.of(fold, runs, all, deviations),
                reheated(), storage.judgedHot(), storage.judgedFood(), reheatOffered, reheatRefusal().orElse(""), adjustments());
    }

    /** Readings past an operating limit that no adjustment names yet. */
    private List<Reading> adjustments() {
        List<String> named = fold.told.stream().filter(t -> t.kind().equals("adjustment")).flatMap(t -> t.data().text("reading").stream()).toList();
        return Stream.of(fold.cook.readings(), storage.judgedFood(), storage.judgedHot()).flatMap(List::stream)
                .filter(reading -> reading.adjust() && !named.contains(reading.id())).toList();
    }
}
