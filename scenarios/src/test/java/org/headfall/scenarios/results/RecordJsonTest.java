package org.headfall.scenarios.results;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringWriter;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.scenario.BoreSelection;
import org.junit.jupiter.api.Test;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.BeanDescription;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.introspect.BeanPropertyDefinition;
import tools.jackson.databind.introspect.ClassIntrospector;
import tools.jackson.databind.json.JsonMapper;

/** Records are written as Jackson's mapper, a library outside the project, writes them. */
class RecordJsonTest {

    private static final JsonMapper MAPPER =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

    private static void assertAsByTheMapper(Record value) {
        assertEquals(MAPPER.writeValueAsString(value), written(value));
    }

    private static String written(Record value) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = MAPPER.createGenerator(text)) {
            new RecordJson(json).write(value);
        }
        return text.toString();
    }

    @Test
    void theSummaryOfARunIsAsTheMapperWritesIt() throws IOException {
        FinishedRun run = FinishedField.run(SmallField.description());
        assertAsByTheMapper(SummaryFile.summary(
                run, Map.of("limits.csv", new FileStamp(12, "0a"), "Br\u00fccke \"1\".csv", new FileStamp(0, ""))));
    }

    enum Season {
        WET,
        DRY
    }

    @SuppressWarnings("ArrayRecordComponent") // never compared
    record Kinds(
            double number,
            double none,
            int count,
            long large,
            boolean yes,
            String text,
            Season season,
            List<String> names,
            List<List<Double>> nested,
            List<Season> nothing,
            double[] row,
            double[][] rows,
            Optional<String> given,
            Optional<Season> absent,
            OptionalDouble level,
            OptionalDouble noLevel,
            Map<String, Integer> counts,
            LocalDateTime midnight,
            LocalDateTime moment,
            LocalDate day,
            float other) {

        public boolean isZealous() {
            return yes;
        }

        public boolean isCertain() {
            return !yes;
        }

        boolean isHidden() {
            return true;
        }

        public static boolean isStatic() {
            return true;
        }
    }

    @Test
    void everyKindOfValueIsAsTheMapperWritesIt() {
        assertAsByTheMapper(new Kinds(
                -1.5e-7,
                Double.NaN,
                3,
                1L << 40,
                true,
                "a \"quoted\" line\nand \u00fc \u202e",
                Season.DRY,
                List.of("one", ""),
                List.of(List.of(1.0, 2.5), List.of()),
                List.of(),
                new double[] {0, -0.0, Double.POSITIVE_INFINITY},
                new double[][] {{1}, {}},
                Optional.of("here"),
                Optional.empty(),
                OptionalDouble.of(7),
                OptionalDouble.empty(),
                Map.of("x", 1),
                LocalDateTime.of(2026, 7, 1, 0, 0),
                LocalDateTime.of(2026, 7, 1, 12, 30, 5, 120_000_000),
                LocalDate.of(1996, 2, 29),
                0.25f));
    }

    /** Kinds of an interface, which a field tells apart, with and without components. */
    @Test
    void kindsAreToldApartAsByTheMapper() {
        for (Record kind : List.of(
                (Record) new LimitedQuantity.Drawdown(2),
                (Record) new Comparison.Start(),
                (Record) new Comparison.WithoutHolder("Tessaby"),
                (Record) new LimitPlace.AtStation("Lignum Spring"),
                (Record) new LimitPlace.Together(new BoreSelection.All(), List.of("Town 1")),
                (Record) new LimitPlace.Together(new BoreSelection.OfHolder("Tessaby"), List.of()),
                (Record) new Outcome.NotEvaluated("unknown"))) {
            assertTrue(written(kind).contains("\"is\" : "), kind::toString);
            assertAsByTheMapper(kind);
        }
    }

    /** Which bores a limit is about is told from kind and name, never from words. */
    @Test
    void someBoresAreReadBackAsTheyWere() {
        for (BoreSelection some : List.of(
                new BoreSelection.All(),
                new BoreSelection.Proposed(),
                new BoreSelection.Existing(),
                new BoreSelection.OfHolder("the class town"),
                new BoreSelection.OfClass("town"))) {
            LimitPlace place = new LimitPlace.Together(some, List.of("Town 1", "Town 2"));
            assertEquals(place, MAPPER.readValue(written((Record) place), LimitPlace.class));
        }
    }

    /** Every record that may be within a summary has the fields, in their order, that the mapper finds in it. */
    @Test
    void everyRecordOfASummaryHasTheFieldsThatTheMapperFinds() {
        Set<Class<?>> records = within(Summary.class);
        records.removeIf(one -> !one.isRecord());
        assertTrue(records.size() > 50, records::toString);
        ClassIntrospector introspector = MAPPER.serializationConfig().classIntrospectorInstance();
        for (Class<?> record : records) {
            BeanDescription found = introspector.introspectForSerialization(
                    MAPPER.constructType(record),
                    introspector.introspectClassAnnotations(MAPPER.constructType(record)));
            assertEquals(
                    found.findProperties().stream()
                            .map(BeanPropertyDefinition::getName)
                            .toList(),
                    RecordJson.fields(record),
                    record::toString);
        }
    }

    /** No choice within a summary is annotated to be written otherwise than by its name. */
    @Test
    void everyChoiceOfASummaryIsAsTheMapperWritesIt() {
        Set<Class<?>> choices = within(Summary.class);
        choices.removeIf(one -> !one.isEnum());
        assertFalse(choices.isEmpty());
        for (Class<?> choice : choices) {
            for (Object constant : choice.getEnumConstants()) {
                assertEquals(MAPPER.writeValueAsString(constant), '"' + constant.toString() + '"');
            }
        }
    }

    /** The classes of all that may be within a record. */
    private static Set<Class<?>> within(Class<?> root) {
        Set<Class<?>> seen = new LinkedHashSet<>();
        Deque<Type> open = new ArrayDeque<>(List.of(root));
        while (!open.isEmpty()) {
            Type type = open.pop();
            if (type instanceof ParameterizedType generic) {
                open.addAll(List.of(generic.getActualTypeArguments()));
            } else if (type instanceof Class<?> one && seen.add(one)) {
                if (one.isSealed()) {
                    open.addAll(List.of(one.getPermittedSubclasses()));
                } else if (one.isRecord()) {
                    for (RecordComponent component : one.getRecordComponents()) {
                        open.add(component.getGenericType());
                    }
                }
            }
        }
        return seen;
    }
}
