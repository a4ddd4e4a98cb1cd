package trivet.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trivet.flow.Flow;
import trivet.flow.Traits;
import trivet.limit.AlternativesLimit;
import trivet.limit.Bound;
import trivet.limit.RangeLimit;
import trivet.limit.Rulebook;
import trivet.measure.Quantity;
import trivet.study.Study;
import trivet.words.Words;

/**
 * The hazard plan of one product.
 *
 * @param foods the kind of food by rulebook, where a rulebook tells kinds apart
 * @param usualBakeMinutes from the start to the oven's opening; the core check falls due then
 * @param bakeAgainMinutes how long after a failed core the batch may go back in the oven
 * @param reheatMinutes how long after the start of the cooling clock a reheat may be offered; 0 for never
 * @param coolEveryMinutes how often a cooling batch is measured
 * @param useByDays the days of life by the rulebook's way of counting
 * @param ownChecks what is looked at for each batch by the plan's own criterion
 * @param attention the prerequisite programmes that need greater attention
 * @param storageAtMost the temperature that the use-by rests on, where it is stricter than the law's; it is the batch's own limit
 */
public record Plan(String product, int version, String title, String line, String description, Map<String, String> foods,
        int usualBakeMinutes, int bakeAgainMinutes, int reheatMinutes, int coolEveryMinutes, int useByDays, Optional<Bound> storageAtMost, List<Step> steps,
        List<ControlPoint> controlPoints, List<CheckSpec> checks, List<OwnCheck> ownChecks, List<Attention> attention) {

    /** Copies the lists. */
    public Plan {
        foods = Map.copyOf(foods);
        steps = List.copyOf(steps);
        controlPoints = List.copyOf(controlPoints);
        checks = List.copyOf(checks);
        ownChecks = List.copyOf(ownChecks);
        attention = List.copyOf(attention);
    }

    /** A step of the process, in order, with what can go wrong there. */
    public record Step(String id, String title, String hazards) {
    }

    /**
     * A critical control point: its step, hazard, the limit of the rulebook, and what to do on a breach.
     *
     * @param operating an operating limit stricter than the rulebook's critical limit
     */
    public record ControlPoint(String id, String step, String hazard, String limit, Optional<Bound> operating, List<String> onBreach) {
    }

    /** A check: what is looked at, how, how often, by whom and with which probe. */
    public record CheckSpec(String key, String controlPoint, String what, String how, String often, String who, String probe) {
    }

    /**
     * A check of each batch by the plan's own criterion, such as an oPRP.
     *
     * @param before whether it falls due at the batch's start, else when it is put away
     * @param limit the criterion in words
     */
    public record OwnCheck(String id, String title, boolean before, String what, String how, String limit, String corrective) {
    }

    /**
     * A prerequisite programme that is checked and noted like a control.
     *
     * @param often daily, weekly, monthly or yearly
     */
    public record Attention(String id, String title, String what, String often) {
    }

    /** The plan for the day's work that a hazard plan says; refuses one that lacks what the day's work needs, with a sentence. */
    public static Plan of(Study study) {
        Map<String, String> foods = new java.util.LinkedHashMap<>();
        study.day().foods().forEach(food -> foods.put(food.rulebook(), food.food()));
        List<ControlPoint> points = new ArrayList<>();
        List<CheckSpec> checks = new ArrayList<>();
        for (Study.Control control : study.controls()) {
            String hazards = String.join("; ", study.hazards().stream().filter(hazard -> hazard.accepted() && hazard.controls().contains(control.id())).map(Study.Hazard::title).distinct().toList());
            if (!control.limit().isEmpty()) {
                Optional<Bound> operating = control.operating().isEmpty() ? Optional.empty() : Optional.of(bound(!control.limit().endsWith("storage"), control.operating()));
                points.add(new ControlPoint(control.id(), control.step(), hazards, control.limit(), operating, control.onBreach()));
            }
            checks.add(new CheckSpec(KEYS.getOrDefault(control.limit(), control.id()), control.id(), control.what(), control.how(), control.often().isEmpty() ? Words.named("every", control.every()) : control.often(), control.who(), control.instrument()));
        }
        for (String needed : List.of("core-cook", "cooling", "chilled-storage")) {
            if (points.stream().noneMatch(point -> point.limit().equals(needed))) {
                throw new IllegalArgumentException(Words.say("j_open_needed", Words.named("limit", needed)));
            }
        }
        Flow flow = new Flow(study.steps(), kind -> Traits.MIDDLE);
        String bake = study.controls().stream().filter(control -> control.limit().equals("core-cook")).map(Study.Control::step).findFirst().orElse("");
        List<OwnCheck> own = study.controls().stream().filter(control -> control.limit().isEmpty() && control.every().equals("batch"))
                .map(control -> new OwnCheck(control.id(), study.number(control) + " " + control.title(), flow.upstream(bake).contains(control.step()), control.what(), control.how(), control.ownLimit(), control.corrective())).toList();
        List<Attention> attention = study.programmes().stream().filter(programme -> programme.greaterAttention().equals("true") && !programme.often().equals("batch"))
                .map(programme -> new Attention(programme.topic().isEmpty() ? programme.id() : programme.topic(), programme.title(), programme.what(), programme.often())).toList();
        List<Step> steps = study.steps().stream().map(step -> new Step(step.id(), step.title(), String.join("; ", study.hazards().stream().filter(hazard -> hazard.accepted() && hazard.step().equals(step.id())).map(Study.Hazard::title).toList()))).toList();
        String storage = study.description().storageAtMost();
        return new Plan(study.product(), Integer.parseInt(study.version()), study.title(), study.line(), study.description().words(), foods, minutes(study.day().usualBake()), minutes(study.day().bakeAgainWithin()),
                minutes(study.day().reheatWithin()), minutes(study.day().coolCheckEvery()), Quantity.days(study.description().useBy()), storage.isEmpty() ? Optional.empty() : Optional.of(bound(false, storage)), steps, points, checks, own, attention);
    }

    private static final Map<String, String> KEYS = Map.of("core-cook", "core", "cooling", "cool", "chilled-storage", "put-away");

    private static int minutes(String text) {
        return text.isEmpty() ? 0 : Quantity.minutes(text).intValueExact();
    }

    private static Bound bound(boolean minimum, String text) {
        return new Bound(minimum, true, Quantity.temperature(text), Quantity.fahrenheitBeside(text));
    }

    /** The kind of food by a rulebook. */
    public Optional<String> food(String rulebook) {
        return Optional.ofNullable(foods.get(rulebook));
    }

    /** The operating limit for a limit of the rulebook. */
    public Optional<Bound> operating(String limit) {
        return controlPoints.stream().filter(point -> point.limit().equals(limit)).findFirst().flatMap(ControlPoint::operating);
    }

    /** A range of the rulebook as it holds for this product: with the plan's operating limit, unless the rulebook has become stricter. */
    public RangeLimit range(RangeLimit limit) {
        return operating(limit.id()).filter(bound -> (bound.minimum() ? limit.minimum() : limit.maximum()).map(bound::stricterThan).orElse(false))
                .map(limit::operatingAt).orElse(limit);
    }

    /** Rows of the rulebook as they hold for this product: with the plan's operating limit, unless the rulebook has become stricter. */
    public AlternativesLimit rows(AlternativesLimit limit) {
        return operating(limit.id()).filter(bound -> limit.rows().stream().anyMatch(row -> bound.stricterThan(row.least())))
                .map(limit::operatingAt).orElse(limit);
    }

    /** What is looser in this plan than in a rulebook, in sentences: an operating limit, or the temperature that the use-by rests on. */
    public List<String> looserThan(Rulebook rulebook) {
        List<String> looser = new ArrayList<>();
        for (ControlPoint point : controlPoints) {
            point.operating().ifPresent(bound -> {
                boolean stricter = rulebook.alternatives(point.limit()).map(l -> l.rows().stream().anyMatch(row -> bound.stricterThan(row.least())))
                        .or(() -> rulebook.range(point.limit()).flatMap(l -> bound.minimum() ? l.minimum() : l.maximum()).map(bound::stricterThan)).orElse(true);
                if (!stricter) {
                    looser.add(Words.say("j_the_operating_limit_of_the_control", bound.words(), point.id(), point.limit()));
                }
            });
        }
        storageAtMost.filter(bound -> rulebook.range("chilled-storage").flatMap(RangeLimit::maximum).map(max -> max.stricterThan(bound)).orElse(false))
                .ifPresent(bound -> looser.add(Words.say("j_the_use_by_rests_on_which", bound.words())));
        return looser;
    }

    /** What the plan offers on a breach of a limit. */
    public List<String> onBreach(String limit) {
        return controlPoints.stream().filter(point -> point.limit().equals(limit)).findFirst().map(ControlPoint::onBreach).orElse(List.of());
    }
}
