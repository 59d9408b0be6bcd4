package org.headfall.scenarios.recording;

import java.util.List;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.nearfield.ObservedHead;

/** Heads at the protected points of a run, bores close by counted at their true distances. */
public final class PointHeads {

    private PointHeads() {}

    /**
     * Heads at all protected points.
     *
     * @param description the run
     * @param boundaries what passes through the rim of its aquifer
     * @return one for each protected point, in their order
     * @throws IllegalArgumentException if a protected point lies outside the active aquifer
     */
    public static List<ObservedHead> of(RunDescription description, List<OuterBoundary> boundaries) {
        return description.points().isEmpty() ? List.of() : beside(description, nearFields(description, boundaries));
    }

    /** Heads at all protected points by the near field of each bore. */
    static List<ObservedHead> beside(RunDescription description, List<NearField> bores) {
        return description.points().stream()
                .map(point -> new ObservedHead(description.aquifer(), point.x(), point.y(), bores))
                .toList();
    }

    /** Near field of each bore of a run. */
    static List<NearField> nearFields(RunDescription description, List<OuterBoundary> boundaries) {
        return description.bores().stream()
                .map(bore -> NearField.at(description.aquifer(), boundaries, bore.x(), bore.y(), bore.screenRadius()))
                .toList();
    }
}
