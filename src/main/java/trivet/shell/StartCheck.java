package trivet.shell;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;

/** What may stand in the way of a start, looked at before anything is opened for writing. */
final class StartCheck {

    /** The newest migration that this version knows. */
    static final int NEWEST = 3;
    private static final byte[] HEADER = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

    private StartCheck() {
    }

    static Optional<String> obstacle(Path data, String host, int port, boolean demo) {
        return folder(data).or(() -> database(data.resolve("trivet.db"), demo)).or(() -> port(host, port));
    }

    private static Optional<String> folder(Path data) {
        try {
            Files.createDirectories(data);
            Path probe = Files.createTempFile(data, "start", ".probe");
            Files.delete(probe);
            return Optional.empty();
        } catch (IOException | SecurityException refused) {
            return Optional.of("Trivet cannot write to its data folder " + data.toAbsolutePath().normalize()
                    + ". Allow it to, or name another with TRIVET_DATA.");
        }
    }

    private static Optional<String> database(Path file, boolean demo) {
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        String damaged = "The file " + file.toAbsolutePath().normalize() + " is damaged. Nothing was changed. Put a backup of the folder in its place.";
        try (var in = Files.newInputStream(file)) {
            byte[] head = in.readNBytes(HEADER.length);
            if (head.length > 0 && !java.util.Arrays.equals(head, HEADER)) {
                return Optional.of(damaged);
            }
        } catch (IOException unreadable) {
            return Optional.of("The file " + file.toAbsolutePath().normalize() + " cannot be read.");
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:file:" + file.toAbsolutePath() + "?mode=ro"); Statement statement = connection.createStatement()) {
            if (!first(statement, "PRAGMA quick_check(1)").equals("ok")) {
                return Optional.of(damaged);
            }
            if (first(statement, "SELECT count(*) FROM sqlite_master WHERE name = 'flyway_schema_history'").equals("1")
                    && Integer.parseInt(first(statement, "SELECT coalesce(max(CAST(version AS INTEGER)), 0) FROM flyway_schema_history")) > NEWEST) {
                return Optional.of("The folder " + file.getParent() + " was written by a newer version of Trivet. Start that version; nothing was changed.");
            }
            return mixed(statement, demo);
        } catch (SQLException broken) {
            return Optional.of(damaged);
        }
    }

    private static Optional<String> mixed(Statement statement, boolean demo) throws SQLException {
        if (!first(statement, "SELECT count(*) FROM sqlite_master WHERE name = 'register'").equals("1")) {
            return Optional.empty();
        }
        String kept = first(statement, "SELECT coalesce((SELECT json_extract(body, '$.demo') FROM register WHERE kind = 'site' ORDER BY number DESC LIMIT 1), 2)");
        if (kept.equals("1") && !demo) {
            return Optional.of("This folder holds the demo bakery. Start with -Dtrivet.demo=true, or name another folder with TRIVET_DATA for real records.");
        }
        return kept.equals("0") && demo ? Optional.of("This folder holds a real bakery's records; the demo is never mixed with them. Name another folder with TRIVET_DATA.")
                : Optional.empty();
    }

    private static String first(Statement statement, String sql) throws SQLException {
        try (ResultSet row = statement.executeQuery(sql)) {
            return row.next() ? row.getString(1) : "";
        }
    }

    private static Optional<String> port(String host, int port) {
        return port(host, port, "-Dquarkus.http.port=8081");
    }

    /** Whether a port can be had. */
    static Optional<String> port(String host, int port, String instead) {
        if (port == 0) {
            return Optional.empty();
        }
        try (ServerSocket socket = new ServerSocket()) {
            socket.setReuseAddress(true);
            socket.bind(new InetSocketAddress(InetAddress.getByName(host), port));
            return Optional.empty();
        } catch (IOException taken) {
            return Optional.of("Port " + port + " is taken by another program. Stop that, or start with " + instead + ".");
        }
    }
}
