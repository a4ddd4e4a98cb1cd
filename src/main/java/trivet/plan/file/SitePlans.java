package trivet.plan.file;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import trivet.ledger.Fields;
import trivet.ledger.Register;
import trivet.ledger.VersionRef;
import trivet.measure.Digest;
import trivet.plan.ApprovedPlan;
import trivet.plan.Plan;
import trivet.plan.Plans;
import trivet.site.Sites;
import trivet.words.Words;

/** The site's plan files in its data folder, copied from those shipped, and the approved texts in the register. */
@ApplicationScoped
public class SitePlans implements Plans {

    /** The products shipped as starting points; a class path cannot be listed, so they stand here. */
    static final List<String> SHIPPED = List.of("deep-quiche", "gluten-free-quiche", "meat-roll", "cheese-slice");

    @Inject
    Register register;
    @Inject
    Sites sites;
    @ConfigProperty(name = "trivet.data")
    String data;

    private final Map<Long, ApprovedPlan> parsed = new ConcurrentHashMap<>();

    @Override
    public List<ApprovedPlan> history() {
        return register.all("plan").stream().map(version -> parsed.computeIfAbsent(version.number(), key -> {
            String text = version.body().text("text").orElseThrow();
            Plan plan = PlanReader.read(Words.say("j_the_approved_plan"), text).plan().orElseThrow();
            return new ApprovedPlan(plan, new VersionRef(plan.product(), plan.version(), Digest.sha256(text)), version.by(),
                    Instant.parse(version.body().text("from").orElseThrow()));
        })).toList();
    }

    @Override
    public List<ApprovedPlan> approved() {
        Map<String, ApprovedPlan> latest = new LinkedHashMap<>();
        history().forEach(plan -> latest.put(plan.plan().product(), plan));
        return List.copyOf(latest.values());
    }

    @Override
    public Optional<ApprovedPlan> inForceAt(String product, Instant moment) {
        return history().stream().filter(plan -> plan.plan().product().equals(product) && !plan.from().isAfter(moment))
                .reduce((earlier, later) -> later);
    }

    @Override
    public List<Draft> drafts() {
        copyShipped();
        try (Stream<Path> folders = Files.list(folder())) {
            List<Draft> drafts = new ArrayList<>();
            for (Path file : folders.map(f -> f.resolve("plan.yaml")).filter(Files::exists).sorted().toList()) {
                String product = file.getParent().getFileName().toString();
                String text = Files.readString(file);
                PlanReader.Outcome outcome = PlanReader.read("plans/products/" + product + "/plan.yaml", text);
                String sha256 = Digest.sha256(text);
                boolean same = approved().stream().anyMatch(plan -> plan.ref().sha256().equals(sha256));
                drafts.add(new Draft(product, outcome.plan(), outcome.problems(), sha256, !same));
            }
            return drafts;
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private Path folder() {
        return Path.of(data, "plans", "products");
    }

    private void copyShipped() {
        try {
            if (Files.exists(folder())) {
                return;
            }
            for (String product : SHIPPED) {
                Path target = folder().resolve(product);
                Files.createDirectories(target);
                Files.writeString(target.resolve("plan.yaml"), shipped(product));
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    static String shipped(String product) throws IOException {
        try (InputStream in = SitePlans.class.getClassLoader().getResourceAsStream("plans/products/" + product + "/plan.yaml")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Override
    public void approve(String product, String by, Instant from) {
        Draft draft = drafts().stream().filter(d -> d.product().equals(product)).findFirst()
                .orElseThrow(() -> new IllegalArgumentException(Words.say("j_there_is_no_plan_file_of", product)));
        if (draft.plan().isEmpty()) {
            throw new IllegalArgumentException(Words.say("j_this_plan_cannot_be_approved", draft.problems().get(0)));
        }
        List<String> looser = sites.inForceAt(from).map(confirmed -> draft.plan().get().looserThan(confirmed.rulebook())).orElse(List.of());
        if (!looser.isEmpty()) {
            throw new IllegalArgumentException(Words.say("j_this_plan_cannot_be_approved", String.join(" ", looser)));
        }
        Optional<ApprovedPlan> before = approved().stream().filter(plan -> plan.plan().product().equals(draft.plan().get().product())).findFirst();
        if (before.isPresent() && draft.waiting() && draft.plan().get().version() <= before.get().ref().version()) {
            throw new IllegalArgumentException(Words.say("j_the_text_has_changed_since_version", before.get().ref().version()));
        }
        try {
            String text = Files.readString(folder().resolve(product).resolve("plan.yaml"));
            register.write("plan", draft.plan().get().product(), by, Fields.of(Map.of("text", text, "from", from.toString())));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
