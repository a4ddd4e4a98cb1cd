package trivet.limit;

/**
 * One thing wrong in a file under plans, said so that its writer can put it right.
 *
 * @param line counted from 1
 */
public record Problem(String file, int line, String sentence) {

    @Override
    public String toString() {
        return file + ", line " + line + ": " + sentence;
    }
}
