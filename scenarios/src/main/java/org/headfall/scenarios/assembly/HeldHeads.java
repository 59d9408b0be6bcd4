package org.headfall.scenarios.assembly;

import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.scenario.LimitSpecification;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.scenarios.scenario.StartSpecification;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.wording.PlainNumber;

/**
 * Whether every connected part of the aquifer has a boundary with a head, or a cell that leaks. Without one its steady
 * heads may be anything.
 */
final class HeldHeads {
    private final RectilinearGrid grid;
    private final boolean[] active;
    private final Problems problems;

    HeldHeads(RectilinearGrid grid, boolean[] active, Problems problems) {
        this.grid = grid;
        this.active = active;
        this.problems = problems;
    }

    /** Reports the first part of the aquifer that nothing holds, if steady heads are asked for. */
    void check(Scenario scenario, List<OuterBoundary> boundaries, Optional<SealingBed> bed) {
        boolean given = scenario.start() instanceof StartSpecification.GivenHeads;
        if (given && scenario.limits().stream().noneMatch(HeldHeads::comparesWithSteady)) {
            return;
        }
        boolean[] reached = new boolean[active.length];
        int[] stack = new int[active.length];
        int top = 0;
        for (OuterBoundary boundary : boundaries) {
            SideSegment segment = boundary.segment();
            for (int place = 0; !(boundary instanceof OuterBoundary.GivenFlow) && place < segment.length(); place++) {
                top = reach(segment.cell(grid, place), reached, stack, top);
            }
        }
        for (int cell = 0; bed.isPresent() && cell < active.length; cell++) {
            if (bed.get().verticalConductivity()[cell] > 0) {
                top = reach(cell, reached, stack, top);
            }
        }
        if (top == countActive()) {
            return;
        }
        spread(reached, stack, top);
        report(
                scenario,
                reached,
                "parts connected to one, or "
                        + (given ? "no limit that is compared with heads before any taking" : "given heads"));
    }

    private static boolean comparesWithSteady(LimitSpecification limit) {
        return limit.comparedWith() instanceof LimitSpecification.BeforeAnyTaking;
    }

    private int countActive() {
        int count = 0;
        for (boolean one : active) {
            count += one ? 1 : 0;
        }
        return count;
    }

    private int reach(int cell, boolean[] reached, int[] stack, int top) {
        if (!active[cell] || reached[cell]) {
            return top;
        }
        reached[cell] = true;
        stack[top] = cell;
        return top + 1;
    }

    private void spread(boolean[] reached, int[] stack, int filled) {
        int columns = grid.columns();
        int top = filled;
        while (top > 0) {
            int cell = stack[--top];
            int column = grid.column(cell);
            top = column > 0 ? reach(cell - 1, reached, stack, top) : top;
            top = column < columns - 1 ? reach(cell + 1, reached, stack, top) : top;
            top = cell >= columns ? reach(cell - columns, reached, stack, top) : top;
            top = cell + columns < active.length ? reach(cell + columns, reached, stack, top) : top;
        }
    }

    private void report(Scenario scenario, boolean[] reached, String allowed) {
        int loose = 0;
        int first = -1;
        for (int cell = 0; cell < active.length; cell++) {
            if (active[cell] && !reached[cell]) {
                first = loose == 0 ? cell : first;
                loose++;
            }
        }
        if (loose > 0) {
            Place place = scenario.aquifer()
                    .within()
                    .map(area -> area.file().place())
                    .orElse(scenario.aquifer().place());
            String found = loose + (loose == 1 ? " cell" : " cells")
                    + " that no boundary with a head and no leakage reaches, the first at x "
                    + PlainNumber.of(grid.centreX(first)) + ", y " + PlainNumber.of(grid.centreY(first));
            problems.add(place, "aquifer", Finding.of(ProblemKind.NOTHING_HOLDS_HEADS, found, allowed));
        }
    }
}
