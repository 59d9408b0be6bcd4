package org.headfall.scenarios.findings;

import java.util.Locale;
import java.util.Optional;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.solver.aquifer.SealingBed;

/**
 * How long a sealing bed goes on giving stored water after head below it has changed: its response time
 * {@code b'² Ss'/K'} (Hantush 1960, J. Geophys. Res. 65, 3713). Before a tenth of it what comes out of the bed is stored
 * water, as if the bed had no top; after several of it, what passes through from above.
 *
 * @param least least time of all cells of the aquifer whose bed stores and leaks (d)
 * @param greatest greatest time (d)
 */
public record BedAdjustment(double least, double greatest) {

    private static final double YEAR = 365.25;

    /** Times from here on are told in years (d). */
    private static final double TOLD_IN_YEARS = 2 * YEAR;

    /** Times below this would be told as 0.0 d (d). */
    private static final double LEAST_TOLD = 0.05;

    /** Times below this are told with a decimal, in their unit. */
    private static final double TOLD_WITH_DECIMAL = 10;

    /** That of the bed of a run; empty if there is none, or none that both stores and leaks. */
    public static Optional<BedAdjustment> of(RunDescription run) {
        return run.sealingBed().flatMap(bed -> of(bed, run.aquifer().active()));
    }

    private static Optional<BedAdjustment> of(SealingBed bed, boolean[] active) {
        double least = Double.POSITIVE_INFINITY;
        double greatest = 0;
        for (int cell = 0; cell < active.length; cell++) {
            double time = bed.responseTime(cell);
            if (active[cell] && time > 0 && Double.isFinite(time)) {
                least = Math.min(least, time);
                greatest = Math.max(greatest, time);
            }
        }
        return greatest > 0 ? Optional.of(new BedAdjustment(least, greatest)) : Optional.empty();
    }

    /** Such as "30 yr", or "1.4 d to 12 yr". */
    public String words() {
        String from = words(least);
        String to = words(greatest);
        return from.equals(to) ? to : from + " to " + to;
    }

    private static String words(double days) {
        if (days < LEAST_TOLD) {
            return "less than 0.1 d";
        }
        return days < TOLD_IN_YEARS ? number(days) + " d" : number(days / YEAR) + " yr";
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, value < TOLD_WITH_DECIMAL ? "%.1f" : "%,.0f", value);
    }
}
