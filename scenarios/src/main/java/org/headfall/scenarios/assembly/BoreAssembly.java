package org.headfall.scenarios.assembly;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.scenario.BoreCompletion;
import org.headfall.scenarios.scenario.BoreOperation;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.BoreSpecification.Phase;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.scenario.Season;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.PartialPenetration;
import org.headfall.solver.bore.Pipe;
import org.headfall.solver.bore.PumpCurve;
import org.headfall.solver.bore.Water;
import org.headfall.solver.bore.WaterColumn;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.wording.PlainNumber;

/** Turns bores with dates into bores with days of the period. */
final class BoreAssembly {
    private final Period period;
    private final ScheduleAssembly schedules;
    private final Aquifer aquifer;
    private final Problems problems;

    BoreAssembly(Period period, ScheduleAssembly schedules, Aquifer aquifer, Problems problems) {
        this.period = period;
        this.schedules = schedules;
        this.aquifer = aquifer;
        this.problems = problems;
    }

    List<Bore> bores(List<BoreSpecification> specifications) {
        return specifications.stream().map(this::bore).toList();
    }

    private Bore bore(BoreSpecification bore) {
        return new Bore(
                bore.name(),
                bore.position().x(),
                bore.position().y(),
                bore.screenRadius(),
                new WellLoss(
                        bore.wellLoss().linear(),
                        bore.wellLoss().turbulent(),
                        bore.wellLoss().exponent()),
                bore.completion().skin() + skinOfShortScreen(bore),
                column(bore),
                phases(bore));
    }

    /** Zero unless the document asks for it; reports a screen beyond the aquifer. */
    private double skinOfShortScreen(BoreSpecification bore) {
        Optional<BoreCompletion.Screen> screen = bore.completion().screen();
        if (screen.isEmpty() || screen.get().verticalOverHorizontal().isEmpty()) {
            return 0;
        }
        int cell = aquifer.grid().locate(bore.position().x(), bore.position().y());
        double top = aquifer.top()[cell];
        double bottom = aquifer.bottom()[cell];
        if (screen.get().top() > top
                || screen.get().bottom() < bottom
                || screen.get().top() <= screen.get().bottom()) {
            String found = "a screen from " + PlainNumber.of(screen.get().top()) + " m down to "
                    + PlainNumber.of(screen.get().bottom()) + " m";
            String allowed = "a screen within the aquifer, here from " + PlainNumber.about(top) + " m down to "
                    + PlainNumber.about(bottom) + " m";
            problems.add(bore.place(), "bore " + bore.name(), Finding.of(ProblemKind.OUT_OF_RANGE, found, allowed));
            return 0;
        }
        double thickness = top - bottom;
        return new PartialPenetration(
                        (top - screen.get().top()) / thickness,
                        (top - screen.get().bottom()) / thickness,
                        thickness,
                        screen.get().verticalOverHorizontal().get())
                .skin(bore.screenRadius());
    }

    private static WaterColumn column(BoreSpecification bore) {
        Optional<BoreCompletion.WaterTemperature> temperature =
                bore.completion().temperature();
        Optional<BoreCompletion.Screen> screen = bore.completion().screen();
        return temperature.isPresent() && screen.isPresent()
                ? new WaterColumn(
                        temperature.get().wellhead(),
                        temperature.get().screen(),
                        screen.get().middle())
                : WaterColumn.REFERENCE;
    }

    private List<OperatingPhase> phases(BoreSpecification bore) {
        List<OperatingPhase> phases = new ArrayList<>();
        for (int i = 0; i < bore.phases().size(); i++) {
            Phase phase = bore.phases().get(i);
            // a phase without a date has always been so; proposed bores have no part in a steady start
            double from = phase.from().map(period::day).orElse(Double.NEGATIVE_INFINITY);
            Operation operation = operation(bore, phase.operation());
            if (phase.season().isEmpty()) {
                phases.add(new OperatingPhase(from, operation));
            } else {
                LocalDate until = i + 1 < bore.phases().size()
                        ? bore.phases().get(i + 1).from().orElse(period.until())
                        : period.until();
                addSeasons(phases, phase.season().get(), from, period.day(until), operation);
            }
        }
        return phases;
    }

    /** On and off through the years, from a day on and before another; from the year before the period at the earliest. */
    private void addSeasons(
            List<OperatingPhase> phases, Season season, double from, double until, Operation operation) {
        phases.add(new OperatingPhase(from, new Operation.Off()));
        for (int year = period.from().getYear() - 1; year <= period.until().getYear(); year++) {
            double begins = Math.max(from, period.day(season.begins(year)));
            double ends = period.day(season.ends(year));
            if (begins >= Math.min(ends, until)) {
                continue;
            }
            if (phases.get(phases.size() - 1).fromDay() == begins) {
                phases.remove(phases.size() - 1);
            }
            phases.add(new OperatingPhase(begins, operation));
            if (ends < until) {
                phases.add(new OperatingPhase(ends, new Operation.Off()));
            }
        }
    }

    private Operation operation(BoreSpecification bore, BoreOperation operation) {
        if (operation instanceof BoreOperation.Pumped pumped) {
            return new Operation.PumpedRate(
                    schedules.schedule(pumped.rate()), bore.levels().pumpingFloor());
        }
        if (operation instanceof BoreOperation.PumpedByCurve pump) {
            return pumpedByCurve(bore, pump);
        }
        return operation instanceof BoreOperation.FreeFlow
                ? new Operation.FreeFlow(
                        bore.levels().outlet().orElseThrow(),
                        bore.completion().casing().map(casing -> pipe(bore, casing)))
                : new Operation.Off();
    }

    private static Operation pumpedByCurve(BoreSpecification bore, BoreOperation.PumpedByCurve pump) {
        OptionalDouble lowest = bore.levels().pumpingFloor();
        return new Operation.PumpedByCurve(
                new PumpCurve(numbers(pump.flows()), numbers(pump.heads())),
                pump.deliveryLevel() + pump.deliveryHead(),
                pump.riser().map(riser -> pipe(bore, riser)),
                lowest);
    }

    private static Pipe pipe(BoreSpecification bore, BoreCompletion.PipeSpecification pipe) {
        double viscosity = Water.kinematicViscosity(column(bore).meanTemperature());
        return new Pipe(pipe.diameter(), pipe.length(), pipe.roughness(), viscosity);
    }

    private static double[] numbers(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
