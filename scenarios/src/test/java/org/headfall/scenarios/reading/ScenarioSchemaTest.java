package org.headfall.scenarios.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.Problem;
import org.headfall.scenarios.problem.ProblemKind;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.CoreSchema;
import tools.jackson.databind.json.JsonMapper;

/**
 * The JSON Schema that editors use and the reader agree on the structure of a document. Two whole documents are spoiled
 * in every place: each key left out, an unknown key put into each section, each value replaced by others.
 */
class ScenarioSchemaTest {
    private static final JsonMapper JSON = JsonMapper.shared();
    private static final List<Object> REPLACEMENTS =
            Arrays.asList(null, List.of(), Map.of(), "plenty", 5, List.of("5 m"), Map.of("plenty", 1));

    /** Kinds of problem that a schema can know of. */
    private static final Set<ProblemKind> STRUCTURAL = EnumSet.of(
            ProblemKind.UNKNOWN_KEY,
            ProblemKind.MISSING_KEY,
            ProblemKind.CONFLICTING_KEYS,
            ProblemKind.WRONG_TYPE,
            ProblemKind.EMPTY_VALUE,
            ProblemKind.NOT_A_NUMBER,
            ProblemKind.MISSING_UNIT,
            ProblemKind.NOT_A_DATE);

    private static Schema schema;

    @TempDir
    Path folder;

    @BeforeAll
    static void loadTheSchema() throws IOException {
        try (InputStream stream =
                ScenarioReader.class.getResourceAsStream("/org/headfall/scenarios/scenario.schema.json")) {
            schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(stream);
        }
    }

    private static List<Error> errors(Object document) {
        return schema.validate(JSON.valueToTree(document));
    }

    private static Object load(Path file) throws IOException {
        LoadSettings settings =
                LoadSettings.builder().setSchema(new CoreSchema()).build();
        return new Load(settings).loadFromString(Files.readString(file));
    }

    @ParameterizedTest
    @ValueSource(strings = {"/scenario/quandong/quandong.yaml", "/scenario/maps/maps.yaml"})
    void bothAcceptWholeDocuments(String name) throws Exception {
        Path file = ScenarioReaderTest.resource(name);
        assertEquals(List.of(), errors(load(file)));
        assertEquals(
                "",
                ScenarioReader.read(file, FileReach.FOLDER_OF_DOCUMENT)
                        .problems()
                        .toText());
    }

    @Test
    void theSchemaIsOneOfDraft202012() {
        Schema metaSchema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        assertEquals(List.of(), metaSchema.validate(schema.getSchemaNode()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"/scenario/quandong/quandong.yaml", "/scenario/maps/maps.yaml"})
    void bothAgreeOnEverySpoiledDocument(String name) throws Exception {
        Path original = ScenarioReaderTest.resource(name);
        copyFolder(original.getParent());
        Object document = load(original);
        withLocalCoordinates(document);
        List<String> disagreements = new ArrayList<>();
        int[] refused = new int[1];
        int[] accepted = new int[1];
        spoil(document, "", spoiled -> {
            String disagreement = disagreement(document);
            if (!disagreement.isEmpty()) {
                disagreements.add(spoiled + ": " + disagreement);
            }
            boolean refuses = !errors(document).isEmpty();
            refused[0] += refuses ? 1 : 0;
            accepted[0] += refuses ? 0 : 1;
        });
        assertEquals("", String.join("\n", disagreements));
        assertTrue(refused[0] > 400 && accepted[0] > 20, refused[0] + " refused, " + accepted[0] + " accepted");
    }

    /** Looking up a code takes longer than all the rest of reading. */
    @SuppressWarnings("unchecked")
    private static void withLocalCoordinates(Object document) {
        ((Map<String, Object>) document).put("crs", "local");
    }

    private void copyFolder(Path from) throws IOException {
        try (Stream<Path> files = Files.list(from)) {
            for (Path file : files.toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
    }

    /** What one of the two finds and the other does not; empty if they agree. */
    private String disagreement(Object document) {
        List<Error> bySchema = errors(document);
        List<Problem> byReader = problems(document);
        if (!bySchema.isEmpty() && byReader.isEmpty()) {
            return "only the schema refuses it: " + bySchema.get(0);
        }
        List<Problem> structural =
                byReader.stream().filter(ScenarioSchemaTest::isStructural).toList();
        return bySchema.isEmpty() && !structural.isEmpty() ? "only the reader refuses it: " + structural.get(0) : "";
    }

    private List<Problem> problems(Object document) {
        try {
            Path file = Files.writeString(folder.resolve("spoiled.yaml"), JSON.writeValueAsString(document));
            return ScenarioReader.read(file, FileReach.FOLDER_OF_DOCUMENT)
                    .problems()
                    .sorted();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static boolean isStructural(Problem problem) {
        return problem.place().file().equals("spoiled.yaml") && STRUCTURAL.contains(problem.kind());
    }

    /** Spoils a tree in every place in turn, tells of it, and mends it again. */
    @SuppressWarnings("unchecked")
    private static void spoil(Object node, String path, Consumer<String> spoiled) {
        if (node instanceof Map<?, ?>) {
            Map<String, Object> map = (Map<String, Object>) node;
            map.put("plenty", "x");
            spoiled.accept(path + ".plenty added");
            map.remove("plenty");
            for (String key : List.copyOf(map.keySet())) {
                Map<String, Object> before = new LinkedHashMap<>(map);
                map.remove(key);
                spoiled.accept(path + "." + key + " left out");
                restore(map, before);
                for (Object replacement : REPLACEMENTS) {
                    map.put(key, replacement);
                    spoiled.accept(path + "." + key + " = " + replacement);
                }
                restore(map, before);
                spoil(map.get(key), path + "." + key, spoiled);
            }
        } else if (node instanceof List<?>) {
            List<Object> list = (List<Object>) node;
            for (int i = 0; i < list.size(); i++) {
                Object before = list.get(i);
                for (Object replacement : REPLACEMENTS) {
                    list.set(i, replacement);
                    spoiled.accept(path + "[" + i + "] = " + replacement);
                }
                list.set(i, before);
                spoil(before, path + "[" + i + "]", spoiled);
            }
        }
    }

    private static void restore(Map<String, Object> map, Map<String, Object> before) {
        map.clear();
        map.putAll(before);
    }
}
