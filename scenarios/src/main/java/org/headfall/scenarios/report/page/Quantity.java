package org.headfall.scenarios.report.page;

import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.quantity.VolumeUnit;

/** What a figure is; the page switches the units of heights and flows at once. */
public enum Quantity {
    /** Words. */
    TEXT("", 0),
    /** Sentences, which need room. */
    LONG_TEXT("", 0),
    /** A calendar day. */
    DATE("", 0),
    /** A level above datum or a place (m), which is no pressure. */
    LEVEL("m", 2),
    /** A height of water: drawdown, head above ground, loss (m). */
    HEIGHT("m", 2),
    /** A small height of water (m). */
    SMALL_HEIGHT("m", 4),
    /** Gauge pressure (kPa). */
    PRESSURE("kPa", 0),
    /** Change of a height of water over time (m/yr). */
    HEIGHT_RATE("m/yr", 3),
    /** Discharge: kept in m³/d, shown in L/s. */
    FLOW("L/s", 2),
    /** Volume: kept in m³, shown in ML. */
    VOLUME("ML", 1),
    /** Share (%). */
    SHARE("%", 1),
    /** Discharge that a limit names (L/s). */
    LIMITED_FLOW("L/s", 2),
    /** Volume that a limit names (ML). */
    LIMITED_VOLUME("ML", 2);

    /** Volume from which decimals are more than anyone needs (ML). */
    private static final double LARGE = 1000;

    private final String unit;
    private final int decimals;

    Quantity(String unit, int decimals) {
        this.unit = unit;
        this.decimals = decimals;
    }

    /** Unit shown first. */
    public String unit() {
        return unit;
    }

    /** Whether the column holds numbers. */
    public boolean numeric() {
        return this != TEXT && this != LONG_TEXT && this != DATE;
    }

    /** Class of its columns in the style sheet. */
    public String styleClass() {
        if (numeric()) {
            return "number";
        }
        return this == LONG_TEXT ? "words long" : "words";
    }

    /** Decimals of a numerical error: one more than of the value itself, and two at least. */
    private int errorDecimals() {
        return Math.max(2, decimals + 1);
    }

    /** Smallest error that its decimals can tell, in the unit in which values are kept. */
    double smallestError() {
        return Math.pow(10, -errorDecimals()) / inUnit(1);
    }

    /** A numerical error as shown, in {@link #unit()}. */
    String showError(double error) {
        return Words.number(inUnit(error), errorDecimals());
    }

    /** The quantity of a value with a unit of a limit. */
    static Quantity ofLimit(String unit) {
        return switch (unit) {
            case "m" -> HEIGHT;
            case "m/yr" -> HEIGHT_RATE;
            case "kPa" -> PRESSURE;
            case "%" -> SHARE;
            case "L/s" -> LIMITED_FLOW;
            case "ML" -> LIMITED_VOLUME;
            default -> LEVEL;
        };
    }

    /** The value as shown, in {@link #unit()}. */
    String show(double value) {
        double shown = inUnit(value);
        boolean large = this == VOLUME && Math.abs(shown) >= LARGE;
        return Words.number(shown, large ? 0 : decimals);
    }

    /** A value as it is kept, in {@link #unit()}. */
    private double inUnit(double value) {
        return switch (this) {
            case FLOW -> DischargeUnit.LITRES_PER_SECOND.of(value);
            case VOLUME -> VolumeUnit.MEGALITRES.of(value);
            default -> value;
        };
    }
}
