package org.headfall.solver.bore;

import org.headfall.solver.analytic.function.ModifiedBessel;
import org.headfall.solver.wording.PlainNumber;

/**
 * Screen that is shorter than the aquifer is thick. Water must turn towards it, which takes more head than flow to a full
 * screen: as much as a skin of
 *
 * <pre>{@code 2 / (pi² (d2 - d1)²) sum_n 1/n² [sin(n pi d2) - sin(n pi d1)]² K0(n pi r_w sqrt(Kz/Kr) / b)}</pre>
 *
 * <p>with d1 and d2 the depths of both ends of the screen below the aquifer top as parts of the thickness b (Hantush 1961,
 * J. Hydraul. Div. ASCE 87(HY5), 171-195, drawdown averaged over the screen, at late time, when his well function
 * W(u, x) has become 2 K0(x): within hours for a bore of usual size).
 *
 * @param top upper end of the screen below the aquifer top (-), part of the thickness
 * @param bottom lower end of the screen below the aquifer top (-), part of the thickness, greater than {@code top}
 * @param thickness thickness of the aquifer b (m), positive
 * @param verticalOverHorizontal ratio Kz/Kr of conductivities (-), positive
 */
public record PartialPenetration(double top, double bottom, double thickness, double verticalOverHorizontal) {

    private static final double RELATIVE_TAIL = 1e-7;
    private static final int MOST_TERMS = 5_000_000;

    /** Checks the values. */
    public PartialPenetration {
        if (!(top >= 0 && top < bottom && bottom <= 1)) {
            throw new IllegalArgumentException("the screen must lie within the aquifer, found from "
                    + PlainNumber.of(top) + " to " + PlainNumber.of(bottom) + " of its thickness");
        }
        if (!(thickness > 0 && verticalOverHorizontal > 0 && Double.isFinite(thickness))) {
            throw new IllegalArgumentException("thickness and the ratio of conductivities must be positive, found "
                    + PlainNumber.of(thickness) + " m and " + PlainNumber.of(verticalOverHorizontal));
        }
    }

    /**
     * Skin that stands for the short screen.
     *
     * @param screenRadius radius at the screen face (m), positive
     * @return skin (-), not negative: head {@code skin Q / (2 pi T)} is lost besides
     */
    public double skin(double screenRadius) {
        double length = bottom - top;
        double step = Math.PI * screenRadius * Math.sqrt(verticalOverHorizontal) / thickness;
        double sum = 0;
        for (int n = 1; n <= MOST_TERMS; n++) {
            double bessel = ModifiedBessel.k0(n * step);
            double wave = Math.sin(n * Math.PI * bottom) - Math.sin(n * Math.PI * top);
            sum += wave * wave * bessel / ((double) n * n);
            // What is left is less than the sum of 4 K0 / n² from here on.
            if (4 * bessel / n <= RELATIVE_TAIL * sum) {
                break;
            }
        }
        return 2 * sum / (Math.PI * Math.PI * length * length);
    }
}
