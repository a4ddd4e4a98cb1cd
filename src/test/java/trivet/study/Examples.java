package trivet.study;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import trivet.form.Parts;
import trivet.knowledge.Knowledge;
import trivet.knowledge.file.KnowledgeReader;
import trivet.limit.Rulebook;
import trivet.limit.file.ShippedRulebooks;
import trivet.study.Study.Hazard;
import trivet.study.file.StudyFile;

/** The shipped plans, the knowledge base and a rulebook, for tests. */
public final class Examples {

    /** The shipped plans. */
    public static final List<String> ALL = List.of("deep-quiche", "gluten-free-quiche", "meat-roll", "cheese-slice");
    /** The shipped knowledge base. */
    public static final Knowledge KNOWLEDGE = KnowledgeReader.shipped();
    /** A rulebook with its suggestions taken over. */
    public static final Rulebook RULEBOOK = new ShippedRulebooks().find("england-wales-ni").orElseThrow().withSuggestions();

    private Examples() {
    }

    /** The text of a shipped plan. */
    public static String text(String product) {
        try {
            return Files.readString(Path.of("plans/products", product, "plan.yaml"));
        } catch (IOException missing) {
            throw new UncheckedIOException(missing);
        }
    }

    /** A shipped plan. */
    public static Study study(String product) {
        return StudyFile.strict(product, text(product)).study().orElseThrow();
    }

    /** The sentences of the open points of a plan. */
    public static List<String> open(Study study) {
        return OpenPoints.of(study, KNOWLEDGE, Optional.of(RULEBOOK), codes -> codes.size()).stream().map(OpenPoints.OpenPoint::words).toList();
    }

    /** A plan with one component of one hazard changed. */
    public static Study changing(Study study, String hazard, String component, Object value) {
        return study.with("hazards", study.hazards().stream().map(h -> h.id().equals(hazard) ? Parts.with(h, component, value) : h).toList());
    }

    /** A plan with one component of one control changed. */
    public static Study changingControl(Study study, String control, String component, Object value) {
        return study.with("controls", study.controls().stream().map(c -> c.id().equals(control) ? Parts.with(c, component, value) : c).toList());
    }

    /** A hazard of a plan. */
    public static Hazard hazard(Study study, String id) {
        return study.hazard(id).orElseThrow();
    }
}
