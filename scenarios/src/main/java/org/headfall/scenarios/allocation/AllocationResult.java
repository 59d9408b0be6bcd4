package org.headfall.scenarios.allocation;

import java.time.LocalDate;
import java.util.List;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.quantity.VolumeUnit;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.scenario.AllocationSpecification;

/**
 * Rates that share the water, and what they cost.
 *
 * @param run the run
 * @param asked what was asked for
 * @param blocks when rates may differ
 * @param bores the bores, with their rates
 * @param evenly names of bores that share evenly, since shares of them make no difference to the goal and the limits
 * @param yield mean taking of all (m³/d)
 * @param energy mean energy (kWh/d)
 * @param requirements every limit and lowest level, with its price
 * @param relaxed limits that had to give way because they contradict each other, with the wanted total or minimums
 * @param exchanges what a unit taken at one bore is worth at another
 * @param goalUnit unit of the goal, by which prices are counted
 * @param uncounted limits that were not counted, and what the simulator says of them
 * @param rounds how often rates were run
 */
public record AllocationResult(
        RunDescription run,
        AllocationSpecification asked,
        RateBlocks blocks,
        List<BoreRates> bores,
        List<List<String>> evenly,
        double yield,
        double energy,
        List<Kept> requirements,
        List<Relaxed> relaxed,
        List<Exchange> exchanges,
        String goalUnit,
        List<UncountedLimit> uncounted,
        Rounds rounds) {

    /** How much more of its unit a limit is given to see what that gains. */
    static final double STEP = 0.1;

    /** How much more of its unit a limit is given to see whether its price holds for more than rounding. */
    static final double SMALL_STEP = 0.01;

    /** Copies the lists. */
    public AllocationResult {
        bores = List.copyOf(bores);
        evenly = evenly.stream().map(List::copyOf).toList();
        requirements = List.copyOf(requirements);
        relaxed = List.copyOf(relaxed);
        exchanges = List.copyOf(exchanges);
        uncounted = List.copyOf(uncounted);
    }

    /**
     * Rates of a bore.
     *
     * @param name the bore
     * @param rates rate in each group of the blocks (m³/d)
     * @param yield mean taking (m³/d)
     */
    public record BoreRates(String name, List<Double> rates, double yield) {

        /** Taking that is shown as none (L/s). */
        private static final double NOTHING = 5e-4;

        /** Copies the list. */
        public BoreRates {
            rates = List.copyOf(rates);
        }

        /** Whether it takes nothing that the tables would show. */
        boolean rests() {
            return DischargeUnit.LITRES_PER_SECOND.of(yield) < NOTHING;
        }
    }

    /**
     * A limit or a lowest level.
     *
     * @param name what it is
     * @param ofDocument whether it is a limit of the document, and not what a bore itself can give
     * @param givesWay whether it has to give way
     * @param places names of the bores, springs and points that it is about
     * @param unit its unit
     * @param unitOfChange unit of a change of it
     * @param day the day on which least is left by superposition (d)
     * @param predicted what is left then by superposition, of what the document allows where it gives way too; not a number if it
     *     counts on no day
     * @param simulated the least that is left on any day by the simulator, of the same
     * @param reserve what is kept free of it, as its numerical error is that large
     * @param price by how much the goal would improve, in its unit, for a unit more, to first order; what more of it gains is
     *     never above that, and less where several limits bind at once and others take over, see {@link
     *     org.headfall.solver.allocation.Programme#prices}
     * @param gain by how much it improves for {@value AllocationResult#STEP} of its unit more, solved again
     * @param remark what is to be said of it besides; empty if nothing
     */
    public record Kept(
            String name,
            boolean ofDocument,
            boolean givesWay,
            List<String> places,
            String unit,
            String unitOfChange,
            double day,
            double predicted,
            double simulated,
            double reserve,
            double price,
            double gain,
            String remark) {

        /** Copies the list. */
        public Kept {
            places = List.copyOf(places);
        }

        /** Whether it holds the rates back: more of it is worth something, or nothing is left of it. */
        boolean binds() {
            return price != 0 || predicted - reserve <= Requirements.TOLERATED;
        }
    }

    /**
     * A limit that gives way.
     *
     * @param name what it is
     * @param unit its unit
     * @param amount by how much
     * @param allowed what it allows
     * @param needed what it would have to allow
     */
    public record Relaxed(String name, String unit, double amount, double allowed, double needed) {}

    /**
     * Trading: what 1 ML/yr less at one bore allows at another with the same drawdown at a place at the end.
     *
     * @param place the place
     * @param from the bore that takes less
     * @param to the bore that takes more
     * @param rate how much more it may take (ML/yr)
     */
    public record Exchange(String place, String from, String to, double rate) {}

    /**
     * How often rates were run to see what springs and rules of bores do at them.
     *
     * @param bySuperposition by superposition
     * @param bySimulator by the simulator, which always has the last word
     * @param settled whether the last round changed the goal by next to nothing
     * @param notKept names of limits and lowest levels of which the simulator, with exactly these rates, leaves less than is to be
     *     kept free for the numerical error, those that give way as changed; none where all are kept
     * @param differences between superposition and simulator at these rates, one for each unit; none if these were not superposed
     */
    public record Rounds(
            int bySuperposition, int bySimulator, boolean settled, List<String> notKept, List<Difference> differences) {
        /** Copies the lists. */
        public Rounds {
            notKept = List.copyOf(notKept);
            differences = List.copyOf(differences);
        }
    }

    /**
     * How far two runs lie apart.
     *
     * @param unit a unit of what is left of limits and lowest levels
     * @param largest largest difference of what is left of any of those with this unit on any day (in the unit)
     */
    public record Difference(String unit, double largest) {}

    /** Limits and lowest levels that hold the rates back, in their order, without those that have to give way. */
    List<Kept> binding() {
        return requirements.stream()
                .filter(one -> one.binds() && !one.givesWay())
                .toList();
    }

    /** Whether bores stop sharing before the run ends. */
    boolean endsEarly() {
        return asked.days() < run.endDay();
    }

    /** The date on which bores stop sharing. */
    LocalDate lastDate() {
        return run.calendar().at(asked.days()).toLocalDate();
    }

    /** Unit of the price of a limit, such as ML/yr per m. */
    public String priceUnit(Kept one) {
        return goalUnit + " per " + one.unitOfChange();
    }

    /** Mean energy (kWh/ML); 0 if nothing is taken. */
    public double energyPerMegalitre() {
        return yield > 0 ? energy / VolumeUnit.MEGALITRES.of(yield) : 0;
    }

    /** Smallest of what the simulator leaves of all requirements; positive infinity if there are none. */
    public double worst() {
        return requirements.stream()
                .mapToDouble(Kept::simulated)
                .filter(left -> !Double.isNaN(left))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }
}
