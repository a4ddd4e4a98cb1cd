package trivet.form;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import trivet.measure.Quantity;
import trivet.words.Words;

/** The kinds of values that a plan is written with, each held as text. */
public enum Kind {
    /** A name of lower-case letters, digits and hyphens, which never changes its meaning. */
    ID,
    /** One line of text. */
    LINE,
    /** Text of several lines. */
    TEXT,
    /** A whole number, 0 or more. */
    WHOLE,
    /** A decimal number. */
    NUMBER,
    /** A time with its unit, such as 50 min. */
    MINUTES,
    /** A whole number of days, such as 3 days. */
    DAYS,
    /** A temperature with its unit, such as 75 °C. */
    DEGREES,
    /** A date, such as 2026-11-26. */
    DATE,
    /** A moment in UTC. */
    MOMENT,
    /** Yes or no, written true or false. */
    YES_NO,
    /** One of some words. */
    CHOICE,
    /** The id of a person, a step, an ingredient or another part; what it must name is held elsewhere. */
    NAME;

    /** Refuses a text that is no value of this kind, with a sentence; empty text passes. */
    public void check(String text, String[] choices) {
        if (text.isEmpty()) {
            return;
        }
        try {
            switch (this) {
                case ID, NAME -> {
                    if (!text.matches("[a-z0-9][a-z0-9-]{0,59}")) {
                        throw new IllegalArgumentException(Words.say("j_an_id_is_written", text));
                    }
                }
                case LINE -> {
                    if (text.contains("\n")) {
                        throw new IllegalArgumentException(Words.say("j_one_line_is_expected"));
                    }
                }
                case WHOLE -> {
                    if (!text.matches("\\d{1,7}")) {
                        throw new IllegalArgumentException(Words.say("j_a_whole_number_is_expected", text));
                    }
                }
                case NUMBER -> {
                    if (!text.matches("-?\\d{1,9}([.]\\d{1,6})?")) {
                        throw new IllegalArgumentException(Words.say("j_a_number_is_expected", text));
                    }
                }
                case MINUTES -> Quantity.minutes(text);
                case DAYS -> Quantity.days(text);
                case DEGREES -> Quantity.temperature(text);
                case DATE -> LocalDate.parse(text);
                case MOMENT -> Instant.parse(text);
                case YES_NO -> {
                    if (!text.equals("true") && !text.equals("false")) {
                        throw new IllegalArgumentException(Words.say("j_true_or_false_is_expected", text));
                    }
                }
                case CHOICE -> {
                    if (!List.of(choices).contains(text)) {
                        throw new IllegalArgumentException(Words.say("j_one_of_is_expected", text, String.join(", ", choices)));
                    }
                }
                default -> {
                }
            }
        } catch (DateTimeParseException unreadable) {
            throw new IllegalArgumentException(Words.say("j_a_date_is_expected", text));
        }
    }

    /** A text as a person types it, made that of this kind: outer spaces and characters that no page can show gone, a decimal comma a point. */
    public String tidy(String text) {
        String plain = text.replace("\r\n", "\n").replaceAll("[\\x00-\\x08\\x0b-\\x1f\\ufffe\\uffff]", " ").strip();
        return this == NUMBER || this == WHOLE ? plain.replace(',', '.') : plain;
    }

    /** The number of a text; zero where it is empty. */
    public static BigDecimal number(String text) {
        return text.isEmpty() ? BigDecimal.ZERO : new BigDecimal(text);
    }
}
