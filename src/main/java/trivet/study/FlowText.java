package trivet.study;

import java.util.List;
import java.util.stream.Collectors;
import trivet.form.Parts;
import trivet.measure.Digest;

/** What of a plan is confirmed on site: steps, rooms and ways, as one text and its SHA-256. */
public final class FlowText {

    private FlowText() {
    }

    /** The SHA-256 of the flow and the rooms, in lower-case hexadecimal. */
    public static String sha256(Study study) {
        List<Record> all = new java.util.ArrayList<>(study.steps());
        all.addAll(study.rooms());
        all.addAll(study.ways());
        return Digest.sha256(all.stream().map(record -> record.getClass().getSimpleName() + Parts.tree(record)).collect(Collectors.joining("\n")));
    }
}
