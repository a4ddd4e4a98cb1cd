package trivet.plan.file;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import trivet.ledger.Register;
import trivet.measure.Digest;
import trivet.plan.Drafts;
import trivet.study.Study;
import trivet.study.file.StudyFile;

/**
 * The drafts as files of the data folder. A file is replaced whole or not at all, and the text that it replaces is kept beside it, so that
 * nothing that anybody wrote is lost.
 */
@ApplicationScoped
public class DraftStore implements Drafts {

    /** The products shipped as starting points; a class path cannot be listed, so they stand here. */
    static final List<String> SHIPPED = List.of("deep-quiche", "gluten-free-quiche", "meat-roll", "cheese-slice");
    private static final String NAME = "[a-z0-9][a-z0-9-]{0,59}";
    private static final String SAVED_BY = "saved-by";
    private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH-mm-ss-SSS'Z'").withZone(ZoneOffset.UTC);

    private final java.util.Map<String, Text> read = new java.util.concurrent.ConcurrentHashMap<>();

    @Inject
    Register register;
    @Inject
    Clock clock;
    @ConfigProperty(name = "trivet.data")
    String data;
    @ConfigProperty(name = "trivet.demo", defaultValue = "false")
    boolean demo;

    Path folder() {
        return Path.of(data, "plans", "products");
    }

    private Path file(String product) {
        if (!product.matches(NAME)) {
            throw new IllegalArgumentException("\"" + product + "\" is no name of a product.");
        }
        return folder().resolve(product).resolve("plan.yaml");
    }

    /** The products that have a file, sorted. */
    @Override
    public List<String> products() {
        copyShipped();
        try (Stream<Path> folders = Files.list(folder())) {
            return folders.filter(path -> Files.exists(path.resolve("plan.yaml"))).map(path -> path.getFileName().toString()).sorted().toList();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    @Override
    public Optional<Text> text(String product) {
        copyShipped();
        if (!product.matches(NAME) || !Files.exists(file(product))) {
            return Optional.empty();
        }
        Path file = file(product);
        try {
            String text = Files.readString(file);
            return Optional.of(text(product, text));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** The text with what it says, which is worked out once for each text. */
    private Text text(String product, String text) {
        String sha256 = Digest.sha256(text);
        Text known = read.get(product);
        if (known != null && known.sha256().equals(sha256)) {
            return known;
        }
        Text fresh = parsed(product, text, sha256);
        read.put(product, fresh);
        return fresh;
    }

    private static Text parsed(String product, String text, String sha256) {
        StudyFile.Outcome outcome = text.contains("format: plan/1") ? new StudyFile.Outcome(Optional.empty(), List.of()) : StudyFile.read("plans/products/" + product + "/plan.yaml", text);
        return new Text(product, text, sha256, outcome.study(), outcome.problems());
    }

    @Override
    public Optional<Text> earlier(String product, String sha256) {
        Optional<Text> now = text(product).filter(text -> text.sha256().equals(sha256));
        Path kept = folder().resolve(product).resolve("earlier");
        if (now.isPresent() || !Files.exists(kept) || !sha256.matches("[0-9a-f]{64}")) {
            return now;
        }
        try (Stream<Path> files = Files.list(kept)) {
            Optional<Path> found = files.filter(path -> path.getFileName().toString().contains(sha256.substring(0, 16))).findFirst();
            return found.isEmpty() ? Optional.empty() : Optional.of(parsed(product, Files.readString(found.get()), sha256));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    @Override
    public Optional<String> lastBy(String product) {
        Path by = file(product).resolveSibling(SAVED_BY);
        try {
            return Files.exists(by) ? Optional.of(Files.readString(by).strip()) : Optional.empty();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    @Override
    public synchronized Text save(Study study, String by) {
        int approved = register.latest("plan", study.product()).flatMap(version -> version.body().text("text")).map(DraftStore::version).orElse(0);
        boolean behind = study.version().isEmpty() || Integer.parseInt(study.version()) <= approved;
        Study next = behind ? study.with("version", String.valueOf(approved + 1)) : study;
        String text = StudyFile.write(next);
        write(study.product(), text, by);
        Text saved = new Text(study.product(), text, Digest.sha256(text), Optional.of(next), List.of());
        read.put(study.product(), saved);
        return saved;
    }

    private static int version(String text) {
        return text.lines().filter(line -> line.startsWith("version:")).findFirst().map(line -> Integer.parseInt(line.substring(8).strip())).orElse(0);
    }

    private void write(String product, String text, String by) {
        try {
            Path file = file(product);
            Files.createDirectories(file.getParent());
            if (Files.exists(file)) {
                String before = Files.readString(file);
                if (before.equals(text)) {
                    return;
                }
                Path kept = Files.createDirectories(file.resolveSibling("earlier"));
                Path copy = kept.resolve(STAMP.format(clock.instant()) + "-" + Digest.sha256(before).substring(0, 16) + lastBy(product).map(person -> "-" + person).orElse("") + ".yaml");
                if (!Files.exists(copy)) {
                    Files.writeString(copy, before);
                }
            }
            Path fresh = file.resolveSibling("plan.yaml.new");
            Files.writeString(fresh, text);
            Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            Files.writeString(file.resolveSibling(SAVED_BY), by);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    @Override
    public List<Study> examples() {
        try {
            List<Study> all = new java.util.ArrayList<>();
            for (String product : SHIPPED) {
                all.add(StudyFile.read(product, shipped(product)).study().orElseThrow());
            }
            return all;
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** The demo begins with the examples as its own plans; a real bakery begins with none, for an example describes another bakery. */
    private synchronized void copyShipped() {
        try {
            if (Files.exists(folder())) {
                return;
            }
            Files.createDirectories(folder());
            for (String product : demo ? SHIPPED : List.<String>of()) {
                Path target = folder().resolve(product);
                Files.createDirectories(target);
                Files.writeString(target.resolve("plan.yaml"), shipped(product));
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    static String shipped(String product) throws IOException {
        try (InputStream in = DraftStore.class.getClassLoader().getResourceAsStream("plans/products/" + product + "/plan.yaml")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
