package org.headfall.cli.answer;

import java.util.List;
import java.util.Map;
import org.headfall.scenarios.problem.Problem;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Answers as JSON, one object each, for {@code --json}. */
public final class AnswerJson {

    private static final JsonMapper MAPPER =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

    private AnswerJson() {}

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
