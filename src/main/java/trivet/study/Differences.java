package trivet.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import trivet.form.Parts;
import trivet.words.Words;

/** What differs between two versions of a plan, in sentences, by part and item. */
public final class Differences {

    private Differences() {
    }

    /**
     * One difference.
     *
     * @param part the part of the plan
     * @param words the sentence
     */
    public record Difference(String part, String words) {
    }

    /** What the later version says otherwise; the version number, the walk and the reviews are not compared. */
    public static List<Difference> between(Study before, Study after) {
        List<Difference> found = new ArrayList<>();
        for (Parts.Field field : Parts.fields(Study.class)) {
            if (List.of("version", "walk", "reviews", "decide-anew", "copied-from", "format", "product").contains(field.key())) {
                continue;
            }
            Object old = Parts.value(before, field);
            Object now = Parts.value(after, field);
            if (old.equals(now)) {
                continue;
            }
            if (field.list() && field.record() != null) {
                items(found, field.key(), (List<?>) old, (List<?>) now);
            } else if (old instanceof Recipe a && now instanceof Recipe b) {
                items(found, "recipe", a.items(), b.items());
                fields(found, "recipe", "", Parts.with(a, "items", List.of()), Parts.with(b, "items", List.of()));
            } else if (field.record() != null) {
                fields(found, field.key(), "", (Record) old, (Record) now);
            } else {
                found.add(new Difference(field.key(), Words.say("j_differs", Words.named("field", "study." + field.key()), shown(old), shown(now))));
            }
        }
        return found;
    }

    private static void items(List<Difference> found, String part, List<?> before, List<?> after) {
        Map<String, Record> old = byId(before);
        Map<String, Record> now = byId(after);
        old.forEach((id, record) -> {
            if (!now.containsKey(id)) {
                found.add(new Difference(part, Words.say("j_differs_gone", name(record, id))));
            } else {
                fields(found, part, name(now.get(id), id), record, now.get(id));
            }
        });
        now.forEach((id, record) -> {
            if (!old.containsKey(id)) {
                found.add(new Difference(part, Words.say("j_differs_new", name(record, id))));
            }
        });
    }

    private static Map<String, Record> byId(List<?> records) {
        Map<String, Record> byId = new LinkedHashMap<>();
        for (Object record : records) {
            Map<String, Object> tree = Parts.tree((Record) record);
            byId.put(String.valueOf(tree.getOrDefault("id", tree.getOrDefault("question", tree.toString()))), (Record) record);
        }
        return byId;
    }

    private static String name(Record record, String id) {
        Map<String, Object> tree = Parts.tree(record);
        Object title = tree.getOrDefault("title", tree.getOrDefault("name", id));
        Object step = tree.get("step");
        return record instanceof Study.Hazard ? title + " (" + step + ")" : String.valueOf(title);
    }

    private static void fields(List<Difference> found, String part, String item, Record before, Record after) {
        String type = before.getClass().getSimpleName().toLowerCase(Locale.ROOT);
        for (Parts.Field field : Parts.fields(before.getClass())) {
            Object old = Parts.value(before, field);
            Object now = Parts.value(after, field);
            if (!old.equals(now)) {
                String label = Words.named("field", type + "." + field.key());
                found.add(new Difference(part, item.isEmpty() ? Words.say("j_differs", label, shown(old), shown(now)) : Words.say("j_differs_item", item, label, shown(old), shown(now))));
            }
        }
    }

    private static String shown(Object value) {
        if (value instanceof List<?> list) {
            return list.isEmpty() ? "–" : String.join(", ", list.stream().map(item -> item instanceof Study.Answer answer ? answer.question() + " " + answer.answer() + " (" + answer.reason() + ")" : item instanceof Record record ? Parts.tree(record).toString() : String.valueOf(item)).toList());
        }
        return String.valueOf(value).isEmpty() ? "–" : String.valueOf(value);
    }
}
