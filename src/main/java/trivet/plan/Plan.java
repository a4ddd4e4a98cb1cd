package trivet.plan;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The hazard plan of one product.
 *
 * @param foods the kind of food by rulebook, where a rulebook tells kinds apart
 * @param usualBakeMinutes from the start to the oven's opening; the core check falls due then
 * @param bakeAgainMinutes how long after a failed core the batch may go back in the oven
 * @param reheatMinutes how long after the start of the cooling clock a reheat may be offered; 0 for never
 * @param coolEveryMinutes how often a cooling batch is measured
 * @param useByDays the days of life by the rulebook's way of counting
 */
public record Plan(String product, int version, String title, String line, String description, Map<String, String> foods,
        int usualBakeMinutes, int bakeAgainMinutes, int reheatMinutes, int coolEveryMinutes, int useByDays, List<Step> steps,
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

    /** A critical control point: its step, hazard, the limit of the rulebook, and what to do on a breach. */
    public record ControlPoint(String id, String step, String hazard, String limit, List<String> onBreach) {
    }

    /** A check: what is looked at, how, how often, by whom and with which probe. */
    public record CheckSpec(String key, String controlPoint, String what, String how, String often, String who, String probe) {
    }

    /** The kind of food by a rulebook. */
    public Optional<String> food(String rulebook) {
        return Optional.ofNullable(foods.get(rulebook));
    }

    /** What the plan offers on a breach of a limit. */
    public List<String> onBreach(String limit) {
        return controlPoints.stream().filter(point -> point.limit().equals(limit)).findFirst().map(ControlPoint::onBreach).orElse(List.of());
    }
}
