package trivet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import trivet.start.Service;

/** The service dies again and again while a tablet sends. */
class TabletKilledIT extends OnAWire {

    private static final int KILLS = 20;
    private static final int EACH = 15;

    @Test
    void a_service_killed_twenty_times_during_sending_has_each_record_once_and_in_order() throws Exception {
        browser.get(wire.address() + "/");
        find(".tiles");
        long before = number("SELECT max(receive_number) FROM record");
        Random random = new Random(6);
        int interrupted = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            wire.cut(true);
            run("const { save } = await import('/js/records.js'); for (let i = 0; i < given[1]; i++) await save('note', { text: given[0] + ' ' + i }, { person: 'ana' });", "kill " + kill, EACH);
            wire.cut(false);
            browser.executeScript("import('/js/tablet/sender.js').then(m => m.flush(true));");
            Thread.sleep(random.nextInt(120));
            service.kill();
            interrupted += number("SELECT count(*) FROM record WHERE receive_number > " + before) < (kill + 1) * EACH ? 1 : 0;
            service = Service.start(data, service.port, "-Dtrivet.demo=true");
        }
        assertTrue(interrupted >= KILLS / 4, "the service died with records waiting only " + interrupted + " times");
        for (int again = 0; again < 30 && waits("waiting") > 0; again++) {
            send();
        }
        assertEquals(0, waits("waiting"));
        assertEquals(0, waits("aside"));
        assertEquals(KILLS * EACH, number("SELECT count(*) FROM record WHERE receive_number > " + before));
        assertEquals(KILLS * EACH, number("SELECT count(DISTINCT id) FROM record WHERE receive_number > " + before));
        assertEquals(0, number("SELECT count(*) FROM (SELECT device_seq - lag(device_seq, 1, device_seq - 1) OVER (ORDER BY receive_number) AS step FROM record WHERE device = 'A' AND receive_number > " + before + ") WHERE step <> 1"), "in the tablet's order, without a gap");
    }
}
