package trivet.ledger.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import trivet.FreshDemo;

/** The one writer: full sync on its own connection, and one commit for what waits together. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class WriterTest {

    private static final int EACH = 20_000;

    @Inject
    Writer writer;

    @Test
    void the_connection_that_writes_syncs_fully() {
        assertEquals(2, writer.synchronous());
    }

    @Test
    void what_waits_together_shares_a_commit() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch blocked = new CountDownLatch(1);
        var pool = Executors.newFixedThreadPool(41);
        Future<?> first = pool.submit(() -> writer.write(connection -> {
            begun.countDown();
            try {
                return blocked.await(10, java.util.concurrent.TimeUnit.SECONDS);
            } catch (InterruptedException stopped) {
                return false;
            }
        }));
        assertTrue(begun.await(10, java.util.concurrent.TimeUnit.SECONDS));
        long before = writer.commits();
        List<Future<?>> rest = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            rest.add(pool.submit(() -> writer.write(connection -> 1)));
        }
        Thread.sleep(500);
        blocked.countDown();
        first.get();
        for (Future<?> one : rest) {
            one.get();
        }
        assertTrue(writer.commits() - before <= 5, "commits: " + (writer.commits() - before));
        pool.shutdown();
    }

    @Test
    void one_that_fails_takes_no_other_down_and_many_threads_all_get_their_own_answer() throws Exception {
        var pool = Executors.newFixedThreadPool(24);
        List<Future<Integer>> all = new ArrayList<>();
        for (int i = 0; i < 2_000; i++) {
            int number = i;
            all.add(pool.submit(() -> writer.write(pen -> {
                if (number % 7 == 3) {
                    throw new IllegalArgumentException("refused " + number);
                }
                return number;
            })));
        }
        for (int i = 0; i < all.size(); i++) {
            if (i % 7 == 3) {
                int number = i;
                var refused = org.junit.jupiter.api.Assertions.assertThrows(java.util.concurrent.ExecutionException.class, () -> all.get(number).get());
                assertEquals("refused " + i, refused.getCause().getMessage());
            } else {
                assertEquals(i, all.get(i).get());
            }
        }
        pool.shutdown();
    }

    @Test
    @Timeout(120)
    void a_pen_that_comes_to_one_whose_work_another_has_done_is_passed_on() throws Exception {
        int threads = 8;
        AtomicInteger written = new AtomicInteger();
        List<Thread> all = new ArrayList<>();
        for (int i = 0; i < threads; i++) {
            all.add(new Thread(() -> {
                for (int j = 0; j < EACH; j++) {
                    written.addAndGet(writer.write(pen -> 1));
                }
            }));
        }
        all.forEach(thread -> thread.setDaemon(true));
        all.forEach(Thread::start);
        for (Thread thread : all) {
            thread.join(60_000);
        }
        assertEquals(threads * EACH, written.get(), "everybody was answered, nobody waits for ever");
    }
}
