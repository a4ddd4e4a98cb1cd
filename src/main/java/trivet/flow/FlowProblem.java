package trivet.flow;

/**
 * Something wrong with a flow, in a sentence.
 *
 * @param sort the kind of problem: {@code unknown-step}, {@code twice}, {@code unreachable}, {@code leads-nowhere}, {@code loop}, {@code unused-input},
 *     {@code unknown-input}, {@code raw-meets-ready}, {@code lines-cross}, {@code rework-forward} or {@code empty}
 * @param at the step, or the ingredient of an unused input
 */
public record FlowProblem(String sort, String at, String words) {
}
