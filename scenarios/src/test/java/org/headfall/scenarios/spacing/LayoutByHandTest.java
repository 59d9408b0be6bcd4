package org.headfall.scenarios.spacing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.headfall.scenarios.scenario.BoreSpecification.WellLossSpecification;
import org.headfall.scenarios.scenario.SpacingSpecification;
import org.headfall.scenarios.scenario.SpacingSpecification.Layout;
import org.headfall.scenarios.scenario.SpacingSpecification.Prices;
import org.headfall.scenarios.spatial.Position;
import org.junit.jupiter.api.Test;

/**
 * Three bores in a line, 1 km apart, worked by hand. Each m³/d lowers the bore itself by 10 mm, a bore at 1 km by 4 mm and one
 * at 2 km by 2 mm. Water stands 30 m below where it is wanted.
 */
class LayoutByHandTest {

    private static double response(double distance) {
        if (distance < 1) {
            return 0.010;
        }
        return distance < 1500 ? 0.004 : 0.002;
    }

    /** 3,000 m³/d in all, up to 60 m of lift; 0.30 a kWh at 60 %, 150 a metre of pipe, a bore, 30 years at 5 %. */
    private static SpacingResult.Line line(double quadraticLoss, double bore) {
        SpacingSpecification spacing = new SpacingSpecification(
                new Position(0, 0),
                List.of(Layout.LINE),
                List.of(3),
                500,
                2000,
                3,
                3000,
                60,
                3650,
                0.1,
                new WellLossSpecification(0, quadraticLoss, 2),
                0,
                0.6,
                new Prices(0.3, 150, bore, 30, 0.05));
        return new SpacingComparison(spacing, LayoutByHandTest::response, 30, 5).line(Layout.LINE, 3, 1000);
    }

    /**
     * Each takes 1,000 m³/d and loses 1e-6 x 1000² = 1 m in the well. The outer ones are lowered by 10 + 4 + 2 + 1 = 17 m, the
     * middle one by 10 + 4 + 4 + 1 = 19 m; by neighbours alone by 6, 8 and 6 m.
     */
    @Test
    void liftAndInterference() {
        SpacingResult.Line line = line(1e-6, 250_000);
        assertEquals(30 + (17 + 19 + 17) / 3.0, line.lift(), 1e-9);
        assertEquals(30 + 19, line.greatestLift(), 1e-9);
        assertEquals((6 + 8 + 6) / 3.0, line.interference(), 1e-9);
        assertEquals(5, line.liftByDocument(), 1e-9);
        assertEquals(2000, line.pipe(), 1e-9);
    }

    /**
     * With 30 m of drawdown in every bore and no loss: 12 a + 4 b = 30,000 for the outer ones and 8 a + 10 b = 30,000 for the
     * middle one, so a = 45,000 / 22 and b = 30,000 / 22. Far apart each would give 30 / 0.010 = 3,000 m³/d.
     */
    @Test
    void yieldAndWhatInterferenceTakesOfIt() {
        SpacingResult.Line line = line(0, 250_000);
        assertEquals(120_000 / 22.0, line.yield(), 1e-4);
        assertEquals(1 - 120_000 / 22.0 / 9000, line.yieldLost(), 1e-8);
    }

    /**
     * Water of 998.2 kg/m³ (20 °C, Kell 1975) lifted by 47.667 m takes 998.2 x 9.80665 x 47.667 / 0.6 / 3.6e6 = 0.21602 kWh/m³,
     * so 64.81 a ML. An annuity of 30 years at 5 % is 0.065051 a year (textbook formula i / (1 - (1 + i)^-n)); of 2,000 m of pipe
     * for 300,000 and bores for 750,000 that is 68,304 a year, over 3,000 x 365.25 m³ = 1,095.75 ML 62.34 a ML.
     */
    @Test
    void costOfAMegalitre() {
        assertEquals(216.02, line(1e-6, 250_000).energy(), 0.03);
        assertEquals(64.81 + 62.34, line(1e-6, 250_000).cost(), 0.02);
    }

    /** Three bores that cost 100,000 more each: 300,000 x 0.065051 / 1,095.75 = 17.81 a ML. */
    @Test
    void whatABoreCostsCountsForEach() {
        assertEquals(17.81, line(1e-6, 350_000).cost() - line(1e-6, 250_000).cost(), 0.01);
    }
}
