package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.stream.Stream;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The reference is the simulator, run with the rates. */
class RequirementsTest {

    private static final Path EXAMPLE = Path.of("examples", "corella");
    private static final int TOWN = 0;
    private static final int EXISTING = 2;

    @TempDir
    private Path folder;

    /** The example without springs, where effects of given rates add up, on cells of 2 km for 4 years. */
    @BeforeEach
    void copy() throws IOException {
        try (Stream<Path> files = Files.list(EXAMPLE)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
        Path document = folder.resolve("scenario.yaml");
        Files.writeString(
                document,
                Files.readString(document)
                        .replace("period: {from: 2027-07-01, for: 20 yr}", "period: {from: 2027-07-01, for: 4 yr}")
                        .replace("  for: 20 yr\n", "")
                        .replace("report_after: [1 yr, 10 yr, 20 yr]", "report_after: [1 yr]")
                        .replace("rates_change_after: 10 yr", "rates_change_after: 2 yr")
                        .replace("cell: 1 km", "cell: 2 km")
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
        ScenarioReading reading = ScenarioReader.read(folder.resolve("scenario.yaml"), FileReach.FOLDER_OF_DOCUMENT);
        RunPlan plan = RunPlanner.plan(reading, "test", 1);
        RateBlocks blocks = RateBlocks.of(
                reading.orThrow().planning().allocation().orElseThrow(),
                plan.description().calendar(),
                plan.description().endDay());
        int[] bores = {TOWN, EXISTING};
        double[] moments = {100, 500, 1400};
        RatesInPlan inPlan = new RatesInPlan(plan, blocks, bores);
        RunInMemory without = RunInMemory.of(
                inPlan.with(new double[2 * blocks.groups()], moments),
                PlanningResponses.of(plan, folder).orComputed(plan, (stage, fraction) -> {}),
                new double[0],
                (stage, fraction) -> {});
        Requirements requirements = Requirements.of(plan, reading.orThrow(), bores, blocks, without);
        double[] rates = new double[2 * blocks.groups()];
        Arrays.fill(rates, 0, blocks.groups(), 900);
        Arrays.fill(rates, blocks.groups(), rates.length, 600);
        RunInMemory with = RunInMemory.of(
                inPlan.with(rates, moments), without.responses(), new double[0], (stage, fraction) -> {});
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
