package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunProgress;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.HeadDependence;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.response.EffectFields;
import org.headfall.solver.response.OwnDrawdown;

/**
 * Finds the largest rate of a new bore in every cell and chooses sites one after another. Use one object a search.
 *
 * <p>A new bore takes a steady rate from the start of the period on. Its level is judged on a few days spread over that
 * time, limits on all days that matter ({@link LimitHeadroom}). Bores that the map would choose have their own drawdown
 * solved for before they are taken.
 */
public final class SiteSearch {

    private static final double[] SHARES = {1.0 / 64, 1.0 / 16, 1.0 / 8, 0.25, 0.5, 0.75, 0.9, 1};
    private static final int SOLVED_CELLS = 32;
    private static final int MOST_TRIALS = 12;
    private static final double SHORTEST = 10;

    private final RunInMemory base;
    private final RunDescription run;
    private final FlowProblem problem;
    private final SitingSpecification siting;
    private final HeadDependence dependence;
    private final EffectFields.NewBore newBore;
    private final PumpingLevels levels;
    private final PlaceBounds places;
    private final double[] days;
    private final double[][] heads;
    private final List<OwnDrawdown.Estimate> own = new ArrayList<>();
    private final CountedLimits limits;
    private final Ruling ruling = new Ruling();
    private final List<ChosenSite> chosen = new ArrayList<>();
    private final RateBounds byPlace;
    private double ownError;

    private record ChosenSite(int cell, double rate, double largest, int ruling, EffectFields field, double atWall) {}

    private SiteSearch(RunInMemory base, SitingSpecification siting, RunProgress progress) {
        this.base = base;
        this.siting = siting;
        run = base.plan().description();
        problem = base.plan().problem();
        dependence = base.dependence();
        newBore = new EffectFields.NewBore(
                siting.screenRadius(), Math.min(SHORTEST, siting.days() * SHARES[0]), siting.days());
        levels = new PumpingLevels(run, siting);
        places = new PlaceBounds(run, siting);
        days = gridDays(siting);
        heads = headsOn(days);
        byPlace = new RateBounds(run.grid().cellCount(), siting.largestRate());
        progress.reached("solving for effects on limits", 0);
        limits = CountedLimits.of(base, siting, newBore, ruling);
    }

    /** Days on which the grid of the run must be kept for a search. */
    public static double[] gridDays(SitingSpecification siting) {
        return Arrays.stream(SHARES)
                .map(share -> share == 1 ? siting.days() : Math.rint(share * siting.days()))
                .filter(day -> day >= 1)
                .distinct()
                .toArray();
    }

    /**
     * Searches.
     *
     * @param base the run with the bores of the document, with the grid kept on {@link #gridDays}
     * @param siting what is looked for
     * @param progress is told how far the search has come
     * @return the map and the sites
     */
    public static SitingResult in(RunInMemory base, SitingSpecification siting, RunProgress progress) {
        return new SiteSearch(base, siting, progress).search(progress);
    }

    private double[][] headsOn(double[] wanted) {
        double[][] values = new double[wanted.length][];
        for (HeadGrid grid : base.recording().grids()) {
            for (int i = 0; i < wanted.length; i++) {
                if (grid.day() == wanted[i]) {
                    values[i] = grid.head().clone();
                }
            }
        }
        return values;
    }

    private SitingResult search(RunProgress progress) {
        places.apply(byPlace);
        progress.reached("solving for own drawdown", 0.4);
        boolean[] allowed = allowed();
        OwnDrawdown ownDrawdown = any(allowed)
                ? new OwnDrawdown(
                        problem,
                        allowed,
                        newBore,
                        SOLVED_CELLS,
                        base.plan().settings().threads())
                : null;
        if (ownDrawdown == null) {
            return nowhere();
        }
        for (double day : days) {
            own.add(ownDrawdown.after(day));
            ownError = Math.max(ownError, own.get(own.size() - 1).relativeError());
        }
        RateBounds first = bounds();
        RateBounds now = first;
        for (int number = 1; number <= siting.sites(); number++) {
            progress.reached("choosing sites", 0.6 + 0.4 * (number - 1) / siting.sites());
            if (!choose(now)) {
                break;
            }
            now = number < siting.sites() ? bounds() : now;
        }
        return result(first);
    }

    private boolean[] allowed() {
        boolean[] allowed = new boolean[run.grid().cellCount()];
        for (int cell = 0; cell < allowed.length; cell++) {
            allowed[cell] = problem.aquifer().active()[cell] && byPlace.rate()[cell] > 0;
        }
        return allowed;
    }

    private static boolean any(boolean[] flags) {
        for (boolean flag : flags) {
            if (flag) {
                return true;
            }
        }
        return false;
    }

    /** The largest rate of each cell as things stand. */
    private RateBounds bounds() {
        RateBounds bounds = byPlace.copy();
        limits.lower(bounds);
        for (ChosenSite site : chosen) {
            keepLevelOf(site, bounds);
        }
        for (int day = 0; day < days.length; day++) {
            keepOwnLevel(day, bounds);
        }
        return bounds;
    }

    private void keepOwnLevel(int day, RateBounds bounds) {
        double[] ownDrawdown = own.get(day).drawdown();
        for (int cell = 0; cell < ownDrawdown.length; cell++) {
            if (problem.aquifer().active()[cell] && bounds.rate()[cell] > 0) {
                double most = levels.largestRate(cell, heads[day][cell], ownDrawdown[cell]);
                bounds.lower(cell, most, levels.reason(cell));
            }
        }
    }

    /** A site chosen before keeps its own lowest level. */
    private void keepLevelOf(ChosenSite site, RateBounds bounds) {
        for (int day = 0; day < days.length; day++) {
            double spare = levelOf(site, day) - levels.floor(site.cell());
            double[] effect = site.field().after(0, days[day]);
            for (int cell = 0; cell < effect.length; cell++) {
                if (effect[cell] > 0) {
                    bounds.lower(cell, spare / effect[cell], levels.reason(site.cell()));
                }
            }
        }
    }

    /** Level in a chosen bore; heads hold the drawdown of all chosen bores but their own part in their own cells. */
    private double levelOf(ChosenSite site, int day) {
        double ownDrawdown = site.field().own(0, days[day]) + site.atWall();
        double carried = site.rate() * site.field().after(0, days[day])[site.cell()];
        return levels.level(heads[day][site.cell()] + carried, ownDrawdown, site.rate());
    }

    /** Takes the best site, if there is one. */
    private boolean choose(RateBounds bounds) {
        boolean[] refused = new boolean[bounds.rate().length];
        for (int trial = 0; trial < MOST_TRIALS; trial++) {
            int best = best(bounds, refused);
            if (best < 0) {
                return false;
            }
            double rate = siting.rate().orElse(bounds.rate()[best]);
            ChosenSite site = solved(best, rate, bounds);
            if (siting.rate().isEmpty() || keepsLevel(site)) {
                take(siting.rate().isEmpty() ? withExactRate(site) : site);
                return true;
            }
            refused[best] = true;
        }
        return false;
    }

    /** Least lift at the wanted rate, or the largest rate if none is wanted. */
    private int best(RateBounds bounds, boolean[] refused) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int cell = 0; cell < refused.length; cell++) {
            boolean open = problem.aquifer().active()[cell]
                    && !refused[cell]
                    && bounds.rate()[cell] > 0
                    && bounds.rate()[cell] >= siting.rate().orElse(0);
            if (open) {
                double cost = siting.rate().isPresent()
                        ? greatestLift(cell, siting.rate().getAsDouble(), heads)
                        : -bounds.rate()[cell];
                if (cost < least) {
                    least = cost;
                    best = cell;
                }
            }
        }
        return best;
    }

    private double greatestLift(int cell, double rate, double[][] headOnDays) {
        double greatest = 0;
        for (int day = 0; day < days.length; day++) {
            double level = levels.level(headOnDays[day][cell], own.get(day).drawdown()[cell], rate);
            greatest = Math.max(greatest, levels.lift(cell, level));
        }
        return greatest;
    }

    private ChosenSite solved(int cell, double rate, RateBounds bounds) {
        NearField field = NearField.at(
                problem.aquifer(), run.grid().centreX(cell), run.grid().centreY(cell), siting.screenRadius());
        List<NearField> bores = problem.bores().stream()
                .map(bore -> NearField.at(problem.aquifer(), bore.x(), bore.y(), bore.screenRadius()))
                .toList();
        int station = problem.bores().size() + problem.springs().size();
        EffectFields fields = new EffectFields(
                problem,
                dependence,
                List.of(ObservedHead.atWall(field, bores)),
                List.of(EffectFields.Receptor.at(station, field)),
                newBore,
                base.plan().settings().threads());
        return new ChosenSite(cell, rate, bounds.rate()[cell], bounds.ruling()[cell], fields, field.unresolvedAtWall());
    }

    private boolean keepsLevel(ChosenSite site) {
        for (int day = 0; day < days.length; day++) {
            double drawdown = site.field().own(0, days[day]) + site.atWall();
            double level = levels.level(heads[day][site.cell()], drawdown, site.rate());
            if (level < levels.floor(site.cell())) {
                return false;
            }
        }
        return true;
    }

    /** The largest rate again, with own drawdown solved for. */
    private ChosenSite withExactRate(ChosenSite site) {
        double rate = site.rate();
        for (int day = 0; day < days.length; day++) {
            double drawdown = site.field().own(0, days[day]) + site.atWall();
            rate = Math.min(rate, levels.largestRate(site.cell(), heads[day][site.cell()], drawdown));
        }
        return new ChosenSite(site.cell(), rate, rate, site.ruling(), site.field(), site.atWall());
    }

    /** Counts a site: it uses up headroom, lowers heads, and other bores keep their distance. */
    private void take(ChosenSite site) {
        limits.use(site.cell(), site.rate());
        for (int day = 0; day < days.length; day++) {
            double[] effect = site.field().after(0, days[day]);
            for (int cell = 0; cell < effect.length; cell++) {
                heads[day][cell] -= site.rate() * effect[cell];
            }
        }
        places.keepOff(run.grid().centreX(site.cell()), run.grid().centreY(site.cell()), byPlace);
        byPlace.lower(site.cell(), 0, Ruling.DISTANCE_TO_BORES);
        chosen.add(site);
    }

    private SitingResult nowhere() {
        double[] none = new double[run.grid().cellCount()];
        Arrays.fill(none, Double.NaN);
        return new SitingResult(
                run,
                activeOnly(byPlace.rate()),
                byPlace.ruling(),
                ruling.names(),
                none,
                none,
                0,
                List.of(),
                siting.sites());
    }

    private SitingResult result(RateBounds first) {
        double[][] start = headsOn(days);
        double[] lift = new double[run.grid().cellCount()];
        double[] energy = new double[lift.length];
        Arrays.fill(lift, Double.NaN);
        Arrays.fill(energy, Double.NaN);
        for (int cell = 0; cell < lift.length; cell++) {
            double rate = Math.min(first.rate()[cell], siting.rate().orElse(Double.POSITIVE_INFINITY));
            if (problem.aquifer().active()[cell] && rate > 0) {
                lift[cell] = greatestLift(cell, rate, start);
                energy[cell] = levels.energy(lift[cell]);
            }
        }
        List<Site> sites = new ArrayList<>();
        for (ChosenSite site : chosen) {
            sites.add(described(site, sites.size() + 1));
        }
        return new SitingResult(
                run,
                activeOnly(first.rate()),
                first.ruling(),
                ruling.names(),
                lift,
                energy,
                ownError,
                sites,
                siting.sites());
    }

    private double[] activeOnly(double[] values) {
        double[] copy = values.clone();
        for (int cell = 0; cell < copy.length; cell++) {
            copy[cell] = problem.aquifer().active()[cell] ? copy[cell] : Double.NaN;
        }
        return copy;
    }

    private Site described(ChosenSite site, int number) {
        double level = Double.POSITIVE_INFINITY;
        for (int day = 0; day < days.length; day++) {
            level = Math.min(level, levelOf(site, day));
        }
        double lift = levels.lift(site.cell(), level);
        return new Site(
                number,
                site.cell(),
                run.grid().centreX(site.cell()),
                run.grid().centreY(site.cell()),
                site.rate(),
                site.largest(),
                ruling.names().get(site.ruling()),
                level,
                lift,
                levels.energy(lift),
                limits.effects(site.cell(), site.rate()));
    }
}
