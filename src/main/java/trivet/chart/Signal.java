package trivet.chart;

/** A sign that a process has changed: the rule, and the point that completes it, counted from 1. */
public record Signal(String rule, int index) {
}
