package org.headfall.scenarios.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import org.headfall.scenarios.findings.AttributedChange;
import org.headfall.scenarios.findings.AttributedChange.Cause;
import org.headfall.scenarios.findings.AttributionSummary;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

class AttributionDataTest {

    private static final double QUANTUM = 1e-6;

    /** A bore or a place that the last date does not have has its own column or row; it once went into the whole of its place. */
    @Test
    void boresAndPlacesOfEveryDateAreKept() {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        AttributionData.put(
                node,
                List.of(
                        summary(
                                2030,
                                change("Town", 3, new Cause("Town", 2), new Cause("Closed bore", 1)),
                                change("Old spring", 0.5, new Cause("Town", 0.5))),
                        summary(2040, change("Town", 4, new Cause("Town", 4)))));
        assertEquals("[\"Town\",\"Old spring\"]", node.get("places").toString());
        assertEquals("[\"Town\",\"Closed bore\"]", node.get("bores").toString());
        String expected = new PackedNumbers(QUANTUM, 4)
                .add(new double[] {3, 2, 1, 0, 0.5, 0.5, 0, 0})
                .add(new double[] {4, 4, 0, 0, Double.NaN, Double.NaN, Double.NaN, Double.NaN})
                .text();
        assertEquals(expected, node.get("drawdown").get("tables").stringValue());
    }

    private static AttributionSummary summary(int year, AttributedChange... drawdown) {
        return new AttributionSummary(LocalDate.of(year, 7, 1), List.of(drawdown), List.of());
    }

    private static AttributedChange change(String place, double whole, Cause... bores) {
        return new AttributedChange(place, whole, 0, List.of(bores), List.of(), List.of(), 0, 0);
    }
}
