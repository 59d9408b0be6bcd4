package org.headfall.solver.flow;

import java.util.List;
import java.util.stream.IntStream;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.nearfield.ObservedHead;

/** Where heads are read: bores, springs, then points that take no water. */
final class Receptors {

    private final PointDischarges points;
    private final List<ObservedHead> observed;

    Receptors(PointDischarges points, List<ObservedHead> observed) {
        this.points = points;
        this.observed = List.copyOf(observed);
    }

    int count() {
        return points.count() + observed.size();
    }

    /** Number of bores and springs, which come first. */
    int takingWater() {
        return points.count();
    }

    /** Weights by which a receptor sees heads of cells. */
    CellWeights weights(int receptor) {
        return receptor < points.count()
                ? points.weights(receptor)
                : observed.get(receptor - points.count()).weights();
    }

    /** The weights of all. */
    List<CellWeights> weights() {
        return IntStream.range(0, count()).mapToObj(this::weights).toList();
    }

    /** Drawdown at a receptor by a unit discharge of a bore or spring that the grid does not carry (d/m²). */
    double unresolved(int receptor, int cause) {
        return receptor < points.count()
                ? points.unresolved(receptor, cause)
                : observed.get(receptor - points.count()).unresolved(cause);
    }
}
