package org.headfall.scenarios.assembly;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.scenario.BoundaryCondition;
import org.headfall.scenarios.scenario.BoundarySpecification;
import org.headfall.scenarios.scenario.BoundarySpecification.Stretch;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.wording.PlainNumber;
import org.jspecify.annotations.Nullable;

/** Puts boundaries on the cells of the rim; a cell belongs to a stretch if its centre does. */
final class BoundaryAssembly {
    private final RectilinearGrid grid;
    private final boolean[] active;
    private final ScheduleAssembly schedules;
    private final Problems problems;

    BoundaryAssembly(RectilinearGrid grid, boolean[] active, ScheduleAssembly schedules, Problems problems) {
        this.grid = grid;
        this.active = active;
        this.schedules = schedules;
        this.problems = problems;
    }

    List<OuterBoundary> boundaries(List<BoundarySpecification> specifications) {
        List<OuterBoundary> boundaries = new ArrayList<>();
        for (BoundarySpecification specification : specifications) {
            @Nullable SideSegment segment = segment(specification);
            if (segment != null && touchesAquifer(specification, segment)) {
                boundaries.add(boundary(specification, segment));
            }
        }
        return boundaries;
    }

    private OuterBoundary boundary(BoundarySpecification specification, SideSegment segment) {
        String name = specification.name();
        BoundaryCondition condition = specification.condition();
        if (condition instanceof BoundaryCondition.FixedHead fixed) {
            return new OuterBoundary.FixedHead(name, segment, schedules.schedule(fixed.head()));
        }
        if (condition instanceof BoundaryCondition.GivenFlow given) {
            return new OuterBoundary.GivenFlow(name, segment, schedules.schedule(given.inflow()));
        }
        BoundaryCondition.FarHead far = (BoundaryCondition.FarHead) condition;
        return new OuterBoundary.FarHead(name, segment, schedules.schedule(far.head()), far.distance());
    }

    private boolean touchesAquifer(BoundarySpecification boundary, SideSegment segment) {
        for (int place = 0; place < segment.length(); place++) {
            if (active[segment.cell(grid, place)]) {
                return true;
            }
        }
        problems.add(
                boundary.place(),
                "boundary " + boundary.name(),
                Finding.of(
                        ProblemKind.OUTSIDE_AQUIFER,
                        "a stretch of the rim that the aquifer does not reach",
                        "a boundary that the aquifer reaches"));
        return false;
    }

    private @Nullable SideSegment segment(BoundarySpecification boundary) {
        if (boundary.part().isEmpty()) {
            return SideSegment.whole(boundary.side(), grid);
        }
        Stretch part = boundary.part().get();
        Axis axis = boundary.side().countedByRow() ? grid.y() : grid.x();
        int first = 0;
        while (first < axis.cells() && axis.centre(first) < part.from()) {
            first++;
        }
        int last = axis.cells() - 1;
        while (last >= first && axis.centre(last) > part.to()) {
            last--;
        }
        if (last < first) {
            String found = PlainNumber.of(part.from()) + " to " + PlainNumber.of(part.to())
                    + " m, without the centre of a cell";
            problems.add(
                    boundary.place(),
                    "boundary " + boundary.name(),
                    Finding.of(ProblemKind.OUT_OF_RANGE, found, "a stretch longer than a cell"));
            return null;
        }
        return new SideSegment(boundary.side(), first, last);
    }
}
