package org.headfall.solver.linear;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** The V-cycle of {@link PointMultigrid} on one level and, by recursion, below. */
final class PointCycle {
    /** Least number of cells worth a second thread. */
    private static final int GRAIN_CELLS = 8192;

    private final PointLevel level;
    private final PointTransfer transfer;
    private final @Nullable PointCycle coarser;
    private final CoarsestSolve coarsest;
    private final WorkerTeam team;
    private final int grain;
    private float[][] rightHandSides = {};
    private float[][] solutions = {};
    private float[][] halves = {};
    private int count;
    private final WorkerTeam.RangeTask firstTask = this::relaxFirst;
    private final WorkerTeam.RangeTask secondTask = this::relaxSecond;
    private final WorkerTeam.RangeTask restrictColumnsTask = this::restrictColumns;
    private final WorkerTeam.RangeTask restrictRowsTask = this::restrictRows;
    private final WorkerTeam.RangeTask correctTask = this::correct;
    private final WorkerTeam.RangeTask secondAgainTask = this::relaxSecondAgain;
    private final WorkerTeam.RangeTask firstAgainTask = this::relaxFirstAgain;

    /**
     * Makes the cycle of a level.
     *
     * @param coarser cycle of the next coarser level, none where that is the coarsest
     * @param coarsest direct solve on the coarsest level
     */
    PointCycle(
            PointLevel level,
            PointTransfer transfer,
            @Nullable PointCycle coarser,
            CoarsestSolve coarsest,
            WorkerTeam team) {
        this.level = level;
        this.transfer = transfer;
        this.coarser = coarser;
        this.coarsest = coarsest;
        this.team = team;
        this.grain = Math.max(1, GRAIN_CELLS / level.columns);
    }

    float[] rightHandSide(int system) {
        return rightHandSides[system];
    }

    float[] solution(int system) {
        return solutions[system];
    }

    /** Makes room for a number of systems. */
    void reserve(int systems) {
        int length = NinePointOperator.paddedLength(level.columns, level.rows);
        int had = rightHandSides.length;
        if (had < systems) {
            rightHandSides = Arrays.copyOf(rightHandSides, systems);
            solutions = Arrays.copyOf(solutions, systems);
            halves = Arrays.copyOf(halves, systems);
            for (int l = had; l < systems; l++) {
                rightHandSides[l] = new float[length];
                solutions[l] = new float[length];
                halves[l] = new float[transfer.halfLength()];
            }
        }
        if (coarser != null) {
            coarser.reserve(systems);
        } else {
            coarsest.reserve(systems);
        }
    }

    /** Smooths, restricts, recurses, corrects, smooths. */
    void run(int systems) {
        count = systems;
        team.split(level.rows, grain, firstTask);
        team.split(level.rows, grain, secondTask);
        team.split(level.rows, grain, restrictColumnsTask);
        team.split((level.rows + 1) / 2, grain, restrictRowsTask);
        if (coarser != null) {
            coarser.run(systems);
        } else {
            coarsest.solve(systems);
        }
        team.split(level.rows, grain, correctTask);
        team.split(level.rows, grain, secondAgainTask);
        team.split(level.rows, grain, firstAgainTask);
    }

    /** First half of a sweep: the red cells, or on a nine-point level the even rows, even columns before odd ones. */
    private void relaxFirst(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < count; l++) {
                if (level.fivePoint) {
                    level.relaxFromZero(row, row % 2, solutions[l], rightHandSides[l]);
                } else if (row % 2 == 0) {
                    // The rows beside it still hold the last cycle's values, so this row is relaxed by itself.
                    level.relaxRowFromZero(row, solutions[l], rightHandSides[l]);
                }
            }
        }
    }

    /** Second half of a sweep: the black cells, or the odd rows, even columns before odd ones. */
    private void relaxSecond(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < count; l++) {
                if (level.fivePoint) {
                    level.relax(row, 1 - row % 2, solutions[l], rightHandSides[l]);
                } else if (row % 2 == 1) {
                    level.clearRow(row, solutions[l]);
                    level.relax(row, 0, solutions[l], rightHandSides[l]);
                    level.relax(row, 1, solutions[l], rightHandSides[l]);
                }
            }
        }
    }

    private void restrictColumns(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < count; l++) {
                transfer.restrictColumns(row, solutions[l], rightHandSides[l], halves[l]);
            }
        }
    }

    private void restrictRows(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < count; l++) {
                transfer.restrictRows(row, halves[l], coarseRightHandSide(l));
            }
        }
    }

    private void correct(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < count; l++) {
                transfer.interpolateRows(row, coarseSolution(l), halves[l]);
                transfer.addColumns(row, halves[l], solutions[l]);
            }
        }
    }

    private float[] coarseRightHandSide(int system) {
        return coarser != null ? coarser.rightHandSides[system] : coarsest.rightHandSide(system);
    }

    private float[] coarseSolution(int system) {
        return coarser != null ? coarser.solutions[system] : coarsest.solution(system);
    }

    /** The second half of the sweep in reverse. */
    private void relaxSecondAgain(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < count; l++) {
                if (level.fivePoint) {
                    level.relax(row, 1 - row % 2, solutions[l], rightHandSides[l]);
                } else if (row % 2 == 1) {
                    level.relax(row, 1, solutions[l], rightHandSides[l]);
                    level.relax(row, 0, solutions[l], rightHandSides[l]);
                }
            }
        }
    }

    /** The first half of the sweep in reverse. */
    private void relaxFirstAgain(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < count; l++) {
                if (level.fivePoint) {
                    level.relax(row, row % 2, solutions[l], rightHandSides[l]);
                } else if (row % 2 == 0) {
                    level.relax(row, 1, solutions[l], rightHandSides[l]);
                    level.relax(row, 0, solutions[l], rightHandSides[l]);
                }
            }
        }
    }
}
