package trivet.ledger.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jboss.logging.Logger;
import trivet.ledger.BestTime;
import trivet.ledger.Entry;
import trivet.ledger.Fields;
import trivet.ledger.Judge;
import trivet.ledger.Ledger;
import trivet.ledger.store.Writer.Pen;
import trivet.measure.web.ProblemException;

/** Keeps records in SQLite. */
@ApplicationScoped
public class JdbcLedger implements Ledger {

    private static final Logger LOG = Logger.getLogger(JdbcLedger.class);
    private static final String INSERT = "INSERT INTO record (id, sha256, kind, device, device_seq, person, batch, unit, instrument, "
            + "claimed_at, received_at, body, verdict) VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?) ON CONFLICT (id) DO NOTHING";

    @Inject
    Writer writer;
    @Inject
    Clock clock;
    @Inject
    Instance<Judge> judge;

    private RecordReader reader;

    @jakarta.annotation.PostConstruct
    void readSchema() {
        reader = new RecordReader();
    }

    @Override
    public Receipt put(String id, byte[] body, String device, Optional<BestTime.Sending> sent) {
        return put(id, body, device, clock.instant(), sent);
    }

    @Override
    public Receipt put(String id, byte[] body, String device, Instant receivedAt) {
        return put(id, body, device, receivedAt, Optional.empty());
    }

    private Receipt put(String id, byte[] body, String device, Instant receivedAt, Optional<BestTime.Sending> sent) {
        Entry entry = reader.received(body, receivedAt.truncatedTo(ChronoUnit.MILLIS), sent);
        if (!entry.id().equals(id)) {
            throw new ProblemException(422, "id", "The record's id is not the one in the address.");
        }
        if (!entry.device().equals(device)) {
            throw new ProblemException(403, "device", "This tablet is " + device + ", and sends only its own records.");
        }
        Fields verdict = verdict(entry);
        String said = RecordReader.json(verdict);
        return writer.write(pen -> append(pen, entry, body, verdict, said));
    }

    private Fields verdict(Entry entry) {
        Map<String, Object> said = new LinkedHashMap<>(judged(entry).asMap());
        said.put("clock", entry.time().kept());
        return Fields.of(said);
    }

    private Fields judged(Entry entry) {
        try {
            if (judge.isResolvable()) {
                return judge.get().verdict(entry);
            }
        } catch (RuntimeException failed) {
            LOG.error("Judging the record " + entry.id() + " failed; it is kept unjudged", failed);
        }
        return Fields.of(Map.of("verdict", "unjudged", "reason", "not-judged"));
    }

    private static Receipt append(Pen pen, Entry entry, byte[] body, Fields verdict, String said) throws SQLException {
        PreparedStatement insert = pen.prepare(INSERT);
        insert.setString(1, entry.id());
        insert.setString(2, entry.sha256());
        insert.setString(3, entry.kind());
        insert.setString(4, entry.device());
        insert.setLong(5, entry.deviceSeq());
        insert.setString(6, entry.person());
        insert.setString(7, entry.batch().orElse(null));
        insert.setString(8, entry.data().text("unit").orElse(null));
        insert.setString(9, entry.instrument().orElse(null));
        insert.setString(10, Times.text(entry.claimedAt()));
        insert.setString(11, Times.text(entry.receivedAt()));
        insert.setBytes(12, body);
        insert.setString(13, said);
        if (insert.executeUpdate() == 0) {
            return earlier(pen, entry, body);
        }
        long number;
        try (ResultSet row = pen.prepare("SELECT last_insert_rowid()").executeQuery()) {
            number = row.getLong(1);
        }
        for (String named : Mentions.of(entry)) {
            PreparedStatement mention = pen.prepare("INSERT OR IGNORE INTO mention (receive_number, named) VALUES (?,?)");
            mention.setLong(1, number);
            mention.setString(2, named);
            mention.executeUpdate();
        }
        return new Receipt(Outcome.KEPT, entry.id(), entry.sha256(), number, verdict);
    }

    private static Receipt earlier(Pen pen, Entry entry, byte[] body) throws SQLException {
        PreparedStatement select = pen.prepare("SELECT receive_number, sha256, body, received_at, verdict FROM record WHERE id = ?");
        select.setString(1, entry.id());
        try (ResultSet row = select.executeQuery()) {
            if (!row.next()) {
                throw new SQLException("The record " + entry.id() + " was neither new nor there.");
            }
            Entry kept = RecordReader.kept(row.getLong(1), row.getBytes(3), row.getString(2), Instant.parse(row.getString(4)), row.getString(5));
            Outcome outcome = kept.sha256().equals(entry.sha256()) ? Outcome.REPEATED : Outcome.CLASHING;
            if (outcome == Outcome.CLASHING) {
                keepClash(pen, entry, body);
            }
            return new Receipt(outcome, kept.id(), kept.sha256(), kept.receiveNumber(), kept.verdict());
        }
    }

    private static void keepClash(Pen pen, Entry entry, byte[] body) throws SQLException {
        PreparedStatement insert = pen.prepare("INSERT INTO clash (id, sha256, received_at, body) VALUES (?,?,?,?)");
        insert.setString(1, entry.id());
        insert.setString(2, entry.sha256());
        insert.setString(3, Times.text(entry.receivedAt()));
        insert.setBytes(4, body);
        insert.executeUpdate();
    }
}
