package org.headfall.scenarios.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.report.content.Hydrograph;
import org.headfall.scenarios.report.content.ReferenceLevel;
import org.headfall.scenarios.report.content.ReferenceLevel.Kind;
import org.headfall.scenarios.report.content.SectionLine;
import org.headfall.scenarios.report.content.Site;
import org.headfall.scenarios.report.content.SiteKind;
import org.headfall.scenarios.report.content.SiteState;
import org.headfall.scenarios.results.FinishedRun;

/** Bores, springs and points of a finished run, their states and series, and the lines that cut through them. */
final class RunSites {

    /** Discharge below which nothing flows (m³/d): a litre a day. */
    private static final double NOTHING = 1e-3;

    /** Share of the discharge asked for that counts as all of it. */
    private static final double ALL = 1 - 1e-6;

    /** Least half length of the section about the bores (m). */
    private static final double LEAST_REACH = 5000;

    private final FinishedRun run;
    private final RunDescription description;
    private final List<Double> days;

    /**
     * Sites of a run.
     *
     * @param run the run
     * @param days days of its map (d since the start)
     */
    RunSites(FinishedRun run, List<Double> days) {
        this.run = run;
        this.description = run.description();
        this.days = List.copyOf(days);
    }

    List<Site> sites() {
        return IntStream.range(0, description.stations().size())
                .mapToObj(this::site)
                .toList();
    }

    private Site site(int index) {
        Station station = description.stations().get(index);
        StationSeries series = run.recording().series().get(index);
        SiteKind kind = kind(station);
        Optional<Station.BoreSite> bore =
                station instanceof Station.BoreSite site ? Optional.of(site) : Optional.empty();
        return new Site(
                station.name(),
                kind,
                bore.map(Station.BoreSite::holder).orElse(""),
                station.x(),
                station.y(),
                station.groundLevel(),
                station.outletLevel().orElse(Double.NaN),
                bore.map(Station.BoreSite::aquiferTop).orElse(Double.NaN),
                level(bore, Station.BoreSite::pumpIntake),
                level(bore, Station.BoreSite::lowestLevel),
                bore.map(Station.BoreSite::proposed).orElse(false),
                bore.map(Station.BoreSite::operation).orElse(""),
                days.stream().map(day -> state(kind, station, series, day)).toList());
    }

    private static double level(Optional<Station.BoreSite> bore, Function<Station.BoreSite, OptionalDouble> level) {
        return bore.map(site -> level.apply(site).orElse(Double.NaN)).orElse(Double.NaN);
    }

    private static SiteKind kind(Station station) {
        if (station instanceof Station.SpringSite) {
            return SiteKind.SPRING;
        }
        if (!(station instanceof Station.BoreSite bore)) {
            return SiteKind.PROTECTED_POINT;
        }
        return switch (bore.use()) {
            case PUMPED -> SiteKind.PUMPED_BORE;
            case FREE_FLOWING -> SiteKind.FREE_FLOWING_BORE;
            case IDLE -> SiteKind.IDLE_BORE;
        };
    }

    /** Whether a bore gives less than is asked of it (both m³/d). */
    static boolean isCutBack(double wanted, double rate) {
        return wanted > NOTHING && rate < wanted * ALL;
    }

    private static SiteState state(SiteKind kind, Station station, StationSeries series, double day) {
        double rate = series.dischargeAt(day);
        double wanted = StationSeries.interpolate(series.days(), series.wantedDischarge(), day);
        boolean below = series.headAt(day) <= station.outletLevel().orElse(Double.NEGATIVE_INFINITY);
        return switch (kind) {
            case PROTECTED_POINT -> SiteState.WATCHED;
            case SPRING -> rate > NOTHING ? SiteState.FLOWING : SiteState.STOPPED;
            case FREE_FLOWING_BORE -> {
                SiteState dry = below ? SiteState.STOPPED : SiteState.SHUT;
                yield rate > NOTHING ? SiteState.FLOWING : dry;
            }
            case PUMPED_BORE, IDLE_BORE -> {
                boolean cut = isCutBack(wanted, rate);
                SiteState runs = Math.abs(rate) > NOTHING ? SiteState.RUNNING : SiteState.SHUT;
                yield cut ? SiteState.CUT_BACK : runs;
            }
        };
    }

    List<Hydrograph> hydrographs() {
        return IntStream.range(0, description.stations().size())
                .mapToObj(this::hydrograph)
                .toList();
    }

    private Hydrograph hydrograph(int index) {
        Station station = description.stations().get(index);
        StationSeries series = run.recording().series().get(index);
        return new Hydrograph(
                station.name(),
                series.days(),
                recorded(series.head()),
                recorded(series.levelInBore()),
                recorded(series.discharge()),
                references(station, series),
                description.measurements().stream()
                        .filter(measurement -> measurement.station().equals(station.name()))
                        .map(measurement -> new Hydrograph.Measurement(measurement.day(), measurement.head()))
                        .toList());
    }

    private List<ReferenceLevel> references(Station station, StationSeries series) {
        List<ReferenceLevel> levels = new ArrayList<>();
        levels.add(new ReferenceLevel(Kind.GROUND, "Ground", station.groundLevel()));
        station.outletLevel().ifPresent(level -> levels.add(new ReferenceLevel(Kind.OUTLET, "Outlet", level)));
        if (station instanceof Station.BoreSite bore) {
            levels.add(new ReferenceLevel(Kind.AQUIFER_TOP, "Top of the aquifer", bore.aquiferTop()));
            bore.pumpIntake()
                    .ifPresent(level -> levels.add(new ReferenceLevel(Kind.PUMP_INTAKE, "Pump intake", level)));
            bore.lowestLevel()
                    .ifPresent(level -> levels.add(new ReferenceLevel(Kind.LOWEST_LEVEL, "Lowest level", level)));
        }
        run.limits().stream()
                .map(result -> result.limit())
                .filter(limit -> limit.station().equals(station.name()))
                .forEach(limit -> {
                    if (limit.quantity() instanceof LimitedQuantity.FloorLevel floor) {
                        levels.add(new ReferenceLevel(Kind.LIMIT, "Limit: " + limit.name(), floor.atLeast()));
                    }
                    if (limit.quantity() instanceof LimitedQuantity.Drawdown drawdown
                            && limit.comparison() instanceof Comparison.Start) {
                        levels.add(allowed(limit, drawdown.atMost(), series));
                    }
                });
        return levels;
    }

    /** Head that a drawdown since the start may reach. */
    private static ReferenceLevel allowed(Limit limit, double atMost, StationSeries series) {
        return new ReferenceLevel(Kind.LIMIT, "Limit: " + limit.name(), series.head()[0] - atMost);
    }

    /** The values, or none at all where none was recorded. */
    private static float[] recorded(double[] values) {
        if (Arrays.stream(values).allMatch(Double::isNaN)) {
            return new float[0];
        }
        float[] copy = new float[values.length];
        for (int i = 0; i < values.length; i++) {
            copy[i] = (float) values[i];
        }
        return copy;
    }

    /** Lines through the middle of the bores: about the proposed ones, and across the whole grid both ways. */
    List<SectionLine> sections() {
        List<Station.BoreSite> bores = description.bores();
        List<Station.BoreSite> proposed =
                bores.stream().filter(Station.BoreSite::proposed).toList();
        List<Station.BoreSite> middle = proposed.isEmpty() ? bores : proposed;
        var x = description.grid().x();
        var y = description.grid().y();
        double middleX = median(middle.stream().mapToDouble(Station::x).toArray(), (x.start() + x.end()) / 2);
        double middleY = median(middle.stream().mapToDouble(Station::y).toArray(), (y.start() + y.end()) / 2);
        double reach = Math.max(
                LEAST_REACH,
                2
                        * middle.stream()
                                .mapToDouble(bore -> Math.abs(bore.x() - middleX))
                                .max()
                                .orElse(0));
        return List.of(
                new SectionLine(
                        "west to east through the bores",
                        Math.max(x.start(), middleX - reach),
                        middleY,
                        Math.min(x.end(), middleX + reach),
                        middleY),
                new SectionLine("west to east across the whole area", x.start(), middleY, x.end(), middleY),
                new SectionLine("south to north across the whole area", middleX, y.start(), middleX, y.end()));
    }

    private static double median(double[] values, double otherwise) {
        Arrays.sort(values);
        return values.length == 0 ? otherwise : values[values.length / 2];
    }
}
