package org.headfall.scenarios.reading;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.scenario.CoordinateSystem;
import org.jspecify.annotations.Nullable;

/** Reads the coordinate reference system: {@code EPSG:7854} or {@code local}. */
final class CoordinateSystemReader {
    private static final Pattern EPSG = Pattern.compile("EPSG:(\\d{4,6})");
    private static final String ALLOWED = "the code of a projected system in metres, such as EPSG:7854, or local";

    @Nullable
    CoordinateSystem read(Section document) {
        @Nullable String text = document.text("crs");
        if (text == null) {
            return null;
        }
        if (text.equals("local")) {
            return new CoordinateSystem.Local();
        }
        Matcher code = EPSG.matcher(text);
        if (!code.matches()) {
            document.refuse("crs", Finding.of(ProblemKind.COORDINATE_SYSTEM, text, ALLOWED));
            return null;
        }
        return new CoordinateSystem.Projected(Integer.parseInt(code.group(1)));
    }
}
