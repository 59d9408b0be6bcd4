package org.headfall.solver.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.OwnTransfers;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.NearField;

/**
 * Drawdown at the wall of a new bore at the centre of any cell by its own unit discharge. It is solved for at some cells
 * spread over the map; in between, an estimate from what is around each cell ({@link LocalDrawdown}) is multiplied by a
 * smooth factor that meets the solved ones. Its error is estimated by leaving out each of them in turn. What springs and
 * free-flowing bores give back is not counted, which errs to the side of more drawdown.
 */
public final class OwnDrawdown {

    private static final int SHIFTS_PER_DECADE = 2;
    private static final double FASTEST = 30;

    /** Exact enough for an estimate of per cents, and a third of the iterations of exact responses less. */
    private static final double TOLERANCE = 1e-7;

    private static final double SMALLEST_DIRECTION = 1e-5;

    private final FlowProblem problem;
    private final double screenRadius;
    private final LocalDrawdown local;
    private final int[] samples;
    private final List<StepResponse> solved = new ArrayList<>();
    private final double[] atOnce;
    private final int threads;

    /**
     * Solves at some cells.
     *
     * @param problem the problem; its bores and springs do not matter
     * @param wanted the cells of which the drawdown will be asked, at least one of them active
     * @param bore the new bore
     * @param count number of cells to solve for, at most
     * @param threads threads to compute with
     */
    public OwnDrawdown(FlowProblem problem, boolean[] wanted, EffectFields.NewBore bore, int count, int threads) {
        this.problem = new FlowProblem(
                problem.aquifer(), problem.sealingBed(), problem.boundaries(), List.of(), List.of(), List.of());
        screenRadius = bore.screenRadius();
        this.threads = threads;
        local = new LocalDrawdown(problem);
        RectilinearGrid grid = problem.aquifer().grid();
        boolean[] active = problem.aquifer().active();
        int[] among = IntStream.range(0, grid.cellCount())
                .filter(cell -> wanted[cell] && active[cell])
                .toArray();
        samples = new SpreadCells(grid).choose(among, count);
        List<NearField> fields = IntStream.of(samples)
                .mapToObj(cell -> problem.nearField(grid.centreX(cell), grid.centreY(cell), screenRadius))
                .toList();
        double[] shifts = ShiftLadder.until(FASTEST / bore.shortest(), bore.longest(), SHIFTS_PER_DECADE);
        atOnce = fields.stream().mapToDouble(NearField::unresolvedAtWall).toArray();
        try (WorkerTeam team = new WorkerTeam(threads)) {
            OwnTransfers transfers = new OwnTransfers(
                    this.problem, fields.stream().map(NearField::weights).toList(), shifts, TOLERANCE, team);
            for (int i = 0; i < samples.length; i++) {
                double[] falls = transfers.falls(i);
                solved.add(
                        new ReducedModel(shifts, transfers.values(i), falls, falls).stepResponse(SMALLEST_DIRECTION));
            }
        }
    }

    /**
     * The drawdown some times after the bore has begun to take.
     *
     * @param times the times (d)
     * @return the drawdown of all cells after each of them, with its error; the same for any number of threads
     */
    public List<Estimate> after(double[] times) {
        try (WorkerTeam team = new WorkerTeam(threads)) {
            double[][] drawdown = local.after(times, screenRadius, team);
            return IntStream.range(0, times.length)
                    .mapToObj(i -> corrected(drawdown[i], times[i], team))
                    .toList();
        }
    }

    /** The estimate times a smooth factor that meets the solved cells. */
    private Estimate corrected(double[] drawdown, double time, WorkerTeam team) {
        RectilinearGrid grid = problem.aquifer().grid();
        int n = samples.length;
        double[] x = new double[n];
        double[] y = new double[n];
        double[] factors = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = grid.centreX(samples[i]);
            y[i] = grid.centreY(samples[i]);
            factors[i] = (atOnce[i] + solved.get(i).value(time)) / drawdown[samples[i]];
        }
        SmoothCorrection correction = new SmoothCorrection(x, y, factors);
        double[] errors = new double[n];
        for (int i = 0; i < n; i++) {
            errors[i] = Math.abs(correction.leftOut()[i] / factors[i]);
        }
        Arrays.sort(errors);
        team.split(drawdown.length, 1, (from, to) -> {
            for (int cell = from; cell < to; cell++) {
                drawdown[cell] *= correction.at(grid.centreX(cell), grid.centreY(cell));
            }
        });
        return new Estimate(drawdown, errors[n / 2]);
    }

    /**
     * Drawdown at the wall of a bore in each cell.
     *
     * @param drawdown drawdown per discharge of each active cell (d/m²), NaN elsewhere
     * @param relativeError relative error that half of the solved cells stay below, each left out in turn (-)
     */
    @SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, never compared
    public record Estimate(double[] drawdown, double relativeError) {}
}
