package trivet.ledger.store;

import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import javax.sql.DataSource;

/**
 * The only one that writes, on one connection. Whoever comes while nobody writes takes all that waits, does it in one
 * transaction, and passes the pen on: many tablets share one sync of the disk, and a single one waits for no other thread.
 * Every caller is answered after the commit.
 */
@ApplicationScoped
public class Writer {

    private static final int MOST_IN_ONE_COMMIT = 256;

    @Inject
    DataSource source;

    private final ConcurrentLinkedQueue<Task<?>> waiting = new ConcurrentLinkedQueue<>();
    private final AtomicBoolean taken = new AtomicBoolean();
    private final AtomicLong commits = new AtomicLong();
    private Pen pen;
    private volatile boolean closed;

    /** Something to be written within a transaction that others may share; done again alone when another one of them fails. */
    interface Work<T> {
        T on(Pen pen) throws SQLException;
    }

    /** The connection that writes, with its statements kept prepared. */
    static final class Pen {
        private final Connection connection;
        private final Map<String, PreparedStatement> prepared = new HashMap<>();

        private Pen(Connection connection) {
            this.connection = connection;
        }

        /** A statement that stays prepared; not to be closed. */
        PreparedStatement prepare(String sql) throws SQLException {
            PreparedStatement known = prepared.get(sql);
            if (known == null) {
                known = connection.prepareStatement(sql);
                prepared.put(sql, known);
            }
            return known;
        }
    }

    private static final class Task<T> {
        private final Work<T> work;
        private final Thread caller = Thread.currentThread();
        private T result;
        private Exception failure;
        private volatile boolean done;
        private volatile boolean handed;

        private Task(Work<T> work) {
            this.work = work;
        }

        private boolean run(Pen pen) {
            failure = null;
            try {
                result = work.on(pen);
            } catch (Exception failed) {
                failure = failed;
            } catch (Error broken) {
                failure = new IllegalStateException("The record could not be written.", broken);
            }
            return failure == null;
        }

        private void answer() {
            done = true;
            LockSupport.unpark(caller);
        }

        private T answered() {
            if (failure == null) {
                return result;
            }
            throw failure instanceof RuntimeException refusal ? refusal : new IllegalStateException("The record could not be written to the disk.", failure);
        }
    }

    /** Writes, and returns when it is on disk. */
    <T> T write(Work<T> work) {
        if (closed) {
            throw new IllegalStateException("The service is stopping; nothing more is taken in.");
        }
        Task<T> task = new Task<>(work);
        waiting.add(task);
        boolean mine = taken.compareAndSet(false, true);
        while (!mine && !task.done) {
            LockSupport.park(this);
            mine = task.handed;
        }
        if (mine) {
            writeAndPassOn(task);
        }
        return task.answered();
    }

    /** With the pen in hand: it may have come after somebody else had done the task already, and is passed on all the same. */
    private void writeAndPassOn(Task<?> task) {
        try {
            if (!task.done) {
                writeWaiting();
            }
        } finally {
            passOn();
        }
    }

    /** Runs one statement that changes what may be changed. Returns how many rows it touched. */
    public int set(String sql, Object... values) {
        return write(own -> {
            PreparedStatement statement = own.prepare(sql);
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            return statement.executeUpdate();
        });
    }

    /** Passes the pen to the next who waits, or lays it down. */
    private void passOn() {
        while (true) {
            Task<?> next = waiting.peek();
            if (next != null) {
                next.handed = true;
                LockSupport.unpark(next.caller);
                return;
            }
            taken.set(false);
            if (waiting.isEmpty() || !taken.compareAndSet(false, true)) {
                return;
            }
        }
    }

    private void writeWaiting() {
        List<Task<?>> group = new ArrayList<>();
        for (Task<?> task = waiting.poll(); task != null; task = group.size() < MOST_IN_ONE_COMMIT ? waiting.poll() : null) {
            group.add(task);
        }
        if (!commit(group) && group.size() > 1) {
            group.forEach(task -> commit(List.of(task)));
        }
        group.forEach(Task::answer);
    }

    /** Does them all in one transaction, or none of them. */
    private boolean commit(List<Task<?>> group) {
        try {
            if (pen == null || pen.connection.isClosed()) {
                pen = new Pen(source.getConnection());
                pen.connection.setAutoCommit(false);
            }
            for (Task<?> task : group) {
                if (!task.run(pen)) {
                    pen.connection.rollback();
                    return false;
                }
            }
            pen.connection.commit();
            commits.incrementAndGet();
            return true;
        } catch (SQLException failed) {
            dropConnection();
            group.forEach(task -> task.failure = failed);
            return false;
        }
    }

    private void dropConnection() {
        try {
            if (pen != null) {
                pen.connection.rollback();
                pen.connection.close();
            }
        } catch (SQLException alreadyBroken) {
            // A connection that cannot be rolled back is given up either way.
        }
        pen = null;
    }

    /** How many transactions were committed so far. */
    long commits() {
        return commits.get();
    }

    /** The PRAGMA synchronous of the connection that writes: 2 is FULL. */
    int synchronous() {
        return write(own -> {
            try (var statement = own.connection.createStatement(); var result = statement.executeQuery("PRAGMA synchronous")) {
                return result.getInt(1);
            }
        });
    }

    @PreDestroy
    void stop() {
        closed = true;
    }
}
