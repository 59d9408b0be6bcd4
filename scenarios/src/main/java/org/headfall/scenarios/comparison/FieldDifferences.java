package org.headfall.scenarios.comparison;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * What two runs differ in besides what their bores do: a difference of their heads has that as a cause too. Grids that are
 * refined around other bores count as the same field; where they differ, what cells hold is compared at their centres.
 */
final class FieldDifferences {

    /** From which share of the cells on a field counts as another, where the grids differ (common practice, no source). */
    private static final double FEW_CELLS = 0.05;

    /** From how much on a value counts as another, where the grids differ: resampling moves it (common practice, no source). */
    private static final double SMALL = 0.05;

    private static final double PER_CENT = 100;

    /** Heads at the start nearer than this to each other are the same (m): a grid refined elsewhere moves them as much. */
    private static final double NOTHING = 0.05;

    /** Parts of the keys of unit responses that no description holds; the second list depends on the grid. */
    private static final List<String> ON_ANY_GRID = List.of("heads and flows of the boundaries");

    private static final List<String> ON_ONE_GRID = List.of("kinds and places of the boundaries", "recharge");

    private final RunDescription first;
    private final RunDescription second;
    private final boolean oneGrid;
    private final List<String> found = new ArrayList<>();
    private final List<String> unknown = new ArrayList<>();

    private FieldDifferences(RunDescription first, RunDescription second) {
        this.first = first;
        this.second = second;
        oneGrid = Arrays.equals(first.grid().x().edges(), second.grid().x().edges())
                && Arrays.equals(first.grid().y().edges(), second.grid().y().edges());
    }

    /**
     * Names what differs.
     *
     * @param first a run
     * @param second another
     * @param keyOfFirst hashes of what its unit responses depend on, by part; empty if they are not known
     * @param keyOfSecond the same of the other
     * @return what differs and what could not be compared
     */
    static FieldDifferences between(
            FinishedRun first, FinishedRun second, Map<String, String> keyOfFirst, Map<String, String> keyOfSecond) {
        FieldDifferences differences = new FieldDifferences(first.description(), second.description());
        differences.extent();
        differences.fields();
        differences.beds();
        differences.boundaries(boundaries(first), boundaries(second));
        differences.keys(keyOfFirst, keyOfSecond);
        differences.places();
        differences.start(first, second);
        return differences;
    }

    private void extent() {
        String ofFirst = extent(first.grid());
        String ofSecond = extent(second.grid());
        if (!ofFirst.equals(ofSecond)) {
            found.add("extent of the grid (" + ofFirst + " and " + ofSecond + ")");
        }
    }

    private static String extent(RectilinearGrid grid) {
        return String.format(
                Locale.ROOT,
                "x %.1f to %.1f km, y %.1f to %.1f km",
                grid.x().start() / 1000,
                grid.x().end() / 1000,
                grid.y().start() / 1000,
                grid.y().end() / 1000);
    }

    private void fields() {
        outline();
        relative("transmissivity", Aquifer::transmissivityX);
        if (isAnisotropic(first.aquifer()) || isAnisotropic(second.aquifer())) {
            relative("transmissivity along y", Aquifer::transmissivityY);
        }
        relative("storativity", Aquifer::storativity);
        field("top of the aquifer", first.aquifer().top(), second.aquifer().top(), 1);
        field(
                "bottom of the aquifer",
                first.aquifer().bottom(),
                second.aquifer().bottom(),
                1);
        field("level of the ground", first.ground(), second.ground(), 1);
    }

    private static boolean isAnisotropic(Aquifer aquifer) {
        return !Arrays.equals(aquifer.transmissivityX(), aquifer.transmissivityY());
    }

    /** Cells that belong to the aquifer in one run and not in the other. */
    private void outline() {
        boolean[] active = first.aquifer().active();
        int different = 0;
        for (int cell = 0; cell < active.length; cell++) {
            int other = oneGrid ? cell : located(cell);
            different += other >= 0 && active[cell] != second.aquifer().active()[other] ? 1 : 0;
        }
        if (different > (oneGrid ? 0 : FEW_CELLS * active.length)) {
            found.add("outline of the aquifer");
        }
    }

    private void relative(String name, Function<Aquifer, double[]> values) {
        field(name, values.apply(first.aquifer()), values.apply(second.aquifer()), 0);
    }

    private void beds() {
        Optional<SealingBed> ofFirst = first.sealingBed();
        Optional<SealingBed> ofSecond = second.sealingBed();
        if (ofFirst.isPresent() && ofSecond.isPresent()) {
            bed("thickness of the sealing bed", SealingBed::thickness, 0);
            bed("conductivity of the sealing bed", SealingBed::verticalConductivity, 0);
            bed("storage of the sealing bed", SealingBed::specificStorage, 0);
            bed("level above the sealing bed", SealingBed::headAbove, 1);
        } else if (ofFirst.isPresent() || ofSecond.isPresent()) {
            found.add("sealing bed (only in the " + (ofFirst.isPresent() ? "first" : "second") + " run)");
        }
    }

    private void bed(String name, Function<SealingBed, double[]> values, double scale) {
        field(
                name,
                values.apply(first.sealingBed().orElseThrow()),
                values.apply(second.sealingBed().orElseThrow()),
                scale);
    }

    /**
     * Compares a field.
     *
     * @param scale what a difference is measured by; zero for the value itself
     */
    private void field(String name, double[] ofFirst, double[] ofSecond, double scale) {
        int different = 0;
        int compared = 0;
        for (int cell = 0; cell < ofFirst.length; cell++) {
            int other = oneGrid ? cell : located(cell);
            if (other >= 0 && first.aquifer().active()[cell] && second.aquifer().active()[other]) {
                compared++;
                different += isOther(ofFirst[cell], ofSecond[other], scale) ? 1 : 0;
            }
        }
        double share = compared == 0 ? 0 : (double) different / compared;
        if (oneGrid ? different > 0 : share > FEW_CELLS) {
            found.add(String.format(Locale.ROOT, "%s (in %.0f %% of the cells)", name, Math.max(1, PER_CENT * share)));
        }
    }

    private int located(int cell) {
        RectilinearGrid grid = second.grid();
        double x = first.grid().centreX(cell);
        double y = first.grid().centreY(cell);
        boolean inside = x >= grid.x().start()
                && x <= grid.x().end()
                && y >= grid.y().start()
                && y <= grid.y().end();
        return inside ? grid.locate(x, y) : -1;
    }

    private boolean isOther(double ofFirst, double ofSecond, double scale) {
        double difference = Math.abs(ofFirst - ofSecond);
        return oneGrid
                ? difference > 0
                : difference > SMALL * (scale > 0 ? scale : Math.max(Math.abs(ofFirst), Math.abs(ofSecond)));
    }

    private static String boundaries(FinishedRun run) {
        return run.recording().balances().stream()
                .limit(1)
                .flatMap(balance -> balance.terms().stream())
                .filter(term -> term.kind() == WaterBalance.Kind.BOUNDARY)
                .map(WaterBalance.Term::name)
                .sorted()
                .collect(Collectors.joining(", "));
    }

    private void boundaries(String ofFirst, String ofSecond) {
        if (!ofFirst.equals(ofSecond)) {
            found.add("boundaries (" + named(ofFirst) + "; and " + named(ofSecond) + ")");
        }
    }

    private static String named(String names) {
        return names.isEmpty() ? "none" : names;
    }

    private void keys(Map<String, String> ofFirst, Map<String, String> ofSecond) {
        ON_ANY_GRID.forEach(part -> key(part, ofFirst, ofSecond));
        if (oneGrid) {
            ON_ONE_GRID.forEach(part -> key(part, ofFirst, ofSecond));
        } else {
            unknown.addAll(ON_ONE_GRID);
        }
    }

    private void key(String part, Map<String, String> keyOfFirst, Map<String, String> keyOfSecond) {
        String ofFirst = keyOfFirst.get(part);
        String ofSecond = keyOfSecond.get(part);
        if (ofFirst == null || ofSecond == null) {
            unknown.add(part);
        } else if (!ofFirst.equals(ofSecond)) {
            found.add(part);
        }
    }

    /** What differs, in words; empty if nothing is known to. */
    List<String> found() {
        return List.copyOf(found);
    }

    /** What could not be compared, in words. */
    List<String> unknown() {
        return List.copyOf(unknown);
    }

    /** Places of one name that are not the same place, and springs that only one run has. */
    private void places() {
        TreeSet<String> moved = new TreeSet<>();
        for (Station station : first.stations()) {
            int other = second.stationIndex(station.name());
            if (other >= 0 && !isSame(station, second.stations().get(other))) {
                moved.add(station.name());
            }
        }
        if (!moved.isEmpty()) {
            found.add("places with the same name (" + String.join(", ", moved) + ")");
        }
        TreeSet<String> single = new TreeSet<>();
        first.springs().stream().map(Station::name).forEach(single::add);
        second.springs().stream()
                .map(Station::name)
                .filter(name -> !single.remove(name))
                .toList()
                .forEach(single::add);
        if (!single.isEmpty()) {
            found.add("springs that only one of them has (" + String.join(", ", single) + ")");
        }
    }

    /** Runs that begin on one day at other heads differ by more than what happens in them. */
    private void start(FinishedRun ofFirst, FinishedRun ofSecond) {
        double largest = NOTHING;
        String place = "";
        for (int i = 0; i < first.stations().size(); i++) {
            String name = first.stations().get(i).name();
            int other = second.stationIndex(name);
            if (other >= 0) {
                double difference = Math.abs(ofFirst.recording().series().get(i).head()[0]
                        - ofSecond.recording().series().get(other).head()[0]);
                if (difference > largest) {
                    largest = difference;
                    place = name;
                }
            }
        }
        if (!place.isEmpty()
                && first.calendar().start().equals(second.calendar().start())) {
            found.add(String.format(Locale.ROOT, "heads at the start (by up to %.2f m, at %s)", largest, place));
        }
    }

    private static boolean isSame(Station one, Station other) {
        boolean place = one.x() == other.x() && one.y() == other.y();
        if (one instanceof Station.SpringSite spring && other instanceof Station.SpringSite another) {
            return place && spring.outlet() == another.outlet() && spring.conductance() == another.conductance();
        }
        return place && one.getClass() == other.getClass();
    }
}
