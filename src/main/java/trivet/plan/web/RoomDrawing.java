package trivet.plan.web;

import static trivet.flow.draw.Svg.add;
import static trivet.flow.draw.Svg.escaped;

import java.util.LinkedHashMap;
import java.util.Map;
import trivet.study.RoomPlan;
import trivet.study.Study;
import trivet.words.Words;

/** The plan of rooms as SVG: a box a room at its place of the grid with its zone in words and pattern; food drawn through, people dotted, waste dashed. */
public final class RoomDrawing {

    private static final int WIDTH = 210;
    private static final int HEIGHT = 96;
    private static final int GAP = 44;

    private RoomDrawing() {
    }

    private static int number(String text) {
        return text.isEmpty() ? 1 : Math.max(1, Math.min(12, Integer.parseInt(text)));
    }

    /** The drawing as SVG text; empty text without rooms. */
    public static String svg(Study study) {
        if (study.rooms().isEmpty()) {
            return "";
        }
        int columns = study.rooms().stream().mapToInt(room -> number(room.column())).max().orElse(1);
        int rows = study.rooms().stream().mapToInt(room -> number(room.row())).max().orElse(1);
        int width = columns * (WIDTH + GAP) + GAP;
        int height = rows * (HEIGHT + GAP) + GAP + 30;
        StringBuilder svg = new StringBuilder();
        add(svg, "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"flow\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" role=\"img\" font-family=\"Liberation Sans, system-ui, sans-serif\"><title>%s</title>", width, height, width, height, escaped(Words.say("j_rooms_title")));
        Map<String, int[]> places = new LinkedHashMap<>();
        for (Study.Room room : study.rooms()) {
            int x = GAP + (number(room.column()) - 1) * (WIDTH + GAP);
            int y = GAP + (number(room.row()) - 1) * (HEIGHT + GAP);
            places.put(room.id(), new int[] {x, y});
        }
        int lane = 0;
        for (Study.Way way : RoomPlan.ways(study)) {
            int[] from = places.get(way.from());
            int[] to = places.get(way.to());
            if (from != null && to != null) {
                way(svg, from, to, way.sort(), 7 * (lane++ % 5 - 2));
            }
        }
        for (Study.Room room : study.rooms()) {
            int[] at = places.get(room.id());
            String border = switch (room.zone()) {
                case "ready-to-eat" -> "stroke-width=\"4\"";
                case "gluten-free" -> "stroke-width=\"2\" stroke-dasharray=\"10 3\"";
                case "raw" -> "stroke-width=\"2\" stroke-dasharray=\"3 3\"";
                default -> "stroke-width=\"1.5\"";
            };
            add(svg, "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"#fffdf8\" stroke=\"#1b232c\" %s/>", at[0], at[1], WIDTH, HEIGHT, border);
            add(svg, "<text x=\"%d\" y=\"%d\" font-size=\"16\" font-weight=\"bold\" fill=\"#1b232c\">%s</text><text x=\"%d\" y=\"%d\" font-size=\"14\" fill=\"#1b232c\">%s</text>", at[0] + 12, at[1] + 32, escaped(room.title()), at[0] + 12, at[1] + 56,
                    escaped(room.zone().isEmpty() ? "" : Words.named("choice", room.zone())));
        }
        add(svg, "<text x=\"%d\" y=\"%d\" font-size=\"14\" fill=\"#1b232c\">%s</text></svg>", GAP, height - 12, escaped(Words.say("j_rooms_key")));
        return svg.toString();
    }

    private static void way(StringBuilder svg, int[] from, int[] to, String sort, int aside) {
        double x1 = from[0] + WIDTH / 2.0 + aside;
        double y1 = from[1] + HEIGHT / 2.0 + aside;
        double x2 = to[0] + WIDTH / 2.0 + aside;
        double y2 = to[1] + HEIGHT / 2.0 + aside;
        double share = Math.min(0.92, 1 - 1 / Math.max(1.0001, Math.max(Math.abs(x2 - x1) / (WIDTH / 2.0 + 6), Math.abs(y2 - y1) / (HEIGHT / 2.0 + 6))));
        double ex = x1 + (x2 - x1) * share;
        double ey = y1 + (y2 - y1) * share;
        String dash = sort.equals("people") ? " stroke-dasharray=\"2 5\"" : sort.equals("waste") ? " stroke-dasharray=\"9 5\"" : "";
        double angle = Math.atan2(y2 - y1, x2 - x1);
        add(svg, "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"#1b232c\" stroke-width=\"2\"%s/><polygon points=\"%.1f,%.1f %.1f,%.1f %.1f,%.1f\" fill=\"#1b232c\"/>", x1, y1, ex, ey, dash, ex, ey,
                ex - 11 * Math.cos(angle - 0.4), ey - 11 * Math.sin(angle - 0.4), ex - 11 * Math.cos(angle + 0.4), ey - 11 * Math.sin(angle + 0.4));
    }
}
