package org.headfall.validation.benchmark;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.headfall.scenarios.allocation.AllocationResult;
import org.headfall.scenarios.allocation.AllocationSearch;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.run.RunProgress;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.headfall.scenarios.siting.SiteSearch;
import org.headfall.scenarios.siting.SitingBase;
import org.headfall.scenarios.siting.SitingResult;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Times the search for sites with six protected points, and that for rates of twenty bores under thirty limits. */
@Command(
        name = "planning",
        mixinStandardHelpOptions = true,
        description =
                "Times the search for sites (six protected points, limits within 10 years) and the search for rates (20 bores, 50"
                        + " years of two seasons, 30 limits) in an invented field.")
final class PlanningCommand implements Callable<Integer> {

    private static final double NANO = 1e-9;
    private static final double EXTENT_KILOMETRES = 97;
    private static final int BORES = 20;
    private static final int POINTS = 6;
    private static final int LIMITS = 30;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Option(
            names = "--cells",
            defaultValue = "150000",
            description = "cells of the map of sites; default ${DEFAULT-VALUE}")
    private int cells;

    @Option(
            names = "--allocation-cells",
            defaultValue = "10000",
            description = "cells of the field whose rates are found; default ${DEFAULT-VALUE}")
    private int allocationCells;

    @Option(names = "--sites", defaultValue = "3", description = "sites to choose; default ${DEFAULT-VALUE}")
    private int sites;

    @Option(
            names = "--years-alike",
            defaultValue = "1",
            description = "years with the same rates, of 50; default ${DEFAULT-VALUE}")
    private int yearsAlike;

    @Option(names = "--threads", defaultValue = "2", description = "threads; default ${DEFAULT-VALUE}")
    private int threads;

    @Override
    public Integer call() throws InputException, IOException {
        Path folder = Files.createTempDirectory("headfall-bench");
        Path document = folder.resolve("scenario.yaml");
        try {
            Files.writeString(document, field(cells, POINTS, "10 yr") + siting());
            timeSites(document);
            Files.writeString(document, field(allocationCells, LIMITS, "50 yr") + allocation());
            timeRates(document);
        } finally {
            Files.deleteIfExists(document);
            Files.delete(folder);
        }
        return 0;
    }

    private void timeSites(Path document) throws InputException, IOException {
        ScenarioReading reading = ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT);
        RunPlan plan = RunPlanner.plan(reading, "Headfall benchmark", threads);
        SitingSpecification siting = reading.orThrow().planning().siting().orElseThrow();
        Stopwatch base = new Stopwatch();
        SitingBase run = SitingBase.of(
                plan,
                PlanningResponses.of(plan, document.resolveSibling("results")).orComputed(plan, base),
                siting,
                base);
        base.print("site run without new bores");
        Stopwatch search = new Stopwatch();
        SitingResult result = SiteSearch.in(run, siting, search);
        search.print("site search points=" + POINTS + " cells="
                + plan.description().grid().cellCount() + " sites="
                + result.sites().size());
    }

    private void timeRates(Path document) throws InputException, IOException {
        ScenarioReading reading = ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT);
        RunPlan plan = RunPlanner.plan(reading, "Headfall benchmark", threads);
        Stopwatch search = new Stopwatch();
        AllocationResult result = AllocationSearch.in(
                plan,
                List.of(),
                reading.orThrow(),
                PlanningResponses.of(plan, document.resolveSibling("results")),
                search);
        search.print("allocation bores=" + BORES + " blocks="
                + result.blocks().blocks().size() + " limits="
                + result.requirements().size() + " cells="
                + plan.description().grid().cellCount() + " simulations="
                + result.rounds().bySimulator()
                + " superposed="
                + result.rounds().bySuperposition());
    }

    /** Prints what each stage of a search takes, elapsed and in processor time, which other programs do not lengthen. */
    private final class Stopwatch implements RunProgress {
        private final long begun = System.nanoTime();
        private final double cpuBegun = ProcessorTime.seconds();
        private String stage = "";
        private long stageBegun = begun;
        private double stageCpu = cpuBegun;

        @Override
        public void reached(String reached, double share) {
            if (!reached.equals(stage)) {
                printStage();
                stage = reached;
                stageBegun = System.nanoTime();
                stageCpu = ProcessorTime.seconds();
            }
        }

        private void printStage() {
            if (!stage.isEmpty()) {
                line("  " + stage, stageBegun, stageCpu);
            }
        }

        private void print(String what) {
            printStage();
            line(what, begun, cpuBegun);
        }

        private void line(String what, long since, double cpuSince) {
            PrintWriter out = spec.commandLine().getOut();
            out.printf(
                    Locale.ROOT,
                    "%s seconds=%.2f cpu_s=%.2f%n",
                    what,
                    (System.nanoTime() - since) * NANO,
                    ProcessorTime.seconds() - cpuSince);
            out.flush();
        }
    }

    private static String field(int cells, int points, String duration) {
        double cell = EXTENT_KILOMETRES * 1000 / Math.sqrt(cells);
        StringBuilder text = new StringBuilder(String.format(Locale.ROOT, """
                title: Benchmark field
                datum: metres above an invented datum
                crs: local
                period: {from: 2026-07-01, for: %s}
                grid: {extent: {west: 0 km, east: 97 km, south: 0 km, north: 97 km}, cell: %.3f m}
                aquifer: {transmissivity: 250 m2/d, storativity: 2.0e-4, top: -60 m, bottom: -160 m}
                ground: 110 m
                sealing_bed:
                  thickness: 80 m
                  vertical_conductivity: 2e-6 m/d
                  specific_storage: 3e-6 1/m
                  head_above: 98 m
                boundaries:
                  - {name: ranges, side: east, fixed_head: 128 m}
                  - {name: basin, side: west, far_head: 96 m, distance: 50 km}
                springs:
                  - {name: spring, at: [18 km, 70 km], outlet: 101 m, conductance: 40 m2/d}
                """, duration, cell));
        text.append("protected:\n");
        for (int i = 0; i < points; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "  - {name: point %d, at: [%.2f km, %.2f km]}%n",
                    i + 1,
                    20 + 57.0 * (i % 6) / 5,
                    15 + 65.0 * Math.floorDiv(i, 6) / 5));
        }
        text.append("bores:\n");
        for (int i = 0; i < BORES; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "  - {name: bore %d, at: [%.2f km, %.2f km], holder: town, group: proposed, screen_radius: 100 mm,"
                            + " lowest_level: 20 m, pump_intake_level: 15 m, well_loss: {quadratic: 1900 s2/m5}, rate: 4 L/s}%n",
                    i + 1,
                    42 + 2.5 * (i % 5),
                    44 + 2.5 * Math.floorDiv(i, 5)));
        }
        text.append("limits:\n");
        for (int i = 0; i < points; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "  - {name: limit %d, quantity: drawdown, at: point %d, cause: proposed bores, compared_with: without them,"
                            + " when: ever, at_most: 6 m}%n",
                    i + 1,
                    i + 1));
        }
        return text.append("""
                        start: {steady: with existing bores}
                        output: {grids: [2027-07-01], bores: yearly, report_after: [1 yr], head_tolerance: 1 cm}
                        """).toString();
    }

    private String siting() {
        return String.format(Locale.ROOT, """
                siting:
                  sites: %d
                  holder: town
                  screen_radius: 100 mm
                  well_loss: {quadratic: 1900 s2/m5}
                  largest_rate: 40 L/s
                  deepest_pumping_level: 90 m
                  above_aquifer_top: 10 m
                  delivery_head: 15 m
                  efficiency: 60 %%
                  distances: {bores: 1 km, springs: 2 km, sides: 2 km}
                """, sites);
    }

    private String allocation() {
        return String.format(Locale.ROOT, """
                allocation:
                  goal: largest yield
                  largest_rate: 20 L/s
                  seasons:
                    - {from: 1 October, to: 31 March}
                    - {from: 1 April, to: 30 September}
                  rates_change_after: %d yr
                  efficiency: 60 %%
                """, yearsAlike);
    }
}
