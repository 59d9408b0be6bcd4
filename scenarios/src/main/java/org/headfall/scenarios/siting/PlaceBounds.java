package org.headfall.scenarios.siting;

import java.util.List;
import org.headfall.scenarios.interpolation.CellCentres;
import org.headfall.scenarios.interpolation.PolygonCells;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.headfall.scenarios.scenario.SitingSpecification.DistanceClass;
import org.headfall.solver.grid.RectilinearGrid;

/** Bounds of the rate by where a cell lies: distances to bores, springs and the rim, excluded areas, depth, limits on distance. */
final class PlaceBounds {

    private final RunDescription run;
    private final SitingSpecification siting;
    private final DistanceLimits limits;

    PlaceBounds(RunDescription run, SitingSpecification siting, DistanceLimits limits) {
        this.run = run;
        this.siting = siting;
        this.limits = limits;
    }

    void apply(RateBounds bounds) {
        RectilinearGrid grid = run.grid();
        boolean[] excluded = siting.excluded()
                .map(area -> new PolygonCells(
                                CellCentres.between(grid.x().edges(), grid.y().edges()))
                        .within(area.polygons()))
                .orElse(new boolean[grid.cellCount()]);
        boolean[] besideRim =
                new AquiferRim(run.aquifer()).cellsWithin(siting.distances().toSides());
        double deepest = siting.deepestBore().orElse(Double.POSITIVE_INFINITY);
        for (int cell = 0; cell < excluded.length; cell++) {
            if (excluded[cell]) {
                bounds.lower(cell, 0, Ruling.EXCLUDED);
            }
            if (run.ground()[cell] - run.aquifer().bottom()[cell] > deepest) {
                bounds.lower(cell, 0, Ruling.DEPTH);
            }
            if (besideRim[cell]) {
                bounds.lower(cell, 0, Ruling.DISTANCE_TO_RIM);
            }
        }
        for (Station.BoreSite bore : run.bores()) {
            keepOff(bore.x(), bore.y(), bounds);
            // No bore stands within another, whatever distance is asked for: levels and effects there have no meaning.
            double apart = bore.screenRadius() + siting.screenRadius();
            keepOff(
                    bore.x(),
                    bore.y(),
                    List.of(new DistanceClass(Double.POSITIVE_INFINITY, apart)),
                    Ruling.DISTANCE_TO_BORES,
                    bounds);
        }
        for (Station.SpringSite spring : run.springs()) {
            keepOff(spring.x(), spring.y(), siting.distances().toSprings(), Ruling.DISTANCE_TO_SPRINGS, bounds);
        }
        limits.lower(run, bounds);
    }

    /** Keeps the distance to one more bore. */
    void keepOff(double x, double y, RateBounds bounds) {
        keepOff(x, y, siting.distances().toBores(), Ruling.DISTANCE_TO_BORES, bounds);
    }

    private void keepOff(double x, double y, List<DistanceClass> classes, int reason, RateBounds bounds) {
        for (int i = 0; i < classes.size(); i++) {
            // A bore nearer than a class asks for may take no more than the class before.
            double most = i == 0 ? 0 : classes.get(i - 1).upTo();
            double atLeast = classes.get(i).atLeast();
            for (int cell = 0; cell < run.grid().cellCount(); cell++) {
                if (Math.hypot(run.grid().centreX(cell) - x, run.grid().centreY(cell) - y) < atLeast) {
                    bounds.lower(cell, most, reason);
                }
            }
        }
    }
}
