package org.headfall.scenarios.spacing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.headfall.scenarios.doubts.CoarserProblem;
import org.headfall.scenarios.doubts.WiderCellsException;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.quantity.LiftEnergy;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunProgress;
import org.headfall.scenarios.scenario.LayoutPlaces;
import org.headfall.scenarios.scenario.SpacingSpecification;
import org.headfall.scenarios.scenario.SpacingSpecification.Layout;
import org.headfall.scenarios.scenario.SpacingSpecification.Prices;
import org.headfall.scenarios.spatial.Position;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.HeadDependence;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.response.EffectFields;

/** Compares layouts of a bore field over number and spacing of the bores. */
public final class SpacingComparison {

    private static final double RELATIVE = 1e-6;
    private static final int MOST_EVALUATIONS = 300;

    private final SpacingSpecification spacing;
    private final GriddedResponse response;
    private final double cellWidth;
    private final double depth;
    private final double lowered;
    private final WellLoss loss;
    private final double yieldAlone;

    /**
     * Comparison for an aquifer whose response is known without a grid.
     *
     * @param spacing what is compared
     * @param response drawdown per discharge by distance (d/m²), at zero that at the wall
     * @param depth lift to the level that stands in a bore that takes nothing (m), negative where it rises higher
     * @param lowered what of that depth bores outside the field cause (m), negative where they raise heads
     */
    SpacingComparison(SpacingSpecification spacing, DoubleUnaryOperator response, double depth, double lowered) {
        this(spacing, GriddedResponse.exact(response), 0, depth, lowered);
    }

    /**
     * Comparison for an aquifer on a grid.
     *
     * @param spacing what is compared
     * @param response drawdown per discharge by distance
     * @param cellWidth width of the cell in the middle of the field (m)
     * @param depth lift to the level that stands in a bore that takes nothing (m), negative where it rises higher
     * @param lowered what of that depth bores outside the field cause (m), negative where they raise heads
     */
    SpacingComparison(
            SpacingSpecification spacing, GriddedResponse response, double cellWidth, double depth, double lowered) {
        this.spacing = spacing;
        this.response = response;
        this.cellWidth = cellWidth;
        this.depth = depth;
        this.lowered = lowered;
        loss = new WellLoss(
                spacing.wellLoss().linear(),
                spacing.wellLoss().turbulent(),
                spacing.wellLoss().exponent());
        yieldAlone = new FieldLayout(List.of(new Position(0, 0)), response.response(), loss).totalRate(available());
    }

    /**
     * Compares layouts in the field of a plan.
     *
     * @param plan the plan, whose bores take as the document says
     * @param spacing what is compared
     * @param progress is told how far the work has come
     * @return the layouts
     */
    public static SpacingResult in(RunPlan plan, SpacingSpecification spacing, RunProgress progress) {
        Position at = spacing.at();
        double head = RunInMemory.headAt(plan, at, spacing.days(), progress);
        double untouched = plan.problem().bores().isEmpty()
                ? head
                : RunInMemory.headWithoutTakingAt(plan, at, spacing.days(), progress);
        progress.reached("solving for the response of the aquifer", 0);
        RunDescription run = plan.description();
        FlowProblem alone = plan.problem().withBores(List.of());
        int cell = run.grid().locate(at.x(), at.y());
        GriddedResponse response = new GriddedResponse(
                radial(alone, spacing, plan.settings().threads()),
                coarser(alone)
                        .map(wider -> radial(wider, spacing, plan.settings().threads())));
        double depth = run.ground()[cell] + spacing.deliveryHead() - head;
        double lowered = untouched - head;
        double cellWidth = Math.sqrt(run.grid().area(cell));
        return new SpacingComparison(spacing, response, cellWidth, depth, lowered).compare();
    }

    /** The field on cells twice as wide; absent if a boundary is too short for them. */
    private static Optional<FlowProblem> coarser(FlowProblem problem) {
        try {
            return Optional.of(CoarserProblem.of(problem).problem());
        } catch (WiderCellsException known) {
            return Optional.empty();
        }
    }

    /** Response to a bore in the middle of the field, by distance. */
    static RadialResponse radial(FlowProblem problem, SpacingSpecification spacing, int threads) {
        Position at = spacing.at();
        NearField field = problem.nearField(at.x(), at.y(), spacing.screenRadius());
        EffectFields fields = new EffectFields(
                problem,
                HeadDependence.none(),
                List.of(ObservedHead.atWall(field, List.of())),
                List.of(EffectFields.Receptor.at(problem.springs().size(), field)),
                new EffectFields.NewBore(spacing.screenRadius(), spacing.days() / 10, spacing.days()),
                threads);
        double atWall = fields.own(0, spacing.days()) + field.unresolvedAtWall();
        return new RadialResponse(
                problem.aquifer(), fields.after(0, spacing.days()), at.x(), at.y(), spacing.screenRadius(), atWall);
    }

    SpacingResult compare() {
        List<SpacingResult.Line> lines = new ArrayList<>();
        List<SpacingResult.Line> economic = new ArrayList<>();
        double[] distances = new double[spacing.steps()];
        Arrays.setAll(
                distances,
                i -> spacing.from() * Math.pow(spacing.to() / spacing.from(), (double) i / (spacing.steps() - 1)));
        RepeatedLayouts repeated = new RepeatedLayouts();
        for (Layout layout : spacing.layouts()) {
            for (int count : spacing.counts()) {
                if (repeated.isOneBefore(layout, count)) {
                    continue;
                }
                List<SpacingResult.Line> found = Arrays.stream(distances)
                        .mapToObj(distance -> line(layout, count, distance))
                        .toList();
                lines.addAll(found);
                economic.add(cheapest(layout, count, found));
            }
        }
        return new SpacingResult(lines, economic, spacing, lowered, cellWidth, repeated.words());
    }

    /** Between the neighbours of the cheapest of the spacings looked at, whose lines are given. */
    private SpacingResult.Line cheapest(Layout layout, int count, List<SpacingResult.Line> lines) {
        int best = 0;
        for (int i = 1; i < lines.size(); i++) {
            if (lines.get(i).cost() < lines.get(best).cost()) {
                best = i;
            }
        }
        double low = lines.get(Math.max(0, best - 1)).spacing();
        double high = lines.get(Math.min(lines.size() - 1, best + 1)).spacing();
        double found = new BrentOptimizer(RELATIVE, RELATIVE * low)
                .optimize(
                        new MaxEval(MOST_EVALUATIONS),
                        GoalType.MINIMIZE,
                        new UnivariateObjectiveFunction(distance -> cost(layout, count, distance)),
                        new SearchInterval(low, high, lines.get(best).spacing()))
                .getPoint();
        return line(layout, count, found);
    }

    /**
     * A layout at work at the total rate that was asked for.
     *
     * @param places where its bores stand (m)
     * @param bores their drawdown and yield
     * @param drawdown drawdown in each of them (m)
     * @param lift mean lift (m)
     * @param pipe length of pipe (m)
     * @param energy energy (kWh/ML)
     * @param cost cost, pipes and bores included (per ML)
     */
    @SuppressWarnings("ArrayRecordComponent") // read at once, never compared
    private record AtWork(
            List<Position> places,
            FieldLayout bores,
            double[] drawdown,
            double lift,
            double pipe,
            double energy,
            double cost) {}

    private AtWork atWork(Layout layout, int count, double distance) {
        List<Position> places = LayoutPlaces.of(layout, count, distance);
        FieldLayout bores = new FieldLayout(places, response.response(), loss);
        double[] drawdown = bores.drawdown(spacing.rate() / count);
        double lift = meanLift(depth, drawdown);
        double pipe = LayoutDistances.pipe(places);
        double energy = LiftEnergy.perMegalitre(lift, spacing.efficiency());
        return new AtWork(places, bores, drawdown, lift, pipe, energy, cost(energy, pipe, count));
    }

    private double cost(double energy, double pipe, int count) {
        Prices prices = spacing.prices();
        double yearly = prices.yearlyShare() * (prices.pipe() * pipe + prices.bore() * count);
        return prices.energy() * energy + yearly / DischargeUnit.MEGALITRES_PER_YEAR.of(spacing.rate());
    }

    private double cost(Layout layout, int count, double distance) {
        return atWork(layout, count, distance).cost();
    }

    /** Drawdown that the given lift leaves for bores to cause (m). */
    private double available() {
        return spacing.lift() - depth;
    }

    SpacingResult.Line line(Layout layout, int count, double distance) {
        AtWork found = atWork(layout, count, distance);
        double each = spacing.rate() / count;
        double yield = found.bores().totalRate(available());
        double apart = count * yieldAlone;
        return new SpacingResult.Line(
                layout,
                count,
                distance,
                yield,
                apart > 0 ? 1 - yield / apart : 0,
                found.lift(),
                found.lift() - meanLift(depth - lowered, found.drawdown()),
                Math.max(0, depth + Arrays.stream(found.drawdown()).max().orElseThrow()),
                found.bores().interference(each),
                found.pipe(),
                found.energy(),
                found.cost(),
                gridError(found, each, distance, yield));
    }

    private SpacingResult.GridError gridError(AtWork found, double each, double distance, double yield) {
        if (response.coarser().isEmpty()) {
            return new SpacingResult.GridError(Double.NaN, Double.NaN, Double.NaN);
        }
        FieldLayout atMost = new FieldLayout(found.places(), response::atMost, loss);
        return new SpacingResult.GridError(
                response.relativeError(distance),
                meanLift(depth, atMost.drawdown(each)) - found.lift(),
                yield - atMost.totalRate(available()));
    }

    /** No lift is less than nothing: water that rises higher than it is wanted does not lift that of other bores. */
    private static double meanLift(double depth, double[] drawdown) {
        return Arrays.stream(drawdown)
                .map(one -> Math.max(0, depth + one))
                .average()
                .orElseThrow();
    }
}
