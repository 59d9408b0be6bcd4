package org.headfall.scenarios.results;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonGenerator;

/**
 * Writes records as JSON, with the same result as the mapper that the generator comes from. That looks at every method, field
 * and annotation of a class, and of the classes of what is in it, before it writes a first value, which for a summary takes
 * longer than all writing; of a record its components and questions suffice. What is neither record nor list nor plain value
 * is left to the mapper. Choices are written in the words of their {@code toString}, as by the mapper unless they are
 * annotated.
 */
final class RecordJson {

    private static final String IS = "is";

    private final JsonGenerator json;
    private final Map<Class<?>, Shape> shapes = new HashMap<>();

    /**
     * A writer of records.
     *
     * @param json what to write with, made by a mapper
     */
    RecordJson(JsonGenerator json) {
        this.json = json;
    }

    /**
     * What is known of a class of records.
     *
     * @param typeKey name of the field that tells kinds of an interface apart; empty if there is none
     * @param type what it says of this class
     * @param names names of the fields: the components, then what else is asked by a method "is..."
     * @param getters what gives their values
     */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Shape(String typeKey, String type, String[] names, Method[] getters) {

        static Shape of(Class<?> record) {
            Map<String, Method> getters = new LinkedHashMap<>();
            for (RecordComponent component : record.getRecordComponents()) {
                getters.put(component.getName(), component.getAccessor());
            }
            getters.putAll(questions(record));
            getters.values().forEach(getter -> getter.setAccessible(true));
            String[] names = getters.keySet().toArray(String[]::new);
            Method[] methods = getters.values().toArray(Method[]::new);
            for (Class<?> kind : record.getInterfaces()) {
                JsonTypeInfo key = kind.getAnnotation(JsonTypeInfo.class);
                if (key != null) {
                    return new Shape(key.property(), type(kind, record), names, methods);
                }
            }
            return new Shape("", "", names, methods);
        }

        /** Methods such as {@code isCertain()} of a record, which the mapper takes for a field {@code certain}. */
        private static Map<String, Method> questions(Class<?> record) {
            Map<String, Method> questions = new TreeMap<>();
            for (Method method : record.getDeclaredMethods()) {
                String name = method.getName();
                boolean asks = name.startsWith(IS)
                        && name.length() > IS.length()
                        && method.getReturnType() == boolean.class
                        && method.getParameterCount() == 0
                        && Modifier.isPublic(method.getModifiers())
                        && !Modifier.isStatic(method.getModifiers());
                if (asks) {
                    String rest = name.substring(IS.length());
                    questions.put(rest.substring(0, 1).toLowerCase(Locale.ROOT) + rest.substring(1), method);
                }
            }
            return questions;
        }

        private static String type(Class<?> kind, Class<?> record) {
            for (JsonSubTypes.Type type : kind.getAnnotation(JsonSubTypes.class).value()) {
                if (type.value() == record) {
                    return type.name();
                }
            }
            throw new IllegalStateException(kind + " gives no name to " + record);
        }

        @Nullable
        Object value(int field, Record of) {
            try {
                return getters[field].invoke(of);
            } catch (IllegalAccessException | InvocationTargetException e) {
                throw new IllegalStateException("a field of a record cannot be read", e);
            }
        }
    }

    /** Names of the fields that records of a class are written with, besides that which tells its kind. */
    static List<String> fields(Class<?> record) {
        return List.of(Shape.of(record).names);
    }

    /**
     * Writes a record.
     *
     * @param value the record
     */
    void write(Record value) {
        Shape shape = shapes.computeIfAbsent(value.getClass(), Shape::of);
        json.writeStartObject();
        if (!shape.typeKey.isEmpty()) {
            json.writeStringProperty(shape.typeKey, shape.type);
        }
        for (int i = 0; i < shape.names.length; i++) {
            json.writeName(shape.names[i]);
            any(shape.value(i, value));
        }
        json.writeEndObject();
    }

    private void any(@Nullable Object value) {
        if (value instanceof Double number) {
            json.writeNumber(number);
        } else if (value instanceof String text) {
            json.writeString(text);
        } else if (value instanceof Record inner) {
            write(inner);
        } else if (value instanceof double[] numbers) {
            json.writeArray(numbers, 0, numbers.length);
        } else if (value instanceof Object[] items) {
            json.writeStartArray();
            for (Object item : items) {
                any(item);
            }
            json.writeEndArray();
        } else if (value instanceof Collection<?> items) {
            json.writeStartArray();
            items.forEach(this::any);
            json.writeEndArray();
        } else if (value instanceof OptionalDouble number) {
            optional(number);
        } else if (value instanceof Optional<?> maybe) {
            any(maybe.orElse(null));
        } else {
            rare(value);
        }
    }

    private void optional(OptionalDouble number) {
        if (number.isPresent()) {
            json.writeNumber(number.getAsDouble());
        } else {
            json.writeNull();
        }
    }

    private void rare(@Nullable Object value) {
        if (value instanceof Boolean yes) {
            json.writeBoolean(yes);
        } else if (value instanceof Integer number) {
            json.writeNumber(number);
        } else if (value instanceof Long number) {
            json.writeNumber(number);
        } else if (value instanceof Map<?, ?> fields) {
            json.writeStartObject();
            fields.forEach((name, field) -> {
                json.writeName(String.valueOf(name));
                any(field);
            });
            json.writeEndObject();
        } else if (value instanceof Enum<?> choice) {
            json.writeString(choice.toString());
        } else if (value instanceof LocalDateTime date) {
            json.writeString(DateTimeFormatter.ISO_LOCAL_DATE_TIME.format(date));
        } else {
            json.writePOJO(value);
        }
    }
}
