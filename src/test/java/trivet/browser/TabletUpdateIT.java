package trivet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;

/** A new version of the screens: while somebody is at an entry, at the tiles, and one that does not come whole; and a client that is two versions old. */
class TabletUpdateIT extends OnAWire {

    @Test
    void a_new_version_waits_while_somebody_types_and_one_that_fails_leaves_the_old_one_working() throws Exception {
        wire.carry("ffffffffffffffff", null);
        browser.get(wire.address() + "/units/fridge-1");
        find(".pad button");
        press("4");
        browser.executeScript("window.mine = 'still here';");
        run("const r = await navigator.serviceWorker.ready; await r.update();");
        until(() -> Boolean.TRUE.equals(run("return (await navigator.serviceWorker.ready).waiting !== null;")));
        shown("[data-update]");
        browser.findElement(By.cssSelector("[data-update] button")).click();
        Thread.sleep(1500);
        assertEquals("still here", browser.executeScript("return window.mine;"), "nothing was loaded anew during the entry");
        assertEquals("4", browser.executeScript("return document.querySelector('[data-value]').value;"));
        assertEquals(true, run("return (await navigator.serviceWorker.ready).waiting !== null;"), "it waits");
        key("Keep this reading");
        shown(".said");
        wire.carry("eeeeeeeeeeeeeeee", "/js/forms.js");
        run("const r = await navigator.serviceWorker.ready; await r.update().catch(() => null); await new Promise(late => setTimeout(late, 3000));");
        assertEquals(true, run("const r = await navigator.serviceWorker.ready; return !(await caches.match('/js/forms.js', { cacheName: 'trivet-eeeeeeeeeeeeeeee' })) && r.active.state === 'activated';"), "a version that did not come whole is not there");
        wire.carry(null, null);
    }

    @Test
    void a_version_that_waits_takes_over_at_the_tiles() {
        wire.carry("dddddddddddddddd", null);
        browser.get(wire.address() + "/units/fridge-1");
        find(".pad button");
        run("const r = await navigator.serviceWorker.ready; await r.update();");
        until(() -> Boolean.TRUE.equals(run("return (await navigator.serviceWorker.ready).waiting !== null;")));
        assertEquals(false, run("return (await caches.keys()).length === 1;"), "the old one goes on working");
        browser.get(wire.address() + "/");
        find(".tiles");
        until(() -> Boolean.TRUE.equals(run("return (await caches.keys()).filter(name => name.startsWith('trivet-')).join() === 'trivet-dddddddddddddddd' && (await navigator.serviceWorker.ready).waiting === null;")));
        wire.carry(null, null);
        run("const r = await navigator.serviceWorker.ready; await r.update();");
        browser.get(wire.address() + "/");
        until(() -> Boolean.TRUE.equals(run("return !(await caches.keys()).includes('trivet-dddddddddddddddd');")));
    }

    /** The sender as it was two versions ago, from this project's history: one request for each record, and what waits in another store. */
    @Test
    void a_client_two_versions_old_still_sends_and_what_it_left_is_taken_over() throws Exception {
        String old = new String(TabletUpdateIT.class.getResourceAsStream("/tablet/records-two-versions-old.js").readAllBytes(), StandardCharsets.UTF_8);
        browser.get(wire.address() + "/");
        find(".tiles");
        long before = number("SELECT max(receive_number) FROM record");
        assertEquals(201L, run("const { uuid7 } = await import('/js/uuid7.js');" + old + "; return (await keep('note', { text: 'from long ago' }, { person: 'ana' })).status;"));
        wire.cut(true);
        String left = (String) run("const { uuid7 } = await import('/js/uuid7.js');" + old + "; await keep('note', { text: 'left behind' }, { person: 'ana' }); await keep('note', { text: 'left behind too' }, { person: 'ana' }); return JSON.parse(localStorage.getItem('trivet.waiting')).map(record => record.id).join();");
        assertEquals(2, left.split(",").length);
        wire.cut(false);
        browser.get(wire.address() + "/");
        find(".tiles");
        eventually(() -> number("SELECT count(*) FROM record WHERE id IN ('" + left.replace(",", "','") + "')") == 2);
        assertEquals(3, number("SELECT count(*) FROM record WHERE receive_number > " + before), "each of them once");
        assertEquals(true, run("return localStorage.getItem('trivet.waiting') === null;"));
    }
}
