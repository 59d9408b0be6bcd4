package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitEvaluation;
import org.headfall.scenarios.limits.LimitMargins;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.MoreBores;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WaterColumn;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.schedule.Schedule;

/**
 * The chosen sites run through the simulator: what it says of their effects and levels beside what was predicted.
 *
 * @param lines one a limit that counts the new bores
 * @param levels lowest level in each new bore (m above datum)
 */
public record SiteCheck(List<Line> lines, List<Double> levels) {

    /** Copies the lists. */
    public SiteCheck {
        lines = List.copyOf(lines);
        levels = List.copyOf(levels);
    }

    /**
     * Effect of all sites together on a limited value.
     *
     * @param limit the limit and its place
     * @param unit unit of the value
     * @param day the day (d)
     * @param predicted effect as superposed
     * @param simulated effect as simulated
     */
    public record Line(String limit, String unit, double day, double predicted, double simulated) {}

    /**
     * Simulates.
     *
     * @param base the run without the sites
     * @param siting what was looked for
     * @param result what was found
     * @return what the simulator says
     */
    public static SiteCheck of(RunInMemory base, SitingSpecification siting, SitingResult result) {
        return of(base, siting, result, run(base, siting, result));
    }

    /** What all stations do, the sites after the other bores, as simulated with all sites. */
    static RunSeries run(RunInMemory base, SitingSpecification siting, SitingResult result) {
        return RunInMemory.taking(plan(base, siting, result));
    }

    private static RunPlan plan(RunInMemory base, SitingSpecification siting, SitingResult result) {
        return MoreBores.in(
                base.plan(),
                result.sites().stream().map(site -> bore(site, siting)).toList(),
                result.sites().stream()
                        .map(site -> station(site, siting, result.run()))
                        .toList());
    }

    static SiteCheck of(RunInMemory base, SitingSpecification siting, SitingResult result, RunSeries with) {
        int bores = result.run().bores().size();
        List<Double> levels = new ArrayList<>();
        for (int i = 0; i < result.sites().size(); i++) {
            levels.add(lowest(with.series().get(bores + i), siting.days()));
        }
        Map<String, Line> lines = new LinkedHashMap<>();
        for (Site site : result.sites()) {
            for (Site.Effect effect : site.effects()) {
                lines.merge(effect.limit(), line(effect, 0), (old, one) -> line(effect, old.predicted()));
            }
        }
        List<Line> simulated = new ArrayList<>();
        List<StationSeries> kept = ofTheBase(base, with.series());
        LimitEvaluation ofVolumes = new LimitEvaluation(
                plan(base, siting, result).description(),
                with,
                new double[with.series().size()],
                List.of());
        for (Limit limit : base.plan().limits()) {
            Line line = lines.get(limit.nameAndPlace());
            if (line != null) {
                double effect = limit.place() instanceof LimitPlace.Together together
                        ? left(base.margins(limit), line.day())
                                - left(ofVolumes.margins(together(limit, together, result)), line.day())
                        : effect(base, limit, kept, line.day());
                simulated.add(new Line(line.limit(), line.unit(), line.day(), line.predicted(), effect));
            }
        }
        return new SiteCheck(simulated, levels);
    }

    /** A limit on volume with the sites among its bores. */
    private static Limit together(Limit limit, LimitPlace.Together place, SitingResult result) {
        List<String> bores = new ArrayList<>(place.bores());
        result.sites().forEach(site -> bores.add(site.name()));
        return new Limit(
                limit.name(),
                limit.quantity(),
                new LimitPlace.Together(place.selection(), bores),
                limit.comparison(),
                limit.period(),
                limit.howSure(),
                limit.text());
    }

    private static Line line(Site.Effect effect, double before) {
        return new Line(effect.limit(), effect.unit(), effect.day(), before + effect.effect(), Double.NaN);
    }

    /** Series of the stations of the run without sites. */
    static List<StationSeries> ofTheBase(RunInMemory base, List<StationSeries> with) {
        int bores = base.plan().description().bores().size();
        int sites = with.size() - base.recording().series().size();
        List<StationSeries> kept = new ArrayList<>(with);
        kept.subList(bores, bores + sites).clear();
        return kept;
    }

    /** By how much less is left of a limit on a day in a run with sites. */
    static double effect(RunInMemory base, Limit limit, List<StationSeries> with, double day) {
        return left(base.margins(limit), day) - left(base.marginsIn(limit, with), day);
    }

    /** What is left of a limit on a day, so that an effect is what the verdict of a run counts. */
    private static double left(LimitMargins margins, double day) {
        return StationSeries.interpolate(margins.days(), margins.margins(), day);
    }

    /** Lowest level while the bore takes; on the day 0 it has not begun. */
    private static double lowest(StationSeries series, double last) {
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 1; i < series.days().length && series.days()[i] <= last; i++) {
            lowest = Math.min(lowest, series.levelInBore()[i]);
        }
        return lowest;
    }

    private static WellLoss loss(SitingSpecification siting) {
        return new WellLoss(
                siting.wellLoss().linear(),
                siting.wellLoss().turbulent(),
                siting.wellLoss().exponent());
    }

    /** The bore of a site, as it takes. */
    static Bore bore(Site site, SitingSpecification siting) {
        Operation taking = new Operation.PumpedRate(Schedule.constant(site.rate()), OptionalDouble.empty());
        return new Bore(
                site.name(),
                site.x(),
                site.y(),
                siting.screenRadius(),
                loss(siting),
                0,
                WaterColumn.REFERENCE,
                List.of(new OperatingPhase(0, taking), new OperatingPhase(siting.days(), new Operation.Off())));
    }

    private static Station.BoreSite station(Site site, SitingSpecification siting, RunDescription run) {
        return new Station.BoreSite(
                site.name(),
                site.x(),
                site.y(),
                run.ground()[site.cell()],
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                run.aquifer().top()[site.cell()],
                siting.screenRadius(),
                loss(siting),
                Optional.empty(),
                siting.holder(),
                true,
                Station.BoreSite.Use.PUMPED,
                "pumped");
    }
}
