package trivet.plan;

import java.util.List;
import java.util.Optional;
import trivet.limit.Problem;
import trivet.study.Study;

/** The hazard plans that are being written, one a product; what is saved over is kept. */
public interface Drafts {

    /**
     * A draft as its file says it.
     *
     * @param study empty for a file of the first format, and for one that cannot be read, whose problems say why
     */
    record Text(String product, String text, String sha256, Optional<Study> study, List<Problem> problems) {
    }

    /** The products that have a file. */
    List<String> products();

    /** The complete plans that are shipped as examples to start from; they describe an invented bakery. */
    List<Study> examples();

    /** The draft of a product. */
    Optional<Text> text(String product);

    /** A draft as it was at a hash, now or earlier. */
    Optional<Text> earlier(String product, String sha256);

    /** Who saved last. */
    Optional<String> lastBy(String product);

    /** Saves a draft; its version becomes the one after the approved one. */
    Text save(Study study, String by);
}
