package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.List;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.nearfield.UnresolvedDrawdown;

/**
 * All points that take water: bores first, then springs, in the order of the problem. A bore takes it by the weights of
 * its near field; a spring, whose conductance stands for the way from its cell, from its cell alone.
 */
final class PointDischarges {

    private final List<Bore> bores;
    private final List<Spring> springs;
    private final List<CellWeights> weights = new ArrayList<>();
    private final int[] cells;
    private final UnresolvedDrawdown unresolved;

    PointDischarges(FlowProblem problem) {
        bores = problem.bores();
        springs = problem.springs();
        cells = new int[bores.size() + springs.size()];
        Aquifer aquifer = problem.aquifer();
        List<NearField> fields = new ArrayList<>();
        for (Bore bore : bores) {
            NearField field = problem.nearField(bore.x(), bore.y(), bore.screenRadius());
            cells[weights.size()] = field.cell();
            weights.add(field.weights());
            fields.add(field);
        }
        unresolved = UnresolvedDrawdown.between(bores, fields);
        for (Spring spring : springs) {
            int cell = aquifer.grid().locate(spring.x(), spring.y());
            cells[weights.size()] = cell;
            weights.add(CellWeights.single(cell));
        }
    }

    int count() {
        return cells.length;
    }

    /** Cell in which a point stands. */
    int cell(int point) {
        return cells[point];
    }

    /** Weights by which a point takes water from the cells, and sees their heads. */
    CellWeights weights(int point) {
        return weights.get(point);
    }

    /**
     * Drawdown at a point by a unit discharge of another, or of itself, that the grid does not carry (d/m²): zero where
     * one of them is a spring.
     */
    double unresolved(int receptor, int cause) {
        return receptor < bores.size() && cause < bores.size() ? unresolved.perDischarge(receptor, cause) : 0;
    }

    /** Head at the wall of a point (m above datum). */
    double wallHead(int point, double[] head, double[] discharge) {
        double sum = weights.get(point).of(head);
        for (int cause = 0; cause < discharge.length; cause++) {
            sum -= unresolved(point, cause) * discharge[cause];
        }
        return sum;
    }

    /** Takes the discharges of all points from the net inflow of the cells (m³/d). */
    void takeFrom(double[] inflow, double[] discharge) {
        for (int i = 0; i < discharge.length; i++) {
            weights.get(i).add(-discharge[i], inflow);
        }
    }
}
