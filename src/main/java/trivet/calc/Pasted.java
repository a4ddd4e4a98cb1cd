package trivet.calc;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import trivet.check.Minutes;
import trivet.words.Words;

/** Readings as somebody pastes them: a line each, a time and a temperature, apart by a semicolon, a tab or spaces. */
public final class Pasted {

    private static final int MOST = 10_000;
    private static final Pattern LINE = Pattern.compile("(\\d{1,2}:\\d{2}(?::\\d{2})?|[-+]?\\d{1,7}(?:[.,]\\d{1,9})?)[;\\t ]+([-+−]?\\d{1,4}(?:[.,]\\d{1,9})?)\\s*(?:°?[CF])?;?");

    private Pasted() {
    }

    /** Minutes from the first clock time, or as they stand, and temperatures as typed. */
    public record Points(double[] minutes, double[] values) {
    }

    /**
     * Reads the lines; a time is minutes, or a clock time as 05:10, where an earlier one than before lies on the next day. A first
     * line without numbers is a heading and is left out. Refuses a line that cannot be read, naming it.
     */
    public static Points read(String text) {
        List<double[]> rows = new ArrayList<>();
        double base = Double.NaN;
        double before = Double.NEGATIVE_INFINITY;
        String[] lines = text.split("\\R");
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i].strip().replace('\u00a0', ' ');
            if (line.isEmpty() || (rows.isEmpty() && !line.matches(".*\\d.*"))) {
                continue;
            }
            Matcher matcher = LINE.matcher(line);
            if (!matcher.matches()) {
                throw new IllegalArgumentException(Words.say("j_pasted_line", i + 1, line));
            }
            double minute = matcher.group(1).contains(":") ? clock(matcher.group(1)) : number(matcher.group(1));
            if (matcher.group(1).contains(":")) {
                while (minute < before) {
                    minute += 24 * 60;
                }
                before = minute;
                base = Double.isNaN(base) ? minute : base;
                minute -= base;
            }
            rows.add(new double[] {minute, number(matcher.group(2).replace('−', '-'))});
            if (rows.size() > MOST) {
                throw new IllegalArgumentException(Words.say("j_pasted_many"));
            }
        }
        if (rows.size() < 2) {
            throw new IllegalArgumentException(Words.say("j_pasted_few"));
        }
        rows.sort(Comparator.comparingDouble(row -> row[0]));
        for (int i = 1; i < rows.size(); i++) {
            if (rows.get(i)[0] == rows.get(i - 1)[0]) {
                throw new IllegalArgumentException(Words.say("j_pasted_same", rows.get(i)[0]));
            }
        }
        return new Points(rows.stream().mapToDouble(row -> row[0]).toArray(), rows.stream().mapToDouble(row -> row[1]).toArray());
    }

    private static double clock(String text) {
        String[] parts = text.split(":");
        return Integer.parseInt(parts[0]) * 60 + Integer.parseInt(parts[1]) + (parts.length > 2 ? Integer.parseInt(parts[2]) / 60.0 : 0);
    }

    private static double number(String text) {
        return Double.parseDouble(text.replace(',', '.'));
    }
}
