package trivet.ledger.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import trivet.ledger.Asides;
import trivet.ledger.Heard;
import trivet.ledger.Photos;
import trivet.ledger.Tries;
import trivet.measure.Digest;
import trivet.measure.web.StrictJson;

/** What tablets say of themselves, what they had refused, and their photos. */
@ApplicationScoped
class JdbcTablets implements Heard, Asides, Photos, Tries {

    private static final String ASIDES = "SELECT a.number, a.device, a.received_at, a.reason, a.body, EXISTS (SELECT 1 FROM aside_taken t WHERE t.number = a.number) FROM aside a ";

    @Inject
    Writer writer;
    @Inject
    Rows rows;
    @Inject
    Clock clock;

    @Override
    public Optional<Wrong> wrong(String name) {
        return rows.read("SELECT count, last_at FROM wrong_try WHERE name = ?", row -> new Wrong(row.getInt(1), Instant.parse(row.getString(2))), name).stream().findFirst();
    }

    @Override
    public void failed(String name) {
        writer.write(pen -> {
            PreparedStatement count = pen.prepare("INSERT INTO wrong_try (name, count, last_at) VALUES (?, 1, ?) ON CONFLICT (name) DO UPDATE SET count = count + 1, last_at = excluded.last_at");
            count.setString(1, name);
            count.setString(2, Times.text(clock.instant()));
            return count.executeUpdate();
        });
    }

    @Override
    public void succeeded(String name) {
        if (wrong(name).isPresent()) {
            writer.write(pen -> {
                PreparedStatement forget = pen.prepare("DELETE FROM wrong_try WHERE name = ?");
                forget.setString(1, name);
                return forget.executeUpdate();
            });
        }
    }

    @Override
    public void heard(Word word, String install) {
        writer.write(pen -> {
            PreparedStatement known = pen.prepare("INSERT INTO installed (device, install, first_at, received, told) VALUES (?, ?, ?, "
                    + "(SELECT coalesce(max(device_seq), 0) FROM record WHERE device = ?), (SELECT coalesce(max(sequence), 0) FROM heard WHERE device = ?)) ON CONFLICT DO NOTHING");
            known.setString(1, word.device());
            known.setString(2, install);
            known.setString(3, Times.text(word.at()));
            known.setString(4, word.device());
            known.setString(5, word.device());
            known.executeUpdate();
            PreparedStatement said = pen.prepare("INSERT INTO heard (device, heard_at, sequence, waiting, photos, oldest, offset_ms, build) VALUES (?,?,?,?,?,?,?,?) "
                    + "ON CONFLICT (device) DO UPDATE SET heard_at = excluded.heard_at, sequence = max(sequence, excluded.sequence), waiting = excluded.waiting, photos = excluded.photos, "
                    + "oldest = excluded.oldest, offset_ms = excluded.offset_ms, build = excluded.build");
            said.setString(1, word.device());
            said.setString(2, Times.text(word.at()));
            said.setLong(3, word.sequence());
            said.setInt(4, word.waiting());
            said.setInt(5, word.photos());
            said.setString(6, word.oldest().map(Times::text).orElse(null));
            said.setObject(7, word.offsetMs().orElse(null), Types.INTEGER);
            said.setString(8, word.build().orElse(null));
            return said.executeUpdate();
        });
    }

    private static Word word(ResultSet row) throws SQLException {
        long offset = row.getLong(7);
        Optional<Long> known = row.wasNull() ? Optional.empty() : Optional.of(offset);
        return new Word(row.getString(1), Instant.parse(row.getString(2)), row.getLong(3), row.getInt(4), row.getInt(5), Optional.ofNullable(row.getString(6)).map(Instant::parse), known,
                Optional.ofNullable(row.getString(8)));
    }

    @Override
    public List<Word> words() {
        return rows.read("SELECT device, heard_at, sequence, waiting, photos, oldest, offset_ms, build FROM heard ORDER BY device", JdbcTablets::word);
    }

    @Override
    public Optional<Word> of(String device) {
        return words().stream().filter(word -> word.device().equals(device)).findFirst();
    }

    @Override
    public List<Anew> anew() {
        return rows.read("SELECT device, first_at, received, told FROM installed i WHERE EXISTS (SELECT 1 FROM installed e WHERE e.device = i.device AND e.first_at < i.first_at) ORDER BY first_at DESC",
                row -> new Anew(row.getString(1), Instant.parse(row.getString(2)), row.getLong(3), row.getLong(4)));
    }

    @Override
    public void keep(String device, String reason, byte[] body) {
        writer.write(pen -> {
            PreparedStatement insert = pen.prepare("INSERT INTO aside (device, device_seq, sha256, received_at, reason, body) VALUES (?,?,?,?,?,?) ON CONFLICT DO NOTHING");
            insert.setString(1, device);
            insert.setObject(2, sequence(body), Types.INTEGER);
            insert.setString(3, Digest.sha256(new String(body, StandardCharsets.UTF_8)));
            insert.setString(4, Times.text(clock.instant()));
            insert.setString(5, reason);
            insert.setBytes(6, body);
            return insert.executeUpdate();
        });
    }

    @Override
    public Optional<Aside> find(long number) {
        return rows.read(ASIDES + "WHERE a.number = ?", JdbcTablets::aside, number).stream().findFirst();
    }

    @Override
    public void taken(long number, long receiveNumber, String by) {
        writer.set("INSERT INTO aside_taken (number, receive_number, taken_by, taken_at) VALUES (?,?,?,?) ON CONFLICT DO NOTHING", number, receiveNumber, by, Times.text(clock.instant()));
    }

    private static Aside aside(ResultSet row) throws SQLException {
        return new Aside(row.getLong(1), row.getString(2), Instant.parse(row.getString(3)), row.getString(4), new String(row.getBytes(5), StandardCharsets.UTF_8), row.getBoolean(6));
    }

    private static Long sequence(byte[] body) {
        try {
            long number = StrictJson.object(body).path("device_seq").asLong();
            return number > 0 ? number : null;
        } catch (RuntimeException unreadable) {
            return null;
        }
    }

    @Override
    public List<Aside> latest(int most) {
        return rows.read(ASIDES + "ORDER BY a.number DESC LIMIT ?", JdbcTablets::aside, most);
    }

    @Override
    public void keep(String sha256, String device, Photo photo) {
        writer.write(pen -> {
            PreparedStatement insert = pen.prepare("INSERT INTO photo (sha256, device, received_at, type, bytes) VALUES (?,?,?,?,?) ON CONFLICT DO NOTHING");
            insert.setString(1, sha256);
            insert.setString(2, device);
            insert.setString(3, Times.text(clock.instant()));
            insert.setString(4, photo.type());
            insert.setBytes(5, photo.bytes());
            return insert.executeUpdate();
        });
    }

    @Override
    public Optional<Photo> find(String sha256) {
        return rows.read("SELECT type, bytes FROM photo WHERE sha256 = ?", row -> new Photo(row.getString(1), row.getBytes(2)), sha256).stream().findFirst();
    }
}
