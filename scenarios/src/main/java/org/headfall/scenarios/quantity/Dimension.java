package org.headfall.scenarios.quantity;

import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;

/** What a quantity measures. It decides which units may stand beside the number. */
public enum Dimension {
    /** A distance, a thickness, a depth, a drawdown. */
    LENGTH("a length", "250 m", "m", Exponents.of(1, 0)),
    /** A height above the datum of the scenario. */
    LEVEL("a level above the datum", "161 m", "m", Exponents.of(1, 0)),
    /** An area. */
    AREA("an area", "12 km2", "m2", Exponents.of(2, 0)),
    /** A volume of water. */
    VOLUME("a volume", "30 ML", "m3", Exponents.of(3, 0)),
    /** A span of time. */
    TIME("a time", "50 yr", "d", Exponents.of(0, 1)),
    /** Volume over time: pumping, flow of a spring, flow across a boundary. */
    RATE("a rate", "25 L/s", "m3/d", Exponents.of(3, -1)),
    /** Transmissivity, conductivity times thickness. */
    TRANSMISSIVITY("a transmissivity", "350 m2/d", "m2/d", Exponents.of(2, -1)),
    /** Flow per metre of head difference. */
    CONDUCTANCE("a conductance", "40 m2/d", "m2/d", Exponents.of(2, -1)),
    /** Hydraulic conductivity. */
    CONDUCTIVITY("a hydraulic conductivity", "1e-6 m/d", "m/d", Exponents.of(1, -1)),
    /** Water released by a unit volume for a unit fall of head. */
    SPECIFIC_STORAGE("a specific storage", "3e-6 1/m", "1/m", Exponents.of(-1, 0)),
    /** Depth of water over time. */
    RECHARGE("a depth of water over time", "12 mm/yr", "m/d", Exponents.of(1, -1)),
    /** Change of a level over time. */
    CHANGE_RATE("a change of level over time", "0.3 m/yr", "m/d", Exponents.of(1, -1)),
    /** Pressure as read from a gauge. */
    PRESSURE("a pressure", "350 kPa", "kPa", new Exponents(0, 0, 1, 0, 0)),
    /** Temperature of water. */
    TEMPERATURE("a temperature", "42 degC", "degC", new Exponents(0, 0, 0, 1, 0)),
    /** A direction on the map. */
    ANGLE("an angle", "30 deg", "deg", new Exponents(0, 0, 0, 0, 1)),
    /** Well loss that grows with the rate: B of the step test equation. */
    LINEAR_WELL_LOSS("a linear well loss", "1.2e-3 d/m2", "d/m2", Exponents.of(-2, 1)),
    /** Well loss that grows with the square of the rate: C of the step test equation. */
    QUADRATIC_WELL_LOSS("a quadratic well loss", "1900 s2/m5", "d2/m5", Exponents.of(-5, 2)),
    /** A pure number, such as storativity, or a share in per cent. */
    NUMBER("a number without a unit", "2.0e-4", "", Exponents.NONE);

    private final String meaning;
    private final String example;
    private final String unit;

    @SuppressWarnings("ImmutableEnumChecker") // a record of ints only
    private final Exponents exponents;

    Dimension(String meaning, String example, String unit, Exponents exponents) {
        this.meaning = meaning;
        this.example = example;
        this.unit = unit;
        this.exponents = exponents;
    }

    /** The dimension in words, such as "a transmissivity". */
    public String meaning() {
        return meaning;
    }

    /** Unit of {@link Quantity#value()} for this dimension, such as {@code m2/d}; empty for a number. */
    public String unit() {
        return unit;
    }

    /** What may be typed, with an example: "a transmissivity, such as 350 m2/d". */
    public String allowed() {
        return meaning + ", such as " + example;
    }

    /** Whether a number without a unit is complete. */
    public boolean isPureNumber() {
        return exponents.equals(Exponents.NONE);
    }

    void check(Unit measured, String typed) throws QuantityException {
        if (!measured.exponents().equals(exponents)) {
            throw new QuantityException(Finding.of(ProblemKind.WRONG_UNIT, typed, allowed()));
        }
    }
}
