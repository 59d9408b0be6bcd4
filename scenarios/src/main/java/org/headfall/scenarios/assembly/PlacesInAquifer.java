package org.headfall.scenarios.assembly;

import java.util.OptionalDouble;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.scenario.BoreSpecification.Levels;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.scenarios.spatial.Position;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.wording.PlainNumber;
import org.jspecify.annotations.Nullable;

/**
 * Whether bores, springs and protected points stand in cells of the aquifer, and water leaves it above its bottom. Who
 * types a depth below the ground for a level above the datum is told so.
 */
final class PlacesInAquifer {
    private final RectilinearGrid grid;
    private final boolean[] active;
    private final Problems problems;

    PlacesInAquifer(RectilinearGrid grid, boolean[] active, Problems problems) {
        this.grid = grid;
        this.active = active;
        this.problems = problems;
    }

    /** Reports what does not stand where it should; levels only if there is an aquifer to compare with. */
    void check(Scenario scenario, @Nullable Aquifer aquifer) {
        scenario.bores().forEach(bore -> {
            String subject = "bore " + bore.name();
            Levels levels = bore.levels();
            if (stands(bore.position(), bore.place(), subject) && aquifer != null) {
                double bottom = aquifer.bottom()[cell(bore.position())];
                requireAbove(bottom, "outlet_level", levels.outlet(), bore.place(), subject);
                requireAbove(bottom, "pump_intake_level", levels.pumpIntake(), bore.place(), subject);
            }
        });
        scenario.springs().forEach(spring -> {
            String subject = "spring " + spring.name();
            if (stands(spring.position(), spring.place(), subject) && aquifer != null) {
                double bottom = aquifer.bottom()[cell(spring.position())];
                requireAbove(bottom, "outlet", OptionalDouble.of(spring.outlet()), spring.place(), subject);
            }
        });
        scenario.protectedPoints()
                .forEach(point -> stands(point.position(), point.place(), "protected point " + point.name()));
    }

    private int cell(Position position) {
        return grid.locate(position.x(), position.y());
    }

    private boolean stands(Position position, Place place, String subject) {
        int cell = cell(position);
        if (cell >= 0 && active[cell]) {
            return true;
        }
        String found = "x " + PlainNumber.of(position.x()) + " m, y " + PlainNumber.of(position.y()) + " m";
        String allowed = "a place within the polygons of aquifer.within, in a cell whose centre they hold";
        problems.add(place, subject, Finding.of(ProblemKind.OUTSIDE_AQUIFER, found, allowed));
        return false;
    }

    private void requireAbove(double bottom, String key, OptionalDouble level, Place place, String subject) {
        if (level.isPresent() && level.getAsDouble() < bottom) {
            String found = key + " " + PlainNumber.of(level.getAsDouble()) + " m, below the bottom of the aquifer at "
                    + PlainNumber.about(bottom) + " m";
            String allowed = key + " above the bottom of the aquifer (a level above the datum, not a depth)";
            problems.add(place, subject, Finding.of(ProblemKind.OUT_OF_RANGE, found, allowed));
        }
    }
}
