package org.headfall.scenarios.doubts;

import java.util.List;
import java.util.Optional;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.flow.FlowProblem;

/** The same problem with the heads beyond its rim half as far again from it. */
public final class FartherBoundary {

    private static final double FARTHER = 1.5;

    private FartherBoundary() {}

    /**
     * The changed problem.
     *
     * @param problem the problem
     * @return the problem with every distance of a far head 1.5 times as long; empty if it has no far head
     */
    public static Optional<FlowProblem> of(FlowProblem problem) {
        if (problem.boundaries().stream().noneMatch(OuterBoundary.FarHead.class::isInstance)) {
            return Optional.empty();
        }
        List<OuterBoundary> boundaries =
                problem.boundaries().stream().map(FartherBoundary::farther).toList();
        return Optional.of(new FlowProblem(
                problem.aquifer(),
                problem.sealingBed(),
                boundaries,
                problem.recharges(),
                problem.springs(),
                problem.bores()));
    }

    private static OuterBoundary farther(OuterBoundary boundary) {
        return boundary instanceof OuterBoundary.FarHead far
                ? new OuterBoundary.FarHead(far.name(), far.segment(), far.head(), FARTHER * far.distance())
                : boundary;
    }
}
