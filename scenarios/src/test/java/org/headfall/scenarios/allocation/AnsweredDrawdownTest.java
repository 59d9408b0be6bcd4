package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.solver.response.UnitResponses;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The reference is the simulator, run with rates that are a little larger. */
class AnsweredDrawdownTest {

    private static final int TOWN = 0;
    private static final int NEIGHBOUR = 2;

    /** Limits that are measured from heads of the run itself. */
    private static final String SINCE = """
              - {name: since a day, quantity: drawdown, at: Saltbush homestead, cause: everyone,
                 compared_with: 2029-10-01, when: ever, at_most: 9 m}
              - {name: since some years, quantity: drawdown, at: Saltbush homestead, cause: everyone,
                 compared_with: mean of 2028 to 2029, when: ever, at_most: 9 m}
              - {name: slow decline, quantity: decline rate, over: 1 yr, at: Saltbush homestead, when: after 2 yr,
                 at_most: 9 m/yr}
            """;

    private static final double CHANGE = 15;

    /** About when the spring stops (d). */
    private static final double STOP = 360;

    @TempDir
    private Path folder;

    private AllocationDocument document;

    /** The example on cells of 2 km for 4 years, with a spring that the town can bring to a stop. */
    @BeforeEach
    void copy() throws IOException {
        document = AllocationDocument.ofExample(folder, "4 yr", "1 yr", "2 yr");
        document.change(text -> text.replace("cell: 1 km", "cell: 2 km")
                .replace("group: existing", "group: proposed")
                .replace("cause: proposed bores", "cause: Corella town")
                .replace("outlet: 101 m", "outlet: 112.5 m")
                .replace("head_tolerance: 0.5 mm", "head_tolerance: 0.1 mm")
                .replace("start: {steady", SINCE + "start: {steady"));
    }

    /**
     * A limit on the effect of the town: what its neighbour takes more counts in so far as the spring answers it without the
     * town and no longer with it.
     */
    @Test
    void marginsFallAsPredictedWhicheverBoreTakesMore() throws Exception {
        ScenarioReading reading = document.reading();
        RunPlan plan = document.plan();
        RateBlocks blocks = RateBlocks.of(
                reading.orThrow().planning().allocation().orElseThrow(),
                plan.description().calendar());
        int groups = blocks.groups();
        int[] bores = {TOWN, NEIGHBOUR};
        double[] moments = {100, 500, 1400};
        RatesInPlan inPlan = new RatesInPlan(plan, blocks, bores);
        UnitResponses responses = PlanningResponses.of(plan, folder).orComputed(plan, (stage, fraction) -> {});
        double[] rates = new double[2 * groups];
        Arrays.fill(rates, 0, groups, 900);
        Arrays.fill(rates, groups, rates.length, 600);
        rates[1] = 2000;
        RunInMemory run = run(inPlan.with(rates, moments), responses);
        RateVariables variables = new RateVariables(blocks, bores);
        Requirements requirements = Requirements.of(plan, reading.orThrow(), variables, run);
        RateEffects effects = new RateEffects(variables, new AnsweredDrawdown(run, run.answers(), variables));
        assertEquals(
                6,
                requirements.all().stream()
                        .filter(one -> one.own().isEmpty() && one.days().length > 3)
                        .count());
        double[][] before = requirements.margins(run);
        double largest = 0;
        for (int bore = 0; bore < 2; bore++) {
            double[] more = rates.clone();
            double[] fewer = rates.clone();
            for (int group = 0; group < groups; group++) {
                more[bore * groups + group] += CHANGE;
                fewer[bore * groups + group] -= CHANGE;
            }
            double[][] high = requirements.margins(run(inPlan.with(more, moments), responses));
            double[][] low = requirements.margins(run(inPlan.with(fewer, moments), responses));
            for (int r = 0; r < before.length; r++) {
                Requirement one = requirements.all().get(r);
                if (one.own().isPresent()) {
                    continue;
                }
                for (int k = 0; k < one.days().length; k++) {
                    // With less the spring stops later, so just then a difference of two runs tells half of two slopes.
                    if (Math.abs(one.days()[k] - STOP) < 60) {
                        continue;
                    }
                    double expected = (low[r][k] - high[r][k]) / (2 * CHANGE);
                    double[] found = effects.coefficients(one, k);
                    double predicted = 0;
                    for (int group = 0; group < groups; group++) {
                        predicted += found[bore * groups + group];
                    }
                    assertEquals(
                            expected,
                            predicted,
                            0.005 * expected + 2e-6,
                            one.name() + " day " + one.days()[k] + " bore " + bore);
                    if (bore == 1) {
                        largest = Math.max(largest, expected);
                    }
                }
            }
        }
        assertTrue(largest > 1e-4, "largest effect of the neighbour " + largest);
    }

    private static RunInMemory run(RunPlan plan, UnitResponses responses) {
        return RunInMemory.of(plan, responses, (stage, fraction) -> {});
    }
}
