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
import org.eclipse.microprofile.config.inject.ConfigProperty;
import java.util.List;
import org.junit.jupiter.api.Test;
import trivet.FreshDemo;
import trivet.device.Devices;
import trivet.device.Unit;
import trivet.ledger.VersionRef;
import trivet.plan.ApprovedPlan;
import trivet.plan.Plans;

/** What a product's own plan asks for beyond the rulebook: its storage and operating limits, its versions, its own checks and programmes. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class PlanInForceTest extends BatchBegun {

    @Inject
    Programmes programmes;
    @Inject
    Devices devices;
    @Inject
    Plans plans;
    @ConfigProperty(name = "trivet.data")
    String data;

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
        putAway("two-versions", "7 °C", "fridge-8");
        tell("food-reading", "ben", 135, celsius("6"));
        assertFalse(now().held());
        secondVersion("two-versions", "7 °C", "5 °C", 138, "stricter");
        assertFalse(now().held(), "6 °C was read when version 1 was in force: " + now().holds());
        tell("food-reading", "ben", 140, celsius("6"));
        assertTrue(now().held(), "6 °C read when version 2 was in force");
        assertTrue(now().foodReadings().get(1).words().contains("Judged by version 2"), now().foodReadings().get(1).words());
        assertFalse(now().foodReadings().get(0).words().contains("Judged by version"));
    }

    @Test
    void where_a_tablet_held_another_version_and_that_says_otherwise_a_person_decides() throws IOException {
        putAway("held-version", "5 °C", "fridge-6");
        secondVersion("held-version", "5 °C", "7 °C", 133, "looser, with a new study");
        tell("food-reading", "ben", held("held-version", 1), 135, 135, celsius("4.5"));
        assertFalse(now().held(), "both versions say within: " + now().holds());
        tell("food-reading", "ben", held("held-version", 1), 137, 137, celsius("6"));
        Deviation matter = now().deviations().stream().filter(d -> d.limit().equals("plan-version")).findFirst().orElseThrow();
        assertTrue(now().held() && !matter.breach(), "nobody but a person says which counts");
        assertTrue(matter.words().contains("Version 2 of the plan, in force then") && matter.words().contains("Version 1, which the tablet still held"), matter.words());
        tell("deviation-answer", "ana", 140, answer(matter.id(), "release"));
        assertTrue(now().held());
        tell("released", "pat", 141, "{\"holds\":[\"" + matter.id() + "\"],\"evidence\":\"the study of version 2 covers it\"}");
        assertFalse(now().held(), now().holds().toString());
    }

    @Test
    void a_stricter_version_in_force_opens_its_deviation_and_says_what_the_tablet_held() throws IOException {
        putAway("stricter-version", "7 °C", "fridge-5");
        secondVersion("stricter-version", "7 °C", "5 °C", 133, "stricter");
        tell("food-reading", "ben", held("stricter-version", 1), 137, 137, celsius("6"));
        assertEquals(List.of("chilled-storage", "plan-version"), now().deviations().stream().filter(Deviation::holds).map(Deviation::limit).sorted().toList());
        tell("food-reading", "ben", held("stricter-version", 2), 140, 140, celsius("4"));
        assertEquals(1, now().deviations().stream().filter(d -> d.limit().equals("plan-version")).count());
    }

    /** A batch of a plan whose use-by rests on a temperature, baked, cooled and put away. */
    private void putAway(String product, String atMost, String fridge) throws IOException {
        approve(product, "use-by: \"3 days\"", "use-by: \"3 days\"\n  storage-at-most: \"" + atMost + "\"");
        devices.write(new Unit(fridge, fridge, Unit.Kind.FRIDGE, true), "olive");
        begin(product);
        baked();
        tell("cooling-reading", "ana", 130, celsius("4"));
        tell("put-away", "ana", 131, "{\"unit\":\"" + fridge + "\",\"use_by\":\"2099-01-01\"}");
    }

    private void secondVersion(String product, String before, String now, int minute, String meaning) throws IOException {
        Path file = Path.of(data, "plans", "products", product, "plan.yaml");
        Files.writeString(file, Files.readString(file).replace("storage-at-most: \"" + before + "\"", "storage-at-most: \"" + now + "\"").replace("\nversion: 1\n", "\nversion: 2\n"));
        plans.approve(product, "olive", start.plusSeconds(60L * minute), meaning);
    }

    private String held(String product, int version) {
        VersionRef ref = plans.history(product).stream().map(ApprovedPlan::ref).filter(one -> one.version() == version).findFirst().orElseThrow();
        return "\"batch\":\"" + batch + "\",\"plan\":{\"id\":\"" + ref.id() + "\",\"version\":" + ref.version() + ",\"sha256\":\"" + ref.sha256() + "\"},";
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
}
