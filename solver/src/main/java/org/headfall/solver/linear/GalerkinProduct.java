package org.headfall.solver.linear;

/**
 * Galerkin product {@code P^T A P} of a nine-point operator for an interpolation that keeps every second row (or every
 * second column): a cell left out takes {@code before} times the value of the kept cell before it plus {@code after} times
 * that of the one after it, across the lines. The product is again a nine-point operator.
 *
 * <p>"Along" is the direction of the lines kept or left out, "across" the direction that is coarsened. Reading past the
 * rim needs no branches, because the couplings found there are zero.
 */
final class GalerkinProduct {
    final NinePointOperator fine;
    final NinePointOperator coarse;
    /** Weights of the kept cell before a cell left out, at the place of the latter; zero at kept cells. */
    final double[] before;
    /** Weights of the kept cell after a cell left out, at the place of the latter; zero at kept cells. */
    final double[] after;
    /** Step to the next cell along a line in the padded arrays. */
    final int along;
    /** Step to the next line in the padded arrays. */
    final int across;
    /** Coupling along a line. */
    final double[] lineCoupling;
    /** Coupling with the next line straight across. */
    final double[] straight;
    /** Step from a cell to the place of its coupling with the next line's cell before it along the line. */
    final int backwardStep;

    private final double[] coarseLineCoupling;
    private final double[] coarseStraight;
    private final int coarseBackwardStep;
    private final boolean keepsRows;
    final WorkerTeam.RangeTask rowTask = this::multiplyRows;

    /**
     * Prepares a product.
     *
     * @param fine operator
     * @param keepsRows whether every second row is kept, rather than every second column
     */
    GalerkinProduct(NinePointOperator fine, boolean keepsRows) {
        this(fine, keepsRows, new double[fine.diagonal.length], new double[fine.diagonal.length]);
    }

    /**
     * Prepares the product of the coarse operator of one that keeps rows, with the same room for its weights: they are lost
     * to the finer one when this one's are set. Every second row of either is left out, so kept cells stay zero; what
     * the finer one leaves beyond the last row meets couplings of zero.
     */
    GalerkinProduct(GalerkinProduct finer) {
        this(finer.coarse, true, finer.before, finer.after);
    }

    private GalerkinProduct(NinePointOperator fine, boolean keepsRows, double[] before, double[] after) {
        this.fine = fine;
        this.keepsRows = keepsRows;
        this.coarse = keepsRows
                ? new NinePointOperator(fine.columns, (fine.rows + 1) / 2)
                : new NinePointOperator((fine.columns + 1) / 2, fine.rows);
        this.before = before;
        this.after = after;
        this.along = keepsRows ? 1 : fine.columns;
        this.across = keepsRows ? fine.columns : 1;
        this.lineCoupling = keepsRows ? fine.east : fine.north;
        this.straight = keepsRows ? fine.north : fine.east;
        this.backwardStep = keepsRows ? 0 : 1 - fine.columns;
        this.coarseLineCoupling = keepsRows ? coarse.east : coarse.north;
        this.coarseStraight = keepsRows ? coarse.north : coarse.east;
        this.coarseBackwardStep = keepsRows ? 0 : 1 - coarse.columns;
    }

    /** Sum of the couplings of a cell with the three cells of the line before its own. */
    double couplingBefore(int k) {
        return straight[k - across]
                + fine.northEast[k - across - along]
                + fine.northWest[k - across + along + backwardStep];
    }

    /** Sum of the couplings of a cell with the three cells of the line after its own. */
    double couplingAfter(int k) {
        return straight[k] + fine.northEast[k] + fine.northWest[k + backwardStep];
    }

    private void multiplyRows(int from, int to) {
        int step = keepsRows ? 1 : 2;
        for (int row = from; row < to; row++) {
            int c = coarse.index(0, row);
            int kept = fine.index(0, keepsRows ? 2 * row : row);
            for (int i = 0; i < coarse.columns; i++) {
                multiplyLine(c + i, kept + i * step);
                coupleLines(c + i, kept + i * step);
            }
        }
    }

    /** Couplings within a coarse line: its own and those through the lines left out on both sides. */
    private void multiplyLine(int c, int kept) {
        int next = kept + across;
        int last = kept - across;
        double w = before[next];
        double v = after[last];
        coarse.diagonal[c] = fine.diagonal[kept]
                + w * (fine.diagonal[next] * w - 2 * straight[kept])
                + v * (fine.diagonal[last] * v - 2 * straight[last]);
        coarseLineCoupling[c] = lineCoupling[kept]
                + w * (lineCoupling[next] * before[next + along] + fine.northWest[kept + along + backwardStep])
                + fine.northEast[kept] * before[next + along]
                + v * (lineCoupling[last] * after[last + along] + fine.northEast[last])
                + fine.northWest[last + along + backwardStep] * after[last + along];
    }

    /** Couplings of a coarse line with the next one, through the line left out between them. */
    private void coupleLines(int c, int kept) {
        int out = kept + across;
        double w = before[out];
        coarseStraight[c] = (straight[kept] - w * fine.diagonal[out]) * after[out] + w * straight[out];
        coarse.northEast[c] =
                (w * lineCoupling[out] + fine.northEast[kept]) * after[out + along] + w * fine.northEast[out];
        double backward = fine.northWest[kept + backwardStep];
        coarse.northWest[c + coarseBackwardStep] = (w * lineCoupling[out - along] + backward) * after[out - along]
                + w * fine.northWest[out + backwardStep];
    }
}
