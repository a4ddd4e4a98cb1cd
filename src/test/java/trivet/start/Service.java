package trivet.start;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The packaged service as a process of its own, on a free port of this machine. */
public final class Service implements AutoCloseable {

    private final Process process;
    private final Path output;
    /** The port it listens on. */
    public final int port;

    private Service(Process process, Path output, int port) {
        this.process = process;
        this.output = output;
        this.port = port;
    }

    /** A port that was free a moment ago. */
    public static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    /** Starts a process and does not wait. */
    public static Service launch(Path data, int port, String... options) throws IOException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx512m", "-Dquarkus.http.port=" + port,
                "-Dtrivet.data=" + data));
        command.addAll(List.of(options));
        command.addAll(List.of("-jar", System.getProperty("trivet.jar", "target/quarkus-app/quarkus-run.jar")));
        Path output = Files.createTempFile("trivet", ".log");
        return new Service(new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(output.toFile()).start(), output, port);
    }

    /** Starts a process and waits until it answers. */
    public static Service start(Path data, String... options) throws Exception {
        return start(data, freePort(), options);
    }

    /** Starts a process on a port, as after a power cut, and waits until it answers. */
    public static Service start(Path data, int port, String... options) throws Exception {
        Service service = launch(data, port, options);
        for (int i = 0; i < 600; i++) {
            if (service.answers()) {
                return service;
            }
            if (!service.process.isAlive()) {
                throw new IllegalStateException(service.output());
            }
            Thread.sleep(100);
        }
        throw new IllegalStateException("No answer after 60 s: " + service.output());
    }

    private boolean answers() throws InterruptedException {
        try {
            return HttpClient.newHttpClient().send(HttpRequest.newBuilder(URI.create(address() + "/q/health")).build(), HttpResponse.BodyHandlers.ofString()).statusCode() == 200;
        } catch (IOException notYet) {
            return false;
        }
    }

    /** Its address. */
    public String address() {
        return "http://localhost:" + port;
    }

    /** The number of its process. */
    public long pid() {
        return process.pid();
    }

    /** What it printed. */
    public String output() throws IOException {
        return Files.readString(output);
    }

    /** Its exit code, when it ends within a minute. */
    public int exitCode() throws InterruptedException {
        if (!process.waitFor(60, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new IllegalStateException("The process did not end.");
        }
        return process.exitValue();
    }

    /** Ends it at once, as a power cut would. */
    public void kill() throws InterruptedException {
        process.destroyForcibly().waitFor(30, TimeUnit.SECONDS);
    }

    @Override
    public void close() throws Exception {
        process.destroy();
        if (!process.waitFor(20, TimeUnit.SECONDS)) {
            kill();
        }
    }
}
