package org.headfall.solver.linear;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** The V-cycle of {@link LineMultigrid} on one level and, by recursion, below. */
final class LineCycle {
    /** Least number of cells worth a second thread. */
    private static final int GRAIN_CELLS = 2048;
    /** Rows solved side by side. */
    private static final int GROUP = 4;

    private final LineLevel level;
    private final @Nullable LineCycle coarser;
    private final WorkerTeam team;
    private final int grain;
    private double[][] rightHandSides = {};
    private double[][] solutions = {};
    private int count;
    private final WorkerTeam.RangeTask firstKeptTask = this::solveKeptFromZero;
    private final WorkerTeam.RangeTask leftOutTask = this::solveLeftOut;
    private final WorkerTeam.RangeTask restrictTask = this::restrict;
    private final WorkerTeam.RangeTask correctTask = this::correct;
    private final WorkerTeam.RangeTask lastKeptTask = this::solveKept;

    LineCycle(LineLevel level, @Nullable LineCycle coarser, WorkerTeam team) {
        this.level = level;
        this.coarser = coarser;
        this.team = team;
        this.grain = Math.max(1, GRAIN_CELLS / (GROUP * level.operator.columns));
    }

    LineLevel level() {
        return level;
    }

    double[] rightHandSide(int system) {
        return rightHandSides[system];
    }

    double[] solution(int system) {
        return solutions[system];
    }

    /** Makes room for a number of systems. */
    void reserve(int systems) {
        int length = NinePointOperator.paddedLength(level.operator.columns, level.operator.rows);
        for (int l = rightHandSides.length; l < systems; l++) {
            rightHandSides = Arrays.copyOf(rightHandSides, l + 1);
            solutions = Arrays.copyOf(solutions, l + 1);
            rightHandSides[l] = new double[length];
            solutions[l] = new double[length];
        }
        if (coarser != null) {
            coarser.reserve(systems);
        }
    }

    /** Smooths, restricts, recurses, corrects, smooths. */
    void run(int systems) {
        count = systems;
        team.split(groups(keptRows()), grain, firstKeptTask);
        if (coarser == null) {
            return;
        }
        team.split(groups(leftOutRows()), grain, leftOutTask);
        team.split(groups(keptRows()), grain, restrictTask);
        coarser.run(systems);
        team.split(groups(keptRows()), grain, correctTask);
        team.split(groups(leftOutRows()), grain, leftOutTask);
        team.split(groups(keptRows()), grain, lastKeptTask);
    }

    private int keptRows() {
        return (level.operator.rows + 1) / 2;
    }

    private int leftOutRows() {
        return level.operator.rows / 2;
    }

    private static int groups(int rows) {
        return (rows + GROUP - 1) / GROUP;
    }

    private void solveKeptFromZero(int from, int to) {
        for (int group = from; group < to; group++) {
            for (int l = 0; l < count; l++) {
                int end = Math.min(keptRows(), (group + 1) * GROUP);
                for (int i = group * GROUP; i < end; i++) {
                    int first = level.index(0, 2 * i);
                    System.arraycopy(rightHandSides[l], first, solutions[l], first, level.operator.columns);
                }
                solveGroup(group, 0, keptRows(), solutions[l]);
            }
        }
    }

    private void solveKept(int from, int to) {
        for (int group = from; group < to; group++) {
            for (int l = 0; l < count; l++) {
                gather(group, 0, keptRows(), l);
                solveGroup(group, 0, keptRows(), solutions[l]);
            }
        }
    }

    private void solveLeftOut(int from, int to) {
        for (int group = from; group < to; group++) {
            for (int l = 0; l < count; l++) {
                gather(group, 1, leftOutRows(), l);
                solveGroup(group, 1, leftOutRows(), solutions[l]);
            }
        }
    }

    private void gather(int group, int parity, int rows, int l) {
        int end = Math.min(rows, (group + 1) * GROUP);
        for (int i = group * GROUP; i < end; i++) {
            level.addCouplings(2 * i + parity, solutions[l], rightHandSides[l]);
        }
    }

    private void solveGroup(int group, int parity, int rows, double[] values) {
        int start = group * GROUP;
        if (start + GROUP <= rows) {
            level.solveFourRows(2 * start + parity, values);
        } else {
            for (int i = start; i < rows; i++) {
                level.solveRow(2 * i + parity, values);
            }
        }
    }

    /** Residual of the kept rows, whose own systems were solved exactly before the rows left out had values. */
    private void restrict(int from, int to) {
        LineCycle below = belowThis();
        for (int i = from * GROUP; i < Math.min(keptRows(), to * GROUP); i++) {
            for (int l = 0; l < count; l++) {
                level.coupleInto(2 * i, solutions[l], below.rightHandSides[l], below.level.index(0, i));
            }
        }
    }

    private void correct(int from, int to) {
        LineCycle below = belowThis();
        for (int i = from * GROUP; i < Math.min(keptRows(), to * GROUP); i++) {
            for (int l = 0; l < count; l++) {
                level.addRow(2 * i, solutions[l], below.solutions[l], below.level.index(0, i));
            }
        }
    }

    private LineCycle belowThis() {
        if (coarser == null) {
            throw new IllegalStateException("the coarsest level has none below it");
        }
        return coarser;
    }
}
