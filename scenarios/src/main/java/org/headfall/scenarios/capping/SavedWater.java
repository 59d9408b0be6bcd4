package org.headfall.scenarios.capping;

import java.util.EnumMap;
import java.util.Map;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.flow.WaterBalance.Kind;

/**
 * Where the water is at the end of a run that a shut bore has not taken: each part is the difference between the water
 * balance with the bore shut and that with the bore as it was, so their sum is what was saved, but for the error of the
 * numbers.
 *
 * @param saved what the bore would have taken (m³)
 * @param inAquifer more in storage of the aquifer (m³)
 * @param inSealingBed more in storage of the sealing bed (m³)
 * @param atSprings come out at springs instead (m³)
 * @param atBores come out at other bores instead, most of them flowing by themselves (m³)
 * @param throughBoundaries gone out through outer boundaries, or not come in there (m³)
 * @param throughSealingBed gone out through the sealing bed to the level above it, or not come in there (m³)
 */
public record SavedWater(
        double saved,
        double inAquifer,
        double inSealingBed,
        double atSprings,
        double atBores,
        double throughBoundaries,
        double throughSealingBed) {

    /**
     * The difference of two balances over the same time.
     *
     * @param asItIs balance with the bore as it was
     * @param shut balance with the bore shut
     * @param bore name of the bore
     */
    static SavedWater between(WaterBalance asItIs, WaterBalance shut, String bore) {
        Map<Kind, Double> parts = new EnumMap<>(Kind.class);
        double saved = 0;
        for (int i = 0; i < asItIs.terms().size(); i++) {
            WaterBalance.Term before = asItIs.terms().get(i);
            double more = leaving(shut.terms().get(i)) - leaving(before);
            if (before.kind() == Kind.BORE && before.name().equals(bore)) {
                saved = -more;
            } else {
                parts.merge(before.kind(), more, Double::sum);
            }
        }
        return new SavedWater(
                saved,
                parts.getOrDefault(Kind.STORAGE, 0.0),
                parts.getOrDefault(Kind.SEALING_BED_STORAGE, 0.0),
                parts.getOrDefault(Kind.SPRING, 0.0),
                parts.getOrDefault(Kind.BORE, 0.0),
                parts.getOrDefault(Kind.BOUNDARY, 0.0),
                parts.getOrDefault(Kind.LEAKAGE, 0.0));
    }

    /** What leaves the flow of the aquifer, into storage too, less what enters it (m³). */
    private static double leaving(WaterBalance.Term term) {
        return term.outflow() - term.inflow();
    }

    /** What is still underground because the bore was shut (m³). */
    public double stored() {
        return inAquifer + inSealingBed;
    }

    /** What the numbers fail to account for (m³). */
    public double unaccounted() {
        return saved - stored() - atSprings - atBores - throughBoundaries - throughSealingBed;
    }
}
