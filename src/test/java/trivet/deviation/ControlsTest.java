package trivet.deviation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import trivet.FreshDemo;
import trivet.device.Devices;
import trivet.device.Unit;
import trivet.ledger.Ids;
import trivet.limit.Verdict;

/** Reheats, hot holding, operating limits, and probes that may not be trusted. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class ControlsTest extends BatchBegun {

    @Inject
    Devices devices;

    private void tooSlow(int minute) {
        baked();
        tell("cooling-reading", "ana", minute, celsius("12"));
    }

    @Test
    void a_reheat_is_offered_while_the_plan_allows_it_and_must_meet_the_reheat_limit() {
        baked();
        tell("cooling-reading", "ana", 100, celsius("40"));
        tell("reheat-begun", "ana", 110, "{}");
        assertEquals("reheat", now().next().act());
        tell("reheat-reading", "ana", 118, PASSED.replace("78.0", "74.9"));
        assertTrue(now().deviations().stream().anyMatch(d -> d.breach() && d.limit().equals("reheat")));
        tell("back-in-oven", "ana", 119, "{}");
        tell("reheat-reading", "ana", 125, PASSED);
        assertFalse(now().deviations().stream().anyMatch(d -> d.breach() && d.holds()), now().deviations().toString());
        tell("out-of-oven", "ana", 126, "{}");
        assertEquals(2, now().runs().get(now().runs().size() - 1).number());
        assertEquals(Verdict.UNJUDGED, now().cooling());
        assertFalse(now().held(), "the old run's open stage holds nothing");
    }

    @Test
    void a_reheat_that_may_not_be_is_kept_and_opens_a_deviation() {
        tooSlow(143);
        assertFalse(now().reheatOffered(), "never after a missed last stage");
        assertTrue(now().reheatRefused().contains("toxins survive heat"), now().reheatRefused());
        tell("reheat-begun", "ana", 145, "{}");
        assertTrue(now().deviations().stream().anyMatch(d -> d.limit().equals("reheat") && d.words().contains("may not be")));
    }

    @Test
    void a_second_reheat_is_never_offered() {
        baked();
        tell("reheat-begun", "ana", 60, "{}");
        tell("reheat-reading", "ana", 70, PASSED);
        tell("out-of-oven", "ana", 71, "{}");
        assertTrue(now().reheatRefused().contains("once already"), now().reheatRefused());
    }

    @Test
    void a_reheat_without_a_core_reading_is_no_pass() {
        baked();
        tell("reheat-begun", "ana", 60, "{}");
        tell("out-of-oven", "ana", 71, "{}");
        assertTrue(now().held());
    }

    @Test
    void what_is_kept_hot_is_judged_and_due_for_probing() {
        baked();
        String hot = Ids.uuid7(start, RANDOM);
        tell("split", "ana", 60, "{\"parts\":[{\"batch\":\"" + hot + "\",\"code\":\"X-H\",\"trays\":1,\"pieces\":12,\"purpose\":\"hot\"}]}");
        batch = hot;
        assertFalse(now().held(), now().holds().toString());
        tell("hot-hold-reading", "ana", 100, celsius("63"));
        assertEquals(Verdict.WITHIN, now().hotReadings().get(0).verdict());
        tell("hot-hold-reading", "ana", 120, celsius("62.9"));
        assertTrue(now().deviations().stream().anyMatch(d -> d.limit().equals("hot-holding") && d.words().contains("past the legal limit")));
    }

    @Test
    void within_the_limit_and_past_the_operating_limit_asks_for_an_adjustment_and_is_no_deviation() {
        String reading = tell("cook-reading", "ana", 50, PASSED.replace("78.0", "75.5"));
        assertEquals(Verdict.WITHIN, now().cook());
        assertTrue(now().deviations().isEmpty());
        assertEquals(1, now().adjustments().size());
        tell("adjustment", "ana", 51, "{\"reading\":\"" + reading + "\",\"what\":\"oven 5 °C up\"}");
        assertTrue(now().adjustments().isEmpty());
    }

    @Test
    void a_probe_that_failed_or_is_overdue_passes_nothing_until_it_passes() {
        devices.write(new Devices.Probe("P9", "Spare", true), "olive");
        String head = "\"batch\":\"" + batch + "\",\"instrument\":\"P9\",";
        tell("probe-check", "ana", "\"instrument\":\"P9\",", 1, 1, "{\"probe\":\"P9\",\"method\":\"ice\",\"temperature\":{\"value\":\"1.6\",\"unit\":\"C\"}}");
        assertTrue(daybook.probeBlocked("P9").isPresent());
        tell("cook-reading", "ana", head, 50, 50, PASSED);
        assertEquals(Verdict.UNJUDGED, now().cook());
        assertTrue(now().cookReadings().get(0).words().contains("P9 failed its check"), now().cookReadings().get(0).words());
        tell("probe-check", "ana", "\"instrument\":\"P9\",", 52, 52, "{\"probe\":\"P9\",\"method\":\"ice\",\"temperature\":{\"value\":\"0.3\",\"unit\":\"C\"}}");
        assertTrue(daybook.probeBlocked("P9").isEmpty());
        assertEquals(Verdict.UNJUDGED, now().cook(), "what was read before stays unjudged");
        start = start.minus(Duration.ofDays(9));
        devices.write(new Devices.Probe("P8", "Old", true), "olive");
        tell("probe-check", "ana", "\"instrument\":\"P8\",", 1, 1, "{\"probe\":\"P8\",\"method\":\"ice\",\"temperature\":{\"value\":\"0.0\",\"unit\":\"C\"}}");
        assertTrue(daybook.probeBlocked("P8").orElseThrow().contains("was to be checked"));
    }

    @Test
    void a_failure_read_by_a_blocked_probe_stays_a_failure_and_a_cooling_is_judged_without_it() {
        devices.write(new Devices.Probe("P7", "Spare", true), "olive");
        tell("probe-check", "ana", "\"instrument\":\"P7\",", 1, 1, "{\"probe\":\"P7\",\"method\":\"ice\",\"temperature\":{\"value\":\"-1.6\",\"unit\":\"C\"}}");
        baked();
        String head = "\"batch\":\"" + batch + "\",\"instrument\":\"P7\",";
        tell("cooling-reading", "ana", head, 130, 130, celsius("6.0"));
        assertEquals(Verdict.UNJUDGED, now().cooling());
        tell("cooling-reading", "ana", head, 143, 143, celsius("9.0"));
        assertEquals(Verdict.BREACHED, now().cooling());
    }

    @Test
    void a_corrected_fridge_reading_stays_warm_until_somebody_else_accepts_the_correction() {
        devices.write(new Unit("fridge-7", "Fridge 7", Unit.Kind.FRIDGE, true), "olive");
        String warm = tell("unit-reading", "ben", "", 135, 135, "{\"unit\":\"fridge-7\",\"temperature\":{\"value\":\"9.4\",\"unit\":\"C\"}}");
        assertEquals(1, seven().deviations().size());
        String correction = tell("correction", "ben", "", 136, 136, "{\"of\":\"" + warm + "\",\"reason\":\"typed 9 for 4\",\"data\":{\"temperature\":{\"value\":\"4.4\",\"unit\":\"C\"}}}");
        assertEquals(1, seven().deviations().size());
        tell("accepted", "pat", "", 137, 137, "{\"records\":[\"" + correction + "\"]}");
        assertTrue(seven().deviations().isEmpty());
    }

    private UnitRecord seven() {
        return daybook.units(daybook.today().minusDays(1), daybook.today()).stream().filter(unit -> unit.unit().id().equals("fridge-7")).findFirst().orElseThrow();
    }

    @Test
    void a_failed_probe_names_what_it_touched_since_its_last_good_check_and_what_would_turn() {
        devices.write(new Devices.Probe("P6", "Spare", true), "olive");
        String check = "{\"probe\":\"P6\",\"method\":\"ice\",\"temperature\":{\"value\":\"%s\",\"unit\":\"C\"}}";
        tell("probe-check", "ana", "\"instrument\":\"P6\",", 1, 1, check.formatted("0.1"));
        String head = "\"batch\":\"" + batch + "\",\"instrument\":\"P6\",";
        tell("cook-reading", "ana", head, 50, 50, PASSED.replace("78.0", "75.4"));
        tell("cook-reading", "ana", head, 51, 51, PASSED.replace("78.0", "79.0"));
        assertTrue(daybook.touchedBy("P6").isEmpty());
        tell("probe-check", "ana", "\"instrument\":\"P6\",", 120, 120, check.formatted("1.6"));
        var touched = daybook.touchedBy("P6");
        assertEquals(2, touched.size());
        assertTrue(touched.get(0).turns() && touched.get(0).read().toString().equals("75.4 °C"), touched.toString());
        assertFalse(touched.get(1).turns());
        assertTrue(touched.get(0).controlPoint());
    }

    @Test
    void boiling_water_on_a_mountain_passes_with_its_height() {
        devices.write(new Devices.Probe("P5", "Spare", true), "olive");
        String check = "{\"probe\":\"P5\",\"method\":\"boiling\",%s\"temperature\":{\"value\":\"95.1\",\"unit\":\"C\"}}";
        tell("probe-check", "ana", "\"instrument\":\"P5\",", 1, 1, check.formatted(""));
        assertTrue(daybook.probeBlocked("P5").isPresent());
        tell("probe-check", "ana", "\"instrument\":\"P5\",", 5, 5, check.formatted("\"altitude_m\":1500,"));
        assertTrue(daybook.probeBlocked("P5").isEmpty(), "IAPWS-IF97: 94.98 °C at 1500 m");
        tell("probe-check", "ana", "\"instrument\":\"P5\",", 9, 9, check.formatted("\"altitude_m\":0,"));
        assertTrue(daybook.probeBlocked("P5").isPresent());
        tell("probe-check", "ana", "\"instrument\":\"P5\",", 12, 12, check.formatted("\"altitude_m\":0,\"pressure_hpa\":845.56,"));
        assertTrue(daybook.probeBlocked("P5").isEmpty(), "the pressure read there goes before the height");
    }

    @Test
    void past_its_use_by_a_batch_is_held() {
        baked();
        tell("cooling-reading", "ana", 130, celsius("4"));
        tell("put-away", "ana", 131, "{\"unit\":\"fridge-1\",\"use_by\":\"2020-01-01\"}");
        assertTrue(now().holds().stream().anyMatch(hold -> hold.words().contains("Past its use-by")));
        tell("destroyed", "ana", 140, "{\"reason\":\"past its use-by\"}");
        assertFalse(now().held());
    }
}
