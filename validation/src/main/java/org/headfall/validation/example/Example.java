package org.headfall.validation.example;

import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Figures;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Tolerance;

/** Compares answers of worked examples: with what is printed, and with the exact answer to the printed inputs. */
final class Example {

    private static final double HAND = 0.005;

    private Example() {}

    /** An answer that the source rounded by hand: 0.5 percent or half a unit of the last printed digit. */
    static void printed(Findings findings, String quantity, String unit, String printed, double ours) {
        double half = Figures.halfUnitOfLastDigit(printed);
        double hand = HAND * Math.abs(Double.parseDouble(printed));
        findings.compare(Comparison.withPrinted(
                quantity + ", as printed",
                unit,
                printed,
                ours,
                new Tolerance(
                        Math.max(half, hand),
                        half > hand
                                ? "half a unit of the last printed digit"
                                : "0.5 %: worked by hand from rounded values")));
    }

    /** An answer read from a graph. */
    static void fromGraph(Findings findings, String quantity, String unit, String printed, double ours) {
        findings.compare(Comparison.withPrinted(
                quantity + ", as printed",
                unit,
                printed,
                ours,
                Tolerance.share(0.02, Double.parseDouble(printed), "2 %: read from a graph")));
    }

    /** An answer worked from an intermediate value that the source rounds. */
    static void fromRounded(
            Findings findings,
            String quantity,
            String unit,
            String printed,
            double ours,
            double share,
            String rounding) {
        findings.compare(Comparison.withPrinted(
                quantity + ", as printed",
                unit,
                printed,
                ours,
                Tolerance.share(share, Double.parseDouble(printed), rounding)));
    }

    /** The exact answer to the printed inputs, recomputed outside the project. */
    static void exact(Findings findings, String quantity, String unit, String digits, double ours) {
        findings.compare(Comparison.withPrinted(
                quantity + ", recomputed from the printed inputs",
                unit,
                digits,
                ours,
                Tolerance.share(1e-4, Double.parseDouble(digits), "five digits recomputed outside the project")));
    }
}
