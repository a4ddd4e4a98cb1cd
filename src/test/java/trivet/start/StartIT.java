package trivet.start;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.ServerSocket;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What stands in the way of a start is said in one sentence, with an exit code, and nothing is changed. */
class StartIT {

    @TempDir
    Path data;

    private void refused(int port, String sentence, String... options) throws Exception {
        try (Service service = Service.launch(data, port, options)) {
            assertNotEquals(0, service.exitCode());
            String said = service.output().strip();
            assertEquals(1, said.lines().count(), said);
            assertTrue(said.contains(sentence), said);
        }
    }

    @Test
    void a_damaged_file_is_not_opened() throws Exception {
        byte[] damaged = "this is no database, and long enough to be read".getBytes();
        Files.write(data.resolve("trivet.db"), damaged);
        refused(Service.freePort(), "damaged");
        assertArrayEquals(damaged, Files.readAllBytes(data.resolve("trivet.db")));
    }

    @Test
    void a_taken_port_is_named() throws Exception {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            refused(socket.getLocalPort(), "taken");
        }
        assertTrue(Files.notExists(data.resolve("trivet.db")));
    }

    @Test
    void a_folder_that_cannot_be_written_is_named() throws Exception {
        Path file = Files.writeString(data.resolve("file"), "in the way");
        try (Service service = Service.launch(file.resolve("data"), Service.freePort())) {
            assertNotEquals(0, service.exitCode());
            assertTrue(service.output().contains("cannot write to its data folder"), service.output());
        }
    }

    @Test
    void a_folder_of_a_newer_version_and_a_real_bakery_s_folder_are_left_alone() throws Exception {
        try (Service first = Service.start(data)) {
            assertTrue(first.output().isEmpty() || first.output().contains("ready"), first.output());
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + data.resolve("trivet.db")); var statement = connection.createStatement()) {
            statement.executeUpdate("INSERT INTO register (kind, id, written_by, written_at, body) VALUES ('site', 'site', 'x', '2026-11-20T05:00:00.000Z', '{\"name\":\"Real\",\"zone\":\"Europe/London\",\"demo\":false}')");
        }
        refused(Service.freePort(), "never mixed", "-Dtrivet.demo=true");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + data.resolve("trivet.db")); var statement = connection.createStatement()) {
            statement.executeUpdate("INSERT INTO flyway_schema_history SELECT installed_rank + 1000, '999', description, type, 'x', checksum, installed_by, installed_on, execution_time, success FROM flyway_schema_history WHERE version = '001' OR version = '1'");
        }
        refused(Service.freePort(), "newer version");
    }
}
