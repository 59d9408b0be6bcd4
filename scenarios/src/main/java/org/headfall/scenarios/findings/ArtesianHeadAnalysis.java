package org.headfall.scenarios.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.bore.WaterColumn;

/** Computes the loss of artesian head at every station from a recording. */
public final class ArtesianHeadAnalysis {

    private final RunDescription description;
    private final Recording recording;
    private final FiveYears fiveYears;

    /**
     * Analysis of a run.
     *
     * @param description the run
     * @param recording what it recorded
     */
    public ArtesianHeadAnalysis(RunDescription description, Recording recording) {
        this.description = description;
        this.recording = recording;
        fiveYears = new FiveYears(description);
    }

    /** Loss of artesian head of every station, in the order of the stations. */
    public List<ArtesianHead> ofAllStations() {
        List<ArtesianHead> losses = new ArrayList<>();
        for (int i = 0; i < description.stations().size(); i++) {
            losses.add(of(description.stations().get(i), recording.series().get(i)));
        }
        return losses;
    }

    private ArtesianHead of(Station station, StationSeries series) {
        return new ArtesianHead(
                station.name(),
                station.kind(),
                station.groundLevel(),
                station.outletLevel(),
                series.head()[0] - station.groundLevel(),
                present(series.discharge()[0]),
                hotColumn(station),
                flowByItself(station, series),
                extremes(station, series),
                description.reportDates().stream()
                        .filter(date -> date.day() <= recording.endDay() && date.day() > recording.startDay())
                        .map(date -> atDate(station, series, date.label(), date.day()))
                        .toList());
    }

    private static Optional<WaterColumn> hotColumn(Station station) {
        return station instanceof Station.BoreSite bore ? bore.hotColumn() : Optional.empty();
    }

    /** Compares head with the head that carries the bore's water, hot or not, to the outlet. */
    private static FlowByItself flowByItself(Station station, StationSeries series) {
        if (station.outletHead().isEmpty()) {
            return new FlowByItself.NoOutlet();
        }
        double outlet = station.outletHead().getAsDouble();
        double[] days = series.days();
        double[] head = headThatFlows(station, series, outlet);
        if (head[0] < outlet) {
            return new FlowByItself.NotAtStart(Crossing.above(days, head, outlet, 0));
        }
        OptionalDouble stops = Crossing.below(days, head, outlet, 0);
        if (stops.isEmpty()) {
            return new FlowByItself.Throughout();
        }
        int firstBelow = 0;
        while (head[firstBelow] >= outlet) {
            firstBelow++;
        }
        return new FlowByItself.Stops(
                stops.getAsDouble(), Crossing.above(days, head, outlet, firstBelow), head[head.length - 1] >= outlet);
    }

    /**
     * Head, but no lower than the outlet while a bore left to flow gives water: without well loss its head is that of
     * the outlet, and the error of the numbers must not make it look dry.
     */
    private static double[] headThatFlows(Station station, StationSeries series, double outlet) {
        double[] head = series.head().clone();
        if (station instanceof Station.BoreSite bore && bore.use() == Station.BoreSite.Use.FREE_FLOWING) {
            for (int i = 0; i < head.length; i++) {
                head[i] = series.discharge()[i] > 0 ? Math.max(head[i], outlet) : head[i];
            }
        }
        return head;
    }

    private ArtesianHead.AtDate atDate(Station station, StationSeries series, String label, double day) {
        double head = series.headAt(day);
        OptionalDouble level = present(series.levelInBoreAt(day));
        OptionalDouble intake = station instanceof Station.BoreSite bore ? bore.pumpIntake() : OptionalDouble.empty();
        OptionalDouble abovePump = level.isPresent() && intake.isPresent()
                ? OptionalDouble.of(level.getAsDouble() - intake.getAsDouble())
                : OptionalDouble.empty();
        return new ArtesianHead.AtDate(
                label,
                day,
                head - station.groundLevel(),
                series.head()[0] - head,
                fiveYears.meanFall(series.days(), series.head(), day),
                level,
                abovePump,
                present(series.dischargeAt(day)),
                head < StationTop.of(description, station));
    }

    private List<ArtesianHead.AtDate> extremes(Station station, StationSeries series) {
        List<ArtesianHead.AtDate> extremes = new ArrayList<>();
        extremes.add(atDate(station, series, "largest loss of head", dayOfLeast(series.days(), series.head())));
        if (station instanceof Station.BoreSite bore && bore.pumpIntake().isPresent()) {
            double day = dayOfLeast(series.days(), series.levelInBore());
            extremes.add(atDate(station, series, "least water above the pump", day));
        }
        return extremes;
    }

    private static double dayOfLeast(double[] days, double[] values) {
        int least = 0;
        for (int i = 1; i < values.length; i++) {
            least = values[i] < values[least] ? i : least;
        }
        return days[least];
    }

    private static OptionalDouble present(double value) {
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }
}
