package org.headfall.scenarios.comparison;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.responses.KeyPart;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.solver.flow.WaterBalance;

/**
 * What two runs differ in besides what their bores do: a difference of their heads has that as a cause too.
 *
 * @param found what differs, in words; empty if nothing is known to
 * @param unknown what could not be compared, in words
 */
record FieldDifferences(List<String> found, List<String> unknown) {

    /** Parts of the keys of unit responses that no description of a run holds. */
    private static final List<KeyPart> BY_KEYS = List.of(KeyPart.BOUNDARY_LEVELS, KeyPart.BOUNDARIES, KeyPart.RECHARGE);

    /** Those of them that are the same on any grid. */
    private static final Set<KeyPart> ON_ANY_GRID = EnumSet.of(KeyPart.BOUNDARY_LEVELS);

    /** Copies the lists. */
    FieldDifferences {
        found = List.copyOf(found);
        unknown = List.copyOf(unknown);
    }

    /**
     * Names what differs.
     *
     * @param first a run
     * @param second another
     * @param keyOfFirst hashes of what its unit responses depend on; empty if they are not known
     * @param keyOfSecond the same of the other
     * @return what differs and what could not be compared
     */
    static FieldDifferences between(
            FinishedRun first, FinishedRun second, Map<KeyPart, String> keyOfFirst, Map<KeyPart, String> keyOfSecond) {
        RunDescription one = first.description();
        RunDescription other = second.description();
        CellPairs pairs = new CellPairs(one.grid(), other.grid());
        List<String> found = new ArrayList<>(CellDifferences.between(one, other, pairs));
        List<String> unknown = new ArrayList<>();
        String ofFirst = boundaries(first);
        String ofSecond = boundaries(second);
        if (!ofFirst.equals(ofSecond)) {
            found.add("boundaries (" + ofFirst + "; and " + ofSecond + ")");
        }
        for (KeyPart part : BY_KEYS) {
            boolean comparable = pairs.isOneGrid() || ON_ANY_GRID.contains(part);
            if (!comparable || !keyOfFirst.containsKey(part) || !keyOfSecond.containsKey(part)) {
                unknown.add(part.words());
            } else if (!Objects.equals(keyOfFirst.get(part), keyOfSecond.get(part))) {
                found.add(part.words());
            }
        }
        found.addAll(new PlaceDifferences(first, second).found());
        return new FieldDifferences(found, unknown);
    }

    /** Names of the boundaries that water passes. */
    private static String boundaries(FinishedRun run) {
        String names = run.recording().balances().stream()
                .limit(1)
                .flatMap(balance -> balance.terms().stream())
                .filter(term -> term.kind() == WaterBalance.Kind.BOUNDARY)
                .map(WaterBalance.Term::name)
                .sorted()
                .collect(Collectors.joining(", "));
        return names.isEmpty() ? "none" : names;
    }
}
