package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.apache.commons.math3.special.Erf;
import org.headfall.scenarios.doubts.Drift;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.Station;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.simulation.Settings;
import org.junit.jupiter.api.Test;

/** A long strip whose western side is held 10 m above or level with the given heads, and a bore that starts later. */
class NoChangeRunTest {

    private static final double HEAD = 100;
    private static final double T = 100;
    private static final double S = 1e-3;

    private static RunPlan plan(double westernHead, StartHeads start) {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, 100, 200), Axis.uniform(0, 100, 2));
        Aquifer aquifer = Aquifer.homogeneous(grid, T, S);
        RunCalendar calendar = new RunCalendar(LocalDateTime.of(2027, 7, 1, 0, 0));
        OperatingPhase later =
                new OperatingPhase(0, new Operation.PumpedRate(Schedule.constant(200), OptionalDouble.empty()));
        List<Station> stations = List.of(
                SmallField.bore("bore", 5050, 50, OptionalDouble.empty(), OptionalDouble.empty(), true),
                new Station.ProtectedPoint("near the side", 1250, 150, HEAD, OptionalDouble.empty()));
        return new RunPlan(
                SmallField.plainRun("A strip", calendar, calendar.yearsAfter(0, 2), aquifer, stations),
                new FlowProblem(
                        aquifer,
                        Optional.empty(),
                        List.of(new OuterBoundary.FixedHead(
                                "west", SideSegment.whole(Side.WEST, grid), Schedule.constant(westernHead))),
                        List.of(),
                        List.of(),
                        List.of(new Bore("bore", 5050, 50, 0.1, WellLoss.NONE, List.of(later)))),
                start,
                Settings.DEFAULT,
                new double[0],
                new double[0],
                List.of(),
                false);
    }

    /** Carslaw and Jaeger (1959), section 2.5: a step of head at the side of a half-infinite strip. */
    @Test
    void givenHeadsDriftAsTheHeadOfTheSideComesIn() {
        double[] heads = new double[400];
        Arrays.fill(heads, HEAD);
        RunPlan plan = plan(HEAD + 10, new StartHeads.Given(heads));
        assertTrue(NoChangeRun.isNeeded(plan));
        Drift drift = NoChangeRun.drift(plan, plan.settings()).orElseThrow();
        double end = plan.description().endDay();
        assertEquals("near the side", drift.station());
        assertEquals(end, drift.day(), 1e-9);
        double expected = 10 * Erf.erfc(1250 / Math.sqrt(4 * T / S * end));
        assertEquals(expected, drift.change(), 0.005 * expected);
    }

    @Test
    void steadyHeadsDoNotDriftThoughTheBoreStartsOnTheFirstDay() {
        RunPlan plan = plan(HEAD, new StartHeads.Steady(Set.of()));
        Drift drift = NoChangeRun.drift(plan, plan.settings()).orElseThrow();
        assertEquals(0, drift.change(), 1e-4);
    }
}
