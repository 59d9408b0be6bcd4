package org.headfall.scenarios.reading;

import org.headfall.scenarios.quantity.AllowedRange;

/** Ranges of values, in metres and days, wide enough for every real aquifer and narrow enough to catch slips of unit. */
final class ValueRanges {
    /** Levels on Earth (m above datum). */
    static final AllowedRange LEVEL = AllowedRange.between(-20_000, 20_000);
    /** Transmissivity (m2/d). */
    static final AllowedRange TRANSMISSIVITY = AllowedRange.positiveUpTo(1e7);
    /** Storativity (-); 0.5 is beyond any specific yield. */
    static final AllowedRange STORATIVITY = AllowedRange.positiveUpTo(0.5);
    /** Ratio of transmissivities (-). */
    static final AllowedRange RATIO = new AllowedRange(1e-6, true, 1e6, true);
    /** Thickness of a bed (m). */
    static final AllowedRange THICKNESS = AllowedRange.positiveUpTo(10_000);
    /** Hydraulic conductivity (m/d). */
    static final AllowedRange CONDUCTIVITY = AllowedRange.between(0, 1e5);
    /** Specific storage (1/m). */
    static final AllowedRange SPECIFIC_STORAGE = AllowedRange.between(0, 0.1);
    /** Depth of recharge over time (m/d); 0.1 m/d is 36 m a year. */
    static final AllowedRange RECHARGE = AllowedRange.between(0, 0.1);
    /** Drawdown that a limit allows (m). */
    static final AllowedRange DRAWDOWN = AllowedRange.between(0, 10_000);
    /** Fall of head that a limit allows (m/d): up to 1,000 m/yr. */
    static final AllowedRange DECLINE = AllowedRange.between(0, 1000 / 365.25);
    /** Volume of a year, or of all that has passed a meter (m3): ten million ML. */
    static final AllowedRange VOLUME = AllowedRange.between(0, 1e10);
    /** Distance that a limit asks for (m). */
    static final AllowedRange DISTANCE = AllowedRange.between(0, 1e6);
    /** Rate of a bore or of flow across a piece of the rim (m3/d). */
    static final AllowedRange RATE = AllowedRange.between(-1e7, 1e7);
    /** Entitlement of a bore as a mean rate (m3/d). */
    static final AllowedRange ENTITLEMENT = AllowedRange.between(0, 1e7);
    /** Conductance of a spring (m2/d). */
    static final AllowedRange CONDUCTANCE = AllowedRange.positiveUpTo(1e8);
    /** Radius at the face of a screen (m). */
    static final AllowedRange SCREEN_RADIUS = AllowedRange.positiveUpTo(5);
    /** Positions (m). */
    static final AllowedRange POSITION = AllowedRange.between(-1e8, 1e8);
    /** Range of a variogram (m). */
    static final AllowedRange VARIOGRAM_RANGE = AllowedRange.between(1, 1e7);
    /** Length of a period or of a part of it (d), up to 1000 years. */
    static final AllowedRange TIME = AllowedRange.positiveUpTo(365_250);

    /** Skin of a bore (-). */
    static final AllowedRange SKIN = AllowedRange.between(0, 1000);
    /** Exponent of well loss (-). */
    static final AllowedRange WELL_LOSS_EXPONENT = AllowedRange.between(1, 4);
    /** Inner diameter of a casing or riser (m). */
    static final AllowedRange PIPE_DIAMETER = AllowedRange.positiveUpTo(5);
    /** Length of a casing or riser (m). */
    static final AllowedRange PIPE_LENGTH = AllowedRange.between(0, 20_000);
    /** Temperature of water (degC). */
    static final AllowedRange TEMPERATURE = AllowedRange.between(0, 110);
    /** Reading of a gauge on a bore (kPa). */
    static final AllowedRange GAUGE_PRESSURE = AllowedRange.between(-100, 50_000);
    /** Head of a pump or needed at delivery (m). */
    static final AllowedRange PUMP_HEAD = AllowedRange.between(0, 5000);

    private ValueRanges() {}
}
