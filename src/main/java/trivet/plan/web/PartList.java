package trivet.plan.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import trivet.form.Parts;
import trivet.study.Recipe;
import trivet.study.Study;

/** The parts of a plan that have forms: single ones, and lists of items. */
enum PartList {
    SCOPE(Study.Scope.class, false), METHOD(Study.Method.class, false), TEAM(Study.Member.class, true), DESCRIPTION(Study.Description.class, false), RECIPE(Recipe.class, false), ITEMS(Recipe.Item.class, true),
    DAY(Study.Day.class, false), ROOMS(Study.Room.class, true), WAYS(Study.Way.class, true), CONTROLS(Study.Control.class, true), EVIDENCE(Study.Evidence.class, true), PROGRAMMES(Study.Programme.class, true), REVIEWS(Study.Review.class, true);

    private final Class<? extends Record> type;
    private final boolean list;

    PartList(Class<? extends Record> type, boolean list) {
        this.type = type;
        this.list = list;
    }

    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    boolean list() {
        return list;
    }

    static PartList find(String word) {
        for (PartList part : values()) {
            if (part.word().equals(word)) {
                return part;
            }
        }
        throw new jakarta.ws.rs.NotFoundException();
    }

    /** The one record of a single part. */
    Record single(Study study) {
        return switch (this) {
            case SCOPE -> study.scope();
            case METHOD -> study.method();
            case DESCRIPTION -> study.description();
            case RECIPE -> study.recipe();
            default -> study.day();
        };
    }

    /** The records of a list. */
    @SuppressWarnings("unchecked")
    List<Record> records(Study study) {
        if (this == ITEMS) {
            return List.copyOf(study.recipe().items());
        }
        Parts.Field field = Parts.fields(Study.class).stream().filter(one -> one.key().equals(word())).findFirst().orElseThrow();
        return (List<Record>) Parts.value(study, field);
    }

    /** The plan with another single record. */
    Study with(Study study, Record changed) {
        return study.with(word(), changed);
    }

    /** The plan with another list. */
    Study with(Study study, List<? extends Record> changed) {
        return this == ITEMS ? study.with("recipe", Parts.with(study.recipe(), "items", changed)) : study.with(word(), changed);
    }

    /** The id of an item; a way has none, and is known by its place. */
    String id(Study study, Record record) {
        return this == WAYS ? String.valueOf(records(study).indexOf(record)) : String.valueOf(Parts.tree(record).getOrDefault("id", ""));
    }

    /** A new item with an id that nobody has. */
    Record fresh(Study study, String wish) {
        Record empty = Parts.empty(type);
        if (this == WAYS) {
            return empty;
        }
        return Parts.with(empty, "id", newId(wish, records(study).stream().map(record -> id(study, record)).collect(Collectors.toSet())));
    }

    /** An id of a wish that nobody has. */
    static String newId(String wish, Set<String> taken) {
        String base = java.text.Normalizer.normalize(wish, java.text.Normalizer.Form.NFD).replaceAll("\\p{M}", "").toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("(^-|-$)", "");
        String start = base.isEmpty() ? "item" : base.substring(0, Math.min(40, base.length())).replaceAll("-$", "");
        String id = start;
        for (int i = 2; taken.contains(id); i++) {
            id = start + "-" + i;
        }
        return id;
    }

    /** A list with one item changed, added at the end, moved or left out. */
    static List<Record> replaced(List<Record> records, int at, Record changed) {
        List<Record> all = new ArrayList<>(records);
        if (at < 0) {
            all.add(changed);
        } else if (changed == null) {
            all.remove(at);
        } else {
            all.set(at, changed);
        }
        return all;
    }
}
