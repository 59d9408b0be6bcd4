package org.headfall.scenarios.sweep.page;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.sweep.results.Exceedance;
import org.headfall.scenarios.sweep.results.Numbers;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/** Draws where limits are crossed, in classes of the share of runs, which are those of the words for probabilities. */
final class ExceedanceMaps {

    /** Upper ends of the classes; the last takes the rest. */
    private static final double[] ENDS = {0.1, 0.33, 0.66, 0.9};

    /** Pixels across: more make the page large and no clearer. */
    private static final int PIXELS = 150;

    private static final double METRES_PER_KILOMETRE = 1000;
    private static final double PER_CENT = 100;

    private final RectilinearGrid grid;
    private final double west;
    private final double south;
    private final double metresPerPixel;
    private final double side;
    private final int columns;
    private final int rows;

    private ExceedanceMaps(RectilinearGrid grid) {
        this.grid = grid;
        west = grid.x().start();
        south = grid.y().start();
        double width = grid.x().end() - west;
        double height = grid.y().end() - south;
        double perUnit = Math.max(
                width / (ChartDrawing.RIGHT - ChartDrawing.LEFT), height / (ChartDrawing.BOTTOM - ChartDrawing.TOP));
        metresPerPixel = Math.max(width, height) / PIXELS;
        side = metresPerPixel / perUnit;
        columns = (int) Math.ceil(width / metresPerPixel);
        rows = (int) Math.ceil(height / metresPerPixel);
    }

    static List<Chart.Group> all(Exceedance exceedance) {
        ExceedanceMaps drawn = new ExceedanceMaps(exceedance.description().grid());
        return exceedance.maps().stream().map(drawn::group).toList();
    }

    private Chart.Group group(Exceedance.Map map) {
        double most = PER_CENT
                * Arrays.stream(map.share()).filter(Double::isFinite).max().orElse(0);
        String note = String.format(
                Locale.ROOT,
                "Share of %d runs in which a cell is beyond the limit, from light to dark: none or under 10 %%, to 33 %%, to"
                        + " 66 %%, to 90 %%, above. The most is %.0f %%. exceedance.nc and exceedance-*.tif have the numbers.",
                map.runs(),
                most);
        String title = "Where \"" + map.limit().name() + "\" is crossed";
        return new Chart.Group(title, note, List.of(chart(title, map.share())));
    }

    private Chart chart(String title, double[] share) {
        double perUnit = metresPerPixel / side;
        double east = grid.x().end();
        double north = grid.y().end();
        ChartScale across = new ChartScale(
                west / METRES_PER_KILOMETRE,
                east / METRES_PER_KILOMETRE,
                ChartDrawing.LEFT,
                ChartDrawing.LEFT + (east - west) / perUnit);
        ChartScale up = new ChartScale(
                south / METRES_PER_KILOMETRE,
                north / METRES_PER_KILOMETRE,
                ChartDrawing.BOTTOM,
                ChartDrawing.BOTTOM - (north - south) / perUnit);
        ChartDrawing drawing = new ChartDrawing();
        for (int number = 0; number <= ENDS.length; number++) {
            drawing.path("share-" + (number + 1), pathOf(number, share));
        }
        return drawing.axes(across, up).named(title, "easting (km)", "northing (km)");
    }

    /** Rows of pixels of one class, runs of neighbours as one rectangle each. */
    private String pathOf(int number, double[] share) {
        StringBuilder path = new StringBuilder();
        for (int row = 0; row < rows; row++) {
            int from = 0;
            while (from < columns) {
                int to = from;
                while (to < columns && classOf(valueAt(to, row, share)) == number) {
                    to++;
                }
                if (to > from) {
                    path.append('M')
                            .append(Numbers.place(ChartDrawing.LEFT + from * side))
                            .append(' ')
                            .append(Numbers.place(ChartDrawing.BOTTOM - row * side))
                            .append('h')
                            .append(Numbers.place((to - from) * side))
                            .append('v')
                            .append(Numbers.place(-side))
                            .append('h')
                            .append(Numbers.place(-(to - from) * side))
                            .append('z');
                }
                from = to + 1;
            }
        }
        return path.toString();
    }

    /** Value of the cell that the middle of a pixel lies in. */
    private double valueAt(int column, int row, double[] share) {
        int i = cell(grid.x(), west + (column + 0.5) * metresPerPixel);
        int j = cell(grid.y(), south + (row + 0.5) * metresPerPixel);
        return i < 0 || j < 0 ? Double.NaN : share[j * grid.columns() + i];
    }

    private static int cell(Axis axis, double coordinate) {
        int found = Arrays.binarySearch(axis.edges(), coordinate);
        int cell = found >= 0 ? found : -found - 2;
        return cell < axis.cells() ? cell : -1;
    }

    /** Number of the class, -1 where there is no value. */
    private static int classOf(double share) {
        if (Double.isNaN(share)) {
            return -1;
        }
        int number = 0;
        while (number < ENDS.length && share > ENDS[number]) {
            number++;
        }
        return number;
    }
}
