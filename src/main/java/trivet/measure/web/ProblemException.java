package trivet.measure.web;

import java.util.List;

/** A refusal to be answered as problem+json: a status, and for each field what is wrong and what to do. */
public class ProblemException extends RuntimeException {

    private final int status;
    private final List<FieldError> errors;

    /** One field and what is wrong with it. */
    public record FieldError(String field, String message) {
    }

    /** A refusal for several fields. */
    public ProblemException(int status, String title, List<FieldError> errors) {
        super(title);
        this.status = status;
        this.errors = List.copyOf(errors);
    }

    /** A refusal for one field. */
    public ProblemException(int status, String field, String message) {
        this(status, message, List.of(new FieldError(field, message)));
    }

    /** The HTTP status. */
    public int status() {
        return status;
    }

    /** The fields refused. */
    public List<FieldError> errors() {
        return errors;
    }
}
