package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.run.BoresBesideSides;
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
 * <p>A new bore takes a steady rate from the start of the period on. Its level is judged by the lowest heads of all recorded
 * days ({@link LowestHeads}), limits on all days that matter ({@link LimitHeadroom}). Bores that the map would choose have their own drawdown
 * solved for before they are taken.
 */
public final class SiteSearch {

    private static final int SOLVED_CELLS = 32;
    private static final double SHORTEST = 10;
    private static final double SHORTEST_SHARE = 1.0 / 64;

    /** Share of the wanted rate that a site may miss once it has been solved for: rounding. */
    private static final double ROUNDING = 1e-9;

    private final RunInMemory base;
    private final RunDescription run;
    private final FlowProblem problem;
    private final SitingSpecification siting;
    private final HeadDependence dependence;
    private final EffectFields.NewBore newBore;
    private final PumpingLevels pumping;
    private final PlaceBounds places;
    private final NewBoreLevels levels;
    private final CountedLimits limits;
    private final Ruling ruling = new Ruling();
    private final List<ChosenSite> chosen = new ArrayList<>();
    private final RateBounds byPlace;
    private final List<String> usedUp;
    private Trials trials = Trials.NONE;

    private SiteSearch(SitingBase from, SitingSpecification siting, RunProgress progress) {
        base = from.run();
        this.siting = siting;
        run = base.plan().description();
        problem = base.plan().problem();
        dependence = base.dependence();
        newBore = new EffectFields.NewBore(
                siting.screenRadius(), Math.min(SHORTEST, siting.days() * SHORTEST_SHARE), siting.days());
        pumping = new PumpingLevels(run, siting);
        places = new PlaceBounds(run, siting, DistanceLimits.of(base.plan(), siting, ruling));
        levels =
                new NewBoreLevels(pumping, problem.aquifer().active(), from.heads(), newBore.shortest(), siting.days());
        byPlace = new RateBounds(run.grid().cellCount(), siting.largestRate());
        progress.reached("solving for effects on limits", 0);
        limits = CountedLimits.of(base, siting, newBore, ruling);
        usedUp = limits.usedUp();
    }

    /**
     * Searches.
     *
     * @param base the run with the bores of the document
     * @param siting what is looked for
     * @param progress is told how far the search has come
     * @return the map and the sites
     */
    public static SitingResult in(SitingBase base, SitingSpecification siting, RunProgress progress) {
        return new SiteSearch(base, siting, progress).search(progress);
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
        levels.setOwn(ownDrawdown);
        RateBounds first = bounds();
        double[] lift = levels.greatestLift(wanted(first));
        RateBounds now = first;
        for (int number = 1; number <= siting.sites(); number++) {
            progress.reached("choosing sites", 0.6 + 0.4 * (number - 1) / siting.sites());
            if (!choose(now)) {
                break;
            }
            now = number < siting.sites() ? bounds() : now;
        }
        return result(first, lift, missing(now));
    }

    /** Why there are fewer sites than wanted; nothing if there are not. */
    private String missing(RateBounds now) {
        return chosen.size() == siting.sites()
                ? ""
                : new Shortfall(problem.aquifer().active(), siting.rate().orElse(0), ruling.names(), usedUp)
                        .words(now, trials);
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
        levels.keepOfChosen(bounds);
        levels.keepOwn(bounds);
        return bounds;
    }

    /** Takes the best site, if there is one among the cells that are tried. */
    private boolean choose(RateBounds bounds) {
        boolean[] open = open(bounds);
        double[] cost = cost(bounds);
        trials = Trials.NONE;
        while (trials.goOn()) {
            int best = best(cost, open);
            if (best < 0) {
                return false;
            }
            ChosenSite site = solved(best);
            if (site.largest() >= siting.rate().orElse(0) * (1 - ROUNDING) && site.largest() > 0) {
                take(site);
                return true;
            }
            open[best] = false;
            trials = trials.failed(open);
        }
        return false;
    }

    /** Cells that allow the rate by the map. */
    private boolean[] open(RateBounds bounds) {
        boolean[] open = new boolean[bounds.rate().length];
        for (int cell = 0; cell < open.length; cell++) {
            double rate = bounds.rate()[cell];
            open[cell] = problem.aquifer().active()[cell]
                    && rate > 0
                    && rate >= siting.rate().orElse(0);
        }
        return open;
    }

    /** What is least at the best cell: lift at the wanted rate, or the largest rate, negative, if none is wanted. */
    private double[] cost(RateBounds bounds) {
        return siting.rate().isPresent()
                ? levels.greatestLift(wanted(bounds))
                : Arrays.stream(bounds.rate()).map(rate -> -rate).toArray();
    }

    /** The wanted rate, or the largest where that is less or none is wanted. */
    private double[] wanted(RateBounds bounds) {
        double wanted = siting.rate().orElse(Double.POSITIVE_INFINITY);
        return Arrays.stream(bounds.rate()).map(rate -> Math.min(rate, wanted)).toArray();
    }

    private static int best(double[] cost, boolean[] open) {
        int best = -1;
        for (int cell = 0; cell < open.length; cell++) {
            if (open[cell] && (best < 0 || cost[cell] < cost[best])) {
                best = cell;
            }
        }
        return best;
    }

    /** A site with its largest rate found anew: own drawdown solved for, limits by the near field of its own bore. */
    private ChosenSite solved(int cell) {
        NearField field = problem.nearField(run.grid().centreX(cell), run.grid().centreY(cell), siting.screenRadius());
        List<NearField> bores = problem.nearFields();
        int station = problem.bores().size() + problem.springs().size();
        EffectFields fields = new EffectFields(
                problem,
                dependence,
                List.of(ObservedHead.atWall(field, bores)),
                List.of(EffectFields.Receptor.at(station, field)),
                newBore,
                base.plan().settings().threads());
        ChosenSite site = new ChosenSite(cell, 0, 0, Ruling.LARGEST_RATE, field, fields);
        CountedLimits.Most most = limits.most(field, byPlace.rate()[cell], byPlace.ruling()[cell]);
        most = levels.mostBeside(field, most);
        double byLevel = levels.largestRate(site, most.rate());
        double largest = Math.min(byLevel, most.rate());
        int decides = byLevel < most.rate() ? levels.reason(cell) : most.reason();
        return site.with(Math.min(largest, siting.rate().orElse(largest)), largest, decides);
    }

    /** Counts a site: it uses up headroom, lowers heads, and other bores keep their distance. */
    private void take(ChosenSite site) {
        limits.use(site.bore(), site.rate());
        levels.choose(site);
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
                siting,
                missing(byPlace),
                CountedLimits.uncounted(base, siting),
                List.of());
    }

    private SitingResult result(RateBounds first, double[] lift, String missing) {
        double[] energy = Arrays.stream(lift).map(pumping::energy).toArray();
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
                levels.ownError(),
                sites,
                siting,
                missing,
                CountedLimits.uncounted(base, siting),
                cautions(sites));
    }

    private List<String> cautions(List<Site> sites) {
        List<String> cautions = new ArrayList<>(SitesBesideFixedHeads.sentences(problem, sites));
        cautions.addAll(BoresBesideSides.sentences(problem.withBores(
                sites.stream().map(site -> SiteCheck.bore(site, siting)).toList())));
        cautions.addAll(limits.cautions());
        return cautions;
    }

    private double[] activeOnly(double[] values) {
        double[] copy = values.clone();
        for (int cell = 0; cell < copy.length; cell++) {
            copy[cell] = problem.aquifer().active()[cell] ? copy[cell] : Double.NaN;
        }
        return copy;
    }

    private Site described(ChosenSite site, int number) {
        double level = levels.lowestOf(site);
        double lift = pumping.lift(site.cell(), level);
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
                pumping.energy(lift),
                limits.effects(site.bore(), site.rate()));
    }
}
