package trivet.ledger.store;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.json.JsonMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import javax.sql.DataSource;
import trivet.ledger.Fields;
import trivet.ledger.Register;

/** The register in SQLite, small enough to be kept in memory by kind. */
@ApplicationScoped
public class JdbcRegister implements Register {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    @Inject
    Writer writer;
    @Inject
    DataSource source;
    @Inject
    Clock clock;

    private final Map<String, List<Version>> byKind = new ConcurrentHashMap<>();

    @Override
    public Version write(String kind, String id, String by, Fields body) {
        Instant at = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        long number = writer.write(pen -> {
            PreparedStatement insert = pen.prepare("INSERT INTO register (kind, id, written_by, written_at, body) VALUES (?,?,?,?,?)");
            insert.setString(1, kind);
            insert.setString(2, id);
            insert.setString(3, by);
            insert.setString(4, Times.text(at));
            insert.setString(5, RecordReader.json(body));
            insert.executeUpdate();
            try (ResultSet row = pen.prepare("SELECT last_insert_rowid()").executeQuery()) {
                return row.getLong(1);
            }
        });
        byKind.remove(kind);
        return new Version(number, kind, id, by, at, body);
    }

    @Override
    public List<Version> all(String kind) {
        return byKind.computeIfAbsent(kind, this::load);
    }

    private List<Version> load(String kind) {
        try (Connection connection = source.getConnection(); PreparedStatement select = connection.prepareStatement(
                "SELECT number, id, written_by, written_at, body FROM register WHERE kind = ? ORDER BY number")) {
            select.setString(1, kind);
            List<Version> versions = new ArrayList<>();
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    Map<String, Object> body = MAPPER.readValue(row.getString(5), new TypeReference<>() {
                    });
                    versions.add(new Version(row.getLong(1), kind, row.getString(2), row.getString(3), Instant.parse(row.getString(4)), Fields.of(body)));
                }
            }
            return List.copyOf(versions);
        } catch (SQLException failed) {
            throw new IllegalStateException("The register could not be read.", failed);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    @Override
    public List<Version> latest(String kind) {
        Map<String, Version> latest = new LinkedHashMap<>();
        all(kind).forEach(version -> latest.put(version.id(), version));
        return List.copyOf(latest.values());
    }

    @Override
    public long lastNumber() {
        try (Connection connection = source.getConnection(); PreparedStatement select = connection.prepareStatement("SELECT coalesce(max(number), 0) FROM register"); ResultSet row = select.executeQuery()) {
            return row.next() ? row.getLong(1) : 0;
        } catch (SQLException failed) {
            throw new IllegalStateException("The register could not be read.", failed);
        }
    }

    @Override
    public Optional<Version> latest(String kind, String id) {
        return latest(kind).stream().filter(version -> version.id().equals(id)).findFirst();
    }
}
