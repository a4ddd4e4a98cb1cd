package trivet.ledger;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trivet.measure.Scale;
import trivet.measure.Temperature;

/**
 * The fields of a JSON object in plain Java. A field of another type than asked for reads as absent: what a tablet
 * recorded is kept whatever it looks like, and never breaks the reading of the rest.
 */
public final class Fields {

    /** An object without fields. */
    public static final Fields NONE = new Fields(Map.of());

    private final Map<String, Object> map;

    private Fields(Map<String, Object> map) {
        this.map = map;
    }

    /** The fields of a map of text, BigDecimal, Boolean, List and Map values. */
    public static Fields of(Map<String, Object> map) {
        return new Fields(map);
    }

    /** The map behind. */
    public Map<String, Object> asMap() {
        return map;
    }

    private <T> Optional<T> as(String name, Class<T> type) {
        Object value = map.get(name);
        return type.isInstance(value) ? Optional.of(type.cast(value)) : Optional.empty();
    }

    /** A text. */
    public Optional<String> text(String name) {
        return as(name, String.class).filter(text -> !text.isBlank());
    }

    /** A number, exact. */
    public Optional<BigDecimal> decimal(String name) {
        return as(name, Number.class).map(number -> number instanceof BigDecimal big ? big : new BigDecimal(number.toString()));
    }

    /** A whole number. */
    public Optional<Integer> integer(String name) {
        return decimal(name).filter(number -> number.stripTrailingZeros().scale() <= 0 && number.abs().compareTo(BigDecimal.valueOf(1_000_000)) < 0)
                .map(BigDecimal::intValue);
    }

    /** True only when the field is true. */
    public boolean flag(String name) {
        return as(name, Boolean.class).orElse(false);
    }

    /** An object within. */
    @SuppressWarnings("unchecked")
    public Optional<Fields> object(String name) {
        return as(name, Map.class).map(map -> new Fields(map));
    }

    /** A list of objects within; anything else in the list is left out. */
    @SuppressWarnings("unchecked")
    public List<Fields> objects(String name) {
        List<Fields> objects = new ArrayList<>();
        as(name, List.class).ifPresent(list -> list.forEach(item -> {
            if (item instanceof Map) {
                objects.add(new Fields((Map<String, Object>) item));
            }
        }));
        return objects;
    }

    /** A list of texts within. */
    public List<String> texts(String name) {
        List<String> texts = new ArrayList<>();
        as(name, List.class).ifPresent(list -> ((List<?>) list).forEach(item -> {
            if (item instanceof String text) {
                texts.add(text);
            }
        }));
        return texts;
    }

    /** A temperature of the form {@code {"value":"74.9","unit":"C"}}. */
    public Optional<Temperature> temperature(String name) {
        return object(name).flatMap(object -> {
            try {
                return Optional.of(Temperature.parse(object.text("value").orElse(""), Scale.ofLetter(object.text("unit").orElse("?"))));
            } catch (IllegalArgumentException unreadable) {
                return Optional.empty();
            }
        });
    }
}
