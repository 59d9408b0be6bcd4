package org.headfall.scenarios.run;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.headfall.scenarios.accounts.AccountPlan;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.MapPlaces;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.scenario.Solving;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.simulation.Settings;

/**
 * A scenario made ready to run.
 *
 * @param description what the run is about; its bores and springs are those of the problem, in the same order
 * @param problem the flow problem
 * @param start heads at the start
 * @param settings accuracy and threads
 * @param stationDays days on which stations are recorded (d since the start)
 * @param gridDays days on which the grid is recorded (d since the start)
 * @param limits limits to be evaluated
 * @param mapPlaces parts of the map that limits hold for
 * @param accounts water accounts to be made of what is taken, if any
 * @param doubts whether the run is repeated to find the errors of the grid and of far boundaries
 * @param solving how heads through time are found
 */
@SuppressWarnings("ArrayRecordComponent") // made once a run and never compared
public record RunPlan(
        RunDescription description,
        FlowProblem problem,
        StartHeads start,
        Settings settings,
        double[] stationDays,
        double[] gridDays,
        List<Limit> limits,
        MapPlaces mapPlaces,
        Optional<AccountPlan> accounts,
        boolean doubts,
        Solving solving) {

    /** Copies the list and checks that the stations are those of the problem. */
    public RunPlan {
        limits = List.copyOf(limits);
        List<String> sites = description.stations().stream()
                .limit(problem.bores().size() + problem.springs().size())
                .map(station -> station.name())
                .toList();
        List<String> places = Stream.concat(
                        problem.bores().stream().map(bore -> bore.name()),
                        problem.springs().stream().map(spring -> spring.name()))
                .toList();
        if (!sites.equals(places)) {
            throw new IllegalArgumentException("stations must begin with the bores and springs of the problem, found "
                    + sites + ", need " + places);
        }
    }

    /**
     * A plan whose limits hold for no part of the map, without accounts, solved as suits.
     *
     * @param description what the run is about
     * @param problem the flow problem
     * @param start heads at the start
     * @param settings accuracy and threads
     * @param stationDays days on which stations are recorded (d since the start)
     * @param gridDays days on which the grid is recorded (d since the start)
     * @param limits limits to be evaluated
     * @param doubts whether the run is repeated
     */
    public RunPlan(
            RunDescription description,
            FlowProblem problem,
            StartHeads start,
            Settings settings,
            double[] stationDays,
            double[] gridDays,
            List<Limit> limits,
            boolean doubts) {
        this(
                description,
                problem,
                start,
                settings,
                stationDays,
                gridDays,
                limits,
                MapPlaces.NONE,
                Optional.empty(),
                doubts,
                Solving.AUTOMATIC);
    }

    /**
     * The same plan from a start before which bores were operated otherwise, with stations recorded on other days.
     *
     * @param bores bores as they were operated until the start
     * @param days days on which stations are recorded (d since the start)
     */
    RunPlan asCase(List<Bore> bores, double[] days) {
        return new RunPlan(
                description,
                problem,
                start.withBores(bores),
                settings,
                days,
                gridDays,
                limits,
                mapPlaces,
                accounts,
                doubts,
                solving);
    }

    /**
     * The same plan for stations alone, with other bores: no places on the map, accounts or repeats.
     *
     * @param bores bores, named and ordered as those of the plan
     * @param moreDays days on which stations are recorded besides those of the plan (d since the start)
     * @param kept limits to be evaluated
     * @return the plan
     */
    public RunPlan ofStations(List<Bore> bores, double[] moreDays, List<Limit> kept) {
        return new RunPlan(
                description,
                problem.withBores(bores),
                start,
                settings,
                DoubleStream.concat(Arrays.stream(stationDays), Arrays.stream(moreDays))
                        .sorted()
                        .distinct()
                        .toArray(),
                gridDays,
                kept,
                MapPlaces.NONE,
                Optional.empty(),
                false,
                solving);
    }

    /** The same plan, with the repeats that find the errors of the grid and of far boundaries. */
    public RunPlan withDoubts() {
        return new RunPlan(
                description,
                problem,
                start,
                settings,
                stationDays,
                gridDays,
                limits,
                mapPlaces,
                accounts,
                true,
                solving);
    }
}
