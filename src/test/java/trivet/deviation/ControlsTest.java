package trivet.deviation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import java.util.List;
import org.junit.jupiter.api.Test;
import trivet.FreshDemo;
import trivet.device.Devices;
import trivet.device.Unit;
import trivet.ledger.Ids;
import trivet.limit.Verdict;
import trivet.plan.Plans;

/** Reheats, hot holding, a product's own storage limit, operating limits, and probes that may not be trusted. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class ControlsTest extends BatchBegun {

    @Inject
    Programmes programmes;
    @Inject
    Devices devices;
    @Inject
    Plans plans;
    @ConfigProperty(name = "trivet.data")
    String data;

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
    void the_temperature_that_a_use_by_rests_on_is_the_limit_of_the_batch() throws IOException {
        approve("soft-slice", "use-by: \"3 days\"", "use-by: \"3 days\"\n  storage-at-most: \"5 °C\"");
        devices.write(new Unit("fridge-9", "Fridge 9", Unit.Kind.FRIDGE, true), "olive");
        begin("soft-slice");
        baked();
        tell("cooling-reading", "ana", 130, celsius("4"));
        tell("put-away", "ana", 131, "{\"unit\":\"fridge-9\",\"use_by\":\"2099-01-01\"}");
        assertFalse(now().held(), now().holds().toString());
        tell("unit-reading", "ben", "", 135, 135, "{\"unit\":\"fridge-9\",\"temperature\":{\"value\":\"6.0\",\"unit\":\"C\"}}");
        assertTrue(now().held(), "6 °C is lawful, and past what its life rests on");
        assertEquals("food", now().next().act());
        tell("food-reading", "ben", 137, celsius("4.8"));
        assertFalse(now().held());
        assertEquals("food probed within", now().deviations().get(0).closedHow().orElseThrow());
        tell("food-reading", "ben", 140, celsius("5.1"));
        assertTrue(now().held());
    }

    @Test
    void an_operating_limit_looser_than_the_rulebook_is_refused() throws IOException {
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class,
                () -> approve("loose-slice", "operating: \"76 °C\"", "operating: \"59 °C\""));
        assertTrue(refused.getMessage().contains("59 °C"), refused.getMessage());
    }

    @Test
    void a_batch_under_way_is_judged_by_the_version_in_force_at_each_measurement() throws IOException {
        approve("two-versions", "use-by: \"3 days\"", "use-by: \"3 days\"\n  storage-at-most: \"7 °C\"");
        devices.write(new Unit("fridge-8", "Fridge 8", Unit.Kind.FRIDGE, true), "olive");
        begin("two-versions");
        baked();
        tell("cooling-reading", "ana", 130, celsius("4"));
        tell("put-away", "ana", 131, "{\"unit\":\"fridge-8\",\"use_by\":\"2099-01-01\"}");
        tell("food-reading", "ben", 135, celsius("6"));
        assertFalse(now().held());
        Path file = Path.of(data, "plans", "products", "two-versions", "plan.yaml");
        Files.writeString(file, Files.readString(file).replace("storage-at-most: \"7 °C\"", "storage-at-most: \"5 °C\"").replace("\nversion: 1\n", "\nversion: 2\n"));
        plans.approve("two-versions", "olive", start.plusSeconds(60 * 138), "stricter");
        assertFalse(now().held(), "6 °C was read when version 1 was in force: " + now().holds());
        tell("food-reading", "ben", 140, celsius("6"));
        assertTrue(now().held(), "6 °C read when version 2 was in force");
        assertTrue(now().foodReadings().get(1).words().contains("Judged by version 2"), now().foodReadings().get(1).words());
        assertFalse(now().foodReadings().get(0).words().contains("Judged by version"));
    }

    @Test
    void a_version_signed_for_later_is_not_in_force_before() throws IOException {
        approve("later-version", "use-by: \"3 days\"", "use-by: \"3 days\"");
        Path file = Path.of(data, "plans", "products", "later-version", "plan.yaml");
        Files.writeString(file, Files.readString(file).replace("\nversion: 1\n", "\nversion: 2\n"));
        plans.approve("later-version", "olive", clock.instant().plusSeconds(3600), "from the next hour on");
        assertEquals(1, plans.inForce(clock.instant()).stream().filter(plan -> plan.ref().id().equals("later-version")).findFirst().orElseThrow().ref().version());
        assertEquals(2, plans.inForce(clock.instant().plusSeconds(3601)).stream().filter(plan -> plan.ref().id().equals("later-version")).findFirst().orElseThrow().ref().version());
    }

    @Test
    void a_changeover_falls_due_at_the_start_and_one_that_is_not_good_holds_until_it_is() {
        begin("gluten-free-quiche");
        assertEquals(List.of("changeover", "label"), now().checks().stream().filter(check -> check.sort().equals("own")).map(check -> check.item()).toList());
        assertTrue(now().checks().stream().filter(check -> check.sort().equals("own")).findFirst().orElseThrow().label().endsWith("oPRP 1 Changeover to gluten-free"));
        String verdict = tell("plan-check", "ana", 2, "{\"item\":\"changeover\",\"good\":false,\"words\":\"crumbs in the seam of the bench\"}");
        assertTrue(verdict != null && now().held(), "crumbs hold it");
        assertTrue(now().deviations().stream().anyMatch(d -> d.words().contains("crumbs in the seam")));
        tell("plan-check", "ana", 9, "{\"item\":\"changeover\",\"good\":true}");
        assertFalse(now().held(), now().holds().toString());
    }

    @Test
    void a_wrong_label_holds_the_batch_even_when_the_next_is_right() {
        begin("deep-quiche");
        baked();
        tell("cooling-reading", "ana", 130, celsius("4"));
        tell("plan-check", "ana", 131, "{\"item\":\"label\",\"good\":false,\"words\":\"labels of the slice\"}");
        tell("plan-check", "ana", 133, "{\"item\":\"label\",\"good\":true}");
        assertTrue(now().held(), "what was labelled before is still out there");
        assertEquals("own-label", now().deviations().get(0).limit());
    }

    @Test
    void a_programme_with_greater_attention_is_checked_each_baking_day() {
        begin("deep-quiche");
        ProgrammeRecord allergens = programmes.of(daybook.today()).stream().filter(p -> p.programme().id().equals("allergens")).findFirst().orElseThrow();
        assertTrue(allergens.check().isPresent() && allergens.check().get().takenBy().isEmpty());
        tell("programme-check", "ana", "", 3, 3, "{\"item\":\"allergens\",\"good\":false,\"words\":\"open nut bin\"}");
        ProgrammeRecord noted = programmes.of(daybook.today()).stream().filter(p -> p.programme().id().equals("allergens")).findFirst().orElseThrow();
        assertTrue(noted.check().orElseThrow().takenBy().isPresent());
        assertTrue(noted.deviations().get(0).words().contains("open nut bin") && noted.deviations().get(0).holds());
    }

    @Test
    void a_correction_of_a_programme_takes_its_deviation_away_only_when_another_accepts_it() {
        begin("deep-quiche");
        String seen = tell("programme-check", "ana", "", 4, 4, "{\"item\":\"gluten\",\"good\":false,\"words\":\"lid off\"}");
        assertTrue(lidOff());
        String correction = tell("correction", "ana", "", 5, 5, "{\"of\":\"" + seen + "\",\"reason\":\"wrong key\",\"data\":{\"good\":true}}");
        assertTrue(lidOff(), "who wrote it betters nothing alone");
        tell("accepted", "pat", "", 6, 6, "{\"records\":[\"" + correction + "\"]}");
        assertFalse(lidOff());
    }

    private boolean lidOff() {
        return programmes.of(daybook.today()).stream().flatMap(programme -> programme.deviations().stream()).anyMatch(deviation -> deviation.words().contains("lid off"));
    }

    private void approve(String product, String replaced, String by) throws IOException {
        plans.drafts();
        Path folder = Path.of(data, "plans", "products");
        String text = Files.readString(folder.resolve("deep-quiche").resolve("plan.yaml")).replace("product: deep-quiche", "product: " + product);
        Files.createDirectories(folder.resolve(product));
        Files.writeString(folder.resolve(product).resolve("plan.yaml"), text.replace(replaced, by));
        plans.approve(product, "olive", start.minusSeconds(60), "approved");
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
