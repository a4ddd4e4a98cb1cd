package trivet.limit.file;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import trivet.limit.AlternativesLimit;
import trivet.limit.Basis;
import trivet.limit.Bound;
import trivet.limit.Limit;
import trivet.limit.Problem;
import trivet.limit.RangeLimit;
import trivet.limit.Rulebook;
import trivet.limit.StagedCooling;
import trivet.limit.Standing;
import trivet.limit.TimeOutLimit;
import trivet.limit.UseByRule;
import trivet.measure.Digest;
import trivet.measure.Quantity;

/** Reads one rulebook file of the format {@code rulebook/1}. */
public final class RulebookReader {

    private static final Set<String> BASIS = Set.of("standing", "source", "read");
    private final List<Problem> problems = new ArrayList<>();

    /** What was read: the rulebook when nothing was wrong, and all problems. */
    public record Outcome(Optional<Rulebook> rulebook, List<Problem> problems) {
    }

    /** Reads the text of a file. */
    public static Outcome read(String file, String text) {
        return new RulebookReader().readAll(file, text);
    }

    private Outcome readAll(String file, String text) {
        YamlNode root = YamlNode.read(file, text, problems);
        if (!problems.isEmpty()) {
            return new Outcome(Optional.empty(), List.copyOf(problems));
        }
        root.only(Set.of("format", "id", "version", "title", "jurisdiction", "caution", "foods", "limits"));
        if (!root.required("format").equals("rulebook/1")) {
            root.problem("format", "The format is rulebook/1.");
        }
        Optional<Integer> version = root.requiredValue("version", Integer::valueOf);
        List<Limit> limits = new ArrayList<>();
        for (YamlNode node : root.list("limits")) {
            limit(node).ifPresent(limits::add);
        }
        String id = root.required("id");
        String title = root.required("title");
        String jurisdiction = root.required("jurisdiction");
        String caution = root.required("caution");
        if (!problems.isEmpty()) {
            return new Outcome(Optional.empty(), List.copyOf(problems));
        }
        try {
            Rulebook rulebook = new Rulebook(id, version.orElseThrow(), title, jurisdiction, caution, root.texts("foods"), limits,
                    Digest.sha256(text));
            return new Outcome(Optional.of(rulebook), List.of());
        } catch (IllegalArgumentException refused) {
            return new Outcome(Optional.empty(), List.of(new Problem(file, 1, refused.getMessage())));
        }
    }

    private Optional<Limit> limit(YamlNode node) {
        String id = node.required("id");
        String shape = node.required("shape");
        Optional<Basis> basis = basis(node);
        try {
            return switch (shape) {
                case "range" -> range(id, node, basis);
                case "alternatives" -> alternatives(id, node, basis);
                case "stages" -> stages(id, node, basis);
                case "time-out" -> timeOut(id, node, basis);
                case "use-by" -> useBy(id, node, basis);
                default -> {
                    node.problem("shape", "The shape \"" + shape + "\" is not one of range, alternatives, stages, time-out, use-by.");
                    yield Optional.empty();
                }
            };
        } catch (IllegalArgumentException refused) {
            node.problem("id", refused.getMessage());
            return Optional.empty();
        }
    }

    private Optional<Basis> basis(YamlNode node) {
        Optional<Standing> standing = node.requiredValue("standing", RulebookReader::standing);
        String source = node.required("source");
        Optional<Boolean> read = node.has("read") ? node.flag("read") : node.requiredValue("read", text -> true);
        if (standing.isEmpty() || source.isEmpty() || read.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Basis.shipped(standing.get(), source, read.get()));
    }

    private Optional<Basis> ownBasis(YamlNode node, Optional<Basis> inherited) {
        return BASIS.stream().anyMatch(node::has) ? basis(node) : inherited;
    }

    private static Standing standing(String text) {
        for (Standing standing : Standing.values()) {
            if (standing.word().equals(text)) {
                return standing;
            }
        }
        throw new IllegalArgumentException("The standing is law, guidance or practice, not \"" + text + "\".");
    }

    private static Set<String> keys(String... own) {
        Set<String> all = new java.util.HashSet<>(BASIS);
        all.addAll(List.of(own));
        return all;
    }

    private Optional<Bound> bound(YamlNode node, String key, boolean minimum, boolean inclusive) {
        return node.value(key, text -> new Bound(minimum, inclusive, Quantity.temperature(text), Quantity.fahrenheitBeside(text)));
    }

    private Optional<Limit> range(String id, YamlNode node, Optional<Basis> basis) {
        node.only(keys("id", "shape", "minimum", "maximum", "inclusive", "operating"));
        boolean inclusive = node.flag("inclusive").orElse(true);
        if (!node.has("inclusive")) {
            node.problem("id", "\"inclusive\" is missing: true or false.");
        }
        Optional<Bound> minimum = bound(node, "minimum", true, inclusive);
        Optional<Bound> maximum = bound(node, "maximum", false, inclusive);
        Optional<Bound> operating = bound(node, "operating", maximum.isEmpty(), true);
        return basis.map(b -> new RangeLimit(id, minimum, maximum, operating, b));
    }

    private Optional<Limit> alternatives(String id, YamlNode node, Optional<Basis> basis) {
        node.only(keys("id", "shape", "rows", "within", "operating"));
        List<AlternativesLimit.Row> rows = new ArrayList<>();
        for (YamlNode row : node.list("rows")) {
            row.only(keys("food", "at", "hold", "inclusive"));
            boolean inclusive = row.flag("inclusive").orElse(true);
            if (!row.has("at")) {
                row.required("at");
            }
            Optional<Bound> least = bound(row, "at", true, inclusive);
            Optional<BigDecimal> hold = row.requiredValue("hold", Quantity::seconds);
            Optional<Basis> own = ownBasis(row, basis);
            if (least.isPresent() && hold.isPresent() && own.isPresent()) {
                rows.add(new AlternativesLimit.Row(row.text("food"), least.get(), hold.get(), own.get()));
            }
        }
        Optional<BigDecimal> within = node.value("within", Quantity::minutes);
        Optional<Bound> operating = bound(node, "operating", true, true);
        return basis.map(b -> new AlternativesLimit(id, rows, within, operating, b));
    }

    private Optional<Limit> stages(String id, YamlNode node, Optional<Basis> basis) {
        node.only(keys("id", "shape", "stages"));
        List<StagedCooling.Stage> stages = new ArrayList<>();
        for (YamlNode stage : node.list("stages")) {
            stage.only(keys("from", "to", "within", "counted-from", "inclusive"));
            boolean inclusive = stage.flag("inclusive").orElse(true);
            if (!stage.has("inclusive")) {
                stage.problem("to", "\"inclusive\" is missing: true or false.");
            }
            Optional<Bound> from = bound(stage, "from", true, true);
            if (!stage.has("to")) {
                stage.required("to");
            }
            Optional<Bound> to = bound(stage, "to", false, inclusive);
            Optional<BigDecimal> minutes = stage.requiredValue("within", Quantity::minutes);
            Optional<StagedCooling.CountedFrom> counted = stage.requiredValue("counted-from", RulebookReader::countedFrom);
            Optional<Basis> own = ownBasis(stage, basis);
            if (to.isPresent() && minutes.isPresent() && counted.isPresent() && own.isPresent()) {
                try {
                    stages.add(new StagedCooling.Stage(from, to.get(), minutes.get(), counted.get(), own.get()));
                } catch (IllegalArgumentException refused) {
                    stage.problem("to", refused.getMessage());
                }
            }
        }
        return stages.isEmpty() ? Optional.empty() : basis.map(b -> new StagedCooling(id, stages, b));
    }

    private static StagedCooling.CountedFrom countedFrom(String text) {
        for (StagedCooling.CountedFrom counted : StagedCooling.CountedFrom.values()) {
            if (counted.word().equals(text)) {
                return counted;
            }
        }
        throw new IllegalArgumentException("A stage is counted from start, passing or oven, not \"" + text + "\".");
    }

    private Optional<Limit> timeOut(String id, YamlNode node, Optional<Basis> basis) {
        node.only(keys("id", "shape", "bands"));
        List<TimeOutLimit.Band> bands = new ArrayList<>();
        for (YamlNode band : node.list("bands")) {
            band.only(Set.of("up-to", "inclusive", "not-above", "then"));
            Optional<BigDecimal> minutes = band.requiredValue("up-to", Quantity::minutes);
            boolean inclusive = band.flag("inclusive").orElse(true);
            Optional<Bound> notAbove = bound(band, "not-above", false, true);
            String then = band.required("then");
            minutes.ifPresent(m -> bands.add(new TimeOutLimit.Band(m, inclusive, notAbove, then)));
        }
        return basis.map(b -> new TimeOutLimit(id, bands, b));
    }

    private Optional<Limit> useBy(String id, YamlNode node, Optional<Basis> basis) {
        node.only(keys("id", "shape", "preparation-is-day", "at-most"));
        Optional<Integer> first = node.requiredValue("preparation-is-day", Integer::valueOf);
        Optional<Integer> days = node.value("at-most", Quantity::days);
        return basis.flatMap(b -> first.map(f -> new UseByRule(id, f == 1,
                days.map(OptionalInt::of).orElse(OptionalInt.empty()), b)));
    }
}
