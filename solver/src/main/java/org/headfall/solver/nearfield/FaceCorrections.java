package org.headfall.solver.nearfield;

import java.util.Arrays;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/** Corrects the flow of the logarithmic drawdown through every face within reach, see {@link NearField}. */
final class FaceCorrections {

    private final Aquifer aquifer;
    private final RectilinearGrid grid;
    private final int cell;
    private final MirroredDrawdown mirrored;
    private final LogarithmicDrawdown drawdown;
    private final Reach reach;
    private final CellWindow window;
    private final double strongestContrast;
    private final double[] onCells;
    private final double[] weights;

    FaceCorrections(
            Aquifer aquifer,
            int cell,
            MirroredDrawdown mirrored,
            double[] onCells,
            Reach reach,
            CellWindow window,
            double strongestContrast) {
        this.aquifer = aquifer;
        grid = aquifer.grid();
        this.cell = cell;
        this.mirrored = mirrored;
        drawdown = mirrored.own();
        this.reach = reach;
        this.window = window;
        this.strongestContrast = strongestContrast;
        this.onCells = onCells;
        weights = new double[window.size()];
    }

    /** Weights of the cells whose weight is not zero, in the order of the window. */
    CellWeights weights() {
        for (int row = 0; row < window.rows(); row++) {
            for (int column = 0; column < window.columns(); column++) {
                if (window.cell(column, row) == cell) {
                    weights[row * window.columns() + column] += 1;
                }
                if (column + 1 < window.columns()) {
                    correctEast(column, row);
                }
                if (row + 1 < window.rows()) {
                    correctNorth(column, row);
                }
            }
        }
        return withoutZeros();
    }

    private void correctEast(int column, int row) {
        int west = window.cell(column, row);
        Axis x = grid.x();
        Axis y = grid.y();
        int i = grid.column(west);
        int j = grid.row(west);
        double across = drawdown.stretchedX(x.edge(i + 1));
        double share = reach.share(Math.hypot(across, drawdown.stretchedY(y.centre(j))));
        double conductance = aquifer.eastConductance(west);
        if (share == 0 || conductance == 0) {
            return;
        }
        double alike = aquifer.transmissivityX()[cell] * y.width(j) / (x.centre(i + 1) - x.centre(i));
        double through = mirrored.throughEast(x.edge(i + 1), y.edge(j), y.edge(j + 1));
        int place = row * window.columns() + column;
        correct(place, place + 1, share, conductance / alike, alike, through);
    }

    private void correctNorth(int column, int row) {
        int south = window.cell(column, row);
        Axis x = grid.x();
        Axis y = grid.y();
        int i = grid.column(south);
        int j = grid.row(south);
        double across = drawdown.stretchedY(y.edge(j + 1));
        double share = reach.share(Math.hypot(drawdown.stretchedX(x.centre(i)), across));
        double conductance = aquifer.northConductance(south);
        if (share == 0 || conductance == 0) {
            return;
        }
        double alike = aquifer.transmissivityY()[cell] * x.width(i) / (y.centre(j + 1) - y.centre(j));
        double through = mirrored.throughNorth(y.edge(j + 1), x.edge(i), x.edge(i + 1));
        int place = row * window.columns() + column;
        correct(place, place + window.columns(), share, conductance / alike, alike, through);
    }

    /**
     * Adds what flow by differences exceeds the true flow by to the one cell and takes it from the other.
     *
     * @param contrast T of the face over that of the place's cell (-)
     * @param alike conductance of the face if T were everywhere that of the place's cell (m²/d)
     * @param through true flow from the one cell to the other per discharge (-)
     */
    private void correct(int one, int other, double share, double contrast, double alike, double through) {
        double bounded = Math.max(1 / strongestContrast, Math.min(strongestContrast, contrast));
        double excess = share * bounded * (alike * (onCells[one] - onCells[other]) - through);
        weights[one] += excess;
        weights[other] -= excess;
    }

    private CellWeights withoutZeros() {
        int[] cells = new int[weights.length];
        double[] kept = new double[weights.length];
        int n = 0;
        for (int place = 0; place < weights.length; place++) {
            if (weights[place] != 0) {
                cells[n] = window.cell(place % window.columns(), place / window.columns());
                kept[n++] = weights[place];
            }
        }
        return new CellWeights(Arrays.copyOf(cells, n), Arrays.copyOf(kept, n));
    }
}
