package trivet.limit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import trivet.words.Words;

/** Cooling in stages, each a target to be met within a time; stages may overlap, each with its own clock. */
public record StagedCooling(String id, List<Stage> stages, Basis basis) implements Limit {

    /** Copies the stages and refuses an empty list. */
    public StagedCooling {
        stages = List.copyOf(stages);
        if (stages.isEmpty()) {
            throw new IllegalArgumentException(Words.say("j_the_limit_has_no_stages", id));
        }
    }

    /** What a stage's minutes are counted from. */
    public enum CountedFrom {
        /** From the last reading of the hot part, at or above the start temperature. */
        START,
        /** From the passing of the stage's own start temperature on the way down. */
        PASSING,
        /** From the recorded time out of the oven. */
        OVEN;

        /** The word used in rulebooks and answers. */
        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /**
     * One stage.
     *
     * @param from the start temperature, as an inclusive minimum (at or above it the food is still hot); empty exactly
     *     for a stage counted from the oven
     * @param to the target, a maximum, inclusive or exclusive as printed
     * @param minutes the time allowed, inclusive: a reading exactly at the deadline and on the target is in time
     */
    public record Stage(Optional<Bound> from, Bound to, BigDecimal minutes, CountedFrom countedFrom, Basis basis) {

        /** Refuses a target that is not below the start, a start that is missing or superfluous, and no time. */
        public Stage {
            if (from.isPresent() == (countedFrom == CountedFrom.OVEN)) {
                throw new IllegalArgumentException(Words.say("j_a_stage_has_a_start_temperature"));
            }
            if (from.isPresent() && !to.celsius().below(from.get().celsius())) {
                throw new IllegalArgumentException(Words.say("j_the_target_of_a_stage_is", to.celsius(), from.get().celsius()));
            }
            if (minutes.signum() <= 0) {
                throw new IllegalArgumentException(Words.say("j_a_stage_allows_more_than_0"));
            }
        }

        /** The stage in words, for example "from 57 °C to at most 21 °C within 120 min". */
        public String words() {
            String start = from.map(f -> Words.say("j_from", f.celsius())).orElse(Words.say("j_from_the_oven"));
            return Words.say("j_to_within_min", start, to.words(), minutes.stripTrailingZeros().toPlainString(), (countedFrom == CountedFrom.PASSING ? " " + Words.say("j_of_passing", from.get().celsius()) : ""));
        }
    }

    @Override
    public StagedCooling adopted() {
        return new StagedCooling(id, stages.stream().map(stage -> new Stage(stage.from(), stage.to(), stage.minutes(),
                stage.countedFrom(), stage.basis().adoptedByOwner())).toList(), basis.adoptedByOwner());
    }

    @Override
    public StagedCooling with(LimitOverride override) {
        int index = override.index("stages", stages.size());
        Stage stage = stages.get(index);
        Basis own = override.basis();
        List<Stage> changed = new ArrayList<>(stages);
        if (override.path().endsWith(".from")) {
            changed.set(index, new Stage(stage.from().map(override::replace), stage.to(), stage.minutes(), stage.countedFrom(), own));
        } else if (override.path().endsWith(".to")) {
            changed.set(index, new Stage(stage.from(), override.replace(stage.to()), stage.minutes(), stage.countedFrom(), own));
        } else if (override.path().endsWith(".minutes")) {
            changed.set(index, new Stage(stage.from(), stage.to(), override.minutes(), stage.countedFrom(), own));
        } else {
            throw override.unknownPath();
        }
        return new StagedCooling(id, changed, basis.adoptedByOwner());
    }

    /** Whether every number of every stage may judge at a site. */
    @Override
    public boolean inForce() {
        return stages.stream().allMatch(stage -> stage.basis().adopted());
    }
}
