package org.headfall.scenarios.assembly;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.raster.Averaging;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.scenarios.scenario.StartSpecification;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Recharge;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.simulation.Settings;
import org.jspecify.annotations.Nullable;

/** Makes the solver's model from a scenario. */
public final class ModelAssembly {
    private final Scenario scenario;
    private final Problems problems;
    private final ScheduleAssembly schedules;

    private ModelAssembly(Scenario scenario, Problems problems) {
        this.scenario = scenario;
        this.problems = problems;
        this.schedules = new ScheduleAssembly(scenario.period());
    }

    /**
     * The model of a scenario.
     *
     * @param scenario the scenario
     * @param problems receives what is wrong on cells
     * @param threads threads to put values at points on cells with
     * @return the model; empty if a problem has been reported
     */
    public static Optional<Model> assemble(Scenario scenario, Problems problems, int threads) {
        long before = problems.count();
        @Nullable RectilinearGrid grid = new GridAssembly(problems).grid(scenario);
        @Nullable Model model = grid == null ? null : new ModelAssembly(scenario, problems).model(grid, threads);
        return problems.count() == before ? Optional.ofNullable(model) : Optional.empty();
    }

    /**
     * The model of a scenario that differs from another in what bores do alone. The rest is taken from the other model.
     *
     * @param scenario the scenario
     * @param problems receives what is wrong on cells
     * @param like model of the other scenario
     * @return the model; empty if a problem has been reported
     */
    public static Optional<Model> assembleLike(Model like, Scenario scenario, Problems problems) {
        long before = problems.count();
        ModelAssembly assembly = new ModelAssembly(scenario, problems);
        List<Bore> bores = assembly.bores(like.problem().aquifer());
        if (problems.count() > before) {
            return Optional.empty();
        }
        FlowProblem problem = like.problem().withBores(bores);
        new BoresInCells(problem, problems).check(scenario.bores());
        if (problems.count() > before) {
            return Optional.empty();
        }
        return Optional.of(new Model(
                problem,
                like.start() instanceof Model.GivenHeads ? like.start() : assembly.steady(problem),
                like.days(),
                like.settings(),
                like.ground(),
                OutputDays.of(scenario.output(), scenario.period(), bores),
                like.spreads()));
    }

    private List<Bore> bores(Aquifer aquifer) {
        return new BoreAssembly(scenario.period(), schedules, aquifer, problems).bores(scenario.bores());
    }

    private @Nullable Model model(RectilinearGrid grid, int threads) {
        long before = problems.count();
        AreaOnCells areas = new AreaOnCells(grid, problems);
        boolean[] active = areas.active(scenario.aquifer().within());
        FieldOnCells fields = new FieldOnCells(grid, active, problems, threads);
        AquiferAssembly aquifers = new AquiferAssembly(grid, active, fields, problems);
        @Nullable Aquifer aquifer = aquifers.aquifer(scenario);
        Optional<SealingBed> bed = aquifers.sealingBed(scenario);
        List<OuterBoundary> boundaries =
                new BoundaryAssembly(grid, active, schedules, problems).boundaries(scenario.boundaries());
        List<Recharge> recharges =
                new RechargeAssembly(areas, active, fields, schedules).recharges(scenario.recharges());
        double[] ground = fields.values(scenario.ground(), Averaging.ARITHMETIC, 0);
        new HeldHeads(grid, active, problems).check(scenario, boundaries, bed);
        new PlacesInAquifer(grid, active, problems).check(scenario, aquifer);
        if (aquifer == null || problems.count() > before) {
            return null;
        }
        List<Bore> bores = bores(aquifer);
        if (problems.count() > before) {
            return null;
        }
        FlowProblem problem = new FlowProblem(aquifer, bed, boundaries, recharges, springs(), bores);
        new BoresInCells(problem, problems).check(scenario.bores());
        Settings settings = new Settings(
                scenario.output().headTolerance(), scenario.output().longestStep(), 1);
        return new Model(
                problem,
                start(problem, fields),
                scenario.period().days(),
                settings,
                ground,
                OutputDays.of(scenario.output(), scenario.period(), bores),
                fields.spreads());
    }

    private List<Spring> springs() {
        return scenario.springs().stream()
                .map(spring -> new Spring(
                        spring.name(),
                        spring.position().x(),
                        spring.position().y(),
                        spring.outlet(),
                        spring.conductance()))
                .toList();
    }

    private Model.Start start(FlowProblem problem, FieldOnCells fields) {
        StartSpecification start = scenario.start();
        if (start instanceof StartSpecification.GivenHeads given) {
            return new Model.GivenHeads(fields.values(given.heads(), Averaging.ARITHMETIC, 0));
        }
        return steady(problem);
    }

    private Model.SteadyHeads steady(FlowProblem problem) {
        return new Model.SteadyHeads(
                scenario.start() instanceof StartSpecification.SteadyWithoutBores
                        ? problem.withBores(List.of())
                        : problem.withBores(existingBores(problem)));
    }

    private List<Bore> existingBores(FlowProblem problem) {
        List<Bore> existing = new ArrayList<>();
        for (int i = 0; i < scenario.bores().size(); i++) {
            if (scenario.bores().get(i).group() == BoreSpecification.Group.EXISTING) {
                existing.add(problem.bores().get(i));
            }
        }
        return existing;
    }
}
