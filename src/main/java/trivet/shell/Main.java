package trivet.shell;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import trivet.lan.HostName;
import trivet.lan.tls.Authority;

/** Starts the service, after looking whether it can: what stands in the way is said in one sentence, and nothing is changed. */
@QuarkusMain
public class Main {

    /** The setting's value from the command line, the environment, or the default. */
    private static String setting(String name, String environment, String otherwise) {
        return Optional.ofNullable(System.getProperty(name)).or(() -> Optional.ofNullable(System.getenv(environment))).orElse(otherwise);
    }

    /** Looks, and starts. */
    public static void main(String... arguments) {
        boolean demo = Boolean.parseBoolean(setting("trivet.demo", "TRIVET_DEMO", "false"));
        boolean lan = Boolean.parseBoolean(setting("trivet.lan", "TRIVET_LAN", "false"));
        boolean proxy = Boolean.parseBoolean(setting("trivet.proxy", "TRIVET_PROXY", "false"));
        Path data = Path.of(setting("trivet.data", "TRIVET_DATA", demo ? "./data/demo" : "./data"));
        System.setProperty("trivet.data", data.toString());
        System.setProperty("trivet.demo", String.valueOf(demo));
        String port = setting("quarkus.http.port", "QUARKUS_HTTP_PORT", "8080");
        String host = setting("quarkus.http.host", "QUARKUS_HTTP_HOST", lan ? "0.0.0.0" : "127.0.0.1");
        Optional<String> obstacle = StartCheck.obstacle(data, host, Integer.parseInt(port), demo);
        if (obstacle.isEmpty() && lan) {
            obstacle = openToTheNetwork(data, host);
        }
        if (obstacle.isPresent()) {
            System.err.println(obstacle.get());
            System.exit(1);
        }
        if (proxy) {
            System.setProperty("quarkus.http.proxy.proxy-address-forwarding", "true");
            System.setProperty("quarkus.http.proxy.enable-forwarded-host", "true");
            System.setProperty("quarkus.http.proxy.trusted-proxies", setting("trivet.proxy.from", "TRIVET_PROXY_FROM", "127.0.0.1"));
        }
        Quarkus.run(null, (exitCode, failure) -> {
            if (demo) {
                RemoveDemo.deleteMarked(data);
            }
            System.exit(exitCode);
        }, arguments);
    }

    /** Listens for other machines, by https: with the user's own certificate, or with one by the bakery's own authority. */
    private static Optional<String> openToTheNetwork(Path data, String host) {
        String securePort = setting("quarkus.http.ssl-port", "TRIVET_HTTPS_PORT", "8443");
        Optional<String> taken = StartCheck.port(host, Integer.parseInt(securePort), "TRIVET_HTTPS_PORT=8444");
        if (taken.isPresent()) {
            return taken;
        }
        try {
            String name = HostName.read(data).orElseGet(() -> HostName.write(data, setting("trivet.host", "TRIVET_HOST", machine())));
            String certificate = setting("trivet.tls.certificate", "TRIVET_TLS_CERTIFICATE", "");
            String key = setting("trivet.tls.key", "TRIVET_TLS_KEY", "");
            if (certificate.isEmpty() != key.isEmpty()) {
                return Optional.of("A certificate of your own needs both TRIVET_TLS_CERTIFICATE and TRIVET_TLS_KEY, each the name of a file in PEM.");
            }
            if (certificate.isEmpty()) {
                Authority.Pair made = new Authority(data.resolve("tls")).prepare(name, Authority.addresses(), Clock.systemUTC().instant());
                certificate = made.certificate().toString();
                key = made.key().toString();
            }
            System.setProperty("trivet.host", name);
            System.setProperty("trivet.lan", "true");
            System.setProperty("quarkus.http.host", host);
            System.setProperty("quarkus.http.ssl-port", securePort);
            System.setProperty("quarkus.tls.lan.key-store.pem.bakery.cert", certificate);
            System.setProperty("quarkus.tls.lan.key-store.pem.bakery.key", key);
            System.setProperty("quarkus.http.tls-configuration-name", "lan");
            System.setProperty("quarkus.http.insecure-requests", "enabled");
            return Optional.empty();
        } catch (IllegalArgumentException | IllegalStateException refused) {
            return Optional.of(refused.getMessage());
        }
    }

    /** This machine's name, as a local network finds it. */
    private static String machine() {
        try {
            String name = InetAddress.getLocalHost().getHostName().toLowerCase(java.util.Locale.ROOT).replaceAll("[^a-z0-9.-]", "-");
            return name.contains(".") ? name : name + ".local";
        } catch (UnknownHostException nameless) {
            return "trivet.local";
        }
    }
}
