package trivet.bench;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import trivet.start.Service;

/**
 * Measures and prints, as ratios in one run on one disk: durable records per second, the month's report, the start and the
 * memory. Run by the command in DEVELOPERS.md; the empty application of src/test/empty must have been built.
 */
public final class Benchmarks {

    private static final int SECONDS = 6;
    private static final String EMPTY = "target/empty/quarkus-app/quarkus-run.jar";
    private static final String FULL = "target/quarkus-app/quarkus-run.jar";
    private static final Random RANDOM = new Random(5);
    private static Path folder;

    private Benchmarks() {
    }

    public static void main(String... arguments) throws Exception {
        folder = Files.createTempDirectory(Path.of("target"), "bench");
        List<String> wanted = arguments.length == 0 ? List.of("records", "month", "start") : Arrays.asList(arguments);
        if (wanted.contains("records")) {
            records();
        }
        if (wanted.contains("month")) {
            month();
        }
        if (wanted.contains("start")) {
            start();
        }
        System.exit(0);
    }

    private static Service run(String jar, String... options) throws Exception {
        System.setProperty("trivet.jar", jar);
        return Service.start(folder.resolve("data-" + RANDOM.nextInt(1_000_000)), options);
    }

    private record Rate(double perSecond, double p99) {
    }

    private static void records() throws Exception {
        System.out.printf("%n== Durable records per second, %d s each, clients on the same processors%n", SECONDS);
        double bare = bareInserts();
        System.out.printf("bare JDBC, one insert and one sync each: %.0f/s%n", bare);
        try (Service empty = run(EMPTY, "-Dempty.data=" + folder); Service full = run(FULL, "-Dtrivet.demo=true")) {
            String token = Files.readString(dataOf(full).resolve("first-tablet.token")).strip();
            for (Service warm : List.of(empty, full, empty, full, full, full, full, full)) {
                rate(warm, token, 16);
            }
            for (int clients : new int[] {1, 4, 16}) {
                Rate nothing = rate(empty, token, clients);
                long[] before = health(full);
                Rate kept = rate(full, token, clients);
                long[] after = health(full);
                System.out.printf("%2d clients: empty PUT %.0f/s (p99 %.1f ms), record %.0f/s (p99 %.1f ms): %.2f of empty, %.2f of bare JDBC, %.3f commits a record%n", clients,
                        nothing.perSecond(), nothing.p99(), kept.perSecond(), kept.p99(), kept.perSecond() / nothing.perSecond(), kept.perSecond() / bare,
                        (double) (after[1] - before[1]) / (after[0] - before[0]));
            }
        }
    }

    private static Path dataOf(Service service) throws IOException {
        try (var folders = Files.list(folder)) {
            return folders.filter(data -> Files.exists(data.resolve("first-tablet.token"))).findFirst().orElseThrow();
        }
    }

    private static double bareInserts() throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("bare.db") + "?journal_mode=WAL&synchronous=FULL")) {
            connection.createStatement().execute("CREATE TABLE record (number INTEGER PRIMARY KEY, id TEXT UNIQUE, claimed_at TEXT, body BLOB) STRICT");
            connection.setAutoCommit(false);
            int count = 0;
            long end = 0;
            long begin = 0;
            try (PreparedStatement insert = connection.prepareStatement("INSERT INTO record (id, claimed_at, body) VALUES (?,?,?)")) {
                for (int round = 0; round < 2; round++) {
                    count = 0;
                    begin = System.nanoTime();
                    end = begin + SECONDS * 1_000_000_000L;
                    while (System.nanoTime() < end) {
                        String id = BenchRecords.id(RANDOM);
                        insert.setString(1, id);
                        insert.setString(2, "2026-11-01T05:00:00.000Z");
                        insert.setBytes(3, BenchRecords.reading(id, Instant.EPOCH));
                        insert.executeUpdate();
                        connection.commit();
                        count++;
                    }
                }
            }
            return count * 1e9 / (System.nanoTime() - begin);
        }
    }

    private static Rate rate(Service service, String token, int clients) throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(clients);
        long begin = System.nanoTime();
        long end = begin + SECONDS * 1_000_000_000L;
        List<Future<List<Double>>> all = new ArrayList<>();
        for (int i = 0; i < clients; i++) {
            Random random = new Random(RANDOM.nextLong());
            all.add(pool.submit(() -> {
                List<Double> millis = new ArrayList<>();
                try (WireClient client = new WireClient(service.port)) {
                    while (System.nanoTime() < end) {
                        String id = BenchRecords.id(random);
                        byte[] body = BenchRecords.reading(id, Instant.now().minusSeconds(5).truncatedTo(java.time.temporal.ChronoUnit.MILLIS));
                        long from = System.nanoTime();
                        int status = client.send("PUT", "/api/records/" + id, token, body);
                        millis.add((System.nanoTime() - from) / 1e6);
                        if (status != 201) {
                            throw new IllegalStateException("Status " + status);
                        }
                    }
                }
                return millis;
            }));
        }
        List<Double> millis = new ArrayList<>();
        for (Future<List<Double>> one : all) {
            millis.addAll(one.get());
        }
        double seconds = (System.nanoTime() - begin) / 1e9;
        pool.shutdown();
        Collections.sort(millis);
        return new Rate(millis.size() / seconds, millis.get((int) (millis.size() * 0.99)));
    }

    /** The number of records received and of commits made. */
    private static long[] health(Service service) throws Exception {
        String text = new String(get(service, "/q/health").body(), StandardCharsets.UTF_8);
        return new long[] {number(text, "received"), number(text, "commits")};
    }

    private static long number(String text, String name) {
        Matcher matcher = Pattern.compile("\"" + name + "\": *(\\d+)").matcher(text);
        return matcher.find() ? Long.parseLong(matcher.group(1)) : 0;
    }

    private static HttpResponse<byte[]> get(Service service, String path) throws Exception {
        HttpResponse<byte[]> answer = HttpClient.newHttpClient().send(HttpRequest.newBuilder(URI.create(service.address() + path)).timeout(Duration.ofSeconds(120))
                .header("Authorization", "Basic " + Base64.getEncoder().encodeToString("olive:thornfold-demo".getBytes(StandardCharsets.UTF_8))).build(), HttpResponse.BodyHandlers.ofByteArray());
        if (answer.statusCode() != 200) {
            throw new IllegalStateException(path + ": " + answer.statusCode() + " " + new String(answer.body(), StandardCharsets.UTF_8));
        }
        return answer;
    }

    private static void timed(Service service, String what, String path) throws Exception {
        List<Double> seconds = new ArrayList<>();
        int bytes = 0;
        for (int i = 0; i < 4; i++) {
            long from = System.nanoTime();
            bytes = get(service, path).body().length;
            seconds.add((System.nanoTime() - from) / 1e9);
        }
        System.out.printf("%s: first %.2f s, then %.2f, %.2f, %.2f s (%d KiB)%n", what, seconds.get(0), seconds.get(1), seconds.get(2), seconds.get(3), bytes / 1024);
    }

    private static void month() throws Exception {
        System.out.printf("%n== The month, in a heap of 512 MB%n");
        try (Service full = run(FULL, "-Dtrivet.demo=true")) {
            timed(full, "October of the demo as HTML", "/reports/month/2026-10");
            timed(full, "October of the demo as tagged PDF", "/reports/month/2026-10.pdf");
            String token = Files.readString(newest().resolve("first-tablet.token")).strip();
            int sent = fill(full, token);
            System.out.printf("%d records sent for September%n", sent);
            timed(full, "September as HTML", "/reports/month/2026-09");
            timed(full, "September as tagged PDF", "/reports/month/2026-09.pdf");
            System.out.printf("resident after all that: %d MB%n", resident(full) / 1024);
        }
    }

    private static Path newest() throws IOException {
        try (var folders = Files.list(folder)) {
            return folders.filter(data -> Files.exists(data.resolve("first-tablet.token"))).max(java.util.Comparator.comparing(data -> data.toFile().lastModified())).orElseThrow();
        }
    }

    /** Fifteen thousand records: 72 batches on each of 26 days. */
    private static int fill(Service service, String token) throws Exception {
        List<String> records = new ArrayList<>();
        for (LocalDate day = LocalDate.of(2026, 9, 1); day.getMonthValue() == 9; day = day.plusDays(1)) {
            if (day.getDayOfWeek() == java.time.DayOfWeek.SUNDAY) {
                continue;
            }
            for (int i = 0; i < 72; i++) {
                batch(records, day.atTime(4, 10).toInstant(ZoneOffset.UTC).plusSeconds(i * 400L), day.getDayOfMonth() * 100 + i);
            }
        }
        try (WireClient client = new WireClient(service.port)) {
            for (int from = 0; from < records.size(); from += 100) {
                String body = "[" + String.join(",", records.subList(from, Math.min(records.size(), from + 100))) + "]";
                if (client.send("POST", "/api/records", token, body.getBytes(StandardCharsets.UTF_8)) != 200) {
                    throw new IllegalStateException("The records were refused.");
                }
            }
        }
        return records.size();
    }

    private static void batch(List<String> records, Instant start, int number) {
        String batch = BenchRecords.id(RANDOM);
        String core = "{\"piece\":%d,\"temperature\":{\"value\":\"%.1f\",\"unit\":\"C\"},\"held_seconds\":30}";
        add(records, "batch-started", batch, start, "{\"product\":\"deep-quiche\",\"code\":\"B-" + number + "\",\"line\":\"wheat\",\"trays\":2,\"pieces\":24,\"oven\":\"oven-1\"}");
        add(records, "cook-reading", batch, start.plusSeconds(3000), core.formatted(1, 78.4));
        add(records, "cook-reading", batch, start.plusSeconds(3060), core.formatted(2, 77.9));
        add(records, "out-of-oven", batch, start.plusSeconds(3120), "{}");
        add(records, "cooling-reading", batch, start.plusSeconds(5700), "{\"temperature\":{\"value\":\"24.1\",\"unit\":\"C\"}}");
        add(records, "cooling-reading", batch, start.plusSeconds(8000), "{\"temperature\":{\"value\":\"6.4\",\"unit\":\"C\"}}");
        add(records, "put-away", batch, start.plusSeconds(8100), "{\"unit\":\"fridge-1\",\"use_by\":\"2026-10-02\"}");
        add(records, "gone", batch, start.plusSeconds(60_000), "{\"how\":\"sold\"}");
    }

    private static void add(List<String> records, String kind, String batch, Instant at, String data) {
        records.add(BenchRecords.json(BenchRecords.id(RANDOM), kind, batch, at, data));
    }

    private static long resident(Service service) throws IOException {
        for (String line : Files.readAllLines(Path.of("/proc/" + service.pid() + "/status"))) {
            if (line.startsWith("VmRSS:")) {
                return Long.parseLong(line.replaceAll("\\D", ""));
            }
        }
        return 0;
    }

    private static void start() throws Exception {
        System.out.printf("%n== Start to the first answer, and memory when idle%n");
        Path data = folder.resolve("started");
        System.setProperty("trivet.jar", FULL);
        Service.start(data, "-Dtrivet.demo=true").close();
        List<Double> empty = new ArrayList<>();
        List<Double> full = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            empty.add(toAnswer(EMPTY, data, "-Dempty.data=" + folder));
            full.add(toAnswer(FULL, data, "-Dtrivet.demo=true"));
        }
        System.out.printf("empty application %.2f s, Trivet %.2f s: %.2f of the empty one%n", median(empty), median(full), median(full) / median(empty));
        System.setProperty("trivet.jar", FULL);
        try (Service idle = Service.start(data, "-Dtrivet.demo=true")) {
            get(idle, "/reports/month/2026-10");
            Thread.sleep(20_000);
            System.out.printf("resident when idle, after one month's page: %d MB%n", resident(idle) / 1024);
        }
    }

    private static double toAnswer(String jar, Path data, String... options) throws Exception {
        System.setProperty("trivet.jar", jar);
        int port = Service.freePort();
        long from = System.nanoTime();
        try (Service service = Service.launch(data, port, options)) {
            while (true) {
                try (WireClient client = new WireClient(port)) {
                    client.send("GET", "/q/health/live", "none", new byte[0]);
                    return (System.nanoTime() - from) / 1e9;
                } catch (IOException notYet) {
                    Thread.sleep(10);
                }
            }
        }
    }

    private static double median(List<Double> values) {
        List<Double> sorted = new ArrayList<>(values);
        Collections.sort(sorted);
        return sorted.get(sorted.size() / 2);
    }
}
