package org.headfall.scenarios.report.page;

import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.report.content.DatedField;
import org.headfall.scenarios.report.content.FieldMap;

/**
 * Leaves out rows and columns of cells where a field has more than a page should carry. What stays keeps its own
 * values, so that a reading on the page is the value of a cell of the run. Columns go where they are closest together,
 * which a screen cannot tell apart anyway.
 */
public final class ScreenGrid {

    /** Cells times dates that a page carries. */
    static final int CAPACITY = 1_600_000;

    private ScreenGrid() {}

    static FieldMap thin(FieldMap map) {
        int[][] kept =
                kept(map.x(), map.y(), map.heads().size() + map.drawdowns().size() + 3);
        int[] columns = kept[0];
        int[] rows = kept[1];
        if (columns.length == map.x().length && rows.length == map.y().length) {
            return map;
        }
        int width = map.x().length;
        return new FieldMap(
                pick(map.x(), columns),
                pick(map.y(), rows),
                pick(map.ground(), width, columns, rows),
                pick(map.aquiferTop(), width, columns, rows),
                pick(map.aquiferBottom(), width, columns, rows),
                pick(map.heads(), width, columns, rows),
                pick(map.drawdowns(), width, columns, rows),
                map.drawdownMeaning());
    }

    /**
     * Columns and rows that a page carries.
     *
     * @param x ascending positions of the columns
     * @param y ascending positions of the rows
     * @param fields how many values there are for each cell
     * @return the columns, then the rows, by their numbers
     */
    public static int[][] kept(double[] x, double[] y, int fields) {
        double share = Math.min(1, 1 / Math.sqrt((double) x.length * y.length * fields / CAPACITY));
        return share < 1
                ? new int[][] {
                    widest(x, (int) Math.max(2, x.length * share)), widest(y, (int) Math.max(2, y.length * share))
                }
                : new int[][] {all(x), all(y)};
    }

    private static int[] all(double[] positions) {
        int[] all = new int[positions.length];
        Arrays.setAll(all, i -> i);
        return all;
    }

    /** At most {@code most} of ascending positions, no two closer than the smallest distance that allows it. */
    private static int[] widest(double[] positions, int most) {
        double tooClose = 0;
        double enough = positions[positions.length - 1] - positions[0];
        for (int i = 0; i < 60; i++) {
            double distance = (tooClose + enough) / 2;
            if (spaced(positions, distance).length > most) {
                tooClose = distance;
            } else {
                enough = distance;
            }
        }
        return spaced(positions, enough);
    }

    private static int[] spaced(double[] positions, double distance) {
        int[] kept = new int[positions.length];
        int count = 1;
        int last = positions.length - 1;
        for (int i = 1; i < last; i++) {
            if (positions[i] - positions[kept[count - 1]] >= distance && positions[last] - positions[i] >= distance) {
                kept[count++] = i;
            }
        }
        kept[count++] = last;
        return Arrays.copyOf(kept, count);
    }

    private static double[] pick(double[] values, int[] indices) {
        return Arrays.stream(indices).mapToDouble(i -> values[i]).toArray();
    }

    private static List<DatedField> pick(List<DatedField> fields, int width, int[] columns, int[] rows) {
        return fields.stream()
                .map(field -> new DatedField(field.date(), pick(field.values(), width, columns, rows)))
                .toList();
    }

    private static float[] pick(float[] values, int width, int[] columns, int[] rows) {
        if (values.length == 0) {
            return values;
        }
        float[] picked = new float[columns.length * rows.length];
        int next = 0;
        for (int row : rows) {
            for (int column : columns) {
                picked[next++] = values[row * width + column];
            }
        }
        return picked;
    }
}
