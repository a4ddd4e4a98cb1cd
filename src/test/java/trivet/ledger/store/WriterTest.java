package trivet.ledger.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import trivet.FreshDemo;

/** The one writer: full sync on its own connection, and one commit for what waits together. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class WriterTest {

    @Inject
    Writer writer;

    @Test
    void the_connection_that_writes_syncs_fully() {
        assertEquals(2, writer.synchronous());
    }

    @Test
    void what_waits_together_shares_a_commit() throws Exception {
        CountDownLatch blocked = new CountDownLatch(1);
        var pool = Executors.newFixedThreadPool(41);
        Future<?> first = pool.submit(() -> writer.write(connection -> {
            try {
                return blocked.await(10, java.util.concurrent.TimeUnit.SECONDS);
            } catch (InterruptedException stopped) {
                return false;
            }
        }));
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
}
