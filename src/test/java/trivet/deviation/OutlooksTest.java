package trivet.deviation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import trivet.FreshDemo;
import trivet.outlook.Outlook;
import trivet.outlook.Outlooks;
import trivet.outlook.StepHabits;

/** The forecast beside a batch that cools: early enough to act, from the first reading on, and gone once it is there. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class OutlooksTest extends BatchBegun {

    @Inject
    Outlooks outlooks;
    @Inject
    trivet.study.OpenPoints.Trials trials;

    private void cooling(String at20, String at40) {
        start = clock.instant().minus(Duration.ofMinutes(100));
        begin("deep-quiche");
        baked();
        tell("moved", "ana", 54, "{\"place\":\"chiller-1\"}");
        tell("cooling-reading", "ana", 74, celsius(at20));
        tell("cooling-reading", "ana", 94, celsius(at40));
    }

    @Test
    void a_fast_tray_is_on_course_and_a_slow_one_asks_to_act_before_its_deadline() {
        cooling("36", "17");
        List<Outlook> fast = outlooks.of(now());
        assertEquals(1, fast.size());
        assertTrue(fast.get(0).late() < 0.05, fast.toString());
        assertTrue(fast.get(0).low().isBefore(fast.get(0).eta()) && fast.get(0).eta().isBefore(fast.get(0).high()));
        cooling("62", "54");
        List<Outlook> slow = outlooks.of(now());
        assertTrue(slow.get(0).late() > 0.9 && slow.get(0).words().startsWith("Will miss"), slow.toString());
    }

    @Test
    void a_reading_on_the_bench_alone_already_counts_in_the_chiller() {
        start = clock.instant().minus(Duration.ofMinutes(100));
        begin("deep-quiche");
        baked();
        tell("cooling-reading", "ana", 56, celsius("84"));
        tell("moved", "ana", 58, "{\"place\":\"chiller-1\"}");
        List<Outlook> one = outlooks.of(now());
        assertEquals(1, one.size());
        assertTrue(one.get(0).low().isBefore(one.get(0).eta()) && one.get(0).late() < 1, one.toString());
    }

    @Test
    void own_trials_count_only_batches_whose_readings_were_within() {
        List<String> good = daybook.begun(clock.instant().minus(Duration.ofDays(90)), clock.instant()).stream().filter(b -> b.cook() == trivet.limit.Verdict.WITHIN && b.cooling() == trivet.limit.Verdict.WITHIN && !b.held()).map(BatchRecord::code).limit(3).toList();
        List<String> slow = daybook.begun(clock.instant().minus(Duration.ofDays(90)), clock.instant()).stream().filter(b -> b.cooling() == trivet.limit.Verdict.BREACHED).map(BatchRecord::code).limit(1).toList();
        assertEquals(1, slow.size());
        assertEquals(3, trials.found(List.of(good.get(0), good.get(1), good.get(2), slow.get(0), "Z-9999", good.get(0))));
        assertEquals(0, trials.found(List.of()));
    }

    @Test
    void a_step_s_history_is_of_one_product_plan_version_and_probe() {
        List<StepHabits> histories = StepHabits.of(daybook.begun(clock.instant().minus(Duration.ofDays(90)), clock.instant()));
        assertTrue(histories.stream().anyMatch(h -> h.step().equals("core")) && histories.stream().anyMatch(h -> h.step().equals("cooling")), histories.toString());
        for (StepHabits habits : histories) {
            assertTrue(habits.points().size() >= StepHabits.LEAST && habits.chart().lower() <= habits.chart().centre());
            assertEquals(1, habits.points().stream().map(point -> daybook.batch(point.batch()).orElseThrow().title()).distinct().count());
        }
    }

    @Test
    void nothing_is_forecast_before_a_reading_or_after_the_target() {
        start = clock.instant().minus(Duration.ofMinutes(100));
        begin("deep-quiche");
        baked();
        assertTrue(outlooks.of(now()).isEmpty());
        tell("cooling-reading", "ana", 95, celsius("7"));
        assertTrue(outlooks.of(now()).isEmpty());
    }
}
