package trivet.device;

/** An oven, fridge, freezer, blast chiller, rack or hot cabinet of the site. */
public record Unit(String id, String name, Kind kind, boolean active) {

    /** What a unit is for. */
    public enum Kind {
        OVEN, FRIDGE, FREEZER, BLAST_CHILLER, COOLING_RACK, HOT_CABINET;

        /** The limit of the rulebook that its air or food is checked against twice a day; empty text for none. */
        public String limit() {
            return this == FRIDGE ? "chilled-storage" : this == FREEZER ? "frozen-storage" : "";
        }
    }
}
