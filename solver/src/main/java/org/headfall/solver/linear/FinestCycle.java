package org.headfall.solver.linear;

import java.util.Arrays;
import java.util.List;

/**
 * The V-cycle of {@link PointMultigrid} on the finest grid. Each half of it is one walk over the rows that carries four
 * rows of each quantity along, so that a coefficient comes from memory once for all steps and all systems.
 *
 * <p>On the way down red cells are relaxed from zero, then black ones, and the residual, left at red cells only, is
 * restricted. On the way up red cells are relaxed from zero again (cheaper than to keep them), corrected, and black and
 * red cells relaxed. Red cells are those of even column in even rows and of odd column in odd rows. Threads share the
 * walk by rows; the few rows beside another thread's part are computed by both, from the same numbers to the same bits.
 */
final class FinestCycle {
    /** Least number of coarse rows worth a thread of their own. */
    private static final int ROW_GRAIN = 8;

    private final FinestLevel level;
    private final CoarseCorrection coarse;
    private final WorkerTeam team;
    private final int coarseRows;
    private FinestWalk[][] walks = {};
    private int count;
    private RowParts parts;
    private List<HalfRowSystem> systems = List.of();
    private final WorkerTeam.RangeTask downTask = this::down;
    private final WorkerTeam.RangeTask upTask = this::up;

    FinestCycle(FinestLevel level, CoarseCorrection coarse, WorkerTeam team) {
        this.level = level;
        this.coarse = coarse;
        this.team = team;
        this.coarseRows = (level.rows + 1) / 2;
        this.parts = new RowParts(coarseRows, 1);
    }

    /** Applies the cycle; see {@link Preconditioner#apply}. */
    void run(List<HalfRowSystem> newSystems, int newCount) {
        systems = newSystems;
        count = newCount;
        parts = RowParts.of(coarseRows, team.size(), ROW_GRAIN);
        reserve();
        team.split(parts.parts(), 1, downTask);
        coarse.run(count);
        team.split(parts.parts(), 1, upTask);
    }

    private void reserve() {
        coarse.reserve(count);
        if (walks.length < parts.parts()) {
            walks = Arrays.copyOf(walks, parts.parts());
            Arrays.setAll(walks, part -> walks[part] == null ? new FinestWalk[0] : walks[part]);
        }
        for (int part = 0; part < parts.parts(); part++) {
            int had = walks[part].length;
            if (had < count) {
                walks[part] = Arrays.copyOf(walks[part], count);
                for (int l = had; l < count; l++) {
                    walks[part][l] = new FinestWalk(level);
                }
            }
        }
    }

    private void down(int fromPart, int toPart) {
        for (int part = fromPart; part < toPart; part++) {
            for (int l = 0; l < count; l++) {
                walks[part][l].begin(systems.get(l).residual, coarse.rightHandSide(l), coarse.solution(l));
            }
            int from = parts.first(part);
            int to = parts.first(part + 1);
            // Black cells of a row need red ones a row further, residuals black ones of yet another.
            int start = Math.max(0, 2 * from - 1);
            for (int row = start - 4; row < Math.min(level.rows, 2 * to); row++) {
                for (int l = 0; l < count; l++) {
                    FinestWalk walk = walks[part][l];
                    walk.relaxRedFromZero(row + 2);
                    if (row + 1 >= start - 1) {
                        walk.relaxBlack(row + 1);
                    }
                    if (row >= start) {
                        walk.restrictColumns(row);
                        walk.restrictRows(row, from, to);
                    }
                }
            }
        }
    }

    private void up(int fromPart, int toPart) {
        for (int part = fromPart; part < toPart; part++) {
            for (int l = 0; l < count; l++) {
                walks[part][l].begin(systems.get(l).residual, coarse.rightHandSide(l), coarse.solution(l));
            }
            int from = 2 * parts.first(part);
            int to = Math.min(level.rows, 2 * parts.first(part + 1));
            for (int row = from - 4; row < to; row++) {
                for (int l = 0; l < count; l++) {
                    FinestWalk walk = walks[part][l];
                    walk.correctRed(row + 2);
                    if (row + 1 >= from - 1) {
                        walk.relaxBlack(row + 1);
                    }
                    if (row >= from) {
                        walk.relaxRed(row);
                        systems.get(l).rowSums[row] = walk.write(row, systems.get(l).correction);
                    }
                }
            }
        }
    }
}
