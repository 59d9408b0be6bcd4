package org.headfall.solver.flow;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.Recharge;
import org.headfall.solver.schedule.Schedule;

/** The cells that a recharge reaches, and what each receives before its factor in time. */
final class RechargeCells {

    private final Recharge recharge;
    private final int[] cells;
    private final double[] inflow;
    private final double total;

    RechargeCells(Recharge recharge, Aquifer aquifer) {
        this.recharge = recharge;
        cells = IntStream.range(0, recharge.rate().length)
                .filter(cell -> aquifer.active()[cell] && recharge.rate()[cell] != 0)
                .toArray();
        inflow = IntStream.of(cells)
                .mapToDouble(cell -> recharge.rate()[cell] * aquifer.grid().area(cell))
                .toArray();
        total = Arrays.stream(inflow).sum();
    }

    String name() {
        return recharge.name();
    }

    /** Adds what each cell receives at a day (m³/d). */
    void addSources(double day, double[] sources) {
        double factor = recharge.factor().at(day);
        for (int i = 0; i < cells.length; i++) {
            sources[cells[i]] += factor * inflow[i];
        }
    }

    /** What it gives beyond that of day 0, if it changes. */
    Optional<ChangingSource> change() {
        return ChangingSources.following(recharge.name(), cells, inflow, recharge.factor());
    }

    /** What it follows: a factor of {@link #total}. */
    Schedule factor() {
        return recharge.factor();
    }

    /** What all cells receive where the factor is one (m³/d). */
    double total() {
        return total;
    }

    /** What all cells receive at a day (m³/d). */
    double flow(double day) {
        return recharge.factor().at(day) * total;
    }
}
