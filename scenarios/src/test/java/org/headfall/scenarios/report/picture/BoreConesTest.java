package org.headfall.scenarios.report.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.headfall.scenarios.report.InventedField;
import org.headfall.scenarios.report.content.Hydrograph;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.content.Site;
import org.junit.jupiter.api.Test;

/** Between the wall of a bore and the rim of its cell head runs with the logarithm of distance (Thiem 1906). */
class BoreConesTest {

    private static final ReportContent CONTENT = InventedField.content(7, 160, 90);
    private static final double HEAD = 500;

    @Test
    void headRunsDownToTheWall() {
        Site bore = CONTENT.sites().stream()
                .filter(site -> site.name().equals("Station bore A"))
                .findFirst()
                .orElseThrow();
        Hydrograph hydrograph = CONTENT.hydrographs().get(CONTENT.sites().indexOf(bore));
        double wall = hydrograph.aquiferHead()[hydrograph.aquiferHead().length - 1];
        double cell = 1000;
        BoreCones cones = new BoreCones(CONTENT);
        assertEquals(wall, cones.end(bore.x(), bore.y(), HEAD), 1e-6);
        assertEquals(wall, cones.end(bore.x() + 0.1, bore.y(), HEAD), 1e-6);
        assertEquals(HEAD, cones.end(bore.x(), bore.y() + cell, HEAD), 1e-6);
        double middle = Math.sqrt(0.1 * cell);
        assertEquals((wall + HEAD) / 2, cones.end(bore.x() - middle, bore.y(), HEAD), 1e-6, "half of the logarithm");
        assertEquals(hydrograph.aquiferHead()[0], cones.start(bore.x(), bore.y(), HEAD), 1e-6);
    }
}
