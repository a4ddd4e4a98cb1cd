package trivet.limit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import trivet.words.Words;

/** Every single number of a limit by its path, so that each can be shown, compared and overridden. */
public final class LimitNumbers {

    private LimitNumbers() {
    }

    /**
     * One number of a limit.
     *
     * @param path its address within the limit, see {@link LimitOverride}
     * @param text the number with its unit, as it is shown
     * @param number the bare number, temperatures in °C
     */
    public record LimitNumber(String path, String meaning, String text, BigDecimal number, Basis basis) {
    }

    /** All numbers of the limit, in reading order. */
    public static List<LimitNumber> of(Limit limit) {
        List<LimitNumber> all = new ArrayList<>();
        if (limit instanceof RangeLimit range) {
            range.minimum().ifPresent(bound -> all.add(bound("minimum", Words.say("j_number_lowest"), bound, limit.basis())));
            range.maximum().ifPresent(bound -> all.add(bound("maximum", Words.say("j_number_highest"), bound, limit.basis())));
        } else if (limit instanceof AlternativesLimit alternatives) {
            for (int i = 0; i < alternatives.rows().size(); i++) {
                AlternativesLimit.Row row = alternatives.rows().get(i);
                String food = row.food().map(f -> f + ", ").orElse("");
                all.add(bound("rows[" + i + "].celsius", food + Words.say("j_number_core"), row.least(), row.basis()));
                all.add(plain("rows[" + i + "].seconds", food + Words.say("j_number_held"), row.seconds(), "s", row.basis()));
            }
        } else if (limit instanceof StagedCooling cooling) {
            for (int i = 0; i < cooling.stages().size(); i++) {
                StagedCooling.Stage stage = cooling.stages().get(i);
                String at = "stages[" + i + "].";
                stage.from().ifPresent(from -> all.add(bound(at + "from", Words.say("j_number_from"), from, stage.basis())));
                all.add(bound(at + "to", Words.say("j_number_to"), stage.to(), stage.basis()));
                all.add(plain(at + "minutes", Words.say("j_number_within"), stage.minutes(), "min", stage.basis()));
            }
        } else if (limit instanceof TimeOutLimit timeOut) {
            for (int i = 0; i < timeOut.bands().size(); i++) {
                TimeOutLimit.Band band = timeOut.bands().get(i);
                all.add(plain("bands[" + i + "].minutes", Words.say("j_number_band", band.then()), band.minutes(), "min", limit.basis()));
            }
        } else if (limit instanceof UseByRule useBy && useBy.mostDays().isPresent()) {
            all.add(new LimitNumber("days", Words.say("j_at_most"), Words.say("j_number_days", useBy.mostDays().getAsInt()), BigDecimal.valueOf(useBy.mostDays().getAsInt()), limit.basis()));
        }
        return all;
    }

    static BigDecimal at(Limit limit, String path) {
        Optional<LimitNumber> found = of(limit).stream().filter(number -> number.path().equals(path)).findFirst();
        return found.orElseThrow(() -> new IllegalArgumentException(
                "The limit " + limit.id() + " has no number called \"" + path + "\".")).number();
    }

    private static LimitNumber bound(String path, String meaning, Bound bound, Basis basis) {
        return new LimitNumber(path, meaning, bound.words(), bound.celsius().inCelsius(), basis);
    }

    private static LimitNumber plain(String path, String meaning, BigDecimal number, String unit, Basis basis) {
        return new LimitNumber(path, meaning, number.stripTrailingZeros().toPlainString() + " " + unit, number, basis);
    }
}
