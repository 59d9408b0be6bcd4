package org.headfall.validation.property;

import java.util.List;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * A field as seen in a mirror, or turned: x and y changed for each other, or x counted from the other end.
 *
 * @param name what is done
 * @param from grid as it is
 * @param to grid as it becomes
 * @param swaps whether the axes change places
 */
record Turned(String name, RectilinearGrid from, RectilinearGrid to, boolean swaps) {

    /** The east becomes the west. */
    static Turned mirrored(RectilinearGrid grid) {
        return new Turned("mirrored", grid, new RectilinearGrid(reversed(grid.x()), grid.y()), false);
    }

    /** Turned by a quarter to the left: the east becomes the north, the north the west. */
    static Turned quarter(RectilinearGrid grid) {
        return new Turned("turned by a quarter", grid, new RectilinearGrid(reversed(grid.y()), grid.x()), true);
    }

    private static Axis reversed(Axis axis) {
        double[] edges = new double[axis.cells() + 1];
        for (int i = 0; i < edges.length; i++) {
            edges[i] = axis.start() + axis.end() - axis.edge(axis.cells() - i);
        }
        return Axis.ofEdges(edges);
    }

    /** A field of the old grid on the new one. */
    double[] field(double[] old) {
        double[] moved = new double[old.length];
        for (int cell = 0; cell < old.length; cell++) {
            int column = from.column(cell);
            int row = from.row(cell);
            int target = swaps ? to.cell(from.rows() - 1 - row, column) : to.cell(from.columns() - 1 - column, row);
            moved[target] = old[cell];
        }
        return moved;
    }

    Aquifer aquifer(Aquifer old) {
        double[] tx = field(old.transmissivityX());
        double[] ty = field(old.transmissivityY());
        return new Aquifer(
                to, swaps ? ty : tx, swaps ? tx : ty, field(old.storativity()), old.top(), old.bottom(), old.active());
    }

    SealingBed bed(SealingBed old) {
        return new SealingBed(
                field(old.thickness()),
                field(old.verticalConductivity()),
                field(old.specificStorage()),
                field(old.headAbove()));
    }

    List<Bore> bores(List<Bore> old) {
        return old.stream().map(this::bore).toList();
    }

    private Bore bore(Bore old) {
        double rate = ((Operation.PumpedRate) old.operationAt(0)).rate().at(0);
        Axis mirror = swaps ? from.y() : from.x();
        double across = mirror.start() + mirror.end() - (swaps ? old.y() : old.x());
        return RandomFields.pumped(old.name(), across, swaps ? old.x() : old.y(), rate);
    }
}
