package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.response.OwnDrawdown;

/**
 * Levels in new bores on a few days spread over the time in which they take: heads of the run, lowered by the sites chosen
 * so far, less the drawdown of a bore itself.
 */
final class NewBoreLevels {

    private static final double[] SHARES = {1.0 / 64, 1.0 / 16, 1.0 / 8, 0.25, 0.5, 0.75, 0.9, 1};

    private final PumpingLevels levels;
    private final boolean[] active;
    private final double[] days;
    private final double[][] withoutSites;
    private final double[][] heads;
    private final List<OwnDrawdown.Estimate> own = new ArrayList<>();

    /**
     * Levels in the field of a run.
     *
     * @param levels how low levels may fall
     * @param active cells of the aquifer
     * @param grids heads of the run, those on the {@linkplain #days days} among them
     * @param duration time in which new bores take (d)
     */
    NewBoreLevels(PumpingLevels levels, boolean[] active, List<HeadGrid> grids, double duration) {
        this.levels = levels;
        this.active = active;
        days = days(duration);
        withoutSites = new double[days.length][];
        for (HeadGrid grid : grids) {
            for (int i = 0; i < days.length; i++) {
                if (grid.day() == days[i]) {
                    withoutSites[i] = grid.head();
                }
            }
        }
        heads = Arrays.stream(withoutSites).map(double[]::clone).toArray(double[][]::new);
    }

    /** Days on which levels are looked at (d). */
    static double[] days(double duration) {
        return Arrays.stream(SHARES)
                .map(share -> share == 1 ? duration : Math.rint(share * duration))
                .filter(day -> day >= 1)
                .distinct()
                .toArray();
    }

    /** Sets the drawdown of new bores by themselves, before any level is asked for. */
    void setOwn(OwnDrawdown drawdown) {
        own.addAll(drawdown.after(days));
    }

    /** Relative error of own drawdown that half of the tested cells stay below (-). */
    double ownError() {
        return own.stream()
                .mapToDouble(OwnDrawdown.Estimate::relativeError)
                .max()
                .orElse(0);
    }

    /** Lowers the largest rate of each cell to what keeps the lowest level of a bore there. */
    void keepOwn(RateBounds bounds) {
        for (int day = 0; day < days.length; day++) {
            double[] ownDrawdown = own.get(day).drawdown();
            for (int cell = 0; cell < ownDrawdown.length; cell++) {
                if (active[cell] && bounds.rate()[cell] > 0) {
                    double most = levels.largestRate(cell, heads[day][cell], ownDrawdown[cell]);
                    bounds.lower(cell, most, levels.reason(cell));
                }
            }
        }
    }

    /** Lowers the largest rate of each cell so that a site chosen before keeps its own lowest level. */
    void keepOf(ChosenSite site, RateBounds bounds) {
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

    /** The largest rate of one bore so that a site chosen before keeps its own lowest level. */
    CountedLimits.Most mostBeside(ChosenSite site, NearField bore, CountedLimits.Most otherwise) {
        CountedLimits.Most most = otherwise;
        for (int day = 0; day < days.length; day++) {
            double spare = Math.max(0, levelOf(site, day) - levels.floor(site.cell()));
            double effect = site.field().by(0, bore, days[day]);
            if (effect > 0 && spare / effect < most.rate()) {
                most = new CountedLimits.Most(spare / effect, levels.reason(site.cell()));
            }
        }
        return most;
    }

    /** Level in a chosen bore; heads hold the drawdown of all chosen bores but their own part in their own cells. */
    private double levelOf(ChosenSite site, int day) {
        double carried = site.rate() * site.field().by(0, site.bore(), days[day]);
        return levels.level(heads[day][site.cell()] + carried, site.own(days[day]), site.rate());
    }

    /** Lowest level in a chosen bore (m above datum). */
    double lowestOf(ChosenSite site) {
        double lowest = Double.POSITIVE_INFINITY;
        for (int day = 0; day < days.length; day++) {
            lowest = Math.min(lowest, levelOf(site, day));
        }
        return lowest;
    }

    /** Greatest lift of a bore in a cell beside the sites chosen so far (m). */
    double greatestLift(int cell, double rate) {
        return greatestLift(cell, rate, heads);
    }

    /** Greatest lift of a first new bore in a cell (m). */
    double greatestLiftOfFirst(int cell, double rate) {
        return greatestLift(cell, rate, withoutSites);
    }

    private double greatestLift(int cell, double rate, double[][] headOnDays) {
        double greatest = 0;
        for (int day = 0; day < days.length; day++) {
            double level = levels.level(headOnDays[day][cell], own.get(day).drawdown()[cell], rate);
            greatest = Math.max(greatest, levels.lift(cell, level));
        }
        return greatest;
    }

    /** Largest rate of a site that is not yet chosen, with its own drawdown solved for (m³/d). */
    double largestRate(ChosenSite site, double most) {
        double rate = most;
        for (int day = 0; day < days.length; day++) {
            rate = Math.min(rate, levels.largestRate(site.cell(), heads[day][site.cell()], site.own(days[day])));
        }
        return rate;
    }

    /** What sets the lowest level in a cell. */
    int reason(int cell) {
        return levels.reason(cell);
    }

    /** Counts a site: it lowers heads. */
    void lowerBy(ChosenSite site) {
        for (int day = 0; day < days.length; day++) {
            double[] effect = site.field().after(0, days[day]);
            for (int cell = 0; cell < effect.length; cell++) {
                heads[day][cell] -= site.rate() * effect[cell];
            }
        }
    }
}
