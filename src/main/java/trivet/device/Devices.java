package trivet.device;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Instant;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trivet.ledger.Fields;
import trivet.ledger.Register;
import trivet.measure.Digest;

/** Units, probes and tablets, kept as versions in the register. */
@ApplicationScoped
public class Devices {

    /** A probe thermometer. */
    public record Probe(String id, String name, boolean active) {
    }

    /** A tablet; its id is the letter that begins the codes of its batches. */
    public record Tablet(String id, String name, boolean revoked) {
    }

    @Inject
    Register register;

    /** All units, those out of use included. */
    public List<Unit> units() {
        return register.latest("unit").stream().map(version -> new Unit(version.id(), version.body().text("name").orElse(version.id()),
                Unit.Kind.valueOf(version.body().text("kind").orElse("FRIDGE")), version.body().flag("active"))).toList();
    }

    /** The units of some kinds that are in use. */
    public List<Unit> inUse(Unit.Kind... kinds) {
        return units().stream().filter(unit -> unit.active() && List.of(kinds).contains(unit.kind())).toList();
    }

    /** The unit of that id. */
    public Optional<Unit> unit(String id) {
        return units().stream().filter(unit -> unit.id().equals(id)).findFirst();
    }

    /** Adds a unit or writes a further version of it. */
    public void write(Unit unit, String by) {
        register.write("unit", unit.id(), by, Fields.of(Map.of("name", unit.name(), "kind", unit.kind().name(), "active", unit.active())));
    }

    /** All probes. */
    public List<Probe> probes() {
        return register.latest("probe").stream().map(version -> new Probe(version.id(), version.body().text("name").orElse(version.id()),
                version.body().flag("active"))).toList();
    }

    /** When a probe was first named here; empty for one that is not known. */
    public Optional<Instant> probeKnownSince(String id) {
        return register.all("probe").stream().filter(version -> version.id().equals(id)).findFirst().map(Register.Version::at);
    }

    /** Adds a probe or writes a further version of it. */
    public void write(Probe probe, String by) {
        register.write("probe", probe.id(), by, Fields.of(Map.of("name", probe.name(), "active", probe.active())));
    }

    /** All tablets. */
    public List<Tablet> tablets() {
        return register.latest("tablet").stream().map(version -> new Tablet(version.id(), version.body().text("name").orElse(version.id()),
                version.body().flag("revoked"))).toList();
    }

    /** Enrols a tablet under the next letter; the token is given once and only its SHA-256 is stored. */
    public String enrol(String name, String by) {
        byte[] random = new byte[32];
        new SecureRandom().nextBytes(random);
        String token = HexFormat.of().formatHex(random);
        String id = letter(tablets().size());
        register.write("tablet", id, by, Fields.of(Map.of("name", name, "revoked", false, "token_sha256", Digest.sha256(token))));
        return token;
    }

    private static String letter(int count) {
        return count < 26 ? String.valueOf((char) ('A' + count)) : letter(count / 26 - 1) + letter(count % 26);
    }

    /** Takes a tablet's credential away; what it recorded stays. */
    public void revoke(String id, String by) {
        Register.Version version = register.latest("tablet", id).orElseThrow(() -> new IllegalArgumentException("There is no tablet " + id + "."));
        Map<String, Object> body = new LinkedHashMap<>(version.body().asMap());
        body.put("revoked", true);
        register.write("tablet", id, by, Fields.of(body));
    }

    /** The tablet that a token belongs to, revoked ones included. */
    public Optional<Tablet> ofToken(String token) {
        byte[] sha256 = Digest.sha256(token).getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        return register.latest("tablet").stream().filter(version -> MessageDigest.isEqual(sha256,
                version.body().text("token_sha256").orElse("").getBytes(java.nio.charset.StandardCharsets.US_ASCII)))
                .map(version -> new Tablet(version.id(), version.body().text("name").orElse(version.id()), version.body().flag("revoked"))).findFirst();
    }
}
