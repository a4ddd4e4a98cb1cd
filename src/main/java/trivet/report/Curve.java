package trivet.report;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import trivet.check.CoolingRun;
import trivet.check.Minutes;
import trivet.check.Reading;
import trivet.cooling.StageVerdict;
import trivet.outlook.Outlook;
import trivet.words.Words;

/**
 * The picture of one run of cooling: limits as hatched forbidden areas, what was measured as dots with their values, and a
 * thin line between, which is only a line. Readable without colour, on screen, in the report and in print.
 */
public final class Curve {

    private static final int WIDTH = 900;
    private static final int HEIGHT = 360;
    private static final int LEFT = 60;
    private static final int TOP = 20;
    private static final int RIGHT = 870;
    private static final int BOTTOM = 310;
    private static final double HIGHEST = 100;
    private static final double LOWEST = -5;
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

    private final CoolingRun run;
    private final ZoneId zone;
    private final double span;
    private final List<Outlook> outlook;
    private final Optional<Instant> now;

    private Curve(CoolingRun run, ZoneId zone, List<Outlook> outlook, Optional<Instant> now) {
        this.run = run;
        this.zone = zone;
        this.outlook = outlook;
        this.now = now;
        double last = run.readings().isEmpty() ? 0 : minute(run.readings().get(run.readings().size() - 1).at());
        double deadline = run.verdict().stages().stream().flatMap(stage -> stage.deadline().stream()).mapToDouble(BigDecimal::doubleValue).max().orElse(90);
        this.span = Math.max(30, Math.max(last, deadline)) * 1.12;
    }

    /** The picture as SVG text. */
    public static String svg(CoolingRun run, ZoneId zone) {
        return new Curve(run, zone, List.of(), Optional.empty()).draw();
    }

    /** The picture with the present moment, and for each forecast arrival a pale band over its 95 % interval. */
    public static String svg(CoolingRun run, ZoneId zone, List<Outlook> outlook, Optional<Instant> now) {
        return new Curve(run, zone, outlook, now).draw();
    }

    private double minute(Instant at) {
        return Minutes.between(run.origin(), at).doubleValue();
    }

    private double x(double minute) {
        return LEFT + (RIGHT - LEFT) * Math.min(1, Math.max(0, minute / span));
    }

    private static double y(double celsius) {
        return BOTTOM - (BOTTOM - TOP) * (Math.min(HIGHEST, Math.max(LOWEST, celsius)) - LOWEST) / (HIGHEST - LOWEST);
    }

    private String draw() {
        StringBuilder svg = new StringBuilder();
        String id = "hatch" + Long.toHexString(run.origin().toEpochMilli()) + run.number();
        line(svg, "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"curve\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" role=\"img\" font-family=\"Liberation Sans, DejaVu Sans, system-ui, sans-serif\">", WIDTH, HEIGHT, WIDTH, HEIGHT);
        line(svg, "<title>%s</title><defs><pattern id=\"%s\" width=\"9\" height=\"9\" patternUnits=\"userSpaceOnUse\"><path d=\"M0 9L9 0\" stroke=\"#555555\" stroke-width=\"1.2\"/></pattern></defs>",
                escaped(Words.say("j_curve_title", CLOCK.format(run.origin().atZone(zone)))), id);
        axes(svg);
        for (StageVerdict stage : run.verdict().stages()) {
            stage.deadline().ifPresent(deadline -> {
                double from = x(deadline.doubleValue());
                double top = y(HIGHEST);
                double bottom = y(stage.stage().to().celsius().inCelsius().doubleValue());
                line(svg, "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"url(#%s)\" stroke=\"#1b232c\" stroke-width=\"1\"/>", from, top, RIGHT - from, bottom - top, id);
                line(svg, "<text x=\"%.1f\" y=\"%.1f\" font-size=\"15\" text-anchor=\"end\" fill=\"#1b232c\">%s</text>", from - 6, Math.min(bottom + 16, BOTTOM - 4), escaped(Words.say("j_curve_target", stage.stage().to().words(), CLOCK.format(Minutes.after(run.origin(), deadline).atZone(zone)))));
            });
        }
        if (run.verdict().waiting()) {
            ahead(svg);
        }
        readings(svg);
        return svg.append("</svg>").toString();
    }

    private void axes(StringBuilder svg) {
        for (int celsius = 0; celsius <= 100; celsius += 20) {
            line(svg, "<line x1=\"%d\" y1=\"%.1f\" x2=\"%d\" y2=\"%.1f\" stroke=\"#cfc8b8\"/><text x=\"%d\" y=\"%.1f\" font-size=\"15\" text-anchor=\"end\" fill=\"#1b232c\">%d °C</text>",
                    LEFT, y(celsius), RIGHT, y(celsius), LEFT - 6, y(celsius) + 5, celsius);
        }
        int step = span > 400 ? 60 : span > 150 ? 30 : 15;
        for (int minute = 0; minute < span; minute += step) {
            line(svg, "<text x=\"%.1f\" y=\"%d\" font-size=\"15\" text-anchor=\"middle\" fill=\"#1b232c\">%s</text>", x(minute), BOTTOM + 24,
                    CLOCK.format(run.origin().plusSeconds(60L * minute).atZone(zone)));
        }
    }

    /** Bands for what is forecast, and a line for now. */
    private void ahead(StringBuilder svg) {
        for (Outlook one : outlook) {
            double y = y(one.celsius());
            double low = x(minute(one.low()));
            double high = x(minute(one.high()));
            line(svg, "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"14\" fill=\"#d9cfb6\" stroke=\"#1b232c\" stroke-dasharray=\"3 2\"/><line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"#1b232c\" stroke-width=\"3\"/>",
                    low, y - 7, Math.max(2, high - low), x(minute(one.eta())), y - 11, x(minute(one.eta())), y + 11);
        }
        now.ifPresent(at -> line(svg, "<line x1=\"%.1f\" y1=\"%d\" x2=\"%.1f\" y2=\"%d\" stroke=\"#1b232c\" stroke-width=\"1\"/>", x(minute(at)), TOP, x(minute(at)), BOTTOM));
    }

    private void readings(StringBuilder svg) {
        List<Reading> shown = run.readings().stream().filter(reading -> !Reading.impossible(reading.temperature())).toList();
        StringBuilder points = new StringBuilder();
        shown.forEach(r -> points.append(String.format(Locale.ROOT, "%.1f,%.1f ", x(minute(r.at())), y(r.temperature().inCelsius().doubleValue()))));
        line(svg, "<polyline points=\"%s\" fill=\"none\" stroke=\"#777777\" stroke-width=\"1.5\" stroke-dasharray=\"2 3\"/>", points.toString().strip());
        for (Reading reading : shown) {
            double x = x(minute(reading.at()));
            double y = y(reading.temperature().inCelsius().doubleValue());
            line(svg, "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"6\" fill=\"#1b232c\"/><text x=\"%.1f\" y=\"%.1f\" font-size=\"17\" font-weight=\"bold\" fill=\"#1b232c\">%s</text>", x, y, x + 10, y - 8,
                    escaped(reading.temperature().toString()));
        }
    }

    private static void line(StringBuilder svg, String form, Object... values) {
        svg.append(String.format(Locale.ROOT, form, values)).append('\n');
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;");
    }
}
