package trivet.ledger.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.sql.DataSource;
import trivet.ledger.Entry;
import trivet.ledger.Journal;

/** Reads records back; what was parsed once is kept, since a record never changes. */
@ApplicationScoped
public class JdbcJournal implements Journal {

    private static final int MOST_KEPT = 40_000;
    private static final int BATCHES_AT_ONCE = 400;
    private static final String COLUMNS = "SELECT r.receive_number, r.sha256, r.received_at, r.body, r.verdict FROM record r ";

    @Inject
    DataSource source;

    private final Map<Long, Entry> parsed = Collections.synchronizedMap(new LinkedHashMap<>(1024, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Long, Entry> eldest) {
            return size() > MOST_KEPT;
        }
    });

    @Override
    public Optional<Entry> find(String id) {
        return query(COLUMNS + "WHERE r.id = ?", List.of(id)).stream().findFirst();
    }

    @Override
    public List<Entry> ofBatch(String batch) {
        return ofBatches(List.of(batch)).get(batch);
    }

    @Override
    public Map<String, List<Entry>> ofBatches(Collection<String> batches) {
        Map<String, List<Entry>> all = new LinkedHashMap<>();
        List<String> ids = List.copyOf(new LinkedHashSet<>(batches));
        for (int from = 0; from < ids.size(); from += BATCHES_AT_ONCE) {
            List<String> some = ids.subList(from, Math.min(ids.size(), from + BATCHES_AT_ONCE));
            String marks = String.join(",", Collections.nCopies(some.size(), "?"));
            List<Object> twice = new ArrayList<>(some);
            twice.addAll(some);
            Map<String, Set<Entry>> found = new LinkedHashMap<>();
            some.forEach(id -> found.put(id, new LinkedHashSet<>()));
            List<Entry> entries = query(COLUMNS + "WHERE r.receive_number IN (SELECT receive_number FROM record WHERE batch IN (" + marks
                    + ") UNION SELECT receive_number FROM mention WHERE named IN (" + marks + ")) ORDER BY r.receive_number", twice);
            for (Entry entry : entries) {
                entry.batch().map(found::get).ifPresent(list -> list.add(entry));
                Mentions.of(entry).forEach(named -> Optional.ofNullable(found.get(named)).ifPresent(list -> list.add(entry)));
            }
            found.forEach((id, list) -> all.put(id, List.copyOf(list)));
        }
        return all;
    }

    @Override
    public List<Entry> ofUnit(String unit, Instant from, Instant to) {
        return query(COLUMNS + "WHERE r.unit = ? AND r.claimed_at >= ? AND r.claimed_at < ? ORDER BY r.receive_number",
                List.of(unit, Times.text(from), Times.text(to)));
    }

    @Override
    public List<Entry> ofKind(String kind, Instant from, Instant to) {
        return query(COLUMNS + "WHERE r.kind = ? AND r.claimed_at >= ? AND r.claimed_at < ? ORDER BY r.receive_number",
                List.of(kind, Times.text(from), Times.text(to)));
    }

    @Override
    public List<Entry> between(Instant from, Instant to) {
        return query(COLUMNS + "WHERE r.claimed_at >= ? AND r.claimed_at < ? ORDER BY r.receive_number",
                List.of(Times.text(from), Times.text(to)));
    }

    @Override
    public List<Entry> naming(String id) {
        return query(COLUMNS + "JOIN mention m ON m.receive_number = r.receive_number WHERE m.named = ? ORDER BY r.receive_number",
                List.of(id));
    }

    @Override
    public List<Gap> gaps(int most) {
        String sql = "SELECT g.device, g.before + 1, g.device_seq - 1, g.received_at FROM (SELECT device, device_seq, received_at, LAG(device_seq, 1, 0) OVER (PARTITION BY device ORDER BY device_seq) AS before "
                + "FROM (SELECT device, device_seq, received_at FROM record UNION ALL SELECT device, device_seq, received_at FROM aside WHERE device_seq IS NOT NULL)) g WHERE g.device_seq - g.before > 1 ORDER BY g.received_at DESC LIMIT ?";
        try (Connection connection = source.getConnection(); PreparedStatement select = connection.prepareStatement(sql)) {
            select.setInt(1, most);
            List<Gap> gaps = new ArrayList<>();
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    gaps.add(new Gap(row.getString(1), row.getLong(2), row.getLong(3), Instant.parse(row.getString(4))));
                }
            }
            return gaps;
        } catch (SQLException failed) {
            throw new IllegalStateException("The records could not be read.", failed);
        }
    }

    @Override
    public long lastSequence(String device) {
        return number("SELECT coalesce(max(device_seq), 0) FROM record WHERE device = ?", List.of(device));
    }

    @Override
    public long lastNumber() {
        return number("SELECT coalesce(max(receive_number), 0) FROM record", List.of());
    }

    @Override
    public Optional<Instant> lastReceived() {
        try (Connection connection = source.getConnection(); PreparedStatement statement = prepare(connection, "SELECT received_at FROM record ORDER BY receive_number DESC LIMIT 1", List.of());
                ResultSet rows = statement.executeQuery()) {
            return rows.next() ? Optional.of(Instant.parse(rows.getString(1))) : Optional.empty();
        } catch (SQLException failed) {
            throw new IllegalStateException("The records could not be read.", failed);
        }
    }

    private long number(String sql, List<?> values) {
        try (Connection connection = source.getConnection(); PreparedStatement statement = prepare(connection, sql, values);
                ResultSet rows = statement.executeQuery()) {
            return rows.next() ? rows.getLong(1) : 0;
        } catch (SQLException failed) {
            throw new IllegalStateException("The records could not be read.", failed);
        }
    }

    private List<Entry> query(String sql, List<?> values) {
        try (Connection connection = source.getConnection(); PreparedStatement statement = prepare(connection, sql, values);
                ResultSet rows = statement.executeQuery()) {
            List<Entry> entries = new ArrayList<>();
            while (rows.next()) {
                long number = rows.getLong(1);
                Entry known = parsed.get(number);
                if (known == null) {
                    known = RecordReader.kept(number, rows.getBytes(4), rows.getString(2), Instant.parse(rows.getString(3)), rows.getString(5));
                    parsed.put(number, known);
                }
                entries.add(known);
            }
            return entries;
        } catch (SQLException failed) {
            throw new IllegalStateException("The records could not be read.", failed);
        }
    }

    private static PreparedStatement prepare(Connection connection, String sql, List<?> values) throws SQLException {
        PreparedStatement statement = connection.prepareStatement(sql);
        for (int i = 0; i < values.size(); i++) {
            statement.setObject(i + 1, values.get(i));
        }
        return statement;
    }
}
