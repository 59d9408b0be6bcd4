package org.headfall.scenarios.monitoring;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.findings.HeadFit;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.response.SuperposedRun;
import org.headfall.solver.response.SuperposedState;

/**
 * Expected bands of all places of a run. A band holds the numerical error, and two standard deviations of how computed heads
 * have missed measured ones: 19 of 20 readings of a normal distribution (Gauss), if the misses go on as they were. Where a
 * place has three measured heads or more, their mean miss is taken off and their scatter counts; otherwise the misses of all
 * places count as scatter, since nothing says which way this place errs.
 */
public final class ExpectedBands {

    private static final int ENOUGH = 3;
    private static final double DEVIATIONS = 2;

    private final RunDescription description;
    private final Recording recording;
    private final List<Double> headErrors;
    private final Optional<HeadFit> everywhere;

    /**
     * Bands of a run.
     *
     * @param description the run, with its measured heads
     * @param answer its heads
     * @param headErrors numerical error of head at each station (m), in the order of the stations
     */
    public ExpectedBands(RunDescription description, SuperposedRun answer, List<Double> headErrors) {
        this.description = description;
        this.headErrors = List.copyOf(headErrors);
        double[] days =
                answer.states().stream().mapToDouble(SuperposedState::day).toArray();
        List<StationSeries> series = new ArrayList<>();
        for (int station = 0; station < description.stations().size(); station++) {
            int place = station;
            double[] head = answer.states().stream()
                    .mapToDouble(state -> state.head()[place])
                    .toArray();
            series.add(new StationSeries(days, head, head, head, head));
        }
        recording = new Recording(days, series, List.of(), List.of(), new double[0]);
        everywhere = HeadFit.of(description, recording).filter(fit -> fit.count() >= ENOUGH);
    }

    /** Bands of every place on the first day of the run and each year after it, by place, then by day. */
    public List<ExpectedBand> yearly() {
        RunCalendar calendar = description.calendar();
        List<ExpectedBand> bands = new ArrayList<>();
        for (int station = 0; station < description.stations().size(); station++) {
            String name = description.stations().get(station).name();
            for (int year = 0; calendar.yearsAfter(0, year) <= description.endDay(); year++) {
                bands.add(on(name, calendar.yearsAfter(0, year)));
            }
        }
        return bands;
    }

    /**
     * Band of a place on a day.
     *
     * @param station name of the place
     * @param day day of the run (d since the start)
     * @return the band
     */
    public ExpectedBand on(String station, double day) {
        int place = description.stationIndex(station);
        double computed = recording.series().get(place).headAt(day);
        double error = headErrors.get(place);
        Optional<HeadFit> here = HeadFit.at(description, recording, station).filter(fit -> fit.count() >= ENOUGH);
        if (here.isPresent()) {
            HeadFit fit = here.get();
            return new ExpectedBand(
                    station,
                    day,
                    computed,
                    computed - fit.mean(),
                    error,
                    DEVIATIONS * fit.deviation(),
                    "numerical error and the scatter of " + fit.count()
                            + " measured heads here, their mean miss taken off");
        }
        return everywhere
                .map(fit -> new ExpectedBand(
                        station,
                        day,
                        computed,
                        computed,
                        error,
                        DEVIATIONS * fit.rootMeanSquare(),
                        "numerical error and the misses of " + fit.count() + " measured heads of all places"))
                .orElseGet(
                        () -> new ExpectedBand(
                                station,
                                day,
                                computed,
                                computed,
                                error,
                                0,
                                "numerical error alone, for there are fewer than three measured heads: readings will lie farther off"));
    }
}
