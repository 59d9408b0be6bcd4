package org.headfall.scenarios.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.bore.WellLoss;
import org.junit.jupiter.api.Test;

class ArtesianHeadAnalysisTest {

    private static final double OUTLET = 101;

    private static FlowByItself flowByItself(Station.BoreSite.Use use, double[] head, double[] discharge) {
        return analysis(use, head, discharge).flowByItself();
    }

    private static ArtesianHead analysis(Station.BoreSite.Use use, double[] head, double[] discharge) {
        Station bore = new Station.BoreSite(
                "bore",
                500_160,
                6_900_250,
                100,
                OptionalDouble.of(OUTLET),
                OptionalDouble.of(60),
                OptionalDouble.empty(),
                -50,
                0.1,
                WellLoss.NONE,
                Optional.empty(),
                "",
                false,
                use,
                "in words");
        double[] days = {0, 100, 200};
        StationSeries series = new StationSeries(days, head, head, discharge, discharge);
        Recording recording = new Recording(days, List.of(series), List.of(), List.of(), new double[0]);
        return new ArtesianHeadAnalysis(SmallField.description(List.of(bore)), recording)
                .ofAllStations()
                .get(0);
    }

    /** A seasonal low between two report dates is what the pump must live with. */
    @Test
    void theExtremesAreThoseOfAllRecordedDays() {
        double[] head = {OUTLET + 1, OUTLET - 15, OUTLET};
        ArtesianHead loss = analysis(Station.BoreSite.Use.PUMPED, head, new double[] {0, 500, 0});
        ArtesianHead.AtDate deepest = loss.extremes().get(0);
        assertEquals(100, deepest.day());
        assertEquals(16, deepest.loss(), 1e-12);
        assertEquals(OUTLET - 15 - 60, loss.extremes().get(1).waterAbovePump().orElseThrow(), 1e-12);
    }

    /** Without well loss head is that of the outlet while water runs, up to the error of the numbers. */
    @Test
    void aBoreThatGivesWaterFlowsWhateverTheLastDigitsOfItsHead() {
        double[] head = {OUTLET - 1e-5, OUTLET + 1e-5, OUTLET - 1e-3};
        assertInstanceOf(
                FlowByItself.Throughout.class,
                flowByItself(Station.BoreSite.Use.FREE_FLOWING, head, new double[] {500, 400, 300}));
    }

    @Test
    void aBoreLeftToFlowStopsWhereItGivesNoMoreWater() {
        double[] head = {OUTLET - 1e-5, OUTLET - 1e-5, OUTLET - 2};
        FlowByItself.Stops stops = assertInstanceOf(
                FlowByItself.Stops.class,
                flowByItself(Station.BoreSite.Use.FREE_FLOWING, head, new double[] {500, 10, 0}));
        assertEquals(100, stops.day());
    }

    @Test
    void aPumpedBoreStopsWhereItsHeadFallsBelowTheOutletThoughItGivesWater() {
        double[] head = {OUTLET + 1, OUTLET + 1, OUTLET - 1};
        FlowByItself.Stops stops = assertInstanceOf(
                FlowByItself.Stops.class,
                flowByItself(Station.BoreSite.Use.PUMPED, head, new double[] {500, 500, 500}));
        assertEquals(150, stops.day());
    }
}
