package org.headfall.solver.aquifer;

/**
 * Bed of low conductivity above the aquifer, with a given head on top of it. Leakage into a cell is
 * {@code area K'/b' (headAbove - head)} once the bed has adjusted; before that the bed gives up stored water
 * (Hantush 1960) if its specific storage is not zero. Arrays hold one value a cell; not copied, must not change.
 *
 * @param thickness b' (m), positive
 * @param verticalConductivity K' (m/d), not negative
 * @param specificStorage Ss' (1/m), not negative; all zero leaves storage out
 * @param headAbove head on top of the bed (m above datum)
 */
@SuppressWarnings("ArrayRecordComponent") // fields of 10⁵ cells, shared and never compared
public record SealingBed(
        double[] thickness, double[] verticalConductivity, double[] specificStorage, double[] headAbove) {

    /** Checks every cell. */
    public SealingBed {
        CellValues.requirePositive("thickness of the sealing bed", "m", thickness);
        CellValues.requireNotNegative("vertical conductivity of the sealing bed", "m/d", verticalConductivity);
        CellValues.requireNotNegative("specific storage of the sealing bed", "1/m", specificStorage);
    }

    /** Whether any cell of the bed stores water. */
    public boolean stores() {
        for (double storage : specificStorage) {
            if (storage > 0) {
                return true;
            }
        }
        return false;
    }

    /** Leakage per area and metre of head of a cell, K'/b' (1/d). */
    public double leakance(int cell) {
        return verticalConductivity[cell] / thickness[cell];
    }

    /** Time in which the bed of a cell adjusts, {@code b'^2 Ss'/K'} (d); infinite where nothing leaks. */
    public double responseTime(int cell) {
        return thickness[cell] * thickness[cell] * specificStorage[cell] / verticalConductivity[cell];
    }
}
