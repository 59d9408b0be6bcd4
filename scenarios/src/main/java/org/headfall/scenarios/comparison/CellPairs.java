package org.headfall.scenarios.comparison;

import java.util.Arrays;
import org.headfall.solver.grid.RectilinearGrid;

/** Which cell of a second grid lies at the centre of a cell of a first one. */
final class CellPairs {

    private final RectilinearGrid first;
    private final RectilinearGrid second;
    private final boolean oneGrid;

    CellPairs(RectilinearGrid first, RectilinearGrid second) {
        this.first = first;
        this.second = second;
        oneGrid = Arrays.equals(first.x().edges(), second.x().edges())
                && Arrays.equals(first.y().edges(), second.y().edges());
    }

    /** Whether both grids have the same cells. */
    boolean isOneGrid() {
        return oneGrid;
    }

    /**
     * The cell of the second grid.
     *
     * @param cell a cell of the first
     * @return the cell in which its centre lies; -1 outside the second grid
     */
    int inSecond(int cell) {
        if (oneGrid) {
            return cell;
        }
        double x = first.centreX(cell);
        double y = first.centreY(cell);
        boolean inside = x >= second.x().start()
                && x <= second.x().end()
                && y >= second.y().start()
                && y <= second.y().end();
        return inside ? second.locate(x, y) : -1;
    }
}
