package trivet.start;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trivet.ledger.Ids;

/** Ten times the service is killed while eight clients record: what was acknowledged is there, once. */
class KillIT {

    @TempDir
    Path data;

    private final Set<String> acknowledged = ConcurrentHashMap.newKeySet();
    private final AtomicInteger sequence = new AtomicInteger();

    @Test
    void every_acknowledged_record_survives_ten_kills_once() throws Exception {
        for (int round = 0; round < 10; round++) {
            int before = acknowledged.size();
            Service service = Service.start(data);
            List<Thread> clients = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                int seed = round * 8 + i;
                Thread client = new Thread(() -> record(service, new Random(seed)));
                client.start();
                clients.add(client);
            }
            for (int wait = 0; wait < 200 && acknowledged.size() < before + 60; wait++) {
                Thread.sleep(20);
            }
            service.kill();
            for (Thread client : clients) {
                client.join(20_000);
            }
            assertTrue(acknowledged.size() > before, "nothing was acknowledged in round " + round);
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + data.resolve("trivet.db")); var statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT id, count(*) FROM record GROUP BY id")) {
            Set<String> kept = ConcurrentHashMap.newKeySet();
            while (rows.next()) {
                assertEquals(1, rows.getInt(2));
                kept.add(rows.getString(1));
            }
            assertTrue(kept.containsAll(acknowledged));
        }
    }

    private void record(Service service, Random random) {
        HttpClient client = HttpClient.newHttpClient();
        try {
            String token = Files.readString(data.resolve("first-tablet.token")).strip();
            while (true) {
                String id = Ids.uuid7(Instant.ofEpochMilli(1_795_000_000_000L + random.nextInt(1_000_000)), random);
                String body = "{\"schema\":\"record-1\",\"id\":\"" + id + "\",\"kind\":\"note\",\"site\":\"site\",\"device\":\"A\",\"device_seq\":" + sequence.incrementAndGet()
                        + ",\"person\":\"ana\",\"source\":\"typed\",\"claimed_at\":\"2026-11-20T05:00:00Z\",\"device_clock\":{\"wall\":\"2026-11-20T05:00:00Z\",\"zone\":\"UTC\"},\"data\":{}}";
                HttpResponse<String> answer = client.send(HttpRequest.newBuilder(URI.create(service.address() + "/api/records/" + id)).header("Content-Type", "application/json")
                        .header("Authorization", "Bearer " + token).PUT(HttpRequest.BodyPublishers.ofString(body)).build(), HttpResponse.BodyHandlers.ofString());
                if (answer.statusCode() / 100 == 2) {
                    acknowledged.add(id);
                }
            }
        } catch (Exception killed) {
            // The service was killed, as planned; what was acknowledged before is counted.
        }
    }
}
