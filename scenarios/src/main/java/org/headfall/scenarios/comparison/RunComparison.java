package org.headfall.scenarios.comparison;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.headfall.scenarios.recording.MapReference;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.responses.KeyPart;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.ResponsesReader;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsReader;

/** Two runs side by side. */
public final class RunComparison {

    /** Discharges nearer than this to each other are the same (m³/d). */
    private static final double NO_FLOW = 1e-6;

    private final FinishedRun first;
    private final FinishedRun second;
    private final List<MapDifference> maps;
    private final CommonDates common;
    private final FieldDifferences fieldDifferences;

    /**
     * Compares two runs in memory.
     *
     * @param first the run compared with
     * @param second the run of which is said how much lower its heads are
     * @throws IllegalArgumentException if their levels or positions have different references, or no recorded date or
     *     no part of the map in common; the message says which
     */
    public RunComparison(FinishedRun first, FinishedRun second) {
        this(first, second, Map.of(), Map.of());
    }

    /**
     * Compares two finished folders.
     *
     * @param first folder of the run compared with
     * @param second folder of the run of which is said how much lower its heads are
     * @return the comparison
     * @throws ResultsException if a folder holds no finished results, was changed, or they cannot be compared
     */
    public static RunComparison of(Path first, Path second) throws ResultsException {
        ResultsReader reader = new ResultsReader();
        try {
            return new RunComparison(
                    reader.read(first),
                    reader.read(second),
                    ResponsesReader.keyParts(first),
                    ResponsesReader.keyParts(second));
        } catch (IllegalArgumentException notComparable) {
            throw new ResultsException(
                    ResultsException.Kind.NOT_COMPARABLE, second, String.valueOf(notComparable.getMessage()));
        }
    }

    private RunComparison(
            FinishedRun first, FinishedRun second, Map<KeyPart, String> keyOfFirst, Map<KeyPart, String> keyOfSecond) {
        this.first = first;
        this.second = second;
        requireSame(
                "vertical datum",
                first.description().datum(),
                second.description().datum());
        requireSame("coordinate reference system", reference(first), reference(second));
        maps = MapDifference.between(first, second);
        if (maps.isEmpty()) {
            throw new IllegalArgumentException(
                    "the runs have no report date in common: " + dates(first) + " and " + dates(second));
        }
        if (maps.stream().flatMapToDouble(map -> Arrays.stream(map.lowerBy())).allMatch(Double::isNaN)) {
            throw new IllegalArgumentException("the runs have no part of the map in common");
        }
        common = new CommonDates(first, second);
        fieldDifferences = FieldDifferences.between(first, second, keyOfFirst, keyOfSecond);
    }

    private static void requireSame(String what, String ofFirst, String ofSecond) {
        if (!ofFirst.equals(ofSecond)) {
            throw new IllegalArgumentException(
                    "the runs have different references, " + what + " " + ofFirst + " and " + ofSecond);
        }
    }

    private static String reference(FinishedRun run) {
        return run.description().mapReference().map(MapReference::code).orElse("local");
    }

    private static String dates(FinishedRun run) {
        return run.recording().grids().stream()
                .map(grid -> CommonDates.date(run, grid.day()).toString())
                .collect(Collectors.joining(", "));
    }

    /** The run compared with. */
    public FinishedRun first() {
        return first;
    }

    /** The other run. */
    public FinishedRun second() {
        return second;
    }

    /** Differences of the grids on all dates for which both runs have one, in order of time. */
    public List<MapDifference> maps() {
        return maps;
    }

    /**
     * What the fields of the runs differ in besides what their bores do, in words. Unless it is empty, heads differ for that
     * reason too.
     */
    public List<String> differentFields() {
        return fieldDifferences.found();
    }

    /**
     * What the fields may differ in besides, in words: a folder without unit responses does not tell, nor do grids with other
     * cells.
     */
    public List<String> fieldsNotCompared() {
        return fieldDifferences.unknown();
    }

    /** Proposed bores that take more water in the second run than in the first: they are the cause, not affected. */
    public List<String> proposedBores() {
        return second.description().bores().stream()
                .filter(Station.BoreSite::proposed)
                .map(Station::name)
                .filter(this::takesMore)
                .toList();
    }

    /** At any moment that both record: on report dates alone a bore of another season would seem to take nothing. */
    private boolean takesMore(String bore) {
        return common.moments().stream()
                .anyMatch(moment -> taken(second, bore, moment) > taken(first, bore, moment) + NO_FLOW);
    }

    /** Discharge of a bore (m³/d), nothing in a run that does not have it. */
    private static double taken(FinishedRun run, String bore, LocalDateTime moment) {
        int index = run.description().stationIndex(bore);
        return index < 0 ? 0 : run.recording().series().get(index).dischargeAt(CommonDates.day(run, moment));
    }

    /**
     * What the second run means for whoever uses a place.
     *
     * @param place the place on a date
     * @return the meaning in words
     */
    public String meaning(StationDifference place) {
        return new Meaning(first, second).of(place.station(), place.date());
    }

    /** Stations that both runs have, on the first, last and report dates of either that lie within both. */
    public List<StationDifference> stations() {
        List<StationDifference> differences = new ArrayList<>();
        for (int i = 0; i < first.description().stations().size(); i++) {
            Station station = first.description().stations().get(i);
            int other = second.description().stationIndex(station.name());
            if (other >= 0) {
                for (LocalDate date : common.dates()) {
                    differences.add(difference(station, i, other, date));
                }
            }
        }
        return differences;
    }

    private StationDifference difference(Station station, int inFirst, int inSecond, LocalDate date) {
        StationSeries ofFirst = first.recording().series().get(inFirst);
        StationSeries ofSecond = second.recording().series().get(inSecond);
        return new StationDifference(
                station.name(),
                station.kind(),
                holder(station),
                date,
                ofFirst.headAt(CommonDates.day(first, date)),
                ofSecond.headAt(CommonDates.day(second, date)),
                ofFirst.dischargeAt(CommonDates.day(first, date)),
                ofSecond.dischargeAt(CommonDates.day(second, date)),
                error(first, inFirst) + error(second, inSecond));
    }

    private static double error(FinishedRun run, int station) {
        List<Double> errors = run.figures().stationHeadError();
        return station < errors.size() ? errors.get(station) : Double.NaN;
    }

    private static String holder(Station station) {
        return station instanceof Station.BoreSite bore ? bore.holder() : "";
    }

    /** Last day of both runs, on which stations are compared; grids may have ended before, see {@link #maps()}. */
    public LocalDate lastDate() {
        return common.dates().last();
    }

    /**
     * Stations whose head is lower in the second run by a threshold or more, by threshold, holder, date and station, without
     * the bores that are proposed in it.
     *
     * @param thresholds thresholds (m), positive
     * @return the stations, one line for each threshold and date
     */
    public List<AffectedPlace> affected(List<Double> thresholds) {
        List<AffectedPlace> affected = new ArrayList<>();
        List<String> proposed = proposedBores();
        for (StationDifference difference : stations()) {
            if (proposed.contains(difference.station())) {
                continue;
            }
            for (double threshold : thresholds) {
                if (difference.lowerBy() >= threshold) {
                    affected.add(new AffectedPlace(
                            threshold,
                            difference.date(),
                            difference.holder(),
                            difference.station(),
                            difference.kind(),
                            presentHead(difference.station()),
                            difference.lowerBy(),
                            difference.error(),
                            meaning(difference)));
                }
            }
        }
        affected.sort(Comparator.comparingDouble(AffectedPlace::threshold)
                .thenComparing(AffectedPlace::date)
                .thenComparing(AffectedPlace::holder)
                .thenComparing(AffectedPlace::station));
        return affected;
    }

    private double presentHead(String station) {
        int index = second.description().stationIndex(station);
        return second.recording().series().get(index).head()[0];
    }
}
