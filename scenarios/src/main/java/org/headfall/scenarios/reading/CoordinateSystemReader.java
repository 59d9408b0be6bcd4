package org.headfall.scenarios.reading;

import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.reference.CoordinateReference;
import org.headfall.scenarios.scenario.CoordinateSystem;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.jspecify.annotations.Nullable;

/** Reads the coordinate reference system: {@code EPSG:7854} or {@code local}. */
final class CoordinateSystemReader {
    @Nullable
    CoordinateSystem read(Section document) {
        @Nullable String text = document.text("crs");
        if (text == null) {
            return null;
        }
        if (text.equals("local")) {
            return new CoordinateSystem.Local();
        }
        try {
            return new CoordinateSystem.Projected(
                    CoordinateReference.parse(text).epsgCode());
        } catch (SpatialFormatException wrong) {
            String found = wrong.file().equals(text) ? text + ", " + wrong.found() : wrong.found();
            document.refuse("crs", Finding.of(ProblemKind.COORDINATE_SYSTEM, found, wrong.allowed() + ", or local"));
            return null;
        }
    }
}
