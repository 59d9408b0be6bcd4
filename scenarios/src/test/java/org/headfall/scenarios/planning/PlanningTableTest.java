package org.headfall.scenarios.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class PlanningTableTest {

    @Test
    void unitsStandApartAndNumbersToTheRight() {
        PlanningTable table = new PlanningTable(
                "sites",
                "Sites",
                "sites.csv",
                List.of("Site", "Rate (L/s)", "Lowest level in the bore (m above datum)", "Decided by", "On"),
                List.of(
                        List.of("new site 1", "8.0", "120.5", "distance to the rim of the aquifer", "2037-07-01"),
                        List.of("new site 2", "-8.0", "NaN", "excluded area", "2037-07-01")));
        assertEquals(
                List.of(
                        new PlanningTable.Column("Site", "", "brief"),
                        new PlanningTable.Column("Rate", "L/s", "number"),
                        new PlanningTable.Column("Lowest level in the bore", "m above datum", "number"),
                        new PlanningTable.Column("Decided by", "", "long"),
                        new PlanningTable.Column("On", "", "brief")),
                table.columns());
        assertEquals("number", table.columns().get(1).headStyle());
        assertEquals("number several-words", table.columns().get(2).headStyle());
    }

    @Test
    void onlyLongTablesAreLeftOutOnPaper() {
        List<String> row = List.of("line");
        assertFalse(new PlanningTable("all", "All", "all.csv", List.of("Layout"), Collections.nCopies(60, row))
                .isOnScreenOnly());
        assertTrue(new PlanningTable("all", "All", "all.csv", List.of("Layout"), Collections.nCopies(61, row))
                .isOnScreenOnly());
    }

    /** By hand: 11 numbers of 9 letters with a rim of 2 are 121 letters, 12 of them 132; text counts by its longest word. */
    @Test
    void wideTablesAreLeftOutOnPaper() {
        assertFalse(ofColumns(11, "12.345678").isOnScreenOnly());
        assertTrue(ofColumns(12, "12.345678").isOnScreenOnly());
        assertFalse(ofColumns(12, "to be read at leisure").isOnScreenOnly());
    }

    /** By hand: a heading of a word of 13 letters with a rim of 2 takes 15, whatever stands below; 8 take 120, 9 take 135. */
    @Test
    void wideHeadingsTakeRoomOnPaper() {
        assertFalse(ofColumns(8, "0", "superposition (m)").isOnScreenOnly());
        assertTrue(ofColumns(9, "0", "superposition (m)").isOnScreenOnly());
    }

    private static PlanningTable ofColumns(int count, String cell) {
        return ofColumns(count, cell, "Rate (L/s)");
    }

    private static PlanningTable ofColumns(int count, String cell, String heading) {
        return new PlanningTable(
                "all",
                "All",
                "all.csv",
                Collections.nCopies(count, heading),
                List.of(Collections.nCopies(count, cell)));
    }
}
