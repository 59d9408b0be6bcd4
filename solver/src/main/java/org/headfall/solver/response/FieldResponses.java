package org.headfall.solver.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.headfall.solver.flow.ChangingSource;
import org.headfall.solver.flow.ChangingSources;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.SolutionMemory;
import org.headfall.solver.flow.SourceFields;
import org.headfall.solver.flow.TransferValues;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.simulation.Settings;

/**
 * All that is needed to find heads of all cells, whatever bores and springs take: responses at stations, solutions of each
 * source as fields, and reduced models of the sources that say what sum of them the field is at any time.
 *
 * <p>A model of fields is a joint one of many sources, with an even fall of all heads in its space so that water balances close.
 * Its error at any cell is told by a poorer model of the same solutions ({@link SuperposedFields#error}).
 */
public final class FieldResponses {

    private final StationResponses stations;
    private final SourceFields fields;
    private final TransferValues transfer;
    private final FieldCheck check;
    private final List<JointModes> models = new ArrayList<>();
    private final List<JointModes> poorerModels = new ArrayList<>();

    private FieldResponses(
            FlowProblem problem,
            List<ObservedHead> points,
            double[] heads,
            double[] startHead,
            List<ChangingSource> sources,
            double horizon,
            SolutionMemory memory,
            Settings settings) {
        Fineness fineness = Fineness.ofFields(settings.accuracy());
        fields = new SourceFields(problem, sources, startHead, memory);
        ComputedResponses computed = new ComputedResponses(
                problem, points, sources, horizon, Optional.of(fields), fineness, settings.threads());
        stations = StationResponses.of(computed, heads, sources, horizon);
        transfer = computed.transfer();
        addModels(fineness, settings.threads());
        check = new FieldCheck(fields);
    }

    /**
     * Responses of a problem that starts from heads at rest.
     *
     * @param problem the problem
     * @param points points that take no water, receptors only
     * @param startHead head of each cell at the start, at rest with the bores that were operated until then (m above datum)
     * @param horizon longest time wanted (d)
     * @param memory where solutions are kept
     * @param settings accuracy and threads
     * @return the responses
     * @throws IllegalStateException if nothing ties heads down
     */
    public static FieldResponses fromSteady(
            FlowProblem problem,
            List<ObservedHead> points,
            double[] startHead,
            double horizon,
            SolutionMemory memory,
            Settings settings) {
        return new FieldResponses(
                problem,
                points,
                StationResponses.headsAtRest(problem, List.of(), settings),
                startHead,
                ChangingSources.afterSteady(problem),
                horizon,
                memory,
                settings);
    }

    /**
     * Responses of a problem that starts from given heads, to which the sealing bed has adjusted.
     *
     * @param problem the problem
     * @param points points that take no water, receptors only
     * @param heads head of each cell at the start (m above datum)
     * @param horizon longest time wanted (d)
     * @param memory where solutions are kept
     * @param settings accuracy and threads
     * @return the responses
     */
    public static FieldResponses fromGiven(
            FlowProblem problem,
            List<ObservedHead> points,
            double[] heads,
            double horizon,
            SolutionMemory memory,
            Settings settings) {
        return new FieldResponses(
                problem, points, heads, heads, ChangingSources.afterGiven(problem, heads), horizon, memory, settings);
    }

    /** Sources that follow each other, often near each other, go to different models: each has some everywhere. */
    private void addModels(Fineness fineness, int threads) {
        int solutions = fields.sources() * transfer.shifts().length;
        int most = fineness.solutionsOfModel();
        int groups = (solutions + most - 1) / most;
        JointModel[] joint = new JointModel[groups];
        JointModes[] modes = new JointModes[2 * groups];
        try (WorkerTeam team = new WorkerTeam(threads)) {
            team.split(groups, 1, (from, to) -> {
                for (int group = from; group < to; group++) {
                    joint[group] = model(group, groups, fineness);
                }
            });
            team.split(2 * groups, 1, (from, to) -> {
                for (int i = from; i < to; i++) {
                    modes[i] =
                            joint[i / 2].modes(i % 2 == 0 ? fineness.smallestOfFields() : fineness.smallestOfPoorer());
                }
            });
        }
        for (int group = 0; group < groups; group++) {
            models.add(modes[2 * group]);
            poorerModels.add(modes[2 * group + 1]);
        }
    }

    private JointModel model(int group, int groups, Fineness fineness) {
        int[] sources = IntStream.range(0, fields.sources())
                .filter(source -> source % groups == group)
                .toArray();
        int[] places = Arrays.stream(sources).map(this::placeOf).toArray();
        return new JointModel(transfer, fields, sources, places, fineness.smallestOfFields());
    }

    /** Place of a source among all that was solved for: observed points stand between bores and springs and the others. */
    private int placeOf(int source) {
        return source < fields.causes() ? source : transfer.receptors() + source - fields.causes();
    }

    /** Responses at bores, springs and points. */
    public StationResponses stations() {
        return stations;
    }

    SourceFields fields() {
        return fields;
    }

    /** Models of all sources, at rest. */
    CarriedModes models() {
        return new CarriedModes(models, fields.sources(), transfer.shifts().length);
    }

    /** Cells in which better and poorer models are compared. */
    FieldCheck check() {
        return check;
    }

    /** Poorer models of all sources, at rest: they err more. */
    CarriedModes poorerModels() {
        return new CarriedModes(poorerModels, fields.sources(), transfer.shifts().length);
    }

    /**
     * Drawdown at a receptor as the fields have it.
     *
     * @param receptor the receptor: bores first, then springs, then points
     * @param weights weights of the solutions, {@code [source][shift]}
     * @param discharge discharge of each bore and spring (m³/d), which near by comes on top of the fields
     */
    double drawdown(int receptor, double[][] weights, double[] discharge) {
        double sum = 0;
        for (int source = 0; source < weights.length; source++) {
            double[] values = transfer.values(receptor, placeOf(source));
            for (int shift = 0; shift < values.length; shift++) {
                sum += weights[source][shift] * values[shift];
            }
            sum += weights[source][values.length] * transfer.headAt(receptor, fields.evenField());
        }
        for (int cause = 0; cause < discharge.length; cause++) {
            sum += transfer.atOnce(receptor, cause) * discharge[cause];
        }
        return sum;
    }

    /** Head at a receptor while nothing is taken there (m above datum), from heads of all cells. */
    double headAt(int receptor, double[] head) {
        return transfer.headAt(receptor, head);
    }
}
