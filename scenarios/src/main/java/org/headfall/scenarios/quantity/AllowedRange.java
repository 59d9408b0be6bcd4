package org.headfall.scenarios.quantity;

import java.util.ArrayList;
import java.util.List;
import org.headfall.solver.wording.PlainNumber;

/**
 * The range a value has to lie in, in metres and days.
 *
 * @param low lower end; negative infinity for none
 * @param lowIncluded whether the lower end itself is allowed
 * @param high upper end; infinity for none
 * @param highIncluded whether the upper end itself is allowed
 */
public record AllowedRange(double low, boolean lowIncluded, double high, boolean highIncluded) {
    /** Any finite value. */
    public static final AllowedRange ANY =
            new AllowedRange(Double.NEGATIVE_INFINITY, false, Double.POSITIVE_INFINITY, false);
    /** More than zero. */
    public static final AllowedRange POSITIVE = new AllowedRange(0, false, Double.POSITIVE_INFINITY, false);
    /** Zero or more. */
    public static final AllowedRange NOT_NEGATIVE = new AllowedRange(0, true, Double.POSITIVE_INFINITY, false);

    /**
     * A range that includes both ends.
     *
     * @param low lower end
     * @param high upper end
     */
    public static AllowedRange between(double low, double high) {
        return new AllowedRange(low, true, high, true);
    }

    /**
     * More than zero, up to and with an upper end.
     *
     * @param high upper end
     */
    public static AllowedRange positiveUpTo(double high) {
        return new AllowedRange(0, false, high, true);
    }

    /**
     * Whether a value lies in the range.
     *
     * @param value value in metres and days
     */
    public boolean contains(double value) {
        return (lowIncluded ? value >= low : value > low) && (highIncluded ? value <= high : value < high);
    }

    /**
     * The range in words, such as "more than 0 m2/d".
     *
     * @param unit unit of the ends; may be empty
     */
    public String describe(String unit) {
        List<String> parts = new ArrayList<>();
        if (low != Double.NEGATIVE_INFINITY) {
            parts.add((lowIncluded ? "at least " : "more than ") + withUnit(low, unit));
        }
        if (high != Double.POSITIVE_INFINITY) {
            parts.add((highIncluded ? "at most " : "less than ") + withUnit(high, unit));
        }
        return parts.isEmpty() ? "any finite value" : String.join(" and ", parts);
    }

    /**
     * The range in words in the unit that a value was typed in, such as "at least 1 yr".
     *
     * @param typed the value
     */
    public String describeFor(Quantity typed) {
        String unit = typed.unit();
        return unit.isEmpty() || unit.equals(typed.dimension().unit())
                ? describe(typed.dimension().unit())
                : new AllowedRange(typed.inUnit(low), lowIncluded, typed.inUnit(high), highIncluded).describe(unit);
    }

    private static String withUnit(double end, String unit) {
        String number = PlainNumber.of(end);
        return unit.isEmpty() ? number : number + " " + unit;
    }
}
