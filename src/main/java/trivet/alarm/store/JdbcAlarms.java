package trivet.alarm.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import trivet.alarm.Alarm;
import trivet.alarm.Alarms;
import trivet.ledger.store.Times;
import trivet.ledger.store.Writer;
import trivet.ledger.store.Rows;

/** The alarms in SQLite. */
@ApplicationScoped
class JdbcAlarms implements Alarms {

    private static final String ALL = "SELECT id, kind, label, cause, words, link, since, raised_at, told_at, told_how, seen_at, seen_by, ended_at FROM alarm ";

    @Inject
    Writer writer;
    @Inject
    Rows rows;
    @Inject
    Clock clock;

    @Override
    public void present(List<Alarm> now) {
        Set<String> ids = now.stream().map(Alarm::id).collect(Collectors.toSet());
        List<Raised> known = rows.read(ALL + "WHERE ended_at IS NULL", JdbcAlarms::raised);
        Set<String> knownIds = known.stream().map(one -> one.alarm().id()).collect(Collectors.toSet());
        String at = Times.text(clock.instant());
        for (Alarm alarm : now) {
            if (!knownIds.contains(alarm.id())) {
                writer.set("INSERT INTO alarm (id, kind, label, cause, words, link, since, raised_at) VALUES (?,?,?,?,?,?,?,?) ON CONFLICT (id) DO NOTHING", alarm.id(), alarm.kind().word(), alarm.label(), alarm.cause(), alarm.words(), alarm.link(),
                        Times.text(alarm.since()), at);
            }
        }
        known.stream().filter(one -> !ids.contains(one.alarm().id())).forEach(one -> writer.set("UPDATE alarm SET ended_at = ? WHERE id = ? AND ended_at IS NULL", at, one.alarm().id()));
    }

    @Override
    public List<Raised> open() {
        return rows.read(ALL + "WHERE ended_at IS NULL AND seen_at IS NULL ORDER BY since", JdbcAlarms::raised);
    }

    @Override
    public List<Raised> between(Instant from, Instant to) {
        return rows.read(ALL + "WHERE raised_at >= ? AND raised_at < ? ORDER BY raised_at", JdbcAlarms::raised, Times.text(from), Times.text(to));
    }

    @Override
    public boolean seen(String id, String by) {
        return writer.set("UPDATE alarm SET seen_at = ?, seen_by = ? WHERE id = ? AND seen_at IS NULL", Times.text(clock.instant()), by, id) > 0;
    }

    @Override
    public void told(Set<String> ids, String how) {
        String at = Times.text(clock.instant());
        ids.forEach(id -> writer.set("UPDATE alarm SET told_at = ?, told_how = ? WHERE id = ? AND told_at IS NULL", at, how, id));
    }

    private static Raised raised(ResultSet row) throws SQLException {
        Alarm alarm = new Alarm(row.getString(1), Alarm.Kind.of(row.getString(2)), row.getString(3), row.getString(4), row.getString(5), row.getString(6), Instant.parse(row.getString(7)));
        return new Raised(alarm, Instant.parse(row.getString(8)), moment(row, 9), Optional.ofNullable(row.getString(10)), moment(row, 11), Optional.ofNullable(row.getString(12)), moment(row, 13));
    }

    private static Optional<Instant> moment(ResultSet row, int column) throws SQLException {
        return Optional.ofNullable(row.getString(column)).map(Instant::parse);
    }
}
