package org.headfall.scenarios.comparison;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.MapReference;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.ResponsesReader;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsReader;
import org.headfall.solver.grid.RectilinearGrid;

/** Two runs side by side. */
public final class RunComparison {

    /** Discharges nearer than this to each other are the same (m³/d). */
    private static final double NO_FLOW = 1e-6;

    private final FinishedRun first;
    private final FinishedRun second;
    private final List<MapDifference> maps;
    private final NavigableSet<LocalDate> commonDates;
    private final Set<LocalDateTime> commonMoments;
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
            FinishedRun first, FinishedRun second, Map<String, String> keyOfFirst, Map<String, String> keyOfSecond) {
        this.first = first;
        this.second = second;
        requireSame(
                "vertical datum",
                first.description().datum(),
                second.description().datum());
        requireSame("coordinate reference system", reference(first), reference(second));
        maps = differencesOfMaps();
        if (maps.isEmpty()) {
            throw new IllegalArgumentException(
                    "the runs have no report date in common: " + dates(first) + " and " + dates(second));
        }
        if (maps.stream().flatMapToDouble(map -> Arrays.stream(map.lowerBy())).allMatch(Double::isNaN)) {
            throw new IllegalArgumentException("the runs have no part of the map in common");
        }
        commonDates = commonDates();
        commonMoments = commonMoments();
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
                .map(grid -> date(run, grid.day()).toString())
                .collect(Collectors.joining(", "));
    }

    private static LocalDate date(FinishedRun run, double day) {
        return run.description().calendar().at(day).toLocalDate();
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
        return commonMoments.stream()
                .anyMatch(moment -> taken(second, bore, moment) > taken(first, bore, moment) + NO_FLOW);
    }

    /** Discharge of a bore (m³/d), nothing in a run that does not have it. */
    private static double taken(FinishedRun run, String bore, LocalDateTime moment) {
        int index = run.description().stationIndex(bore);
        return index < 0 ? 0 : run.recording().series().get(index).dischargeAt(day(run, moment));
    }

    /** What both runs record, and the dates of {@link #commonDates()}. */
    private Set<LocalDateTime> commonMoments() {
        Set<LocalDateTime> moments = recorded(first);
        moments.retainAll(recorded(second));
        commonDates.forEach(date -> moments.add(date.atStartOfDay()));
        return moments;
    }

    private static Set<LocalDateTime> recorded(FinishedRun run) {
        return Arrays.stream(run.recording().days())
                .mapToObj(run.description().calendar()::at)
                .collect(Collectors.toCollection(TreeSet::new));
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

    private List<MapDifference> differencesOfMaps() {
        Map<LocalDate, HeadGrid> others = new LinkedHashMap<>();
        second.recording().grids().forEach(grid -> others.put(date(second, grid.day()), grid));
        List<MapDifference> differences = new ArrayList<>();
        for (HeadGrid grid : first.recording().grids()) {
            LocalDate date = date(first, grid.day());
            if (others.containsKey(date)) {
                double[] other = onFirstGrid(others.get(date).head());
                double[] lower = new double[other.length];
                Arrays.setAll(lower, cell -> grid.head()[cell] - other[cell]);
                differences.add(new MapDifference(date, grid.day(), lower));
            }
        }
        return differences;
    }

    private double[] onFirstGrid(double[] head) {
        RectilinearGrid from = second.description().grid();
        RectilinearGrid to = first.description().grid();
        boolean same = Arrays.equals(from.x().edges(), to.x().edges())
                && Arrays.equals(from.y().edges(), to.y().edges());
        return same ? head : new HeadsOnOtherGrid(from, to).of(head);
    }

    /** Stations that both runs have, on the first, last and report dates of either that lie within both. */
    public List<StationDifference> stations() {
        List<StationDifference> differences = new ArrayList<>();
        for (int i = 0; i < first.description().stations().size(); i++) {
            Station station = first.description().stations().get(i);
            int other = second.description().stationIndex(station.name());
            if (other >= 0) {
                for (LocalDate date : commonDates) {
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
                ofFirst.headAt(day(first, date)),
                ofSecond.headAt(day(second, date)),
                ofFirst.dischargeAt(day(first, date)),
                ofSecond.dischargeAt(day(second, date)),
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
        return commonDates.last();
    }

    private NavigableSet<LocalDate> commonDates() {
        NavigableSet<LocalDate> dates = new TreeSet<>();
        for (FinishedRun run : List.of(first, second)) {
            RunDescription description = run.description();
            dates.add(date(run, 0));
            description.reportDates().forEach(report -> dates.add(date(run, report.day())));
            dates.add(date(run, run.recording().endDay()));
        }
        dates.removeIf(date -> !lasts(first, date) || !lasts(second, date));
        return dates;
    }

    private static boolean lasts(FinishedRun run, LocalDate date) {
        double day = day(run, date);
        return day >= run.recording().startDay() && day <= run.recording().endDay();
    }

    private static double day(FinishedRun run, LocalDate date) {
        return day(run, date.atStartOfDay());
    }

    private static double day(FinishedRun run, LocalDateTime moment) {
        return run.description().calendar().day(moment);
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
