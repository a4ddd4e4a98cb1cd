package trivet.limit;

/** One rule of a rulebook: a stable id, numbers in one of a few shapes, and what they rest on. */
public sealed interface Limit permits RangeLimit, AlternativesLimit, StagedCooling, TimeOutLimit, UseByRule {

    /** The name by which plans and records refer to the rule, for example {@code core-cook}. */
    String id();

    /** What the numbers of the rule rest on; single rows and stages may have their own. */
    Basis basis();

    /** The rule with every suggested number taken over by the owner. */
    Limit adopted();

    /** Whether the rule may judge at a site: the law's number, or one that the owner adopted or gave. */
    default boolean inForce() {
        return basis().adopted();
    }

    /** The rule with one number replaced; see {@link LimitOverride} for the paths. Refuses an unknown path with a sentence. */
    Limit with(LimitOverride override);
}
