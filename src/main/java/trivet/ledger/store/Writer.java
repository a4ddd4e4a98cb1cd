package trivet.ledger.store;

import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.atomic.AtomicLong;
import javax.sql.DataSource;

/**
 * The only thread that writes. It takes whatever waits, does it in one transaction, and answers each caller after the
 * commit: many tablets share one sync of the disk.
 */
@ApplicationScoped
public class Writer {

    private static final int MOST_IN_ONE_COMMIT = 256;

    @Inject
    DataSource source;

    private final BlockingQueue<Task<?>> waiting = new LinkedBlockingQueue<>();
    private final AtomicLong commits = new AtomicLong();
    private Thread thread;
    private Connection connection;
    private volatile boolean closed;

    /** Something to be written within a transaction that others may share. */
    interface Work<T> {
        T on(Connection connection) throws SQLException;
    }

    private static final class Task<T> {
        private final Work<T> work;
        private final CompletableFuture<T> done = new CompletableFuture<>();
        private T result;
        private Exception failure;

        private Task(Work<T> work) {
            this.work = work;
        }

        private void run(Connection connection) {
            try {
                java.sql.Savepoint before = connection.setSavepoint();
                try {
                    result = work.on(connection);
                    connection.releaseSavepoint(before);
                } catch (Exception failed) {
                    connection.rollback(before);
                    failure = failed;
                }
            } catch (SQLException broken) {
                failure = broken;
            }
        }

        private void answer() {
            if (failure == null) {
                done.complete(result);
            } else {
                done.completeExceptionally(failure);
            }
        }
    }

    /** Writes, and returns when it is on disk. */
    <T> T write(Work<T> work) {
        Task<T> task = new Task<>(work);
        start();
        waiting.add(task);
        try {
            return task.done.join();
        } catch (CompletionException failed) {
            throw failed.getCause() instanceof RuntimeException refusal ? refusal
                    : new IllegalStateException("The record could not be written to the disk.", failed.getCause());
        }
    }

    /** How many transactions were committed so far. */
    long commits() {
        return commits.get();
    }

    private synchronized void start() {
        if (closed) {
            throw new IllegalStateException("The service is stopping; nothing more is taken in.");
        }
        if (thread == null) {
            thread = new Thread(this::run, "record-writer");
            thread.setDaemon(true);
            thread.start();
        }
    }

    private void run() {
        List<Task<?>> group = new ArrayList<>();
        while (!closed) {
            try {
                group.clear();
                group.add(waiting.take());
                waiting.drainTo(group, MOST_IN_ONE_COMMIT - 1);
                commit(group);
            } catch (InterruptedException stopping) {
                return;
            }
        }
    }

    private void commit(List<Task<?>> group) {
        try {
            if (connection == null || connection.isClosed()) {
                connection = source.getConnection();
                connection.setAutoCommit(false);
            }
            for (Task<?> task : group) {
                task.run(connection);
            }
            connection.commit();
            commits.incrementAndGet();
            group.forEach(Task::answer);
        } catch (SQLException failed) {
            dropConnection();
            group.forEach(task -> task.done.completeExceptionally(failed));
        }
    }

    private void dropConnection() {
        try {
            if (connection != null) {
                connection.rollback();
                connection.close();
            }
        } catch (SQLException alreadyBroken) {
            // A connection that cannot be rolled back is given up either way.
        }
        connection = null;
    }

    /** The PRAGMA synchronous of the connection that writes: 2 is FULL. */
    int synchronous() {
        return write(connection -> {
            try (var result = connection.createStatement().executeQuery("PRAGMA synchronous")) {
                return result.getInt(1);
            }
        });
    }

    @PreDestroy
    void stop() {
        closed = true;
        if (thread != null) {
            thread.interrupt();
        }
    }
}
