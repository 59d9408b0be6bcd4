package org.headfall.solver.response;

import java.util.List;
import java.util.Optional;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.SolutionMemory;
import org.headfall.solver.flow.SourceFields;
import org.headfall.solver.flow.TransferSolves;
import org.headfall.solver.flow.TransferValues;
import org.headfall.solver.linear.WorkerTeam;

/**
 * Solutions of the bores and the spring of a small field at some shifts.
 *
 * @param problem the field
 * @param fields the solutions
 * @param transfer what they are at bores and spring
 */
record SolvedField(FlowProblem problem, SourceFields fields, TransferValues transfer) {

    static SolvedField of(FlowProblem problem, double... shifts) {
        double[] start = InterferenceTest.level(problem.aquifer().grid().cellCount(), 110);
        SourceFields fields = new SourceFields(problem, List.of(), start, SolutionMemory.heap());
        try (WorkerTeam team = new WorkerTeam(1)) {
            TransferSolves solves = new TransferSolves(problem, List.of(), List.of(), Optional.of(fields), 1e-12, team);
            for (double shift : shifts) {
                solves.solve(shift);
            }
            return new SolvedField(problem, fields, solves.values());
        }
    }

    /** A field of two bores and a spring, with a sealing bed that stores or without any. */
    static FlowProblem field(boolean bed) {
        FlowProblem field = StationResponsesTest.field(StationResponsesTest.pumped(1), StationResponsesTest.pumped(1));
        return bed
                ? field
                : new FlowProblem(
                        field.aquifer(),
                        Optional.empty(),
                        field.boundaries(),
                        field.recharges(),
                        field.springs(),
                        field.bores());
    }

    int[] sources() {
        return new int[] {0, 1, 2};
    }

    JointProducts products() {
        return new JointProducts(transfer, fields, sources(), sources());
    }

    JointModel model(double smallest) {
        return new JointModel(transfer, fields, sources(), sources(), smallest);
    }

    /** The solution of a source at a shift in every cell (d/m²), in single precision. */
    double[] solution(int source, int shift) {
        double[] values = new double[problem.aquifer().grid().cellCount()];
        for (int cell = 0; cell < values.length; cell++) {
            values[cell] = fields.solutionsIn(cell)[source][shift];
        }
        return values;
    }
}
