package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.List;
import org.headfall.solver.allocation.Row;

/**
 * Rows of requirements. Of thousands, one a requirement and day, only those are there that solutions have broken (Kelley
 * 1960, J. SIAM 8, 703-712), and those that have long not mattered leave; the loss in a bore, convex in its rate, enters by
 * tangents.
 */
final class Cuts {

    /** Rounds for which a row that does not bind is kept. */
    private static final int PATIENCE = 8;

    private static final int PARTS_OF_TIME = 4;

    private final RateEffects effects;
    private final List<Requirement> requirements;
    private final double binding;
    private final List<Cut> cuts = new ArrayList<>();

    /** A requirement on a day, with the rate at which the loss touches its tangent. */
    private static final class Cut {
        private final int requirement;
        private final int day;
        private final double touching;

        /** Effect of a unit of each variable, without the loss, and what it leaves out at the rates it was found for. */
        private double[] coefficients;

        private double offset;
        private int idle;

        Cut(int requirement, int day, double touching) {
            this.requirement = requirement;
            this.day = day;
            this.touching = touching;
            coefficients = new double[0];
        }
    }

    /**
     * No rows yet.
     *
     * @param effects what rates do
     * @param requirements what rates must keep
     * @param binding what a row that binds leaves at the most, in the unit of its requirement
     */
    Cuts(RateEffects effects, List<Requirement> requirements, double binding) {
        this.effects = effects;
        this.requirements = requirements;
        this.binding = binding;
    }

    /** The rows that are there. */
    List<Row> rows() {
        return cuts.stream().map(this::row).toList();
    }

    /** Number of the requirement of a row. */
    int requirement(int row) {
        return cuts.get(row).requirement;
    }

    /** Whether rates break no requirement by more than what a row that binds may leave. */
    boolean areNoneFor(double[] rates) {
        double[][] found = effects.of(rates, requirements);
        for (int r = 0; r < found.length; r++) {
            for (int k = 0; k < found[r].length; k++) {
                if (requirements.get(r).base(k) - found[r][k] < -binding) {
                    return false;
                }
            }
        }
        return true;
    }

    private Row row(Cut cut) {
        Requirement one = requirements.get(cut.requirement);
        double[] coefficients = cut.coefficients.clone();
        double bound = one.base(cut.day) - cut.offset + effects.addTangent(one, cut.day, cut.touching, coefficients);
        return new Row(coefficients, bound, one.mayGiveWay() ? one.metresOfUnit() : Double.POSITIVE_INFINITY);
    }

    /**
     * Adds, for each requirement that is broken, the days on which it is broken most in each part of the time.
     *
     * @param rates rates that keep the rows (m³/d)
     * @param rows the rows
     * @param tolerance by how much a requirement may be passed, in its unit
     * @param someLeave whether rows leave that have long not mattered
     * @return whether any requirement is broken
     */
    boolean cutOff(double[] rates, List<Row> rows, double tolerance, boolean someLeave) {
        List<Cut> broken = new ArrayList<>();
        double[][] found = effects.of(rates, requirements);
        for (int r = 0; r < found.length; r++) {
            for (int part = 0; part < PARTS_OF_TIME; part++) {
                int from = part * found[r].length / PARTS_OF_TIME;
                int to = (part + 1) * found[r].length / PARTS_OF_TIME;
                if (from == to) {
                    continue;
                }
                int worst = requirements.get(r).tightest(found[r], from, to);
                if (requirements.get(r).base(worst) - found[r][worst] < -tolerance) {
                    broken.add(cut(r, worst, rates, found[r][worst]));
                }
            }
        }
        for (int i = 0; i < rows.size(); i++) {
            Cut cut = cuts.get(i);
            cut.idle = rows.get(i).left(rates) < binding ? 0 : cut.idle + 1;
        }
        if (someLeave && !broken.isEmpty()) {
            cuts.removeIf(cut -> cut.idle > PATIENCE);
        }
        cuts.addAll(broken);
        return !broken.isEmpty();
    }

    /**
     * Has the rows that are there follow effects that have changed.
     *
     * @param rates rates at which rows are to be exact (m³/d)
     * @param found effects of these rates on each requirement and day, losses included
     */
    void follow(double[] rates, double[][] found) {
        for (Cut cut : cuts) {
            measure(cut, rates, found[cut.requirement][cut.day]);
        }
    }

    private Cut cut(int requirement, int day, double[] rates, double found) {
        Requirement one = requirements.get(requirement);
        double touching = one.own()
                .map(own -> effects.variables().rate(rates, own.bore(), one.days()[day]))
                .orElse(0.0);
        Cut cut = new Cut(requirement, day, touching);
        measure(cut, rates, found);
        return cut;
    }

    /** Effects of rates and those of units are found in ways of their own, with errors of their own, where rates are answered. */
    private void measure(Cut cut, double[] rates, double found) {
        Requirement one = requirements.get(cut.requirement);
        cut.coefficients = effects.coefficients(one, cut.day);
        cut.offset = 0;
        if (effects.drawdown().isAnswered()) {
            cut.offset = found - effects.loss(one, rates, one.days()[cut.day]);
            for (int v = 0; v < rates.length; v++) {
                cut.offset -= cut.coefficients[v] * rates[v];
            }
        }
    }
}
