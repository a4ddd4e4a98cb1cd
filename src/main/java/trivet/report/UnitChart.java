package trivet.report;

import java.util.List;
import java.util.Locale;
import trivet.check.Minutes;
import trivet.check.Reading;
import trivet.deviation.UnitRecord;
import trivet.limit.Verdict;
import trivet.words.Words;

/** The small picture of a unit's readings over the days of a report: a dot each, a square where the limit was breached. */
public final class UnitChart {

    private static final int WIDTH = 700;
    private static final int HEIGHT = 110;

    private UnitChart() {
    }

    /** The picture as SVG text. */
    public static String svg(UnitRecord unit) {
        List<Reading> readings = unit.readings().stream().filter(reading -> !Reading.impossible(reading.temperature())).toList();
        StringBuilder svg = new StringBuilder(String.format(Locale.ROOT, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" role=\"img\" font-family=\"Liberation Sans, DejaVu Sans, system-ui, sans-serif\"><title>%s</title>",
                WIDTH, HEIGHT, WIDTH, HEIGHT, unit.unit().name().replace("&", "&amp;").replace("<", "&lt;")));
        if (readings.isEmpty()) {
            return svg.append("<text x=\"10\" y=\"50\" font-size=\"14\">" + Words.say("j_no_readings") + "</text></svg>").toString();
        }
        double low = readings.stream().mapToDouble(UnitChart::celsius).min().orElse(0) - 1;
        double high = readings.stream().mapToDouble(UnitChart::celsius).max().orElse(1) + 1;
        double span = Math.max(1, Minutes.between(readings.get(0).at(), readings.get(readings.size() - 1).at()).doubleValue());
        svg.append(String.format(Locale.ROOT, "<text x=\"2\" y=\"16\" font-size=\"13\">%.1f °C</text><text x=\"2\" y=\"%d\" font-size=\"13\">%.1f °C</text>", high - 1, HEIGHT - 6, low + 1));
        for (Reading reading : readings) {
            double x = 70 + (WIDTH - 90) * Minutes.between(readings.get(0).at(), reading.at()).doubleValue() / span;
            double y = 12 + (HEIGHT - 24) * (high - celsius(reading)) / (high - low);
            svg.append(reading.verdict() == Verdict.BREACHED
                    ? String.format(Locale.ROOT, "<rect x=\"%.1f\" y=\"%.1f\" width=\"12\" height=\"12\" fill=\"#8c2318\"/><text x=\"%.1f\" y=\"%.1f\" font-size=\"13\" font-weight=\"bold\">%s</text>", x - 6, y - 6, x + 9, y + 4, reading.temperature())
                    : String.format(Locale.ROOT, "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"3\" fill=\"#1b232c\"/>", x, y));
        }
        return svg.append("</svg>").toString();
    }

    private static double celsius(Reading reading) {
        return reading.temperature().inCelsius().doubleValue();
    }
}
