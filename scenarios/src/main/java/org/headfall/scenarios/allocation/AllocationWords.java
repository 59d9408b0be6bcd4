package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.quantity.Significant;

/** Sentences about an allocation without a full stop, the same on a terminal and on its page. */
public final class AllocationWords {

    /** What is said before the limits that give way. */
    public static final String CONTRADICTION =
            "These limits cannot all be kept with what is wanted; they would have to give way by at least:";

    private AllocationWords() {}

    /** Mean taking and energy of all bores, over the time for which they share. */
    public static String mean(AllocationResult result) {
        return String.format(
                Locale.ROOT,
                "Mean taking%s: %.1f ML/yr, %.0f kWh/ML",
                result.endsEarly() ? " until " + result.lastDate() + ", when the bores stop" : "",
                DischargeUnit.MEGALITRES_PER_YEAR.of(result.yield()),
                result.energyPerMegalitre());
    }

    /** Mean taking of one bore. */
    public static String mean(AllocationResult.BoreRates bore) {
        return String.format(
                Locale.ROOT, "%s: %.1f ML/yr", bore.name(), DischargeUnit.MEGALITRES_PER_YEAR.of(bore.yield()));
    }

    /** That some bores share evenly. */
    public static String evenly(List<String> bores) {
        return "Shared evenly, as shares make no difference to goal and limits: " + String.join(", ", bores);
    }

    /** What a limit that gives way would have to allow. */
    public static String gaveWay(AllocationResult.Relaxed one) {
        return String.format(
                Locale.ROOT,
                "%s: %.3f %s, from %.2f to %.2f",
                one.name(),
                one.amount(),
                one.unit(),
                one.allowed(),
                one.needed());
    }

    /** What is left of a limit and, where it costs anything, its price. */
    public static String kept(AllocationResult result, AllocationResult.Kept one) {
        if (Double.isNaN(one.day())) {
            return one.name() + ": " + one.remark();
        }
        String left = String.format(
                Locale.ROOT,
                "%s: left %.3f %s, by the simulator %.3f",
                one.name(),
                rounded(one.predicted()),
                one.unit(),
                rounded(one.simulated()));
        String priced = one.price() == 0 ? left : left + "; " + price(result, one);
        return one.remark().isEmpty() ? priced : priced + "; " + one.remark();
    }

    private static String price(AllocationResult result, AllocationResult.Kept one) {
        String priced = "price " + Significant.text(one.price()) + " " + result.priceUnit(one) + ", "
                + AllocationResult.STEP + " more ";
        String gain = one.gain() < 0
                ? "loses " + Significant.text(-one.gain()) + " " + result.goalUnit()
                        + ", as holders who come first take more"
                : "gains " + Significant.text(one.gain()) + " " + result.goalUnit();
        return priced + gain;
    }

    /** To the thousandth that is shown, and nothing less than nothing where that is none. */
    private static double rounded(double left) {
        return Double.isFinite(left) ? Math.rint(left * 1000) / 1000 + 0.0 : left;
    }

    /** What is kept free of the limits, and what a run with the rates will find. */
    public static String keptFree(AllocationResult result) {
        if (!result.rounds().notKept().isEmpty()) {
            return "Of limits not named above the numerical error is kept free (prices.csv)"
                    + (result.relaxed().isEmpty() ? "" : "; what is left is of what the document allows");
        }
        return result.relaxed().isEmpty()
                ? "Of each limit its numerical error is kept free (prices.csv), so that a run with these rates finds it"
                        + " kept"
                : "What is left is of what the document allows: a run with these rates finds limits that have to give way"
                        + " broken by that much. Of the others the numerical error is kept free (prices.csv)";
    }

    /** What the search had not come to when its rounds ended, worst first; nothing if rates settled with all limits kept. */
    public static List<String> unfinished(AllocationResult.Rounds rounds) {
        List<String> unfinished = new ArrayList<>();
        if (!rounds.notKept().isEmpty()) {
            unfinished.add("Not all limits are kept: the search ended after "
                    + (rounds.bySuperposition() + rounds.bySimulator())
                    + " rounds, and with these rates the simulator leaves less than the numerical error, or breaks the limit (left by the"
                    + " simulator, below zero), of: "
                    + String.join("; ", rounds.notKept()));
        }
        if (!rounds.settled()) {
            unfinished.add(
                    "Rates have not settled: the last of "
                            + (rounds.bySuperposition() + rounds.bySimulator())
                            + " rounds still changed the goal by more than 0.05 %. Other rates may do better, and prices may be off");
        }
        return unfinished;
    }

    /** How often rates were run, and how far superposition and simulator lie apart. */
    public static String rounds(AllocationResult.Rounds rounds) {
        String simulated = "Rates were run through the full simulator " + times(rounds.bySimulator());
        return rounds.bySuperposition() == 0
                ? simulated
                : simulated + ", and " + times(rounds.bySuperposition()) + " by superposition"
                        + rounds.differences().stream()
                                .map(most -> String.format(
                                        Locale.ROOT,
                                        "; at these rates what is left of limits in %s differs by %.4f %s at most",
                                        most.unit(),
                                        most.largest(),
                                        most.unit()))
                                .collect(Collectors.joining());
    }

    private static String times(int count) {
        return count == 1 ? "once" : count + " times";
    }
}
