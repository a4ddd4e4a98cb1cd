package trivet.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The fitter against the certified values of the NIST Statistical Reference Datasets for nonlinear regression. */
class LeastSquaresTest {

    private interface Model {
        double at(double x, double[] b);
    }

    private static Model model(String name) {
        return switch (name) {
            case "Misra1a" -> (x, b) -> b[0] * (1 - Math.exp(-b[1] * x));
            case "Misra1b" -> (x, b) -> b[0] * (1 - Math.pow(1 + b[1] * x / 2, -2));
            case "Chwirut2" -> (x, b) -> Math.exp(-b[0] * x) / (b[1] + b[2] * x);
            case "Lanczos3" -> (x, b) -> b[0] * Math.exp(-b[1] * x) + b[2] * Math.exp(-b[3] * x) + b[4] * Math.exp(-b[5] * x);
            case "MGH17" -> (x, b) -> b[0] + b[1] * Math.exp(-x * b[3]) + b[2] * Math.exp(-x * b[4]);
            case "Thurber" -> (x, b) -> (b[0] + b[1] * x + b[2] * x * x + b[3] * x * x * x) / (1 + b[4] * x + b[5] * x * x + b[6] * x * x * x);
            case "DanWood" -> (x, b) -> b[0] * Math.pow(x, b[1]);
            default -> (x, b) -> b[0] / (1 + Math.exp(b[1] - b[2] * x));
        };
    }

    @ParameterizedTest
    @CsvSource({"Misra1a, 1e-6", "Misra1b, 1e-6", "Chwirut2, 1e-6", "Lanczos3, 1e-4", "MGH17, 1e-6", "Thurber, 1e-6", "DanWood, 1e-6", "Rat42, 1e-6"})
    void certified_parameters_and_deviations(String name, double tolerance) throws IOException {
        String text;
        try (InputStream in = LeastSquaresTest.class.getResourceAsStream("/nist/" + name + ".dat")) {
            text = new String(in.readAllBytes(), StandardCharsets.US_ASCII);
        }
        List<double[]> certified = new ArrayList<>();
        Matcher rows = Pattern.compile("b\\d+ =\\s+(\\S+)\\s+(\\S+)\\s+(\\S+)\\s+(\\S+)").matcher(text);
        while (rows.find()) {
            certified.add(new double[] {Double.parseDouble(rows.group(2)), Double.parseDouble(rows.group(3)), Double.parseDouble(rows.group(4))});
        }
        List<double[]> data = new ArrayList<>();
        String tail = text.substring(text.lastIndexOf("Data:"));
        tail.lines().skip(1).map(String::strip).filter(line -> line.matches("[-+.\\dEe]+\\s+[-+.\\dEe]+"))
                .forEach(line -> data.add(new double[] {Double.parseDouble(line.split("\\s+")[0]), Double.parseDouble(line.split("\\s+")[1])}));
        double[] start = certified.stream().mapToDouble(row -> row[0]).toArray();
        Model model = model(name);
        LeastSquares.Fit fit = LeastSquares.fit((b, r, j) -> derive(model, data, b, r, j), data.size(), start);
        double variance = fit.sumOfSquares() / (data.size() - start.length);
        for (int i = 0; i < start.length; i++) {
            assertEquals(1, fit.parameters()[i] / certified.get(i)[1], tolerance, name + " b" + (i + 1));
            assertEquals(1, Math.sqrt(fit.covariance()[i][i] * variance) / certified.get(i)[2], Math.max(1e-5, tolerance * 10), name + " sd of b" + (i + 1));
        }
    }

    /** Central differences of the fourth order. */
    private static void derive(Model model, List<double[]> data, double[] b, double[] r, double[][] j) {
        for (int i = 0; i < data.size(); i++) {
            double x = data.get(i)[1];
            r[i] = model.at(x, b) - data.get(i)[0];
            for (int c = 0; c < b.length; c++) {
                double h = 1e-4 * Math.max(Math.abs(b[c]), 1e-8);
                double was = b[c];
                double[] at = new double[4];
                int k = 0;
                for (double step : new double[] {-2, -1, 1, 2}) {
                    b[c] = was + step * h;
                    at[k++] = model.at(x, b);
                }
                b[c] = was;
                j[i][c] = (at[0] - 8 * at[1] + 8 * at[2] - at[3]) / (12 * h);
            }
        }
    }
}
