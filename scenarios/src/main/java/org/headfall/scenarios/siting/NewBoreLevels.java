package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.response.OwnDrawdown;

/**
 * Levels in new bores while they take: the lowest heads of the run in each part of that time ({@link LowestHeads}), lowered by
 * the sites chosen so far, less the drawdown of a bore itself.
 */
final class NewBoreLevels {

    /** Shares of the time after which own drawdown is estimated; in between it goes about straight by the logarithm of time. */
    private static final double[] SHARES = {1.0 / 64, 1.0 / 16, 1.0 / 8, 0.25, 0.5, 0.75, 0.9, 1};

    private final PumpingLevels levels;
    private final boolean[] active;
    private final double[] floor;
    private final double[] times;
    private final float[][] heads;
    private final double[] estimated;
    private final List<OwnDrawdown.Estimate> own = new ArrayList<>();
    private final List<Chosen> chosen = new ArrayList<>();

    /**
     * A chosen site, for each part of the time what it lowers heads in its own cell by (m), and drawdown at its wall by its own
     * unit discharge (d/m²).
     */
    @SuppressWarnings("ArrayRecordComponent") // kept and never compared
    private record Chosen(ChosenSite site, double[] carried, double[] own) {}

    /**
     * Levels in the field of a run.
     *
     * @param levels how low levels may fall
     * @param active cells of the aquifer
     * @param lowest lowest heads of the run
     * @param shortest shortest time of taking for which effects are known (d)
     * @param duration time in which new bores take (d)
     */
    NewBoreLevels(PumpingLevels levels, boolean[] active, LowestHeads lowest, double shortest, double duration) {
        this.levels = levels;
        this.active = active;
        // Drawdown of a later day is larger.
        times = Arrays.stream(lowest.ends()).map(day -> Math.max(shortest, day)).toArray();
        heads = lowest.copy();
        estimated = Arrays.stream(SHARES).map(share -> share * duration).toArray();
        floor = new double[active.length];
        Arrays.setAll(floor, cell -> active[cell] ? levels.floor(cell) : Double.NaN);
    }

    /** Sets the drawdown of new bores by themselves, before any level is asked for. */
    void setOwn(OwnDrawdown drawdown) {
        own.addAll(drawdown.after(estimated));
    }

    /** Relative error of own drawdown that half of the tested cells stay below (-). */
    double ownError() {
        return own.stream()
                .mapToDouble(OwnDrawdown.Estimate::relativeError)
                .max()
                .orElse(0);
    }

    /** Drawdown of a bore in any cell by its own unit discharge at the end of a part of the time (d/m²). */
    private final class OwnAtEnd {
        private final double[] before;
        private final double[] after;
        private final double weight;

        OwnAtEnd(int part) {
            int next = 1;
            while (next < estimated.length - 1 && estimated[next] < times[part]) {
                next++;
            }
            before = own.get(next - 1).drawdown();
            after = own.get(next).drawdown();
            double share =
                    Math.log(times[part] / estimated[next - 1]) / Math.log(estimated[next] / estimated[next - 1]);
            weight = Math.max(0, Math.min(1, share));
        }

        double in(int cell) {
            return before[cell] + weight * (after[cell] - before[cell]);
        }
    }

    /** Lowers the largest rate of each cell to what keeps the lowest level of a bore there. */
    void keepOwn(RateBounds bounds) {
        for (int part = 0; part < times.length; part++) {
            OwnAtEnd ownDrawdown = new OwnAtEnd(part);
            for (int cell = 0; cell < active.length; cell++) {
                double rate = bounds.rate()[cell];
                if (active[cell] && rate > 0) {
                    double head = heads[part][cell];
                    double unit = ownDrawdown.in(cell);
                    if (levels.level(head, unit, rate) < floor[cell]) {
                        bounds.lower(cell, levels.largestRate(cell, head, unit), levels.reason(cell));
                    }
                }
            }
        }
    }

    /** Lowers the largest rate of each cell so that sites chosen before keep their own lowest level. */
    void keepOfChosen(RateBounds bounds) {
        for (Chosen one : chosen) {
            int reason = levels.reason(one.site.cell());
            double[] spare = spare(one);
            for (int part : fewestToCome(spare)) {
                double[] effect = one.site.field().after(0, times[part]);
                for (int cell = 0; cell < effect.length; cell++) {
                    if (effect[cell] > 0) {
                        bounds.lower(cell, spare[part] / effect[cell], reason);
                    }
                }
            }
        }
    }

    /** The largest rate of one bore so that sites chosen before keep their own lowest level. */
    CountedLimits.Most mostBeside(NearField bore, CountedLimits.Most otherwise) {
        CountedLimits.Most most = otherwise;
        for (Chosen one : chosen) {
            int reason = levels.reason(one.site.cell());
            double[] spare = spare(one);
            for (int part : fewestToCome(spare)) {
                double effect = one.site.field().by(0, bore, times[part]);
                if (effect > 0) {
                    most = most.orLess(Math.max(0, spare[part]) / effect, reason);
                }
            }
        }
        return most;
    }

    /** How far the level in a chosen bore stays above its lowest in each part (m). */
    private double[] spare(Chosen one) {
        double[] spare = new double[times.length];
        Arrays.setAll(spare, part -> levelOf(one, part) - floor[one.site.cell()]);
        return spare;
    }

    /** Parts in which less is spare than in all later ones: others cannot decide, for effects only grow. */
    private static List<Integer> fewestToCome(double[] spare) {
        List<Integer> parts = new ArrayList<>();
        double fewest = Double.POSITIVE_INFINITY;
        for (int part = spare.length - 1; part >= 0; part--) {
            if (spare[part] < fewest) {
                fewest = spare[part];
                parts.add(part);
            }
        }
        return parts;
    }

    /** Level in a chosen bore; heads hold the drawdown of all chosen bores but their own part in their own cells. */
    private double levelOf(Chosen one, int part) {
        ChosenSite site = one.site;
        return levels.level(heads[part][site.cell()] + one.carried[part], one.own[part], site.rate());
    }

    /** Lowest level in a chosen bore (m above datum). */
    double lowestOf(ChosenSite site) {
        double lowest = Double.POSITIVE_INFINITY;
        for (Chosen one : chosen) {
            for (int part = 0; part < times.length && one.site.cell() == site.cell(); part++) {
                lowest = Math.min(lowest, levelOf(one, part));
            }
        }
        return lowest;
    }

    /**
     * Greatest lift of a bore in each cell beside the sites chosen so far.
     *
     * @param rate rate of the bore in each cell (m³/d); cells of which it is not positive are passed over
     * @return the lifts (m); NaN where cells were passed over or are no part of the aquifer
     */
    double[] greatestLift(double[] rate) {
        double[] lowest = new double[rate.length];
        Arrays.fill(lowest, Double.POSITIVE_INFINITY);
        for (int part = 0; part < times.length; part++) {
            OwnAtEnd ownDrawdown = new OwnAtEnd(part);
            for (int cell = 0; cell < rate.length; cell++) {
                if (active[cell] && rate[cell] > 0) {
                    lowest[cell] = Math.min(lowest[cell], heads[part][cell] - ownDrawdown.in(cell) * rate[cell]);
                }
            }
        }
        for (int cell = 0; cell < rate.length; cell++) {
            lowest[cell] = active[cell] && rate[cell] > 0
                    ? levels.lift(cell, levels.level(lowest[cell], 0, rate[cell]))
                    : Double.NaN;
        }
        return lowest;
    }

    /** Largest rate of a site that is not yet chosen, with its own drawdown solved for (m³/d). */
    double largestRate(ChosenSite site, double most) {
        double rate = most;
        for (int part = 0; part < times.length; part++) {
            rate = Math.min(rate, levels.largestRate(site.cell(), heads[part][site.cell()], site.own(times[part])));
        }
        return rate;
    }

    /** What sets the lowest level in a cell. */
    int reason(int cell) {
        return levels.reason(cell);
    }

    /** Counts a site: it lowers heads, and keeps its own lowest level from then on. */
    void choose(ChosenSite site) {
        double[] carried = new double[times.length];
        double[] ownDrawdown = new double[times.length];
        for (int part = 0; part < times.length; part++) {
            double[] effect = site.field().after(0, times[part]);
            for (int cell = 0; cell < effect.length; cell++) {
                heads[part][cell] -= (float) (site.rate() * effect[cell]);
            }
            carried[part] = site.rate() * site.field().by(0, site.bore(), times[part]);
            ownDrawdown[part] = site.own(times[part]);
        }
        chosen.add(new Chosen(site, carried, ownDrawdown));
    }
}
