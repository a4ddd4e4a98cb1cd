package trivet.deviation;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trivet.batch.Life;
import trivet.batch.Told;
import trivet.check.Check;
import trivet.check.CookControl;
import trivet.check.CoolingControl;
import trivet.check.CoolingRun;
import trivet.check.Reading;
import trivet.cooling.StageVerdict;
import trivet.deviation.Answers.Matter;
import trivet.ledger.Entry;
import trivet.ledger.Ids;
import trivet.limit.Verdict;
import trivet.measure.Temperature;
import trivet.plan.ApprovedPlan;
import trivet.site.Confirmed;
import trivet.site.Site;

/** Folds the records of one batch, in one reading of the doubtful ones, into what they say. */
final class BatchFold {

    private final Surroundings around;
    private final List<Entry> entries;
    private final List<Told> told;
    private final Entry start;
    private final Optional<ApprovedPlan> plan;
    private final CookControl cook;
    private final CoolingControl cooling = new CoolingControl();
    private final List<Matter> matters = new ArrayList<>();
    private final List<Hold> holds = new ArrayList<>();
    private final List<Reading> foodReadings = new ArrayList<>();
    private Optional<Told> putAway = Optional.empty();
    private Optional<Entry> destroyed = Optional.empty();
    private Optional<Told> over = Optional.empty();
    private Life life = Life.BEGUN;
    private int gonePieces;
    private boolean measured;
    private boolean hot;
    private final Answers answers;
    private final String id;
    private final String code;

    /** What a batch is judged with: the site, the rulebooks, the plan, the present moment. */
    record Surroundings(Site site, Rules rules, Instant now, Optional<ApprovedPlan> plan, Optional<Part> part) {
    }

    /** The rulebooks of the site by time. */
    interface Rules extends CoolingControl.InForce {
        Optional<Confirmed> at(Instant moment);
    }

    /** What a part of a split batch is, beside what it inherits. */
    record Part(String id, String code, String parent, int trays, int pieces, boolean hot) {
    }

    BatchFold(Surroundings around, List<Entry> entries, boolean withWaiting) {
        this.around = around;
        this.entries = entries;
        this.told = Told.of(entries, withWaiting);
        this.start = entries.stream().filter(entry -> entry.kind().equals("batch-started")).findFirst().orElseThrow();
        this.id = around.part().map(Part::id).orElse(start.batch().orElse(start.id()));
        this.code = around.part().map(Part::code).orElse(start.data().text("code").orElse("?"));
        this.hot = around.part().map(Part::hot).orElse(false);
        this.plan = around.plan();
        Optional<Confirmed> rules = around.rules().at(start.claimedAt());
        Optional<String> food = plan.flatMap(p -> rules.flatMap(r -> p.plan().food(r.rulebook().id()))).or(() -> start.data().text("food").filter(f -> plan.isPresent()));
        this.cook = new CookControl(rules.flatMap(r -> r.rulebook().alternatives("core-cook")), food,
                Duration.ofMinutes(plan.map(p -> p.plan().bakeAgainMinutes()).orElse(20)));
        told.forEach(this::tell);
        destroyed = destroyed.filter(entry -> life == Life.DESTROYED);
        this.answers = new Answers(entries, destroyed);
        judge();
    }

    private void tell(Told one) {
        Optional<Temperature> temperature = one.data().temperature("temperature");
        switch (one.kind()) {
            case "batch-started" -> life = one.data().text("oven").isPresent() ? Life.BAKING : life;
            case "cook-reading" -> temperature.ifPresent(t -> {
                cook.reading(one, t);
                measured = true;
                life = life == Life.BEGUN ? Life.BAKING : life;
            });
            case "back-in-oven" -> {
                cook.backInOven(one.at());
                cooling.backInOven();
                life = life == Life.COOLING ? Life.BAKING : life;
            }
            case "out-of-oven" -> {
                cooling.outOfOven(one.at());
                life = life.compareTo(Life.COOLING) < 0 ? Life.COOLING : life;
            }
            case "cooling-reading", "food-reading" -> temperature.ifPresent(t -> {
                measured = true;
                if (one.kind().equals("food-reading")) {
                    foodReadings.add(new Reading(one, t, Optional.empty(), Optional.empty(), Verdict.UNJUDGED, ""));
                }
                if (one.kind().equals("cooling-reading") || putAway.isEmpty()) {
                    cooling.reading(one, t);
                    life = life.compareTo(Life.COOLING) < 0 ? Life.COOLING : life;
                }
            });
            case "reheat-begun" -> cooling.reheat();
            case "put-away" -> {
                putAway = Optional.of(one);
                life = life.over() ? life : Life.STORED;
            }
            case "split" -> {
                if (around.part().isEmpty() && one.entry().batch().map(id::equals).orElse(false)) {
                    end(one, Life.SPLIT);
                }
            }
            case "gone", "destroyed" -> leave(one);
            case "struck-out" -> strikeOut(one);
            case "held" -> holds.add(new Hold(one.entry().id(), "Held by " + one.entry().person() + ": " + one.data().text("reason").orElse("no reason given"), one.at()));
            default -> { }
        }
    }

    private void end(Told one, Life as) {
        life = as;
        over = Optional.of(one);
    }

    private int pieces() {
        return around.part().map(Part::pieces).orElse(start.data().integer("pieces").orElse(0));
    }

    private void leave(Told one) {
        int of = one.data().integer("pieces").orElse(pieces() - gonePieces);
        gonePieces += of;
        if (gonePieces >= pieces()) {
            end(one, one.kind().equals("destroyed") ? Life.DESTROYED : Life.GONE);
        }
        if (one.kind().equals("destroyed")) {
            destroyed = Optional.of(one.entry());
        }
    }

    private void strikeOut(Told one) {
        boolean agreed = entries.stream().anyMatch(entry -> entry.kind().equals("strike-out-agreed") && !entry.person().equals(one.entry().person())
                && entry.data().text("of").map(one.entry().id()::equals).orElse(false));
        boolean later = entries.stream().anyMatch(entry -> entry.receiveNumber() > one.entry().receiveNumber() && entry.data().temperature("temperature").isPresent());
        if (later) {
            holds.add(new Hold(one.entry().id(), "A reading came after the batch was struck out. It counts again, held.", one.at()));
        } else if (measured && !agreed) {
            holds.add(new Hold(one.entry().id(), "Struck out with readings: a second person must agree.", one.at()));
        } else {
            end(one, Life.STRUCK_OUT);
        }
    }

    private Instant asOf() {
        return over.map(Told::at).filter(at -> life != Life.GONE && at.isBefore(around.now())).orElse(around.now());
    }

    private Instant dayEnd() {
        return around.site().end(around.site().dayOf(start.claimedAt()));
    }

    private List<CoolingRun> runs = List.of();
    private Verdict coolingVerdict = Verdict.UNJUDGED;

    private void judge() {
        runs = hot || life == Life.STRUCK_OUT ? List.of() : cooling.judged(around.rules(), asOf());
        if (life == Life.STRUCK_OUT) {
            return;
        }
        judgeCook();
        judgeCooling();
        judgeStorage();
        holds.removeIf(hold -> answers.ended(hold.id(), entries.stream().filter(e -> e.id().equals(hold.id())).map(Entry::person).findFirst().orElse("")));
    }

    private List<String> offers(String limit) {
        return plan.map(p -> p.plan().onBreach(limit)).filter(list -> !list.isEmpty()).orElse(List.of("hold", "destroy"));
    }

    private void judgeCook() {
        String words = around.rules().at(start.claimedAt()).flatMap(c -> c.rulebook().alternatives("core-cook"))
                .map(limit -> limit.basis().source() + " (" + limit.basis().standing().word() + ")").orElse("No rulebook was confirmed.");
        group(cook.uncorrected(), "core-cook", words, reading -> "Core " + reading.words());
        boolean unmeasured = cook.readings().isEmpty() && (cooling.begun() || putAway.isPresent() || !around.now().isBefore(dayEnd()));
        if (cook.uncorrected().isEmpty() && (unmeasured || (!cook.readings().isEmpty() && cook.verdict() == Verdict.UNJUDGED))) {
            String why = unmeasured ? "The core was not probed. A missing reading is no pass." : cook.readings().get(cook.readings().size() - 1).words();
            matters.add(new Matter(checkId("core"), id, code, false, "core-cook", why, words, start.claimedAt(), cook.readings(), offers("core-cook")));
        }
    }

    /** Failed readings of one control, in the order of receipt: they share a deviation until it is released, then open a new one. */
    private void group(List<Reading> failed, String limit, String limitWords, java.util.function.Function<Reading, String> words) {
        Map<String, List<Reading>> groups = new LinkedHashMap<>();
        String current = null;
        for (Reading reading : failed.stream().sorted(Comparator.comparing(r -> r.told().entry().receiveNumber())).toList()) {
            long released = current == null ? 0 : answers.releasedAs(current);
            if (current == null || (released > 0 && released < reading.told().entry().receiveNumber())) {
                current = Ids.derived(id + "/deviation/" + reading.id());
            }
            groups.computeIfAbsent(current, key -> new ArrayList<>()).add(reading);
        }
        boolean again = false;
        for (Map.Entry<String, List<Reading>> group : groups.entrySet()) {
            Reading first = group.getValue().get(0);
            boolean afterGone = over.isPresent() && life == Life.GONE && over.get().entry().receiveNumber() < first.told().entry().receiveNumber();
            String when = again ? " It arrived after the batch was released." : afterGone ? " It arrived after the batch had gone." : "";
            matters.add(new Matter(group.getKey(), id, code, true, limit, words.apply(first) + when, limitWords, first.at(), group.getValue(), offers(limit)));
            again = true;
        }
    }

    private String checkId(String key) {
        return Ids.derived(id + "/" + key);
    }

    private void judgeCooling() {
        boolean dayOver = !around.now().isBefore(dayEnd());
        if (hot) {
            coolingVerdict = Verdict.WITHIN;
            return;
        }
        if (runs.isEmpty()) {
            boolean expected = putAway.isPresent() || over.isPresent() || dayOver;
            if (expected && life != Life.DESTROYED) {
                matters.add(new Matter(checkId("cooling"), id, code, false, "cooling", cooling.begun() ? "No rulebook is confirmed, so nothing is judged."
                        : "No cooling was recorded. A missing reading is no pass.", "", start.claimedAt(), List.of(), offers("cooling")));
            }
            return;
        }
        coolingVerdict = runs.stream().filter(run -> run.number() == runs.get(runs.size() - 1).number()).map(run -> run.verdict().whole()).reduce(Verdict.WITHIN, Verdict::orWorse);
        for (CoolingRun run : runs) {
            List<Reading> failed = run.readings().stream().filter(reading -> reading.verdict() == Verdict.BREACHED).toList();
            String limits = String.join("; ", run.rule().stages().stream().map(s -> s.words() + " (" + s.basis().standing().word() + ")").toList());
            group(failed, "cooling", limits, reading -> reading.temperature() + ". " + reading.words());
            List<StageVerdict> unanswered = run.verdict().stages().stream().filter(stage -> stage.verdict() == Verdict.UNJUDGED
                    && !(stage.waiting() && (!life.over() || run.ended())) && life != Life.DESTROYED).toList();
            if (!unanswered.isEmpty() && !(run.ended() && unanswered.stream().allMatch(StageVerdict::waiting))) {
                matters.add(new Matter(checkId("cooling-" + run.number()), id, code, false, "cooling", unanswered.get(0).words(), limits, run.origin(), run.readings(), offers("cooling")));
            }
        }
    }

    private void judgeStorage() {
        Optional<Confirmed> rules = around.rules().at(putAway.map(Told::at).orElse(start.claimedAt()));
        var limit = rules.flatMap(r -> r.rulebook().range("chilled-storage"));
        List<Reading> warm = new ArrayList<>();
        if (limit.isPresent() && limit.get().inForce() && putAway.isPresent()) {
            foodReadings.stream().filter(reading -> reading.at().isAfter(putAway.get().at()) && !Reading.impossible(reading.temperature())
                    && limit.get().judge(reading.temperature()) == Verdict.BREACHED).forEach(r -> warm.add(r.judged(Verdict.BREACHED, r.temperature() + " in the food, "
                    + limit.get().words() + " asked, " + limit.get().basis().standing().breachWords() + ".")));
        }
        group(warm, "chilled-storage", limit.map(l -> l.words()).orElse(""), Reading::words);
        if (putAway.isEmpty() && !life.over() && !around.now().isBefore(dayEnd())) {
            matters.add(new Matter(checkId("put-away"), id, code, false, "chilled-storage", "It was not recorded where the batch was put away.", "", dayEnd(), List.of(), offers("chilled-storage")));
        }
        useBy().filter(day -> around.site().dayOf(around.now()).isAfter(day) && !life.over())
                .ifPresent(day -> holds.add(new Hold(Ids.derived(id + "/use-by"), "Past its use-by of " + day + ". It may only be destroyed.", around.site().end(day))));
    }

    private Optional<LocalDate> useBy() {
        return putAway.flatMap(told -> told.data().text("use_by")).flatMap(text -> {
            try {
                return Optional.of(LocalDate.parse(text));
            } catch (java.time.DateTimeException unreadable) {
                return Optional.empty();
            }
        });
    }

    /** The record as this reading of the doubtful entries gives it; holds and deviations are put together by the daybook. */
    BatchRecord record() {
        List<Deviation> deviations = new ArrayList<>(matters.stream().map(answers::of).toList());
        correctedAtStep().ifPresent(deviations::add);
        List<Hold> all = new ArrayList<>(holds);
        if (!life.over() || life == Life.SPLIT) {
            deviations.stream().filter(Deviation::holds).forEach(d -> all.add(new Hold(d.id(), d.words(), d.since())));
        } else {
            all.clear();
        }
        String title = plan.map(p -> p.plan().title()).orElseGet(() -> start.data().text("product").orElse("unplanned"));
        List<Check> checks = new BatchChecks(id, code, around, plan, start, told, cook, cooling, runs, putAway, life, dayEnd(), hot).all();
        return new BatchRecord(id, code, title, plan.isEmpty(), start.data().text("line").orElse("wheat"),
                around.part().map(Part::trays).orElse(start.data().integer("trays").orElse(0)), pieces(), start.person(), start.claimedAt(),
                around.site().dayOf(start.claimedAt()), plan, life, around.part().map(Part::parent), cooling.oven(), putAway.map(Told::at),
                putAway.flatMap(t -> t.data().text("unit")), useBy(), cook.verdict(), cook.readings(), coolingVerdict, runs, checks, deviations, all, told, entries,
                NextStep.of(life, cook, runs, all, deviations, cooling.begun(), hot));
    }

    private Optional<Deviation> correctedAtStep() {
        List<Reading> put = cook.corrected();
        if (put.isEmpty()) {
            return Optional.empty();
        }
        Reading first = put.get(0);
        Matter matter = new Matter(Ids.derived(id + "/deviation/" + first.id()), id, code, true, "core-cook", "Core " + first.words(), "", first.at(), put, List.of());
        Deviation open = answers.of(matter);
        Reading passed = cook.readings().get(cook.readings().size() - 1);
        return Optional.of(new Deviation(open.id(), id, code, true, "core-cook", open.words(), around.rules().at(first.at())
                .flatMap(c -> c.rulebook().alternatives("core-cook")).map(l -> l.basis().source()).orElse(""), open.since(), put, Deviation.State.CLOSED, open.answer(),
                Optional.of(passed.told().entry().person()), Optional.of("corrected at the step"), Optional.of(passed.told().entry().person()), Optional.of(passed.at()), List.of()));
    }
}
