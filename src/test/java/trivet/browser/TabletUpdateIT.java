package trivet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;

/** A new version of the screens comes while somebody is at an entry, and one that does not come whole. */
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
}
