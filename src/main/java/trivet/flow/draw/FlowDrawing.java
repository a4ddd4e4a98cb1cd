package trivet.flow.draw;

import static trivet.flow.draw.Svg.add;
import static trivet.flow.draw.Svg.escaped;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import trivet.flow.Flow;
import trivet.flow.Step;
import trivet.words.Words;

/**
 * The drawing of a flow as SVG: a box a step with its number, title, time, temperature and what comes in; an arrow a way, dashed where it is
 * rework; a thick box with a flag for a control point; a double edge for the gluten-free line. Readable without colour.
 */
public final class FlowDrawing {

    private static final double WIDTH = 190;
    private static final int TITLE = 21;
    private static final int SMALL = 29;
    private static final double TITLE_LINE = 18;
    private static final double SMALL_LINE = 15;

    private FlowDrawing() {
    }

    /**
     * What is written into the boxes beside the steps' own words.
     *
     * @param inputs the title of an ingredient
     * @param flag the number of a step's control point, such as CCP 1; empty for none
     * @param link where a tap on the box leads; empty for nowhere, as on paper
     * @param chosen the step whose box is filled; empty for none
     */
    public record Marks(Function<String, String> inputs, Function<String, String> flag, Function<String, String> link, String chosen) {

        /** Without a chosen step. */
        public Marks(Function<String, String> inputs, Function<String, String> flag, Function<String, String> link) {
            this(inputs, flag, link, "");
        }
    }

    private record Text(List<String> title, List<String> small) {
        double height() {
            return 12 + TITLE_LINE * title.size() + SMALL_LINE * small.size();
        }
    }

    /** The drawing as SVG text. */
    public static String svg(Flow flow, String title, Marks marks) {
        Map<String, Text> texts = new LinkedHashMap<>();
        Map<String, Layout.Size> sizes = new LinkedHashMap<>();
        int number = 0;
        for (Step step : flow.steps()) {
            number++;
            Text text = text(step, number, marks);
            texts.putIfAbsent(step.id(), text);
            sizes.putIfAbsent(step.id(), new Layout.Size(WIDTH, text.height()));
        }
        Layout.Drawn drawn = Layout.of(flow, sizes);
        StringBuilder svg = new StringBuilder();
        add(svg, "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"flow\" viewBox=\"0 0 %.0f %.0f\" width=\"%.0f\" height=\"%.0f\" role=\"%s\" aria-label=\"%s\" font-family=\"Liberation Sans, DejaVu Sans, system-ui, sans-serif\"><title>%s</title>",
                drawn.width(), drawn.height(), drawn.width(), drawn.height(), flow.steps().stream().anyMatch(step -> !marks.link().apply(step.id()).isEmpty()) ? "group" : "img", escaped(title), escaped(title));
        drawn.ways().forEach(way -> way(svg, way));
        drawn.boxes().forEach((id, box) -> box(svg, box, texts.get(id), marks));
        return svg.append("</svg>").toString();
    }

    /** Where each step's box lies, its upper left corner; for tests of how much a change moves. */
    static Map<String, double[]> places(Flow flow, Marks marks) {
        Map<String, Layout.Size> sizes = new LinkedHashMap<>();
        int number = 0;
        for (Step step : flow.steps()) {
            sizes.putIfAbsent(step.id(), new Layout.Size(WIDTH, text(step, ++number, marks).height()));
        }
        Map<String, double[]> places = new LinkedHashMap<>();
        Layout.of(flow, sizes).boxes().forEach((id, box) -> places.put(id, new double[] {box.x(), box.y(), box.width(), box.height()}));
        return places;
    }

    private static Text text(Step step, int number, Marks marks) {
        List<String> small = new ArrayList<>();
        String how = step.time() + (step.time().isEmpty() || step.temperature().isEmpty() ? "" : ", ") + step.temperature();
        small.addAll(wrapped(how, SMALL));
        if (!step.inputs().isEmpty()) {
            small.addAll(wrapped("+ " + String.join(", ", step.inputs().stream().map(marks.inputs()).toList()), SMALL));
        }
        if (step.line().equals("gluten-free")) {
            small.add(Words.say("j_flow_gluten_free_line"));
        } else if (step.line().equals("wheat")) {
            small.add(Words.say("j_flow_wheat_line"));
        }
        return new Text(wrapped(number + " " + (step.title().isEmpty() ? step.id() : step.title()), TITLE), small);
    }

    private static List<String> wrapped(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+")) {
            String rest = word;
            while (rest.length() > width) {
                if (line.length() > 0) {
                    lines.add(line.toString());
                    line.setLength(0);
                }
                lines.add(rest.substring(0, width));
                rest = rest.substring(width);
            }
            if (line.length() + rest.length() + 1 > width && line.length() > 0) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(rest);
        }
        if (line.length() > 0) {
            lines.add(line.toString());
        }
        return lines;
    }

    private static void box(StringBuilder svg, Layout.Box box, Text text, Marks marks) {
        String link = marks.link().apply(box.step().id());
        String flag = marks.flag().apply(box.step().id());
        if (!link.isEmpty()) {
            add(svg, "<a href=\"%s\" aria-label=\"%s\"%s>", escaped(link), escaped(String.join(" ", text.title())), box.step().id().equals(marks.chosen()) ? " aria-current=\"step\"" : "");
        }
        add(svg, "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" rx=\"6\" fill=\"%s\" stroke=\"#1b232c\" stroke-width=\"%s\"/>", box.x(), box.y(), box.width(), box.height(), box.step().id().equals(marks.chosen()) ? "#e6d8b4" : "#fffdf8", flag.isEmpty() ? "1.5" : "4");
        if (box.step().line().equals("gluten-free")) {
            add(svg, "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" rx=\"4\" fill=\"none\" stroke=\"#1b232c\" stroke-width=\"1\"/>", box.x() + 4, box.y() + 4, box.width() - 8, box.height() - 8);
        }
        double y = box.y() + 5;
        for (String line : text.title()) {
            y += TITLE_LINE;
            add(svg, "<text x=\"%.1f\" y=\"%.1f\" font-size=\"15\" font-weight=\"bold\" fill=\"#1b232c\">%s</text>", box.x() + 10, y - 3, escaped(line));
        }
        for (String line : text.small()) {
            y += SMALL_LINE;
            add(svg, "<text x=\"%.1f\" y=\"%.1f\" font-size=\"12.5\" fill=\"#1b232c\">%s</text>", box.x() + 10, y - 3, escaped(line));
        }
        if (!flag.isEmpty()) {
            double width = 12 + 8.5 * flag.length();
            add(svg, "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"18\" fill=\"#1b232c\"/><text x=\"%.1f\" y=\"%.1f\" font-size=\"13\" font-weight=\"bold\" fill=\"#fffdf8\">%s</text>", box.x() + box.width() - width, box.y() - 14, width,
                    box.x() + box.width() - width + 6, box.y() - 1, escaped(flag));
        }
        if (!link.isEmpty()) {
            svg.append("</a>");
        }
    }

    private static void way(StringBuilder svg, Layout.Way way) {
        if (way.points().size() < 2) {
            return;
        }
        StringBuilder points = new StringBuilder();
        way.points().forEach(p -> points.append(String.format(Locale.ROOT, "%.1f,%.1f ", p[0], p[1])));
        add(svg, "<polyline points=\"%s\" fill=\"none\" stroke=\"#1b232c\" stroke-width=\"1.5\"%s/>", points.toString().strip(), way.rework() ? " stroke-dasharray=\"6 4\"" : "");
        double[] end = way.points().get(way.points().size() - 1);
        double[] before = way.points().get(way.points().size() - 2);
        double angle = Math.atan2(end[1] - before[1], end[0] - before[0]);
        add(svg, "<polygon points=\"%.1f,%.1f %.1f,%.1f %.1f,%.1f\" fill=\"#1b232c\"/>", end[0], end[1], end[0] - 9 * Math.cos(angle - 0.4), end[1] - 9 * Math.sin(angle - 0.4), end[0] - 9 * Math.cos(angle + 0.4), end[1] - 9 * Math.sin(angle + 0.4));
        if (way.rework()) {
            double[] middle = way.points().get(way.points().size() / 2);
            add(svg, "<text x=\"%.1f\" y=\"%.1f\" font-size=\"11\" fill=\"#1b232c\">%s</text>", middle[0] + 4, middle[1] - 3, escaped(Words.say("j_flow_rework")));
        }
    }
}
