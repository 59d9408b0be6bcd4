package org.headfall.scenarios.comparison;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * What the cells of two runs differ in: extent and outline, aquifer, ground and sealing bed. Grids that are refined around
 * other bores count as the same field; where they differ, what cells hold is compared at their centres.
 */
final class CellDifferences {

    /** From which share of the cells on a field counts as another, where the grids differ (common practice, no source). */
    private static final double FEW_CELLS = 0.05;

    /** From how much on a value counts as another, where the grids differ: resampling moves it (common practice, no source). */
    private static final double SMALL = 0.05;

    private static final double PER_CENT = 100;

    private final RunDescription first;
    private final RunDescription second;
    private final CellPairs pairs;
    private final List<String> found = new ArrayList<>();

    private CellDifferences(RunDescription first, RunDescription second, CellPairs pairs) {
        this.first = first;
        this.second = second;
        this.pairs = pairs;
    }

    /**
     * Names what differs.
     *
     * @param first a run
     * @param second another
     * @param pairs their cells
     * @return what differs, in words
     */
    static List<String> between(RunDescription first, RunDescription second, CellPairs pairs) {
        CellDifferences differences = new CellDifferences(first, second, pairs);
        differences.extent();
        differences.fields();
        differences.beds();
        return List.copyOf(differences.found);
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
            int other = pairs.inSecond(cell);
            different += other >= 0 && active[cell] != second.aquifer().active()[other] ? 1 : 0;
        }
        if (different > (pairs.isOneGrid() ? 0 : FEW_CELLS * active.length)) {
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
            int other = pairs.inSecond(cell);
            if (other >= 0 && first.aquifer().active()[cell] && second.aquifer().active()[other]) {
                compared++;
                different += isOther(ofFirst[cell], ofSecond[other], scale) ? 1 : 0;
            }
        }
        double share = compared == 0 ? 0 : (double) different / compared;
        if (pairs.isOneGrid() ? different > 0 : share > FEW_CELLS) {
            found.add(String.format(Locale.ROOT, "%s (in %.0f %% of the cells)", name, Math.max(1, PER_CENT * share)));
        }
    }

    private boolean isOther(double ofFirst, double ofSecond, double scale) {
        double difference = Math.abs(ofFirst - ofSecond);
        return pairs.isOneGrid()
                ? difference > 0
                : difference > SMALL * (scale > 0 ? scale : Math.max(Math.abs(ofFirst), Math.abs(ofSecond)));
    }
}
