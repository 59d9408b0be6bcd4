package org.headfall.cli.answer;

import java.util.List;
import java.util.Map;
import org.headfall.scenarios.problem.Problem;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.ValueSerializer;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.module.SimpleModule;

/** Answers as JSON, one object each, for {@code --json}. */
public final class AnswerJson {

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(SerializationFeature.INDENT_OUTPUT)
            .addModule(new SimpleModule()
                    .addSerializer(double.class, new NumberOrNull())
                    .addSerializer(Double.class, new NumberOrNull()))
            .build();

    private AnswerJson() {}

    /** JSON has no numbers that are not finite (RFC 8259, section 6): what there is no number for is null. */
    private static final class NumberOrNull extends ValueSerializer<Double> {
        @Override
        public void serialize(Double value, JsonGenerator generator, SerializationContext context) {
            if (Double.isFinite(value)) {
                generator.writeNumber(value.doubleValue());
            } else {
                generator.writeNull();
            }
        }
    }

    private record ProblemEntry(
            String file, int line, int column, String subject, String kind, String found, String allowed, String text) {

        static ProblemEntry of(Problem problem) {
            return new ProblemEntry(
                    problem.place().file(),
                    problem.place().line(),
                    problem.place().column(),
                    problem.subject(),
                    problem.kind().name(),
                    problem.finding().found(),
                    problem.finding().allowed(),
                    problem.toString());
        }
    }

    /**
     * The components of a record by name.
     *
     * @param answer the record
     * @return JSON text
     */
    public static String of(Record answer) {
        return MAPPER.writeValueAsString(answer);
    }

    /**
     * What is wrong with the input.
     *
     * @param problems the problems
     * @return JSON text with a list {@code problems}
     */
    public static String ofProblems(List<Problem> problems) {
        return MAPPER.writeValueAsString(
                Map.of("problems", problems.stream().map(ProblemEntry::of).toList()));
    }

    /**
     * Why nothing came of a command.
     *
     * @param message what is the matter
     * @return JSON text with one entry {@code error}
     */
    public static String ofError(String message) {
        return MAPPER.writeValueAsString(Map.of("error", message));
    }
}
