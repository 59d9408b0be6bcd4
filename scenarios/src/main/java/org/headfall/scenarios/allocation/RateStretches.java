package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.headfall.solver.allocation.Ties;

/**
 * Rates that are held equal over stretches of time, a season at a time. Stretches grow with time from the start, as what a
 * bore does to heads grows with the logarithm of time (Theis 1935): so a few of them come close to rates that may change
 * at any time, and of the many schedules that are as good as each other an even one is found.
 */
final class RateStretches {

    /** Groups of blocks up to which all rates are free from the beginning. */
    private static final int FEW = 24;

    /** How much later a stretch ends than the one before it; 1 for no ties. */
    private static final double[] GROWTH = {Double.POSITIVE_INFINITY, 2, 1.3, 1.1, 1};

    private RateStretches() {}

    /**
     * Ties of the rates of some bores, bore by bore and group by group.
     *
     * @param blocks when rates may differ
     * @param bores number of bores
     * @return ties from coarse to none
     */
    static List<Ties> of(RateBlocks blocks, int bores) {
        List<Ties> levels = new ArrayList<>();
        for (double growth : GROWTH) {
            if (growth == 1 || blocks.groups() > FEW) {
                levels.add(ties(blocks, bores, growth));
            }
        }
        return levels;
    }

    private static Ties ties(RateBlocks blocks, int bores, double growth) {
        int[] stretchOf = new int[blocks.groups()];
        int stretches = 0;
        for (int season : new TreeSet<>(blocks.seasons())) {
            int position = 0;
            double end = Double.isInfinite(growth) ? growth : 1;
            for (int group = 0; group < stretchOf.length; group++) {
                if (blocks.seasons().get(group) == season) {
                    if (position >= end) {
                        end = Math.max(end + 1, Math.rint(end * growth));
                        stretches++;
                    }
                    stretchOf[group] = stretches;
                    position++;
                }
            }
            stretches++;
        }
        int[] groups = new int[bores * stretchOf.length];
        for (int i = 0; i < groups.length; i++) {
            groups[i] = i / stretchOf.length * stretches + stretchOf[i % stretchOf.length];
        }
        return new Ties(groups, bores * stretches);
    }
}
