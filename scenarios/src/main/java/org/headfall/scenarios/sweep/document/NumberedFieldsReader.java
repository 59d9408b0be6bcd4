package org.headfall.scenarios.sweep.document;

import java.util.List;
import java.util.stream.IntStream;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.jspecify.annotations.Nullable;

/**
 * Reads {@code random_field: {median, deviation_of_log, variogram, range, ...}}, the keys being those of a random field in
 * a scenario, but for {@code fields}, how many there are to choose from, instead of a number. They are checked when the
 * base scenario is read with one of them.
 */
final class NumberedFieldsReader {

    private static final String FIELDS = "fields";
    private static final String SEED = "seed";

    private final Section section;
    private final String seed;

    /**
     * A reader.
     *
     * @param section the variable
     * @param seed seed of fields that have none of their own
     */
    NumberedFieldsReader(Section section, String seed) {
        this.section = section;
        this.seed = seed;
    }

    /** The variation, or null after a problem has been reported. */
    @Nullable
    Variation read() {
        @Nullable Section given = section.section("random_field");
        if (given == null || !(section.node("random_field") instanceof DocumentNode.Mapping mapping)) {
            return null;
        }
        if (given.has(NumberedFields.NUMBER)) {
            given.refuse(
                    NumberedFields.NUMBER,
                    Finding.of(ProblemKind.UNKNOWN_KEY, NumberedFields.NUMBER, FIELDS + ", not the number of one"));
            return null;
        }
        List<DocumentNode.Entry> description = mapping.entries().stream()
                .filter(entry -> !entry.key().equals(FIELDS))
                .toList();
        NumberedFields fields = new NumberedFields(new DocumentNode.Mapping(mapping.place(), description));
        NumberedFields seeded = given.has(SEED) ? fields : fields.with(SEED, seed);
        if (!given.has(FIELDS)) {
            return new Variation.DrawnFields(seeded);
        }
        @Nullable Long count = Entries.whole(given, FIELDS, 1, DesignReader.MOST_RUNS);
        return count == null
                ? null
                : new Variation.Listed(
                        IntStream.rangeClosed(1, count.intValue())
                                .mapToObj(seeded::input)
                                .toList(),
                        true);
    }
}
