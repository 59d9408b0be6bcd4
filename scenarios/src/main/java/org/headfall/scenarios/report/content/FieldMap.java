package org.headfall.scenarios.report.content;

import java.util.List;

/**
 * The field seen from above.
 *
 * @param x eastings of the cell centres, ascending (m)
 * @param y northings of the cell centres, ascending (m)
 * @param ground level of the ground (m above datum), one value a cell, empty if unknown
 * @param aquiferTop top of the aquifer (m above datum), one value a cell, empty if unknown
 * @param aquiferBottom bottom of the aquifer (m above datum), one value a cell, empty if unknown
 * @param heads heads at the report dates (m above datum), the start first, at least one
 * @param drawdowns drawdown at the same dates (m, positive where heads fell); empty: counted from the first head
 * @param drawdownMeaning what drawdown is counted from, for a reader: "since 1 July 2026"
 */
@SuppressWarnings("ArrayRecordComponent") // large, owned by the content
public record FieldMap(
        double[] x,
        double[] y,
        float[] ground,
        float[] aquiferTop,
        float[] aquiferBottom,
        List<DatedField> heads,
        List<DatedField> drawdowns,
        String drawdownMeaning) {

    /** Checks that every field covers the grid. */
    public FieldMap {
        heads = List.copyOf(heads);
        drawdowns = List.copyOf(drawdowns);
        if (heads.isEmpty()) {
            throw new IllegalArgumentException("a map needs heads at one date at least, found none");
        }
        int cells = x.length * y.length;
        requireLength("ground", ground, cells);
        requireLength("aquifer top", aquiferTop, cells);
        requireLength("aquifer bottom", aquiferBottom, cells);
        heads.forEach(field -> requireCells("head at " + field.date(), field.values(), cells));
        drawdowns.forEach(field -> requireCells("drawdown at " + field.date(), field.values(), cells));
        if (!drawdowns.isEmpty() && drawdowns.size() != heads.size()) {
            throw new IllegalArgumentException(
                    "drawdown must be given at all " + heads.size() + " dates or none, found " + drawdowns.size());
        }
    }

    private static void requireLength(String name, float[] values, int cells) {
        if (values.length != 0) {
            requireCells(name, values, cells);
        }
    }

    private static void requireCells(String name, float[] values, int cells) {
        if (values.length != cells) {
            throw new IllegalArgumentException(name + " must have " + cells + " values, found " + values.length);
        }
    }
}
