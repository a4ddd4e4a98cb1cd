package trivet.form;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;

/**
 * Reads and writes records whose components are texts, lists of texts, records and lists of records, as trees of maps, lists and
 * texts. Keys are the components' names with hyphens. What is empty is left out, so that a tree read and written again is the same.
 */
public final class Parts {

    private Parts() {
    }

    /** One component: its key, its kind and its choices, and the record within. */
    public record Field(String key, String component, Kind kind, String[] choices, boolean list, Class<? extends Record> record) {

        /** Copies the choices. */
        public Field {
            choices = choices.clone();
        }
    }

    /** The components of a record, in order. */
    public static List<Field> fields(Class<? extends Record> type) {
        return SHAPES.get(type).fields();
    }

    /** What reflection says of a record, asked once. */
    private record Shape(List<Field> fields, Map<String, Method> accessors, Constructor<?> constructor) {
    }

    private static final ClassValue<Shape> SHAPES = new ClassValue<>() {
        @Override
        protected Shape computeValue(Class<?> type) {
            try {
                RecordComponent[] components = type.getRecordComponents();
                Map<String, Method> accessors = new LinkedHashMap<>();
                for (RecordComponent component : components) {
                    component.getAccessor().setAccessible(true);
                    accessors.put(component.getName(), component.getAccessor());
                }
                Constructor<?> constructor = type.getDeclaredConstructor(Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new));
                constructor.setAccessible(true);
                return new Shape(Arrays.stream(components).map(Parts::field).toList(), accessors, constructor);
            } catch (ReflectiveOperationException impossible) {
                throw new IllegalStateException(impossible);
            }
        }
    };

    private static Field field(RecordComponent component) {
        As as = component.getAnnotation(As.class);
        Class<?> type = component.getType();
        boolean list = type == List.class;
        Class<?> item = list ? (Class<?>) ((ParameterizedType) component.getGenericType()).getActualTypeArguments()[0] : type;
        return new Field(key(component.getName()), component.getName(), as == null ? Kind.LINE : as.value(), as == null ? new String[0] : as.of(), list,
                item.isRecord() ? item.asSubclass(Record.class) : null);
    }

    private static String key(String component) {
        return component.replaceAll("([A-Z])", "-$1").toLowerCase(java.util.Locale.ROOT);
    }

    /** The value of a component. */
    public static Object value(Record record, Field field) {
        try {
            return SHAPES.get(record.getClass()).accessors().get(field.component()).invoke(record);
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** A record made of values by component, in their order. */
    public static <T extends Record> T make(Class<T> type, Object... values) {
        try {
            return type.cast(SHAPES.get(type).constructor().newInstance(values));
        } catch (InvocationTargetException refused) {
            throw refused.getCause() instanceof RuntimeException cause ? cause : new IllegalStateException(refused);
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** The record without anything said. */
    public static <T extends Record> T empty(Class<T> type) {
        return make(type, fields(type).stream().map(Parts::nothing).toArray());
    }

    private static Object nothing(Field field) {
        return field.list() ? List.of() : field.record() != null ? empty(field.record()) : "";
    }

    /** The record with one component changed. */
    @SuppressWarnings("unchecked")
    public static <T extends Record> T with(T record, String key, Object changed) {
        List<Field> fields = fields(record.getClass());
        if (fields.stream().noneMatch(field -> field.key().equals(key))) {
            throw new IllegalArgumentException("There is no \"" + key + "\" in a " + record.getClass().getSimpleName() + ".");
        }
        return (T) make(record.getClass(), fields.stream().map(field -> field.key().equals(key) ? changed : value(record, field)).toArray());
    }

    /** The tree of a record, in the order of its components, without what is empty. */
    public static Map<String, Object> tree(Record record) {
        Map<String, Object> tree = new LinkedHashMap<>();
        for (Field field : fields(record.getClass())) {
            Object value = value(record, field);
            Object written = field.list() ? ((List<?>) value).stream().map(item -> item instanceof Record inner ? tree(inner) : item).filter(item -> !Map.of().equals(item) && !"".equals(item)).toList() : value instanceof Record inner ? tree(inner) : value;
            boolean empty = written instanceof String text ? text.isEmpty() : written instanceof List<?> list ? list.isEmpty() : ((Map<?, ?>) written).isEmpty();
            if (!empty) {
                tree.put(field.key(), written);
            }
        }
        return tree;
    }

    /** The record of a tree; a value that its kind refuses is told, by key and sentence, and stands as it was written. */
    public static <T extends Record> T of(Class<T> type, Map<String, ?> tree, BiConsumer<String, String> problems) {
        List<Object> values = new ArrayList<>();
        for (Field field : fields(type)) {
            values.add(read(field, tree.get(field.key()), problems));
        }
        return make(type, values.toArray());
    }

    @SuppressWarnings("unchecked")
    private static Object read(Field field, Object written, BiConsumer<String, String> problems) {
        if (written == null) {
            return nothing(field);
        }
        if (field.list()) {
            List<Object> items = new ArrayList<>();
            for (Object item : written instanceof List<?> list ? list : List.of(written)) {
                items.add(field.record() != null ? of(field.record(), (Map<String, ?>) item, problems) : text(field, String.valueOf(item), problems));
            }
            return List.copyOf(items);
        }
        return field.record() != null ? of(field.record(), (Map<String, ?>) written, problems) : text(field, String.valueOf(written), problems);
    }

    private static String text(Field field, String written, BiConsumer<String, String> problems) {
        String text = field.kind().tidy(written);
        try {
            field.kind().check(text, field.choices());
        } catch (IllegalArgumentException refused) {
            problems.accept(field.key(), refused.getMessage());
        }
        return text;
    }
}
