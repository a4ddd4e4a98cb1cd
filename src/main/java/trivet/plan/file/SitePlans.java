package trivet.plan.file;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import trivet.knowledge.file.KnowledgeReader;
import trivet.ledger.Fields;
import trivet.ledger.Register;
import trivet.ledger.VersionRef;
import trivet.measure.Digest;
import trivet.plan.ApprovedPlan;
import trivet.plan.Drafts;
import trivet.plan.Plan;
import trivet.plan.Plans;
import trivet.site.Confirmed;
import trivet.site.Sites;
import trivet.study.OpenPoints;
import trivet.study.Study;
import trivet.study.file.StudyFile;
import trivet.words.Words;

/** The site's plan files in its data folder, copied from those shipped, and the approved texts in the register. */
@ApplicationScoped
public class SitePlans implements Plans {

    @Inject
    Register register;
    @Inject
    Sites sites;
    @Inject
    Drafts drafts;
    @Inject
    KnowledgeReader.Holder knowledge;
    @Inject
    OpenPoints.Trials trials;
    @Inject
    Clock clock;

    private final Map<Long, ApprovedPlan> parsed = new ConcurrentHashMap<>();

    @Override
    public List<ApprovedPlan> history() {
        return register.all("plan").stream().map(version -> parsed.computeIfAbsent(version.number(), key -> {
            String text = version.body().text("text").orElseThrow();
            Plan plan = PlanReader.read(Words.say("j_the_approved_plan"), text).plan().orElseThrow();
            return new ApprovedPlan(plan, new VersionRef(plan.product(), plan.version(), Digest.sha256(text)), version.by(),
                    Instant.parse(version.body().text("from").orElseThrow()), version.at(), version.body().text("meaning").orElse(""), text, StudyFile.read("", text).study());
        })).toList();
    }

    @Override
    public List<ApprovedPlan> approved() {
        Map<String, ApprovedPlan> latest = new LinkedHashMap<>();
        history().forEach(plan -> latest.put(plan.plan().product(), plan));
        return List.copyOf(latest.values());
    }

    @Override
    public List<ApprovedPlan> inForce(Instant moment) {
        return approved().stream().flatMap(plan -> inForceAt(plan.ref().id(), moment).stream()).toList();
    }

    @Override
    public Optional<ApprovedPlan> inForceAt(String product, Instant moment) {
        return history().stream().filter(plan -> plan.plan().product().equals(product) && !plan.from().isAfter(moment))
                .reduce((earlier, later) -> later);
    }

    @Override
    public List<Draft> drafts() {
        List<Draft> all = new ArrayList<>();
        for (String product : drafts.products()) {
            Drafts.Text text = drafts.text(product).orElseThrow();
            PlanReader.Outcome outcome = PlanReader.read("plans/products/" + product + "/plan.yaml", text.text());
            boolean same = approved().stream().anyMatch(plan -> plan.ref().sha256().equals(text.sha256()));
            List<OpenPoints.OpenPoint> open = text.study().map(this::open).orElse(List.of());
            all.add(new Draft(product, outcome.plan(), outcome.problems(), text.sha256(), !same, text.study(), open));
        }
        return all;
    }

    private List<OpenPoints.OpenPoint> open(Study study) {
        return OpenPoints.of(study, knowledge.get(), sites.inForceAt(clock.instant()).map(Confirmed::rulebook), trials);
    }

    @Override
    public void approve(String product, String by, Instant from, String meaning) {
        Draft draft = drafts().stream().filter(d -> d.product().equals(product)).findFirst()
                .orElseThrow(() -> new IllegalArgumentException(Words.say("j_there_is_no_plan_file_of", product)));
        if (!draft.open().isEmpty()) {
            throw new IllegalArgumentException(Words.say("j_this_plan_has_open_points", draft.open().size(), draft.open().get(0).words()));
        }
        if (draft.plan().isEmpty()) {
            throw new IllegalArgumentException(Words.say("j_this_plan_cannot_be_approved", draft.problems().get(0)));
        }
        List<String> looser = sites.inForceAt(from).or(() -> sites.inForceAt(clock.instant())).map(confirmed -> draft.plan().get().looserThan(confirmed.rulebook())).orElse(List.of());
        if (!looser.isEmpty()) {
            throw new IllegalArgumentException(Words.say("j_this_plan_cannot_be_approved", String.join(" ", looser)));
        }
        Optional<ApprovedPlan> before = approved().stream().filter(plan -> plan.plan().product().equals(draft.plan().get().product())).findFirst();
        if (before.isPresent() && draft.waiting() && draft.plan().get().version() <= before.get().ref().version()) {
            throw new IllegalArgumentException(Words.say("j_the_text_has_changed_since_version", before.get().ref().version()));
        }
        String text = drafts.text(product).orElseThrow().text();
        register.write("plan", draft.plan().get().product(), by, Fields.of(Map.of("text", text, "from", from.toString(), "meaning", meaning)));
    }
}
