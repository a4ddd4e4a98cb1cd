package trivet.report;

import java.util.List;
import java.util.Locale;
import trivet.outlook.StepHabits;
import trivet.words.Words;

/** The picture of a step's history: a dot a batch, the centre and control limits as lines with their words, a square where a change is signalled. */
public final class HabitChart {

    private static final int WIDTH = 900;
    private static final int HEIGHT = 240;
    private static final int LEFT = 70;
    private static final int RIGHT = 760;
    private static final int TOP = 20;
    private static final int BOTTOM = 220;

    private HabitChart() {
    }

    /** The picture as SVG text. */
    public static String svg(StepHabits habits) {
        double high = Math.max(habits.chart().upper(), habits.points().stream().mapToDouble(StepHabits.Point::value).max().orElse(1));
        double low = Math.min(habits.chart().lower(), habits.points().stream().mapToDouble(StepHabits.Point::value).min().orElse(0));
        double span = Math.max(1e-9, high - low);
        StringBuilder svg = new StringBuilder(String.format(Locale.ROOT, "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"curve\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" role=\"img\" font-family=\"Liberation Sans, DejaVu Sans, system-ui, sans-serif\"><title>%s</title>",
                WIDTH, HEIGHT, WIDTH, HEIGHT, habits.title().replace("&", "&amp;").replace("<", "&lt;")));
        line(svg, habits.chart().upper(), "6 4", Words.say("j_upper_control_limit"), low, span);
        line(svg, habits.chart().centre(), "none", Words.say("j_centre"), low, span);
        line(svg, habits.chart().lower(), "6 4", Words.say("j_lower_control_limit"), low, span);
        int last = Math.max(1, habits.points().size() - 1);
        for (int i = 0; i < habits.points().size(); i++) {
            StepHabits.Point point = habits.points().get(i);
            double x = LEFT + (RIGHT - LEFT) * (double) i / last;
            double y = BOTTOM - (BOTTOM - TOP) * (point.value() - low) / span;
            svg.append(habits.changed().contains(point) ? String.format(Locale.ROOT, "<rect x=\"%.1f\" y=\"%.1f\" width=\"12\" height=\"12\" fill=\"#8c2318\"/>", x - 6, y - 6)
                    : String.format(Locale.ROOT, "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"4\" fill=\"#1b232c\"/>", x, y));
        }
        return svg.append("</svg>").toString();
    }

    private static void line(StringBuilder svg, double value, String dash, String words, double low, double span) {
        double y = BOTTOM - (BOTTOM - TOP) * (value - low) / span;
        svg.append(String.format(Locale.ROOT, "<line x1=\"%d\" y1=\"%.1f\" x2=\"%d\" y2=\"%.1f\" stroke=\"#777777\" stroke-dasharray=\"%s\"/><text x=\"%d\" y=\"%.1f\" font-size=\"15\" fill=\"#1b232c\">%s</text><text x=\"%d\" y=\"%.1f\" font-size=\"15\" text-anchor=\"end\" fill=\"#1b232c\">%.1f</text>",
                LEFT, y, RIGHT, y, dash, RIGHT + 8, y + 5, words, LEFT - 6, y + 5, value));
    }
}
