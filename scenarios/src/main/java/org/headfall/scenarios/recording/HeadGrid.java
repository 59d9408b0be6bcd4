package org.headfall.scenarios.recording;

/**
 * Head of the whole grid at one day.
 *
 * @param day days since the start
 * @param head head of each cell (m above datum), NaN where the cell is not active; not copied, must not change
 */
@SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, shared and never compared
public record HeadGrid(double day, double[] head) {

    /**
     * Drawdown since another day.
     *
     * @param start head at the earlier day
     * @return head at the earlier day less head of this one (m), positive down, NaN where the cell is not active
     */
    public double[] drawdownSince(HeadGrid start) {
        double[] drawdown = new double[head.length];
        for (int cell = 0; cell < head.length; cell++) {
            drawdown[cell] = start.head[cell] - head[cell];
        }
        return drawdown;
    }
}
