package trivet.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/** The stretches of a history between its breaks: a gap, another probe, a new version. No signal goes over a break. */
public final class Stretches {

    private Stretches() {
    }

    /**
     * The signals of each stretch by itself, their indexes counted from 1 over the whole.
     *
     * @param breaks indexes, counted from 0, at which a stretch begins
     */
    public static List<Signal> signals(double[] values, Set<Integer> breaks, Function<double[], ? extends Iterable<Signal>> within) {
        List<Signal> all = new ArrayList<>();
        for (int from = 0, to; from < values.length; from = to) {
            to = from + 1;
            while (to < values.length && !breaks.contains(to)) {
                to++;
            }
            for (Signal signal : within.apply(Arrays.copyOfRange(values, from, to))) {
                all.add(new Signal(signal.rule(), signal.index() + from));
            }
        }
        return all;
    }
}
