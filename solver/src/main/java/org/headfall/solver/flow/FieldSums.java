package org.headfall.solver.flow;

import java.nio.FloatBuffer;
import java.util.Arrays;
import java.util.List;
import org.headfall.solver.linear.WorkerTeam;

/**
 * Drawdown of all cells, and what the sealing bed has released over each, for several fields at once, as sums of solutions at
 * shifts. Rows of the grid are worked through one after the other for all fields, so that solutions stay in the cache, and
 * summed up in double precision: only what is left of the sums is rounded.
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
    record Layer(WindowedField[] solutions, double[][] weights, FloatBuffer bedContent) {}

    /** Adds layers, one after the other in every cell. */
    void add(List<Layer> layers) {
        int most = layers.stream()
                .mapToInt(layer -> layer.solutions().length)
                .max()
                .orElse(0);
        team.split(rows, GRAIN, (from, to) -> {
            Row sums = new Row(most);
            for (int row = from; row < to; row++) {
                sums.begin();
                for (Layer layer : layers) {
                    sums.add(layer, row);
                }
                sums.end(row);
            }
        });
    }

    /** One row of all fields, in double precision until all is added up. */
    private final class Row {

        private final RowSum sum;
        private final float[] copied = new float[columns];
        private final double[] content = new double[columns];
        private final double[][] heads = new double[drawdown.length][columns];
        private final double[][] volumes = new double[released.length][columns];

        Row(int most) {
            sum = new RowSum(columns, most);
        }

        void begin() {
            for (double[] field : heads) {
                Arrays.fill(field, 0);
            }
            for (double[] field : volumes) {
                Arrays.fill(field, 0);
            }
        }

        void add(Layer layer, int row) {
            if (!sum.take(layer.solutions(), row)) {
                return;
            }
            if (bed) {
                layer.bedContent().get(row * columns, copied);
                for (int k = sum.first(); k < sum.end(); k++) {
                    content[k] = copied[k];
                }
            }
            for (int field = 0; field < heads.length; field++) {
                double[] added = sum.weighted(layer.weights()[field]);
                add(added, heads[field]);
                if (bed) {
                    addTimes(content, added, volumes[field]);
                }
            }
        }

        private void add(double[] added, double[] to) {
            for (int k = sum.first(); k < sum.end(); k++) {
                to[k] += added[k];
            }
        }

        private void addTimes(double[] factor, double[] added, double[] to) {
            for (int k = sum.first(); k < sum.end(); k++) {
                to[k] += factor[k] * added[k];
            }
        }

        void end(int row) {
            for (int field = 0; field < heads.length; field++) {
                round(heads[field], drawdown[field], row * columns);
                if (bed) {
                    round(volumes[field], released[field], row * columns);
                }
            }
        }

        private void round(double[] exact, float[] to, int offset) {
            for (int k = 0; k < columns; k++) {
                to[offset + k] += (float) exact[k];
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
