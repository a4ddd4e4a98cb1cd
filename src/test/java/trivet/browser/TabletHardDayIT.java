package trivet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.openqa.selenium.WindowType;

/** A tablet on the worst days: a whole shift alone, a bad link, two tabs, two tablets, wrong clocks. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class TabletHardDayIT extends OnAWire {

    private static final String SAVE = "const { save } = await import('/js/records.js'), { uuid7 } = await import('/js/uuid7.js');";

    private static void signInAgain() {
        browser.get(wire.address() + "/session/pin/ana");
        find(".pad button");
        press("1111");
        until(() -> browser.getCurrentUrl().endsWith("/work"));
    }

    private static void sendAll(int times) {
        for (int again = 0; again < times && (waits("waiting") > 0 || (Long) run("return (await (await import('/js/tablet/store.js')).photoStore.all()).filter(one => !one.sent).length;") > 0); again++) {
            send();
        }
    }

    private static long gaps(long before) throws Exception {
        return number("SELECT count(*) FROM (SELECT device_seq - lag(device_seq, 1, device_seq - 1) OVER (ORDER BY device_seq) AS step FROM record WHERE device = 'A' AND receive_number > " + before + ") WHERE step <> 1");
    }

    @Test
    @Order(1)
    void a_whole_shift_without_a_network_is_afterwards_the_same_on_the_service_and_on_the_tablet() throws Exception {
        long before = number("SELECT max(receive_number) FROM record");
        wire.cut(true);
        run(SAVE + "const { keepPhoto } = await import('/js/tablet/photos.js'); const ids = [];"
                + "for (let i = 0; i < 20; i++) { const batch = uuid7(); ids.push(batch); await save('batch-started', { line: 'wheat', trays: 2, pieces: 24, oven: 'oven-1', product: 'deep-quiche', code: 'S-' + i }, { batch, person: 'ana' });"
                + " await save('cook-reading', { temperature: { value: i % 5 ? '81.0' : '70.0', unit: 'C' }, held_seconds: 30 }, { batch, person: 'ana' }); await save('out-of-oven', {}, { batch, person: 'ana' });"
                + " if (i % 4 === 0) { const canvas = new OffscreenCanvas(2000, 1000), c = canvas.getContext('2d'); c.fillStyle = 'white'; c.fillRect(0, 0, 2000, 1000); c.fillStyle = 'black'; c.fillRect(90 * i, 40, 70, 70); await keepPhoto(await canvas.convertToBlob(), batch, 'tray ' + i); } }"
                + "const { batches } = await import('/js/tablet/fold.js'), { model } = await import('/js/tablet/kit.js');"
                + "globalThis.shift = ids; globalThis.told = (await batches(await model())).filter(b => ids.includes(b.id)).map(b => [b.id, b.life, b.cook_verdict, b.holds.length > 0, b.next].join('|')).sort();");
        assertEquals(65, waits("waiting"), "60 records and those of five photos");
        assertEquals(0, number("SELECT count(*) FROM record WHERE receive_number > " + before));
        wire.cut(false);
        sendAll(20);
        assertEquals(0, waits("waiting"));
        assertEquals(65, number("SELECT count(*) FROM record WHERE receive_number > " + before));
        assertEquals(0, gaps(before));
        assertEquals(5, number("SELECT count(*) FROM photo"));
        List<?> both = (List<?>) run("const kit = await (await fetch('/tablet/kit.json')).json(); return [globalThis.told.map(line => line.replace(/\\d+ min left/, '')), kit.batches.filter(b => globalThis.shift.includes(b.id)).map(b => [b.id, b.life, b.cook_verdict, b.holds.length > 0, b.next].join('|').replace(/\\d+ min left/, '')).sort()];");
        assertEquals(both.get(1), both.get(0));
        assertEquals(20, ((List<?>) both.get(0)).size());
    }

    @Test
    @Order(2)
    void three_hundred_records_and_forty_photos_come_through_a_bad_link_once_each() throws Exception {
        long before = number("SELECT max(receive_number) FROM record");
        long photos = number("SELECT count(*) FROM photo");
        wire.cut(true);
        run(SAVE + "const { keepPhoto } = await import('/js/tablet/photos.js');"
                + "for (let i = 0; i < 260; i++) await save('note', { text: 'note ' + i }, { person: 'ana' });"
                + "for (let i = 0; i < 40; i++) { const canvas = new OffscreenCanvas(200, 100), c = canvas.getContext('2d'); c.fillStyle = 'white'; c.fillRect(0, 0, 200, 100); c.fillStyle = 'black'; c.fillRect(4 * i, 2 * i, 30, 20); await keepPhoto(await canvas.convertToBlob(), null, 'p' + i); }");
        assertEquals(300, waits("waiting"));
        wire.cut(false);
        wire.rough(0.2, 300);
        sendAll(120);
        wire.rough(0, 0);
        sendAll(5);
        assertEquals(0, waits("waiting"));
        assertEquals(300, number("SELECT count(*) FROM record WHERE receive_number > " + before));
        assertEquals(0, gaps(before));
        assertEquals(0, number("SELECT count(*) FROM (SELECT device_seq - lag(device_seq, 1, 0) OVER (ORDER BY receive_number) AS step FROM record WHERE device = 'A' AND receive_number > " + before + ") WHERE step < 0"), "in the order of their numbers");
        assertEquals(photos + 40, number("SELECT count(*) FROM photo"));
    }

    @Test
    @Order(3)
    void two_tabs_send_each_record_once() throws Exception {
        long before = number("SELECT max(receive_number) FROM record");
        wire.cut(true);
        String first = browser.getWindowHandle();
        run(SAVE + "for (let i = 0; i < 30; i++) await save('note', { text: 'first ' + i }, { person: 'ana' });");
        wire.cut(false);
        browser.switchTo().newWindow(WindowType.TAB);
        String second = browser.getWindowHandle();
        browser.get(wire.address() + "/work");
        shown("h1");
        wire.cut(true);
        run(SAVE + "for (let i = 0; i < 30; i++) await save('note', { text: 'second ' + i }, { person: 'ana' });");
        wire.cut(false);
        for (String tab : List.of(first, second, first, second)) {
            browser.switchTo().window(tab);
            browser.executeScript("import('/js/tablet/sender.js').then(m => m.flush(true));");
        }
        eventually(() -> waits("waiting") == 0);
        assertEquals(60, number("SELECT count(*) FROM record WHERE receive_number > " + before));
        assertEquals(0, gaps(before));
        browser.switchTo().window(second);
        browser.close();
        browser.switchTo().window(first);
    }

    @Test
    @Order(4)
    void the_same_check_by_two_tablets_is_kept_twice_and_the_worse_opens_the_deviation() throws Exception {
        HttpClient client = HttpClient.newHttpClient();
        String session = post(client, "/session/owner", "person=olive&password=thornfold-demo", "").headers().firstValue("set-cookie").orElseThrow().split(";")[0];
        Matcher code = Pattern.compile("class=\"code\">([A-Z0-9]{4}) ([A-Z0-9]{4})<").matcher(post(client, "/owner/tablets/invite", "name=second", session).body());
        assertTrue(code.find());
        String tablet = post(client, "/join", "code=" + code.group(1) + code.group(2), "").headers().firstValue("set-cookie").orElseThrow().split(";")[0].split("=", 2)[1];
        String batch = (String) run(SAVE + "const batch = uuid7(), { derived } = await import('/js/lib/canonical.js'); globalThis.core = await derived(batch + '/core'); await (await save('batch-started', { line: 'wheat', trays: 1, pieces: 12, oven: 'oven-1', product: 'deep-quiche', code: 'T-2' }, { batch, person: 'ana' })).sent; return batch;");
        wire.cut(true);
        run(SAVE + "await save('cook-reading', { temperature: { value: '81.0', unit: 'C' }, held_seconds: 30 }, { batch: given[0], check: globalThis.core, person: 'ana' });", batch);
        String id = (String) run("return (await import('/js/uuid7.js')).uuid7();");
        String check = (String) run("return globalThis.core;");
        String record = "{\"schema\":\"record-1\",\"id\":\"" + id + "\",\"kind\":\"cook-reading\",\"site\":\"site\",\"device\":\"B\",\"device_seq\":1,\"person\":\"ben\",\"batch\":\"" + batch + "\",\"check\":\"" + check + "\",\"source\":\"typed\",\"claimed_at\":\"" + Instant.now()
                + "\",\"device_clock\":{\"wall\":\"" + Instant.now() + "\",\"zone\":\"UTC\",\"offset_ms\":0},\"data\":{\"temperature\":{\"value\":\"70.0\",\"unit\":\"C\"},\"held_seconds\":30}}";
        HttpResponse<String> kept = client.send(HttpRequest.newBuilder(URI.create(service.address() + "/api/records/" + id)).header("Authorization", "Bearer " + tablet).header("Content-Type", "application/json").PUT(HttpRequest.BodyPublishers.ofString(record)).build(), HttpResponse.BodyHandlers.ofString());
        assertEquals(201, kept.statusCode(), kept.body());
        wire.cut(false);
        sendAll(5);
        assertEquals(2, number("SELECT count(*) FROM record WHERE batch = '" + batch + "' AND kind = 'cook-reading'"), "both are kept");
        String told = (String) run("const b = (await (await fetch('/tablet/kit.json')).json()).batches.find(one => one.id === given[0]); return b.cook_verdict + ' ' + b.deviations.length;", batch);
        assertEquals("breached 1", told);
    }

    private static HttpResponse<String> post(HttpClient client, String path, String form, String cookie) throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(service.address() + path)).header("Content-Type", "application/x-www-form-urlencoded").header("Sec-Fetch-Site", "same-origin");
        if (!cookie.isEmpty()) {
            request.header("Cookie", cookie);
        }
        return client.send(request.POST(HttpRequest.BodyPublishers.ofString(form)).build(), HttpResponse.BodyHandlers.ofString());
    }

    @Test
    @Order(5)
    void somebody_whose_last_day_is_over_cannot_sign_in_without_the_network_either() throws Exception {
        HttpClient client = HttpClient.newHttpClient();
        String session = post(client, "/session/owner", "person=olive&password=thornfold-demo", "").headers().firstValue("set-cookie").orElseThrow().split(";")[0];
        assertEquals(303, post(client, "/owner/people/last-day", "id=ben&day=2026-01-31", session).statusCode());
        run("await (await import('/js/tablet/kit.js')).refresh();");
        wire.cut(true);
        browser.get(wire.address() + "/session/pin/ben");
        find("body[data-shell] .pad button");
        press("2222");
        assertTrue(shown("[data-problem]").getText().startsWith("This person's time here has ended"));
        wire.cut(false);
        signInAgain();
    }

    @Test
    @Order(6)
    void a_clock_three_hours_ahead_and_then_a_day_back_gives_the_right_times_and_is_marked() throws Exception {
        browser.executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", "{ const real = Date.now.bind(Date); Date.now = () => real() + Number(localStorage.getItem('test.shift') ?? 0); }"));
        long hours = Duration.ofHours(3).toMillis();
        browser.executeScript("localStorage.setItem('test.shift', arguments[0]);", hours);
        browser.get(wire.address() + "/work");
        shown("h1");
        send();
        wire.cut(true);
        long before = number("SELECT max(receive_number) FROM record");
        String batch = (String) run(SAVE + "const batch = uuid7(); await save('batch-started', { line: 'wheat', trays: 1, pieces: 12, oven: 'oven-1', product: 'deep-quiche', code: 'T-3' }, { batch, person: 'ana' }); await save('cook-reading', { temperature: { value: '81.0', unit: 'C' }, held_seconds: 30 }, { batch, person: 'ana' }); await save('out-of-oven', {}, { batch, person: 'ana' }); return batch;");
        browser.executeScript("localStorage.setItem('test.shift', arguments[0]);", hours - Duration.ofDays(1).toMillis());
        run(SAVE + "await save('cooling-reading', { temperature: { value: '60.0', unit: 'C' } }, { batch: given[0], person: 'ana' });", batch);
        wire.cut(false);
        sendAll(5);
        Instant now = Instant.now();
        assertEquals(4, number("SELECT count(*) FROM record WHERE receive_number > " + before));
        assertEquals(4, number("SELECT count(*) FROM record WHERE receive_number > " + before + " AND claimed_at BETWEEN '" + now.minusSeconds(120) + "' AND '" + now.plusSeconds(5) + "'"), "the right times");
        assertEquals(4, number("SELECT count(*) FROM record WHERE receive_number > " + before + " AND abs(json_extract(verdict, '$.clock.offset_ms') + " + hours + ") < 5000"), "the offset is kept");
        assertEquals(1, number("SELECT count(*) FROM record WHERE receive_number > " + before + " AND json_extract(verdict, '$.clock.set_back_ms') > 86000000"), "the step back too");
        browser.get(service.address() + "/session/pin/ana");
        find(".pad button");
        press("1111");
        until(() -> browser.getCurrentUrl().endsWith("/work"));
        browser.get(service.address() + "/batches/" + batch);
        String page = shown("main").getText();
        assertTrue(page.contains("3 h 0 min ahead"), page);
        assertTrue(page.contains("set back by 24 h 0 min"), page);
        assertTrue(page.contains("min left"), page);
    }
}
