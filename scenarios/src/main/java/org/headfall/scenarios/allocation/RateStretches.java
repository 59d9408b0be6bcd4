package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.headfall.solver.allocation.Ties;

/**
 * Rates that are held equal over stretches of time, a season at a time. Stretches grow with time from the start, as what a
 * bore does to heads grows with the logarithm of time (Theis 1935): so a few of them come close to rates that may change
 * at any time, and of the many schedules that are as good as each other an even one is found. A limit that begins late or ends
 * early is a beginning too: stretches grow from there both ways.
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
     * @param turns days on which limits begin or end while the run goes on (d)
     * @return ties from coarse to none
     */
    static List<Ties> of(RateBlocks blocks, int bores, double... turns) {
        List<Ties> levels = new ArrayList<>();
        for (double growth : GROWTH) {
            if (growth == 1 || blocks.groups() > FEW) {
                levels.add(ties(blocks, bores, growth, turns));
            }
        }
        return levels;
    }

    private static Ties ties(RateBlocks blocks, int bores, double growth, double... turns) {
        int[] stretchOf = new int[blocks.groups()];
        int stretches = 0;
        for (int season : new TreeSet<>(blocks.seasons())) {
            int[] groups = IntStream.range(0, stretchOf.length)
                    .filter(group -> blocks.seasons().get(group) == season)
                    .toArray();
            BitSet first = firstOfStretches(blocks, groups, growth, turns);
            for (int position = 0; position < groups.length; position++) {
                stretches += position > 0 && first.get(position) ? 1 : 0;
                stretchOf[groups[position]] = stretches;
            }
            stretches++;
        }
        int[] groups = new int[bores * stretchOf.length];
        for (int i = 0; i < groups.length; i++) {
            groups[i] = i / stretchOf.length * stretches + stretchOf[i % stretchOf.length];
        }
        return new Ties(groups, bores * stretches);
    }

    /** Which of the groups of a season a stretch begins with, by their place among them. */
    private static BitSet firstOfStretches(RateBlocks blocks, int[] groups, double growth, double... turns) {
        BitSet first = new BitSet();
        addGrowing(first, 0, groups.length, growth);
        for (double turn : turns) {
            int position = 0;
            while (position < groups.length && blocks.startOf(groups[position]) < turn - Requirements.SAME_DAY) {
                position++;
            }
            first.set(position);
            addGrowing(first, position, groups.length, growth);
        }
        return first;
    }

    /** Beginnings of stretches that grow from a place both ways. */
    private static void addGrowing(BitSet first, int from, int count, double growth) {
        double distance = Double.isInfinite(growth) ? growth : 1;
        while (distance < count) {
            if (from + distance < count) {
                first.set(from + (int) distance);
            }
            if (from > distance) {
                first.set(from - (int) distance);
            }
            distance = Math.max(distance + 1, Math.rint(distance * growth));
        }
    }
}
