package org.headfall.solver.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.EffectTransfers;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.HeadDependence;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.nearfield.SeenPlace;

/**
 * Drawdown at some receptors by a new bore at the centre of any cell that has taken a unit discharge for some time. By
 * reciprocity it is the drawdown of all cells by a bore at the receptor: one backward solution a receptor serves every
 * place. Springs and bores whose discharge follows head give back what a state of the field says ({@link
 * HeadDependence}).
 *
 * <p>Fields in time come of the modes of a reduced model that meets the solutions at shifts ({@link ReducedModel}). Away
 * from the receptor the error of such a model is of first order only, so shifts stand closer than for responses
 * between given places.
 */
public final class EffectFields {

    private static final int SHIFTS_PER_DECADE = 4;

    /** Shifts reach this many times beyond the inverse of the first time wanted. */
    private static final double FASTEST = 30;

    /** Cells around a receptor in which the value of a cell is not yet the drawdown at its centre. */
    private static final int NEAR_CELLS = 3;

    private final EffectTransfers transfers;
    private final RelaxingModes[] modes;
    private final List<Giver> givers;
    private final List<List<NearCell>> nearCells = new ArrayList<>();
    private final List<Optional<SeenPlace>> places;

    @SuppressWarnings("ArrayRecordComponent") // read in one loop, never compared
    private record NearCell(int cell, CellWeights weights, double unresolved, double[] ofGivers) {}

    /** A bore that gives back: its number among all that do, and its near field. */
    private record Giver(int number, NearField field) {}

    /**
     * A place whose drawdown is wanted.
     *
     * @param station its number: bores of the problem, then its springs, then observed points
     * @param cell the cell it stands in
     * @param place how the grid sees it; none for a spring, which sees its cell as it is
     */
    public record Receptor(int station, int cell, Optional<SeenPlace> place) {

        /** A bore or an observed point. */
        public static Receptor at(int station, SeenPlace place) {
            return new Receptor(station, place.cell(), Optional.of(place));
        }

        /** A spring. */
        public static Receptor spring(int station, int cell) {
            return new Receptor(station, cell, Optional.empty());
        }
    }

    /**
     * Solves for the fields of all receptors.
     *
     * @param problem the problem
     * @param dependence bores and springs that give back
     * @param observed points that take no water
     * @param receptors the receptors
     * @param bore the new bore
     * @param threads threads of the linear solver
     */
    public EffectFields(
            FlowProblem problem,
            HeadDependence dependence,
            List<ObservedHead> observed,
            List<Receptor> receptors,
            NewBore bore,
            int threads) {
        int[] stations = receptors.stream().mapToInt(Receptor::station).toArray();
        double[] shifts = ShiftLadder.until(FASTEST / bore.shortest(), bore.longest(), SHIFTS_PER_DECADE);
        try (WorkerTeam team = new WorkerTeam(threads)) {
            transfers = new EffectTransfers(problem, dependence, observed, stations, shifts, team);
        }
        modes = new RelaxingModes[stations.length];
        Arrays.setAll(modes, this::modesOf);
        givers = givers(problem, dependence);
        places = receptors.stream().map(Receptor::place).toList();
        receptors.forEach(receptor -> nearCells.add(near(problem, givers, receptor, bore.screenRadius())));
    }

    /**
     * A new bore, wherever it may stand.
     *
     * @param screenRadius radius at the face of its screen (m), positive
     * @param shortest shortest time of taking that will be asked for (d), positive
     * @param longest longest time (d)
     */
    public record NewBore(double screenRadius, double shortest, double longest) {}

    private RelaxingModes modesOf(int receptor) {
        double[] falls = transfers.falls(receptor);
        return new ReducedModel(transfers.shifts(), transfers.values(receptor), falls, falls)
                .modes(Fineness.USUAL.smallestDirection());
    }

    /** Cells around the receptor and around the bores that give back, each once. */
    private static List<NearCell> near(FlowProblem problem, List<Giver> givers, Receptor receptor, double radius) {
        Aquifer aquifer = problem.aquifer();
        Set<Integer> around = new TreeSet<>();
        addAround(aquifer, receptor.cell(), around);
        for (Giver giver : givers) {
            addAround(aquifer, giver.field().cell(), around);
        }
        List<NearCell> cells = new ArrayList<>();
        for (int cell : around) {
            RectilinearGrid grid = aquifer.grid();
            NearField bore = problem.nearField(grid.centreX(cell), grid.centreY(cell), radius);
            double unresolved =
                    receptor.place().map(place -> place.unresolvedFrom(bore)).orElse(0.0);
            double[] ofGivers = givers.stream()
                    .mapToDouble(giver -> giver.field().unresolvedFrom(bore))
                    .toArray();
            cells.add(new NearCell(cell, bore.weights(), unresolved, ofGivers));
        }
        return cells;
    }

    private static void addAround(Aquifer aquifer, int centre, Set<Integer> cells) {
        RectilinearGrid grid = aquifer.grid();
        int column = grid.column(centre);
        int row = grid.row(centre);
        int north = Math.min(grid.rows() - 1, row + NEAR_CELLS);
        int east = Math.min(grid.columns() - 1, column + NEAR_CELLS);
        for (int j = Math.max(0, row - NEAR_CELLS); j <= north; j++) {
            for (int i = Math.max(0, column - NEAR_CELLS); i <= east; i++) {
                if (aquifer.active()[j * grid.columns() + i]) {
                    cells.add(j * grid.columns() + i);
                }
            }
        }
    }

    private static List<Giver> givers(FlowProblem problem, HeadDependence dependence) {
        List<Giver> givers = new ArrayList<>();
        for (int i = 0; i < dependence.points().size(); i++) {
            int index = dependence.points().get(i).index();
            if (index < problem.bores().size()) {
                Bore bore = problem.bores().get(index);
                givers.add(new Giver(i, problem.nearField(bore.x(), bore.y(), bore.screenRadius())));
            }
        }
        return givers;
    }

    /** Number of receptors. */
    public int receptors() {
        return modes.length;
    }

    /**
     * Drawdown at a receptor by a unit discharge in any cell.
     *
     * @param receptor the receptor
     * @param time how long the discharge has lasted (d)
     * @return drawdown per discharge of each cell (d/m²)
     */
    public double[] after(int receptor, double time) {
        double[] sum = carried(receptor, time);
        List<NearCell> near = nearCells.get(receptor);
        double[] back = transfers.givenBack(receptor, sum);
        double[] exact =
                near.stream().mapToDouble(cell -> atCentre(cell, sum, back)).toArray();
        for (int i = 0; i < exact.length; i++) {
            sum[near.get(i).cell()] = exact[i];
        }
        return sum;
    }

    /** Drawdown of each cell as the grid carries it. */
    private double[] carried(int receptor, double time) {
        double[] weights = modes[receptor].stepWeights(time);
        double[][] fields = transfers.fields(receptor);
        double[] sum = new double[fields[0].length];
        for (int shift = 0; shift < weights.length; shift++) {
            double weight = weights[shift];
            double[] field = fields[shift];
            for (int cell = 0; cell < sum.length; cell++) {
                sum[cell] += weight * field[cell];
            }
        }
        return sum;
    }

    /**
     * Drawdown at a receptor by a unit discharge of one bore, with its own near field: exact but for the reduced model also
     * where transmissivity varies from cell to cell, where a cell far from the receptor stands for a bore at its centre in
     * {@link #after} only to some per cent.
     *
     * @param receptor the receptor
     * @param bore the near field of the bore
     * @param time how long the discharge has lasted (d)
     * @return drawdown per discharge (d/m²)
     */
    public double by(int receptor, NearField bore, double time) {
        double[] carried = new double[transfers.fields(receptor)[0].length];
        carry(receptor, time, bore.weights().cells(), carried);
        carry(receptor, time, transfers.givingCells(), carried);
        double unresolved =
                places.get(receptor).map(place -> place.unresolvedFrom(bore)).orElse(0.0);
        double[] ofGivers = givers.stream()
                .mapToDouble(giver -> giver.field().unresolvedFrom(bore))
                .toArray();
        NearCell cell = new NearCell(bore.cell(), bore.weights(), unresolved, ofGivers);
        return atCentre(cell, carried, transfers.givenBack(receptor, carried));
    }

    /**
     * Drawdown at a receptor by a unit discharge of a spring, which takes it from its cell as it is.
     *
     * @param receptor the receptor, another place
     * @param cell the cell of the spring
     * @param time how long the discharge has lasted (d)
     * @return drawdown per discharge (d/m²)
     */
    public double bySpring(int receptor, int cell, double time) {
        return carried(receptor, modes[receptor].stepWeights(time), cell);
    }

    /** Sets the drawdown of some cells as the grid carries it. */
    private void carry(int receptor, double time, int[] cells, double[] carried) {
        double[] weights = modes[receptor].stepWeights(time);
        for (int cell : cells) {
            carried[cell] = carried(receptor, weights, cell);
        }
    }

    private double carried(int receptor, double[] weights, int cell) {
        double[][] fields = transfers.fields(receptor);
        double sum = 0;
        for (int shift = 0; shift < weights.length; shift++) {
            sum += weights[shift] * fields[shift][cell];
        }
        return sum;
    }

    private double atCentre(NearCell cell, double[] field, double[] back) {
        double drawdown = cell.weights().of(field) + cell.unresolved();
        for (int i = 0; i < givers.size(); i++) {
            drawdown -= back[givers.get(i).number()] * cell.ofGivers()[i];
        }
        return drawdown;
    }

    /**
     * Drawdown of a receptor that is a bore by its own unit discharge.
     *
     * @param receptor the receptor
     * @param time how long the discharge has lasted (d)
     * @return drawdown per discharge at its wall (d/m²)
     */
    public double own(int receptor, double time) {
        double sum = transfers.atOnce(receptor);
        for (int mode = 0; mode < modes[receptor].decay().length; mode++) {
            double source = modes[receptor].source()[mode];
            sum += source * source * StepResponse.relaxed(modes[receptor].decay()[mode], time);
        }
        return sum;
    }
}
