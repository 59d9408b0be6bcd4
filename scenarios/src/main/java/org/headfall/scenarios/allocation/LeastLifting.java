package org.headfall.scenarios.allocation;

/**
 * Least energy where water stands above the level it is delivered to in some bores: one convex programme after another, each right
 * near the rates of the one before, and no farther towards its rates than energy falls.
 */
final class LeastLifting {

    private static final int MOST_ROUNDS = 40;

    /** Fall of energy, as a share of it, that is not worth another round. */
    private static final double SETTLED = 1e-6;

    /** Least part of the way to the rates of a programme that is tried. */
    private static final double LEAST_SHARE = 1e-3;

    private final LiftedWater lifted;
    private final double[] most;
    private final ServedInTurn served;

    /**
     * Search.
     *
     * @param lifted energy of lifting
     * @param most largest rate of each variable (m³/d)
     * @param served what must be kept; is left with a programme that is right near the rates found
     */
    LeastLifting(LiftedWater lifted, double[] most, ServedInTurn served) {
        this.lifted = lifted;
        this.most = most.clone();
        this.served = served;
    }

    /**
     * Rates of least energy, near some rates.
     *
     * @param start rates that keep all that must be kept (m³/d)
     * @param relaxed receives by how much each requirement had to give way
     * @return the rates, with their energy
     */
    SharedWater.Best from(double[] start, double[] relaxed) {
        SharedWater.Best best = new SharedWater.Best(start, lifted.energy(start));
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double[] aim =
                    served.lastAgain(lifted.around(most, best.rates()), relaxed).rates();
            SharedWater.Best next = towards(best, aim);
            boolean settled = best.value() - next.value() <= SETTLED * best.value();
            best = next;
            if (settled) {
                break;
            }
        }
        return best;
    }

    /** Rates on the way to others: what must be kept is convex, so that all of them keep it. */
    private SharedWater.Best towards(SharedWater.Best from, double[] aim) {
        for (double share = 1; share > LEAST_SHARE; share /= 2) {
            double[] rates = new double[aim.length];
            for (int v = 0; v < rates.length; v++) {
                rates[v] = from.rates()[v] + share * (aim[v] - from.rates()[v]);
            }
            double energy = lifted.energy(rates);
            if (energy < from.value()) {
                return new SharedWater.Best(rates, energy);
            }
        }
        return from;
    }
}
