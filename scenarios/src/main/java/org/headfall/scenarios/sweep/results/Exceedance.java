package org.headfall.scenarios.sweep.results;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.MapPlaces;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.results.CellFieldsFile;
import org.headfall.scenarios.results.MapRasters;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunWithoutFiles;
import org.headfall.scenarios.sweep.figures.CrossedCells;
import org.jspecify.annotations.Nullable;

/**
 * For each limit on the map, the share of runs in which a cell is beyond it. Runs are counted one after the other, so that no
 * more than one map of a limit is in memory besides the counts. Runs on another grid than that of the base scenario
 * cannot be told from others and must not be added.
 */
public final class Exceedance {

    private final RunPlan base;
    private final List<Limit> limits;
    private final int[][] counts;
    private int runs;

    /**
     * Counts of nothing yet.
     *
     * @param base the base scenario
     */
    Exceedance(RunPlan base) {
        this.base = base;
        limits = RunWithoutFiles.onMap(base);
        counts = new int[limits.size()][base.description().grid().cellCount()];
    }

    /** Counts a run, unless its maps are of other limits or of a larger grid. */
    void add(byte[] packed) throws IOException {
        List<BitSet> maps = CrossedCells.unpack(packed);
        int cells = base.description().grid().cellCount();
        if (maps.isEmpty() || maps.size() != limits.size() || maps.stream().anyMatch(map -> map.length() > cells)) {
            return;
        }
        runs++;
        for (int i = 0; i < counts.length; i++) {
            int[] count = counts[i];
            maps.get(i).stream().forEach(cell -> count[cell]++);
        }
    }

    /**
     * A map.
     *
     * @param limit the limit
     * @param runs runs that it was counted in
     * @param share share of them in which each cell is beyond the limit, NaN where the limit does not hold
     */
    @SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, shared and never compared
    public record Map(Limit limit, int runs, double[] share) {}

    /** The maps of all limits on the map; none if no run has any. */
    public List<Map> maps() {
        List<Map> maps = new ArrayList<>();
        for (int i = 0; i < counts.length && runs > 0; i++) {
            double[] share = new double[counts[i].length];
            Arrays.fill(share, Double.NaN);
            for (int cell : cellsOf(limits.get(i))) {
                share[cell] = (double) counts[i][cell] / runs;
            }
            maps.add(new Map(limits.get(i), runs, share));
        }
        return maps;
    }

    private int[] cellsOf(Limit limit) {
        MapPlaces.@Nullable Part part =
                base.mapPlaces().parts().get(limit.place().words());
        return part == null ? new int[0] : part.cells();
    }

    /** The base scenario, whose grid the maps are on. */
    public RunDescription description() {
        return base.description();
    }

    /**
     * Writes {@code exceedance.nc} with all maps, and each as a GeoTIFF {@code exceedance-NUMBER.tif} in the order of the
     * limits; nothing if there are none.
     *
     * @param folder where they go
     * @throws IOException if a file cannot be written
     */
    public void write(Path folder) throws IOException {
        List<Map> maps = maps();
        if (maps.isEmpty()) {
            return;
        }
        List<CellFieldsFile.Field> fields = new ArrayList<>();
        for (int i = 0; i < maps.size(); i++) {
            Map map = maps.get(i);
            String words = String.format(
                    Locale.ROOT,
                    "share of %d runs in which a cell is beyond the limit '%s'",
                    map.runs(),
                    map.limit().name());
            fields.add(new CellFieldsFile.Field("exceedance_" + (i + 1), words, "1", map.share(), List.of()));
            MapRasters.write(folder.resolve("exceedance-" + (i + 1) + ".tif"), description(), map.share());
        }
        Path file = folder.resolve("exceedance.nc");
        Files.deleteIfExists(file);
        CellFieldsFile.write(file, description(), "How often limits are crossed, cell by cell.", fields);
    }
}
