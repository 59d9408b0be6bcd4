package org.headfall.scenarios.results;

import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.doubts.Drift;
import org.headfall.scenarios.doubts.ErrorBudget;
import org.headfall.solver.simulation.RunStatistics;

/**
 * How exact a run is and what it took.
 *
 * @param solver steps, iterations, largest error of a step, largest discrepancy of the water balance
 * @param stationHeadError numerical error of head at each station (m), in the order of the stations
 * @param errorMethod how that error was found and what it leaves out, in a sentence
 * @param errorBudget the parts of that error, if the run was repeated to find them
 * @param drift how far heads would move if nothing changed, if that was found out
 * @param solvedBy whether heads were found by superposition or by steps, and why
 * @param answeredFrom the unit responses it was answered from; absent if it was simulated on the grid
 * @param secondsInAll elapsed time of the whole run, files and findings included (s)
 * @param peakMemory largest memory that the program held (bytes)
 * @param processors processors it could use
 */
public record RunFigures(
        RunStatistics solver,
        List<Double> stationHeadError,
        String errorMethod,
        Optional<ErrorBudget> errorBudget,
        Optional<Drift> drift,
        Optional<SolvedBy> solvedBy,
        Optional<AnsweredFrom> answeredFrom,
        double secondsInAll,
        long peakMemory,
        int processors) {

    /** Copies the list. */
    public RunFigures {
        stationHeadError = List.copyOf(stationHeadError);
    }
}
