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
    /** Coarse rows, each with the even row that it stands for and the odd one above. */
    private final RowParts parts;

    private final PointWorkspace[] workspaces;
    private HalfRows[] rightHandSides = {};
    private HalfRows[] solutions = {};
    private int count;
    private final WorkerTeam.RangeTask evenRowsTask = this::relaxEvenRows;
    private final WorkerTeam.RangeTask oddRowsTask = this::relaxOddRows;
    private final WorkerTeam.RangeTask restrictTask = this::restrict;
    private final WorkerTeam.RangeTask correctTask = this::correct;
    private final WorkerTeam.RangeTask oddRowsAgainTask = this::relaxOddRowsAgain;
    private final WorkerTeam.RangeTask evenRowsAgainTask = this::relaxEvenRowsAgain;

    /** Makes the cycle of a level above a coarser one. */
    PointCycle(PointLevel level, PointTransfer transfer, CoarseCorrection coarser, WorkerTeam team) {
        this.level = level;
        this.transfer = transfer;
        this.coarser = coarser;
        this.team = team;
        this.parts = RowParts.of((level.rows + 1) / 2, team.size(), GRAIN_CELLS / (2 * level.columns));
        this.workspaces = new PointWorkspace[parts.parts()];
        Arrays.setAll(workspaces, part -> new PointWorkspace(level.halfColumns));
    }

    @Override
    public HalfRows rightHandSide(int system) {
        return rightHandSides[system];
    }

    @Override
    public HalfRows solution(int system) {
        return solutions[system];
    }

    @Override
    public void reserve(int systems) {
        int had = rightHandSides.length;
        if (had < systems) {
            rightHandSides = Arrays.copyOf(rightHandSides, systems);
            solutions = Arrays.copyOf(solutions, systems);
            for (int l = had; l < systems; l++) {
                rightHandSides[l] = new HalfRows(level.columns, level.rows);
                solutions[l] = new HalfRows(level.columns, level.rows);
            }
        }
        for (PointWorkspace work : workspaces) {
            work.reserve(systems);
        }
        coarser.reserve(systems);
    }

    /** Smooths, restricts, recurses, corrects, smooths. */
    @Override
    public void run(int systems) {
        count = systems;
        team.split(parts.parts(), 1, evenRowsTask);
        team.split(parts.parts(), 1, oddRowsTask);
        team.split(parts.parts(), 1, restrictTask);
        coarser.run(systems);
        team.split(parts.parts(), 1, correctTask);
        team.split(parts.parts(), 1, oddRowsAgainTask);
        team.split(parts.parts(), 1, evenRowsAgainTask);
    }

    /** First half of a sweep: the odd rows still hold the last cycle's values, so each even row is relaxed by itself. */
    private void relaxEvenRows(int fromPart, int toPart) {
        for (int part = fromPart; part < toPart; part++) {
            for (int row = 2 * parts.first(part); row < Math.min(level.rows, 2 * parts.first(part + 1)); row += 2) {
                for (int l = 0; l < count; l++) {
                    level.relaxAlone(row, solutions[l], rightHandSides[l], workspaces[part]);
                }
            }
        }
    }

    /** Second half of a sweep. */
    private void relaxOddRows(int fromPart, int toPart) {
        for (int part = fromPart; part < toPart; part++) {
            for (int row = 2 * parts.first(part) + 1; row < Math.min(level.rows, 2 * parts.first(part + 1)); row += 2) {
                for (int l = 0; l < count; l++) {
                    level.relaxBetween(row, solutions[l], rightHandSides[l], workspaces[part]);
                }
            }
        }
    }

    private void restrict(int fromPart, int toPart) {
        for (int part = fromPart; part < toPart; part++) {
            PointWorkspace work = workspaces[part];
            for (int l = 0; l < count; l++) {
                transfer.beginRestriction(parts.first(part), solutions[l], rightHandSides[l], work.carried[l], work);
            }
            for (int row = parts.first(part); row < parts.first(part + 1); row++) {
                for (int l = 0; l < count; l++) {
                    transfer.restrict(
                            row, solutions[l], rightHandSides[l], coarser.rightHandSide(l), work.carried[l], work);
                }
            }
        }
    }

    private void correct(int fromPart, int toPart) {
        for (int part = fromPart; part < toPart; part++) {
            for (int row = parts.first(part); row < parts.first(part + 1); row++) {
                for (int l = 0; l < count; l++) {
                    transfer.correct(row, coarser.solution(l), solutions[l], workspaces[part]);
                }
            }
        }
    }

    /** The second half of the sweep in reverse. */
    private void relaxOddRowsAgain(int fromPart, int toPart) {
        relaxBackward(fromPart, toPart, 1);
    }

    /** The first half of the sweep in reverse. */
    private void relaxEvenRowsAgain(int fromPart, int toPart) {
        relaxBackward(fromPart, toPart, 0);
    }

    private void relaxBackward(int fromPart, int toPart, int parity) {
        for (int part = fromPart; part < toPart; part++) {
            int end = Math.min(level.rows, 2 * parts.first(part + 1));
            for (int row = 2 * parts.first(part) + parity; row < end; row += 2) {
                for (int l = 0; l < count; l++) {
                    level.relaxBackward(row, solutions[l], rightHandSides[l], workspaces[part]);
                }
            }
        }
    }
}
