package org.headfall.scenarios.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.report.content.Hydrograph;
import org.headfall.scenarios.report.content.ReferenceLevel;
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

    private final FinishedRun run;
    private final RunDescription description;
    private final List<Double> days;

    RunSites(FinishedRun run) {
        this.run = run;
        this.description = run.description();
        this.days = RunMap.days(run);
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
        OptionalDouble intake = station instanceof Station.BoreSite bore ? bore.pumpIntake() : OptionalDouble.empty();
        return new Site(
                station.name(),
                kind,
                station instanceof Station.BoreSite bore ? bore.holder() : "",
                station.x(),
                station.y(),
                station.groundLevel(),
                station.outletLevel().orElse(Double.NaN),
                station instanceof Station.BoreSite bore ? bore.aquiferTop() : Double.NaN,
                intake.orElse(Double.NaN),
                days.stream().map(day -> state(kind, station, series, day)).toList());
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
                boolean cut = wanted > NOTHING && rate < wanted * ALL;
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
                references(station));
    }

    private List<ReferenceLevel> references(Station station) {
        List<ReferenceLevel> levels = new ArrayList<>();
        levels.add(new ReferenceLevel("Ground", station.groundLevel()));
        station.outletLevel().ifPresent(level -> levels.add(new ReferenceLevel("Outlet", level)));
        if (station instanceof Station.BoreSite bore) {
            bore.pumpIntake().ifPresent(level -> levels.add(new ReferenceLevel("Pump intake", level)));
        }
        run.limits().stream()
                .map(result -> result.limit())
                .filter(limit -> limit.station().equals(station.name()))
                .forEach(limit -> {
                    if (limit.quantity() instanceof LimitedQuantity.FloorLevel floor) {
                        levels.add(new ReferenceLevel("Limit: " + limit.name(), floor.atLeast()));
                    }
                });
        return levels;
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

    /** Lines across the whole grid through the middle of the bores, west to east and south to north. */
    List<SectionLine> sections() {
        List<Station.BoreSite> bores = description.bores();
        var x = description.grid().x();
        var y = description.grid().y();
        double middleX = median(bores.stream().mapToDouble(Station::x).toArray(), (x.start() + x.end()) / 2);
        double middleY = median(bores.stream().mapToDouble(Station::y).toArray(), (y.start() + y.end()) / 2);
        return List.of(
                new SectionLine("west to east through the bores", x.start(), middleY, x.end(), middleY),
                new SectionLine("south to north through the bores", middleX, y.start(), middleX, y.end()));
    }

    private static double median(double[] values, double otherwise) {
        Arrays.sort(values);
        return values.length == 0 ? otherwise : values[values.length / 2];
    }
}
