package org.headfall.scenarios.report.page;

/** What a column of a table holds; the page switches the units of lengths, flows and volumes at once. */
public enum Quantity {
    /** Words. */
    TEXT("", 0),
    /** A calendar day. */
    DATE("", 0),
    /** A level or a length (m). */
    LENGTH("m", 2),
    /** A small length (m). */
    SMALL_LENGTH("m", 4),
    /** Gauge pressure (kPa). */
    PRESSURE("kPa", 0),
    /** Change of a level over time (m/yr). */
    LENGTH_RATE("m/yr", 3),
    /** Discharge: kept in m³/d, shown in L/s. */
    FLOW("L/s", 2),
    /** Volume: kept in m³, shown in ML. */
    VOLUME("ML", 1),
    /** Share (%). */
    SHARE("%", 1);

    private static final double LITRES_PER_SECOND = 1 / 86.4;
    private static final double MEGALITRES = 1e-3;

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
        return this != TEXT && this != DATE;
    }

    /** The value as shown, in {@link #unit()}. */
    String show(double value) {
        double shown = switch (this) {
            case FLOW -> value * LITRES_PER_SECOND;
            case VOLUME -> value * MEGALITRES;
            default -> value;
        };
        return Words.number(shown, decimals);
    }
}
