package org.headfall.solver.linear;

import java.util.Arrays;

/** The V-cycle of {@link PointMultigrid} on one coarse level and, by recursion, below: four colours, even rows before odd ones. */
final class PointCycle implements CoarseCorrection {
    /** Least number of cells worth a second thread. */
    private static final int GRAIN_CELLS = 2048;

    private final PointLevel level;
    private final PointTransfer transfer;
    private final CoarseCorrection coarser;
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

    /** Makes the cycle of a level above a coarser one. */
    PointCycle(PointLevel level, PointTransfer transfer, CoarseCorrection coarser, WorkerTeam team) {
        this.level = level;
        this.transfer = transfer;
        this.coarser = coarser;
        this.team = team;
        this.grain = Math.max(1, GRAIN_CELLS / level.columns);
    }

    @Override
    public float[] rightHandSide(int system) {
        return rightHandSides[system];
    }

    @Override
    public float[] solution(int system) {
        return solutions[system];
    }

    @Override
    public void reserve(int systems) {
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
        coarser.reserve(systems);
    }

    /** Smooths, restricts, recurses, corrects, smooths. */
    @Override
    public void run(int systems) {
        count = systems;
        team.split(level.rows, grain, firstTask);
        team.split(level.rows, grain, secondTask);
        team.split(level.rows, grain, restrictColumnsTask);
        team.split((level.rows + 1) / 2, grain, restrictRowsTask);
        coarser.run(systems);
        team.split(level.rows, grain, correctTask);
        team.split(level.rows, grain, secondAgainTask);
        team.split(level.rows, grain, firstAgainTask);
    }

    /** First half of a sweep: the even rows, even columns before odd ones. */
    private void relaxFirst(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < count; l++) {
                if (row % 2 == 0) {
                    // The rows beside it still hold the last cycle's values, so this row is relaxed by itself.
                    level.relaxRowFromZero(row, solutions[l], rightHandSides[l]);
                }
            }
        }
    }

    /** Second half of a sweep: the odd rows, even columns before odd ones. */
    private void relaxSecond(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < count; l++) {
                if (row % 2 == 1) {
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
                transfer.restrictRows(row, halves[l], coarser.rightHandSide(l));
            }
        }
    }

    private void correct(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < count; l++) {
                transfer.interpolateRows(row, coarser.solution(l), halves[l]);
                transfer.addColumns(row, halves[l], solutions[l]);
            }
        }
    }

    /** The second half of the sweep in reverse. */
    private void relaxSecondAgain(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < count; l++) {
                if (row % 2 == 1) {
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
                if (row % 2 == 0) {
                    level.relax(row, 1, solutions[l], rightHandSides[l]);
                    level.relax(row, 0, solutions[l], rightHandSides[l]);
                }
            }
        }
    }
}
