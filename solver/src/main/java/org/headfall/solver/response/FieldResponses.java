package org.headfall.solver.response;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.headfall.solver.flow.ChangingSource;
import org.headfall.solver.flow.ChangingSources;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.SolutionMemory;
import org.headfall.solver.flow.SourceFields;
import org.headfall.solver.flow.TransferValues;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.simulation.Settings;

/**
 * All that is needed to find heads of all cells, whatever bores and springs take: responses at stations, solutions of each
 * source as fields, and a reduced model of each source that says what sum of them its field is at any time.
 *
 * <p>The model of a field is that of its own source, with an even fall of all heads in its space so that water balances close.
 * Away from the source its error is of first order: about a tenth of a millimetre for 1,000 m³/d. How large it is, is seen at
 * the stations, where responses of second order are known as well ({@link SuperposedFields#error}).
 */
public final class FieldResponses {

    private final StationResponses stations;
    private final SourceFields fields;
    private final RelaxingModes[] models;
    private final TransferValues transfer;

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
        models = new RelaxingModes[fields.sources()];
        Arrays.setAll(models, source -> model(source, fineness.smallestDirectionOfField()));
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

    private RelaxingModes model(int source, double smallestDirection) {
        int place = placeOf(source);
        double[] falls = transfer.falls(place, place);
        ReducedModel model = new ReducedModel(transfer.shifts(), transfer.values(place, place), falls, falls);
        return model.modesWith(
                new ReducedModel.EvenFall(
                        fields.released(source),
                        fields.passed(source),
                        fields.releasedByEvenFall(),
                        fields.passedByEvenFall(),
                        fields.sumOfShares(source)),
                smallestDirection);
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

    RelaxingModes[] models() {
        return models;
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
