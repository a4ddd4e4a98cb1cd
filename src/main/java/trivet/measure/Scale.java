package trivet.measure;

/** A scale of temperature on which a probe shows its value: degrees Celsius or degrees Fahrenheit. */
public enum Scale {
    CELSIUS("°C", "C"),
    FAHRENHEIT("°F", "F");

    private final String symbol;
    private final String letter;

    Scale(String symbol, String letter) {
        this.symbol = symbol;
        this.letter = letter;
    }

    /** The sign as printed behind a value, for example {@code °C}. */
    public String symbol() {
        return symbol;
    }

    /** The single letter used in records, {@code C} or {@code F}. */
    public String letter() {
        return letter;
    }

    /** The scale of a letter as used in records; refuses any other text with a sentence. */
    public static Scale ofLetter(String letter) {
        for (Scale scale : values()) {
            if (scale.letter.equals(letter)) {
                return scale;
            }
        }
        throw new IllegalArgumentException("The unit of a temperature is C or F, not \"" + letter + "\".");
    }
}
