package trivet.lan.web;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import trivet.lan.HostName;
import trivet.lan.tls.Authority;

/** Where tablets find the service, as it was started. */
@ApplicationScoped
public class Address {

    @ConfigProperty(name = "trivet.lan", defaultValue = "false")
    boolean open;
    @ConfigProperty(name = "trivet.host", defaultValue = "localhost")
    String host;
    @ConfigProperty(name = "quarkus.http.ssl-port", defaultValue = "8443")
    int securePort;
    @ConfigProperty(name = "quarkus.http.port", defaultValue = "8080")
    int port;
    @ConfigProperty(name = "trivet.data")
    String data;

    /** Whether other machines of the bakery may reach it. */
    public boolean open() {
        return open;
    }

    /** The name by which it was started. */
    public String host() {
        return host;
    }

    /** The address for the day's work. */
    public String secure() {
        return open ? "https://" + host + ":" + securePort : "http://localhost:" + port;
    }

    /** The address that explains how to join. */
    public String plain() {
        return "http://" + host + ":" + port + "/join";
    }

    /** The certificate of the bakery's own authority; empty where it has none. */
    Optional<byte[]> authority() {
        Path file = new Authority(Path.of(data, "tls")).certificate();
        try {
            return open && Files.exists(file) ? Optional.of(Authority.read(file).getEncoded()) : Optional.empty();
        } catch (IOException | GeneralSecurityException unreadable) {
            return Optional.empty();
        }
    }

    /** The SHA-256 of that certificate, in groups of four, to be compared by eye. */
    public String fingerprint() {
        return authority().map(encoded -> {
            try {
                String hex = HexFormat.of().withUpperCase().formatHex(MessageDigest.getInstance("SHA-256").digest(encoded));
                return hex.replaceAll("(.{4})(?=.)", "$1 ");
            } catch (GeneralSecurityException impossible) {
                throw new IllegalStateException(impossible);
            }
        }).orElse("");
    }

    /** The name from the next start on. */
    String next() {
        return HostName.read(Path.of(data)).orElse(host);
    }

    void next(String name) {
        HostName.write(Path.of(data), name);
    }
}
