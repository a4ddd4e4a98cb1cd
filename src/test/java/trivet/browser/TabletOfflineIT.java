package trivet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.openqa.selenium.By;

/** A tablet at work while the wire to the service is cut, loses answers, or carries a record that the service refuses. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class TabletOfflineIT extends OnAWire {

    @Test
    @Order(1)
    void a_morning_without_a_network_and_then_everything_once() throws Exception {
        long before = number("SELECT count(*) FROM record");
        wire.cut(true);
        browser.get(wire.address() + "/work");
        until(() -> !browser.findElements(By.cssSelector("body[data-shell]")).isEmpty());
        accessible("offline work");
        key("Start a batch");
        accessible("offline new");
        key("Begin this batch");
        until(() -> browser.getCurrentUrl().contains("/batches/0"));
        String batch = browser.getCurrentUrl().replaceAll(".*/", "");
        accessible("offline batch");
        bigEnough("offline batch");
        key("Probe the core");
        assertTrue(probe("59,9", false).startsWith("59.9 °C. "));
        key("Back in the oven");
        key("Probe the core");
        probe("81", true);
        key("Out of the oven now");
        key("Measure it cooling");
        String said = probe("64", false);
        assertTrue(said.contains("89 min left") || said.contains("90 min left"), said);
        accessible("offline after a reading");
        browser.findElements(By.cssSelector("button")).stream().filter(b -> b.getText().equals("Sign out")).findFirst().orElseThrow().click();
        shown("a[href='/session/pin/ben']").click();
        find(".pad button");
        press("9999");
        assertTrue(shown("[data-problem]").getText().startsWith("That is not the PIN"), "a wrong PIN is refused without the network too");
        press("2222");
        until(() -> browser.getCurrentUrl().endsWith("/work"));
        browser.findElement(By.cssSelector(".bar a[href='/units']")).click();
        shown("a[href='/units/fridge-1']").click();
        find(".pad button");
        press("9,0");
        key("Keep this reading");
        assertTrue(shown(".said").getText().startsWith("9.0 °C. The limit is"), shown(".said").getText());
        picture("800-offline-fridge");
        assertEquals(before, number("SELECT count(*) FROM record"), "the wire was cut");
        long waiting = waits("waiting");
        assertEquals(7, waiting);
        browser.findElement(By.cssSelector(".bar a[href='/waiting']")).click();
        until(() -> browser.findElement(By.cssSelector("[data-count]")).getText().startsWith("7 to be sent"));
        accessible("waiting");
        picture("800-waiting");
        wire.cut(false);
        key("Send now");
        until(() -> waits("waiting") == 0);
        assertEquals(before + 7, number("SELECT count(*) FROM record"));
        assertEquals(1, number("SELECT count(*) FROM record WHERE person = 'ben' AND kind = 'unit-reading' AND json_extract(verdict, '$.verdict') = 'breached' AND receive_number > " + before));
        assertEquals(6, number("SELECT count(*) FROM record WHERE batch = '" + batch + "' AND person = 'ana'"));
        assertEquals(0, number("SELECT count(*) FROM (SELECT device_seq - lag(device_seq, 1, device_seq - 1) OVER (ORDER BY device_seq) AS step FROM record WHERE receive_number > " + before + ") WHERE step <> 1"), "no gap");
    }

    @Test
    @Order(2)
    void an_answer_that_is_lost_after_the_commit_twenty_times_leaves_one_record_each() throws Exception {
        long before = number("SELECT count(*) FROM record");
        wire.swallow(20);
        for (int i = 0; i < 20; i++) {
            script("const done = arguments[1]; import('/js/records.js').then(m => m.save('note', { text: 'note ' + arguments[0] })).then(made => made.sent).then(() => done(true), () => done(false));", i);
        }
        for (int again = 0; again < 60 && (wire.leftToSwallow() > 0 || waits("waiting") > 0); again++) {
            send();
        }
        assertEquals(0, wire.leftToSwallow(), "every one of the twenty answers was lost");
        assertEquals(0, waits("waiting"));
        assertEquals(before + 20, number("SELECT count(*) FROM record"));
    }

    @Test
    @Order(3)
    void a_record_that_is_refused_steps_aside_and_reaches_the_owners_review() throws Exception {
        wire.cut(true);
        for (String kind : new String[] {"note", "no-such-kind", "note"}) {
            script("const done = arguments[1]; import('/js/records.js').then(m => m.save(arguments[0], { text: 'x' })).then(made => made.sent).then(() => done(true), () => done(false));", kind);
        }
        wire.cut(false);
        send();
        assertEquals(0, waits("waiting"));
        assertEquals(1, waits("aside"));
        browser.get(wire.address() + "/waiting");
        shown("[data-aside]");
        accessible("aside");
        picture("800-aside");
        key("Send it to the owner's review as it is");
        eventually(() -> number("SELECT count(*) FROM aside") == 1);
        assertEquals(0, waits("aside"));
        assertEquals(1, waits("reviewed"), "the tablet keeps it all the same");
    }

    @Test
    @Order(4)
    void data_cleared_with_records_waiting_is_a_loss_that_the_service_names() throws Exception {
        script("const done = arguments[0]; import('/js/tablet/sender.js').then(m => m.flush(true)).then(() => done(true));");
        long last = number("SELECT max(device_seq) FROM (SELECT device_seq FROM record WHERE device = 'A' UNION SELECT device_seq FROM aside)");
        script("const done = arguments[0]; (async () => { const { box } = await import('/js/tablet/sender.js'), { store } = await import('/js/tablet/store.js'); for (let i = 0; i < 5; i++) await box.save('A', seq => ({ id: crypto.randomUUID(), device: 'A', device_seq: seq, kind: 'note', data: {} })); "
                + "await fetch('/api/tablet/met', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify({ install: 'told', sequence: await store.last('A'), waiting: 5, photos: 0, clock: {} }) }); })().then(() => done(true), wrong => done(String(wrong)));");
        browser.get("about:blank");
        browser.executeCdpCommand("Storage.clearDataForOrigin", Map.of("origin", wire.address(), "storageTypes", "indexeddb,local_storage,service_workers,cache_storage"));
        browser.get(wire.address() + "/work");
        eventually(() -> number("SELECT count(*) FROM installed") >= 2);
        script("const done = arguments[0]; import('/js/records.js').then(m => m.save('note', { text: 'afterwards' })).then(made => made.sent).then(() => done(true));");
        eventually(() -> number("SELECT max(device_seq) FROM record WHERE device = 'A'") == last + 6);
        browser.get(service.address() + "/session/owner");
        browser.findElement(By.name("password")).sendKeys("thornfold-demo");
        key("Sign in");
        shown("h1");
        browser.get(service.address() + "/owner/review");
        String text = shown("main").getText();
        assertTrue(text.contains("Tablet A: numbers " + (last + 1) + " to " + (last + 5)), text);
        assertTrue(text.contains("was set up anew"), text);
        assertTrue(text.contains("Refused records that tablets sent here"), text);
        accessible("review");
        picture("800-review");
    }
}
