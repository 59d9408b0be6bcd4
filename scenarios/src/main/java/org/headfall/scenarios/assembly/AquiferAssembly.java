package org.headfall.scenarios.assembly;

import java.util.Optional;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.raster.Averaging;
import org.headfall.scenarios.scenario.AquiferSpecification;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.scenarios.scenario.SealingBedSpecification;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.wording.PlainNumber;
import org.jspecify.annotations.Nullable;

/** Puts the aquifer and the sealing bed on cells. */
final class AquiferAssembly {
    private final RectilinearGrid grid;
    private final boolean[] active;
    private final FieldOnCells fields;
    private final Problems problems;

    AquiferAssembly(RectilinearGrid grid, boolean[] active, FieldOnCells fields, Problems problems) {
        this.grid = grid;
        this.active = active;
        this.fields = fields;
        this.problems = problems;
    }

    /** The aquifer, or null after a problem has been reported. */
    @Nullable
    Aquifer aquifer(Scenario scenario) {
        AquiferSpecification aquifer = scenario.aquifer();
        double[] transmissivityX;
        double[] transmissivityY;
        if (aquifer.transmissivity() instanceof AquiferSpecification.AlongAxes along) {
            transmissivityX = fields.values(along.x(), Averaging.GEOMETRIC, 1);
            transmissivityY = fields.values(along.y(), Averaging.GEOMETRIC, 1);
        } else {
            AquiferSpecification.WithRatio mean = (AquiferSpecification.WithRatio) aquifer.transmissivity();
            double[] values = fields.values(mean.mean(), Averaging.GEOMETRIC, 1);
            transmissivityX = scaled(values, Math.sqrt(mean.xOverY()));
            transmissivityY = scaled(values, 1 / Math.sqrt(mean.xOverY()));
        }
        double[] storativity = fields.values(aquifer.storativity(), Averaging.ARITHMETIC, 1);
        double[] top = fields.values(aquifer.top(), Averaging.ARITHMETIC, 0);
        double[] bottom = fields.values(aquifer.bottom(), Averaging.ARITHMETIC, -1);
        return hasThickness(scenario, top, bottom)
                ? new Aquifer(grid, transmissivityX, transmissivityY, storativity, top, bottom, active)
                : null;
    }

    private static double[] scaled(double[] values, double factor) {
        if (factor == 1) {
            return values;
        }
        double[] scaled = new double[values.length];
        for (int cell = 0; cell < values.length; cell++) {
            scaled[cell] = values[cell] * factor;
        }
        return scaled;
    }

    /** Checks that the bottom is below the top; cells beyond the aquifer are made so. */
    private boolean hasThickness(Scenario scenario, double[] top, double[] bottom) {
        int wrong = 0;
        int first = -1;
        for (int cell = 0; cell < top.length; cell++) {
            if (bottom[cell] >= top[cell]) {
                if (active[cell]) {
                    first = wrong == 0 ? cell : first;
                    wrong++;
                } else {
                    bottom[cell] = top[cell] - 1;
                }
            }
        }
        if (wrong > 0) {
            String found = "a bottom that is not below the top in " + wrong + (wrong == 1 ? " cell" : " cells")
                    + ", the first at x "
                    + PlainNumber.of(grid.centreX(first)) + ", y " + PlainNumber.of(grid.centreY(first)) + ": bottom "
                    + PlainNumber.about(bottom[first]) + " m, top "
                    + PlainNumber.about(top[first]) + " m";
            problems.add(
                    scenario.aquifer().bottomPlace(),
                    "aquifer.bottom",
                    Finding.of(ProblemKind.OUT_OF_RANGE, found, "a bottom below the top everywhere"));
        }
        return wrong == 0;
    }

    /** The bed above the aquifer, if there is one. */
    Optional<SealingBed> sealingBed(Scenario scenario) {
        return scenario.sealingBed().map(this::bed);
    }

    private SealingBed bed(SealingBedSpecification bed) {
        return new SealingBed(
                fields.values(bed.thickness(), Averaging.ARITHMETIC, 1),
                fields.values(bed.verticalConductivity(), Averaging.ARITHMETIC, 0),
                fields.values(bed.specificStorage(), Averaging.ARITHMETIC, 0),
                fields.values(bed.headAbove(), Averaging.ARITHMETIC, 0));
    }
}
