package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The reference is the simulator, run with the rates. */
class RequirementsTest {

    private static final int TOWN = 0;
    private static final int EXISTING = 2;

    @TempDir
    private Path folder;

    private AllocationDocument document;

    /** The example without springs, where effects of given rates add up, on cells of 2 km for 4 years. */
    @BeforeEach
    void copy() throws IOException {
        document = AllocationDocument.ofExample(folder, "4 yr", "1 yr", "2 yr");
        document.change(text -> text.replace("cell: 1 km", "cell: 2 km")
                .replaceAll("(?m)^springs:\\n.*\\n", "")
                .replace("    at: Brolga Springs\n", "    at: Brolga soak\n")
                .replace(
                        "  - {name: Saltbush homestead,",
                        "  - {name: Brolga soak, at: [409.5 km, 6331.5 km]}\n  - {name: Saltbush homestead,")
                .replace("    when: ever\n    at_most: 9 m", "    when: ever\n    at_most: 90 m"));
    }

    /** Metres and cubic metres a day side by side, each with its own largest difference. */
    @Test
    void differencesOfRunsAreKeptApartByUnit() {
        assertEquals(
                List.of(new AllocationResult.Difference("m", 0.5), new AllocationResult.Difference("m3/d", 40)),
                Requirements.differences(
                        List.of("m", "m3/d", "m"),
                        new double[][] {{1, 2}, {100}, {3}},
                        new double[][] {{1.25, 2}, {60}, {2.5}}));
    }

    /** Of a proposed and an existing bore that share, a limit on the effect of proposed bores counts the proposed one alone. */
    @Test
    void limitOnProposedBoresDoesNotCountExistingOnes() throws Exception {
        ScenarioReading reading = document.reading();
        RunPlan plan = document.plan();
        RateBlocks blocks = RateBlocks.of(
                reading.orThrow().planning().allocation().orElseThrow(),
                plan.description().calendar());
        int[] bores = {TOWN, EXISTING};
        double[] moments = {100, 500, 1400};
        RatesInPlan inPlan = new RatesInPlan(plan, blocks, bores);
        RunInMemory without = RunInMemory.of(
                inPlan.with(new double[2 * blocks.groups()], moments),
                PlanningResponses.of(plan, folder).orComputed(plan, (stage, fraction) -> {}),
                (stage, fraction) -> {});
        Requirements requirements = Requirements.of(plan, reading.orThrow(), new RateVariables(blocks, bores), without);
        double[] rates = new double[2 * blocks.groups()];
        Arrays.fill(rates, 0, blocks.groups(), 900);
        Arrays.fill(rates, blocks.groups(), rates.length, 600);
        RunInMemory with = RunInMemory.of(inPlan.with(rates, moments), without.responses(), (stage, fraction) -> {});
        double[][] simulated = requirements.safeMargins(with);
        RateVariables variables = new RateVariables(blocks, bores);
        RateEffects effects = new RateEffects(variables, new AquiferDrawdown(without.responses(), variables));
        double[][] superposed = effects.of(rates, requirements.all());
        BitSet proposedAlone = new BitSet();
        proposedAlone.set(0);
        int limits = 0;
        for (int r = 0; r < simulated.length; r++) {
            Requirement one = requirements.all().get(r);
            if (one.subject() instanceof Requirement.OfLimit) {
                limits++;
                assertEquals(proposedAlone, one.counted().bores(), one.name());
                for (int k = 0; k < simulated[r].length; k++) {
                    assertEquals(
                            simulated[r][k], one.base(k) - superposed[r][k], 2e-3, one.name() + " " + one.days()[k]);
                }
            }
        }
        assertEquals(3, limits);
    }
}
