package trivet.calc;

import java.util.Locale;
import java.util.Optional;

/** A plain picture of readings over minutes: dots with a thin line between, which is only a line; readable without colour. */
public final class Picture {

    private static final int WIDTH = 900;
    private static final int HEIGHT = 340;
    private static final int LEFT = 60;
    private static final int RIGHT = 880;
    private static final int TOP = 15;
    private static final int BOTTOM = 295;

    private Picture() {
    }

    /** A temperature to come: its likeliest minute and the interval about it. */
    public record Band(double celsius, double eta, double low, double high) {
    }

    /** The picture as SVG text, with a pale band where a temperature is forecast. */
    public static String svg(double[] minutes, double[] celsius, Optional<Band> band) {
        double last = Math.max(minutes[minutes.length - 1], band.map(b -> Math.min(b.high(), 6 * Math.max(60, minutes[minutes.length - 1]))).orElse(0.0));
        double first = Math.min(0, minutes[0]);
        double high = 10 * Math.ceil((max(celsius) + 1) / 10);
        double low = 10 * Math.floor((Math.min(min(celsius), band.map(Band::celsius).orElse(100.0)) - 1) / 10);
        StringBuilder svg = new StringBuilder(String.format(Locale.ROOT, "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"curve\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" role=\"img\"><title>°C / min</title>", WIDTH, HEIGHT, WIDTH, HEIGHT));
        double step = high - low > 60 ? 20 : 10;
        for (double t = low; t <= high; t += step) {
            double y = BOTTOM - (BOTTOM - TOP) * (t - low) / (high - low);
            svg.append(String.format(Locale.ROOT, "<line x1=\"%d\" y1=\"%.1f\" x2=\"%d\" y2=\"%.1f\" stroke=\"#cfc8b8\"/><text x=\"%d\" y=\"%.1f\" font-size=\"15\" text-anchor=\"end\" fill=\"#1b232c\">%.0f °C</text>", LEFT, y, RIGHT, y, LEFT - 6, y + 5, t));
        }
        for (int i = 0; i <= 6; i++) {
            double minute = first + (last - first) * i / 6;
            svg.append(String.format(Locale.ROOT, "<text x=\"%.1f\" y=\"%d\" font-size=\"15\" text-anchor=\"middle\" fill=\"#1b232c\">%.0f min</text>", LEFT + (RIGHT - 30.0 - LEFT) * i / 6, BOTTOM + 26, minute));
        }
        band.ifPresent(b -> {
            double y = BOTTOM - (BOTTOM - TOP) * (b.celsius() - low) / (high - low);
            double from = x(b.low(), first, last);
            double to = x(Math.min(b.high(), last), first, last);
            svg.append(String.format(Locale.ROOT, "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"14\" fill=\"#d9cfb6\" stroke=\"#1b232c\" stroke-dasharray=\"3 2\"/><line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"#1b232c\" stroke-width=\"3\"/>",
                    from, y - 7, Math.max(2, to - from), x(b.eta(), first, last), y - 11, x(b.eta(), first, last), y + 11));
        });
        StringBuilder line = new StringBuilder();
        StringBuilder dots = new StringBuilder();
        for (int i = 0; i < minutes.length; i++) {
            double x = x(minutes[i], first, last);
            double y = BOTTOM - (BOTTOM - TOP) * (celsius[i] - low) / (high - low);
            line.append(String.format(Locale.ROOT, "%.1f,%.1f ", x, y));
            dots.append(String.format(Locale.ROOT, "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%d\" fill=\"#1b232c\"/>", x, y, minutes.length > 60 ? 2 : 5));
        }
        return svg.append("<polyline fill=\"none\" stroke=\"#777777\" stroke-dasharray=\"2 3\" points=\"").append(line).append("\"/>").append(dots).append("</svg>").toString();
    }

    private static double x(double minute, double first, double last) {
        return LEFT + (RIGHT - 30.0 - LEFT) * (minute - first) / Math.max(1e-9, last - first);
    }

    private static double max(double[] values) {
        return java.util.Arrays.stream(values).max().orElseThrow();
    }

    private static double min(double[] values) {
        return java.util.Arrays.stream(values).min().orElseThrow();
    }
}
