package org.headfall.solver.flow;

import java.nio.FloatBuffer;
import java.util.List;
import org.headfall.solver.linear.WorkerTeam;

/**
 * Drawdown of all cells, and what the sealing bed has released over each, for several fields at once, as sums of solutions at
 * shifts. Rows of the grid are worked through one after the other for all fields, so that solutions stay in the cache.
 */
final class FieldSums {

    /** Rows worth a thread of their own. */
    private static final int GRAIN = 4;

    private final WorkerTeam team;
    private final CellLoops loops;
    private final int rows;
    private final int columns;
    private final boolean[] active;
    private final boolean bed;
    private final float[][] drawdown;
    private final float[][] released;

    FieldSums(FlowProblem problem, int fields, WorkerTeam team) {
        this.team = team;
        rows = problem.aquifer().grid().rows();
        columns = problem.aquifer().grid().columns();
        active = problem.aquifer().active();
        loops = new CellLoops(team, rows * columns);
        bed = BedRelaxation.of(problem) != null;
        drawdown = new float[fields][rows * columns];
        released = new float[bed ? fields : 0][rows * columns];
    }

    CellLoops loops() {
        return loops;
    }

    /** Drawdown of each cell of a field (m); not to be changed. */
    float[] drawdown(int field) {
        return drawdown[field];
    }

    /** What the bed over each cell of a field has released (m³); empty if there is none that stores. */
    float[] releasedByBed(int field) {
        return bed ? released[field] : new float[0];
    }

    /**
     * Solutions of some sources at one shift.
     *
     * @param solutions the solutions
     * @param weights {@code [field][source]} their weights
     * @param bedContent what the bed releases over each cell per metre of drawdown at the shift (m²); empty without a bed
     */
    @SuppressWarnings("ArrayRecordComponent") // read in one loop, never compared
    record Layer(WindowedField[] solutions, float[][] weights, FloatBuffer bedContent) {}

    /** Adds layers, one after the other in every cell. */
    void add(List<Layer> layers) {
        int most = layers.stream()
                .mapToInt(layer -> layer.solutions().length)
                .max()
                .orElse(0);
        team.split(rows, GRAIN, (from, to) -> {
            RowSum sum = new RowSum(columns, most);
            float[] content = new float[columns];
            for (int row = from; row < to; row++) {
                for (Layer layer : layers) {
                    addRow(layer, row, sum, content);
                }
            }
        });
    }

    private void addRow(Layer layer, int row, RowSum sum, float[] content) {
        if (!sum.take(layer.solutions(), row)) {
            return;
        }
        int offset = row * columns;
        if (bed) {
            layer.bedContent().get(offset, content);
        }
        for (int field = 0; field < drawdown.length; field++) {
            float[] added = sum.weighted(layer.weights()[field]);
            float[] heads = drawdown[field];
            for (int k = sum.first(); k < sum.end(); k++) {
                heads[offset + k] += added[k];
            }
            if (bed) {
                float[] volumes = released[field];
                for (int k = sum.first(); k < sum.end(); k++) {
                    volumes[offset + k] += content[k] * added[k];
                }
            }
        }
    }

    /** Adds an even fall of all heads to each field (m), under a bed that has adjusted. */
    void addEvenFalls(double[] falls, double[] bedContent) {
        loops.run((from, to) -> {
            for (int field = 0; field < falls.length; field++) {
                float fall = (float) falls[field];
                for (int cell = from; cell < to; cell++) {
                    if (active[cell]) {
                        drawdown[field][cell] += fall;
                        if (bed) {
                            released[field][cell] += (float) (bedContent[cell] * fall);
                        }
                    }
                }
            }
        });
    }
}
