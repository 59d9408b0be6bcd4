package org.headfall.scenarios.quantity;

import java.util.LinkedHashMap;
import java.util.Map;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.ProblemKind;
import org.jspecify.annotations.Nullable;

/**
 * The closed, case-sensitive table of units. Factors are exact: the litre is 0.001 m3, the year (yr) 365.25 d.
 *
 * <p>Words that mean different things to different people, or belong to other systems of units, are refused with the
 * reason ({@code a}, {@code gal}, {@code ml}, {@code ft}, {@code psi} and others).
 */
final class UnitTable {
    private static final Map<String, Unit> UNITS = units();
    private static final Map<String, String> OTHER_SPELLINGS = otherSpellings();
    private static final Map<String, String> REFUSED = refused();

    private UnitTable() {}

    static @Nullable Unit find(String symbol) {
        return UNITS.get(symbol);
    }

    /**
     * What to say of a symbol that is not in the table.
     *
     * @param whole the whole unit as typed
     * @param symbol the unknown part
     */
    static Finding unknown(String whole, String symbol) {
        @Nullable String reason = REFUSED.get(symbol);
        if (reason != null) {
            return Finding.of(ProblemKind.UNKNOWN_UNIT, whole, reason);
        }
        @Nullable String meant = OTHER_SPELLINGS.getOrDefault(symbol, NearestSpelling.of(symbol, UNITS.keySet()));
        return new Finding(
                ProblemKind.UNKNOWN_UNIT,
                whole,
                "products of " + String.join(", ", UNITS.keySet()),
                meant == null ? null : whole.replace(symbol, meant));
    }

    private static Map<String, Unit> units() {
        Map<String, Unit> units = new LinkedHashMap<>();
        add(units, "mm", Exponents.of(1, 0), 1, 1000);
        add(units, "cm", Exponents.of(1, 0), 1, 100);
        add(units, "m", Exponents.of(1, 0), 1, 1);
        add(units, "km", Exponents.of(1, 0), 1000, 1);
        add(units, "ha", Exponents.of(2, 0), 10_000, 1);
        add(units, "L", Exponents.of(3, 0), 1, 1000);
        add(units, "kL", Exponents.of(3, 0), 1, 1);
        add(units, "ML", Exponents.of(3, 0), 1000, 1);
        add(units, "GL", Exponents.of(3, 0), 1_000_000, 1);
        add(units, "s", Exponents.of(0, 1), 1, 86_400);
        add(units, "min", Exponents.of(0, 1), 1, 1440);
        add(units, "h", Exponents.of(0, 1), 1, 24);
        add(units, "d", Exponents.of(0, 1), 1, 1);
        add(units, "yr", Exponents.of(0, 1), 1461, 4);
        add(units, "kPa", new Exponents(0, 0, 1, 0, 0), 1, 1);
        add(units, "degC", new Exponents(0, 0, 0, 1, 0), 1, 1);
        add(units, "deg", new Exponents(0, 0, 0, 0, 1), 1, 1);
        add(units, "%", Exponents.NONE, 1, 100);
        return units;
    }

    private static void add(Map<String, Unit> units, String symbol, Exponents exponents, long above, long below) {
        units.put(symbol, new Unit(symbol, exponents, ExactFactor.of(above, below)));
    }

    private static Map<String, String> otherSpellings() {
        return Map.ofEntries(
                Map.entry("l", "L"),
                Map.entry("litre", "L"),
                Map.entry("litres", "L"),
                Map.entry("Ml", "ML"),
                Map.entry("megalitres", "ML"),
                Map.entry("kl", "kL"),
                Map.entry("metre", "m"),
                Map.entry("metres", "m"),
                Map.entry("meter", "m"),
                Map.entry("meters", "m"),
                Map.entry("kilometres", "km"),
                Map.entry("sec", "s"),
                Map.entry("second", "s"),
                Map.entry("seconds", "s"),
                Map.entry("minute", "min"),
                Map.entry("minutes", "min"),
                Map.entry("hr", "h"),
                Map.entry("hour", "h"),
                Map.entry("hours", "h"),
                Map.entry("D", "d"),
                Map.entry("day", "d"),
                Map.entry("days", "d"),
                Map.entry("y", "yr"),
                Map.entry("year", "yr"),
                Map.entry("years", "yr"),
                Map.entry("hectares", "ha"),
                Map.entry("percent", "%"),
                Map.entry("C", "degC"),
                Map.entry("M", "m"));
    }

    private static Map<String, String> refused() {
        String customary = "metric units; convert first: ";
        return Map.ofEntries(
                Map.entry(
                        "a", "yr for a year or ha for an area; a stands for are in one standard, for year in another"),
                Map.entry("ml", "ML for a megalitre or L; ml is a millilitre by the standard"),
                Map.entry("mL", "ML for a megalitre or L; mL is a millilitre by the standard"),
                Map.entry("gal", customary + "1 US gallon = 3.785411784 L, 1 imperial gallon = 4.54609 L"),
                Map.entry("gpm", customary + "1 US gallon per minute = 0.0630901964 L/s"),
                Map.entry("ft", customary + "1 ft = 0.3048 m"),
                Map.entry("in", customary + "1 in = 25.4 mm"),
                Map.entry("psi", customary + "1 psi = 6.894757 kPa"),
                Map.entry("bar", "kPa; 1 bar = 100 kPa"),
                Map.entry("Pa", "kPa; 1 Pa = 0.001 kPa"),
                Map.entry("MPa", "kPa; 1 MPa = 1000 kPa"),
                Map.entry("mo", "d or yr; months differ in length"),
                Map.entry("month", "d or yr; months differ in length"),
                Map.entry("months", "d or yr; months differ in length"),
                Map.entry("week", "d; 1 week = 7 d"),
                Map.entry("weeks", "d; 1 week = 7 d"));
    }
}
