package trivet.limit;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import trivet.words.Words;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * One jurisdiction's limits with their sources, in one version.
 *
 * @param sha256 the SHA-256 of the file's bytes, in hexadecimal
 * @param foods the kinds of food that the rules tell apart; empty where they tell none
 */
public record Rulebook(String id, int version, String title, String jurisdiction, String caution, List<String> foods,
        List<Limit> limits, String sha256) {

    /** Copies the lists and refuses two limits of one id. */
    public Rulebook {
        foods = List.copyOf(foods);
        limits = List.copyOf(limits);
        if (limits.stream().map(Limit::id).distinct().count() != limits.size()) {
            throw new IllegalArgumentException("The rulebook " + id + " has two limits of the same id.");
        }
    }

    /** The limit of that id, whatever its shape. */
    public Optional<Limit> limit(String limitId) {
        return limits.stream().filter(limit -> limit.id().equals(limitId)).findFirst();
    }

    private <T> Optional<T> limit(String limitId, Class<T> shape) {
        return limit(limitId).filter(shape::isInstance).map(shape::cast);
    }

    /** The range of that id, for example {@code chilled-storage}. */
    public Optional<RangeLimit> range(String limitId) {
        return limit(limitId, RangeLimit.class);
    }

    /** The rows of that id: {@code core-cook} or {@code reheat}. */
    public Optional<AlternativesLimit> alternatives(String limitId) {
        return limit(limitId, AlternativesLimit.class);
    }

    /** The cooling rule. */
    public Optional<StagedCooling> cooling() {
        return limit("cooling", StagedCooling.class);
    }

    /** The rule for time out of temperature control of that id. */
    public Optional<TimeOutLimit> timeOut(String limitId) {
        return limit(limitId, TimeOutLimit.class);
    }

    /** How use-by days are counted. */
    public Optional<UseByRule> useBy() {
        return limit("use-by", UseByRule.class);
    }

    /** The rulebook with the named suggestions taken over and the owner's own numbers in place. */
    public Rulebook confirmed(Set<String> adopted, List<LimitOverride> overrides) {
        Map<String, List<LimitOverride>> byLimit = overrides.stream().collect(Collectors.groupingBy(LimitOverride::limit));
        for (String name : byLimit.keySet()) {
            limit(name).orElseThrow(() -> new IllegalArgumentException("The rulebook " + id + " has no limit called \"" + name + "\"."));
        }
        return withLimits(limit -> {
            Limit changed = adopted.contains(limit.id()) ? limit.adopted() : limit;
            for (LimitOverride override : byLimit.getOrDefault(limit.id(), List.of())) {
                changed = changed.with(override);
            }
            return changed;
        });
    }

    /** The rulebook with every suggestion taken over, as the pure calculations use it. */
    public Rulebook withSuggestions() {
        return withLimits(Limit::adopted);
    }

    private Rulebook withLimits(Function<Limit, Limit> change) {
        return new Rulebook(id, version, title, jurisdiction, caution, foods, limits.stream().map(change).toList(), sha256);
    }

    /** A limit in words with its numbers, for a kind of food where the rulebook tells kinds apart; empty text where it has no such limit. */
    public String words(String limit, Optional<String> food) {
        return alternatives(limit).map(rows -> String.join(Words.say("j_or") + " ", rows.rowsFor(food).stream().map(AlternativesLimit.Row::words).toList()))
                .or(() -> range(limit).map(RangeLimit::words))
                .or(() -> cooling().filter(rule -> rule.id().equals(limit)).map(rule -> String.join("; ", rule.stages().stream().map(StagedCooling.Stage::words).toList()))).orElse("");
    }
}
