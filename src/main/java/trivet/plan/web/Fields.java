package trivet.plan.web;

import jakarta.ws.rs.core.MultivaluedMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import trivet.form.Kind;
import trivet.form.Parts;
import trivet.knowledge.Knowledge;
import trivet.study.Study;
import trivet.words.Words;

/** The fields of a part of a plan on a form: which they are follows from the record, what may be chosen from the plan and the knowledge base. */
final class Fields {

    private Fields() {
    }

    /** A choice. */
    public record Option(String value, String label, boolean chosen) {
    }

    /**
     * A field.
     *
     * @param look line, text, number, date, one (of options), some (of options), many (a text a line) or yes
     */
    public record Field(String key, String label, String look, String value, List<Option> options, String help) {
    }

    /** The fields of a record, but for its id and for lists of records within, which have pages of their own. */
    static List<Field> of(Record record, Study study, Knowledge knowledge) {
        String type = record.getClass().getSimpleName().toLowerCase(Locale.ROOT);
        List<Field> fields = new ArrayList<>();
        for (Parts.Field field : Parts.fields(record.getClass())) {
            if (field.kind() == Kind.ID || field.record() != null) {
                continue;
            }
            Object value = Parts.value(record, field);
            List<String> chosen = field.list() ? ((List<?>) value).stream().map(String::valueOf).toList() : List.of(String.valueOf(value));
            String name = type + "." + field.key();
            List<Option> options = options(type, field, study, knowledge, chosen);
            String look = look(field, options);
            String help = Words.named("help", name);
            fields.add(new Field(field.key(), Words.named("field", name), look, String.join("\n", chosen), options, help.equals(name) ? "" : help));
        }
        return fields;
    }

    private static String look(Parts.Field field, List<Option> options) {
        if (field.list()) {
            return field.kind() == Kind.LINE ? "many" : "some";
        }
        if (!options.isEmpty()) {
            return "one";
        }
        return switch (field.kind()) {
            case TEXT -> "text";
            case DATE -> "date";
            case YES_NO -> "yes";
            case WHOLE, NUMBER -> "number";
            default -> "line";
        };
    }

    private static List<Option> options(String type, Parts.Field field, Study study, Knowledge knowledge, List<String> chosen) {
        if (field.kind() == Kind.CHOICE) {
            return pick(Stream.of(field.choices()).map(word -> Map.entry(word, Words.named(family(field), word))).toList(), chosen, !field.list());
        }
        if (field.kind() != Kind.NAME) {
            return List.of();
        }
        Stream<Map.Entry<String, String>> names = switch (type + "." + field.key()) {
            case "item.kind" -> knowledge.ingredients().stream().map(row -> Map.entry(row.id(), row.title()));
            case "item.contains", "item.may-contain" -> knowledge.substances().stream().map(row -> Map.entry(row.id(), row.title()));
            case "step.kind" -> knowledge.steps().stream().map(row -> Map.entry(row.id(), row.title()));
            case "step.room", "way.from", "way.to" -> study.rooms().stream().map(row -> Map.entry(row.id(), row.title()));
            case "step.inputs" -> study.recipe().items().stream().map(row -> Map.entry(row.id(), row.title().isEmpty() ? row.id() : row.title()));
            case "control.step", "hazard.step", "hazard.later-step" -> study.steps().stream().map(row -> Map.entry(row.id(), row.title().isEmpty() ? row.id() : row.title()));
            case "control.evidence", "description.life-evidence", "description.claim-evidence" -> study.evidence().stream().map(row -> Map.entry(row.id(), row.title().isEmpty() ? row.id() : row.title()));
            case "programme.topic" -> knowledge.programmes().stream().map(row -> Map.entry(row.id(), row.title()));
            case "hazard.controls" -> study.controls().stream().map(row -> Map.entry(row.id(), study.number(row) + " " + row.title()));
            case "hazard.programmes" -> study.programmes().stream().map(row -> Map.entry(row.id(), row.title()));
            default -> Stream.empty();
        };
        return pick(names.toList(), chosen, !field.list());
    }

    private static String family(Parts.Field field) {
        return switch (field.key()) {
            case "on-breach" -> "offer";
            case "limit" -> "limit";
            case "line" -> "line";
            default -> "choice";
        };
    }

    private static List<Option> pick(List<Map.Entry<String, String>> names, List<String> chosen, boolean mayBeNone) {
        List<Option> options = new ArrayList<>();
        if (mayBeNone) {
            options.add(new Option("", Words.say("j_not_said_yet"), chosen.contains("")));
        }
        names.forEach(name -> options.add(new Option(name.getKey(), name.getValue(), chosen.contains(name.getKey()))));
        chosen.stream().filter(value -> !value.isEmpty() && names.stream().noneMatch(name -> name.getKey().equals(value))).forEach(value -> options.add(new Option(value, value, true)));
        return options;
    }

    /** A record as a form says it; what the form does not hold stays as it was. What its kind refuses goes into the problems. */
    static <T extends Record> T read(T before, MultivaluedMap<String, String> form, List<String> problems) {
        Map<String, Object> tree = new LinkedHashMap<>(Parts.tree(before));
        String type = before.getClass().getSimpleName().toLowerCase(Locale.ROOT);
        for (Parts.Field field : Parts.fields(before.getClass())) {
            if (field.kind() == Kind.ID || field.record() != null || !form.containsKey("has." + field.key())) {
                continue;
            }
            List<String> values = form.getOrDefault(field.key(), List.of());
            if (field.list()) {
                tree.put(field.key(), values.stream().flatMap(value -> field.kind() == Kind.LINE ? value.lines() : Stream.of(value)).map(String::strip).filter(value -> !value.isEmpty()).toList());
            } else if (field.kind() == Kind.YES_NO) {
                tree.put(field.key(), values.isEmpty() ? "" : values.get(0));
            } else {
                tree.put(field.key(), unit(field.kind(), values.isEmpty() ? "" : values.get(0).strip()));
            }
        }
        @SuppressWarnings("unchecked")
        Class<T> kind = (Class<T>) before.getClass();
        return Parts.of(kind, tree, (key, sentence) -> problems.add(Words.named("field", type + "." + key) + ": " + sentence));
    }

    /** A bare number where a time, a temperature or a number of days is meant gets the usual unit. */
    private static String unit(Kind kind, String text) {
        if (!text.matches("-?\\d+([.,]\\d+)?")) {
            return text;
        }
        return switch (kind) {
            case MINUTES -> text + " min";
            case DAYS -> text + " days";
            case DEGREES -> text + " °C";
            default -> text;
        };
    }
}
