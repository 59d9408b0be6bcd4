package org.headfall.solver.flow;

import java.util.List;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.CellBoreLink;

/** All points that take water from single cells: bores first, then springs, in the order of the problem. */
final class PointDischarges {

    private final List<Bore> bores;
    private final List<Spring> springs;
    private final int[] cells;
    private final double[] resistances;

    PointDischarges(FlowProblem problem) {
        bores = problem.bores();
        springs = problem.springs();
        cells = new int[bores.size() + springs.size()];
        resistances = new double[cells.length];
        Aquifer aquifer = problem.aquifer();
        for (int i = 0; i < bores.size(); i++) {
            cells[i] = aquifer.grid().locate(bores.get(i).x(), bores.get(i).y());
            resistances[i] = CellBoreLink.resistance(bores.get(i), aquifer);
        }
        for (int i = 0; i < springs.size(); i++) {
            cells[bores.size() + i] =
                    aquifer.grid().locate(springs.get(i).x(), springs.get(i).y());
        }
    }

    int count() {
        return cells.length;
    }

    /** Cell that gives water to a point. */
    int cell(int point) {
        return cells[point];
    }

    /** Head lost between cell and wall per discharge (d/m²), zero for springs. */
    double resistance(int point) {
        return resistances[point];
    }

    /** Head at the wall of a point (m above datum). */
    double wallHead(int point, double[] head, double discharge) {
        return head[cells[point]] - resistances[point] * discharge;
    }
}
