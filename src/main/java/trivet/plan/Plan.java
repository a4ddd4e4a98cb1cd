package trivet.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trivet.limit.AlternativesLimit;
import trivet.limit.Bound;
import trivet.limit.RangeLimit;
import trivet.limit.Rulebook;
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
 * @param storageAtMost the temperature that the use-by rests on, where it is stricter than the law's; it is the batch's own limit
 */
public record Plan(String product, int version, String title, String line, String description, Map<String, String> foods,
        int usualBakeMinutes, int bakeAgainMinutes, int reheatMinutes, int coolEveryMinutes, int useByDays, Optional<Bound> storageAtMost, List<Step> steps,
        List<ControlPoint> controlPoints, List<CheckSpec> checks) {

    /** Copies the lists. */
    public Plan {
        foods = Map.copyOf(foods);
        steps = List.copyOf(steps);
        controlPoints = List.copyOf(controlPoints);
        checks = List.copyOf(checks);
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
