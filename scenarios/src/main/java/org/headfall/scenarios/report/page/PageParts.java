package org.headfall.scenarios.report.page;

import java.util.List;
import java.util.stream.Stream;

/**
 * The fixed parts of every page: styles, scripts and the licences of the libraries among them.
 *
 * @param style the style sheet
 * @param scripts scripts in the order they run
 * @param licences licence texts of the bundled libraries
 */
public record PageParts(Inlined style, List<Inlined> scripts, List<Licence> licences) {

    private static final String OWN = "/org/headfall/scenarios/report/";
    private static final String WEBJARS = "/META-INF/resources/webjars/";
    private static final String CHARTS = WEBJARS + "uplot/1.6.30/";
    private static final String ARRAYS = WEBJARS + "d3-array/3.2.4/";
    private static final String CONTOURS = WEBJARS + "d3-contour/4.0.2/";

    /**
     * A bundled library.
     *
     * @param library name and version
     * @param text its licence
     */
    public record Licence(String library, String text) {}

    /** Reads the parts from the class path. */
    static PageParts load() {
        Inlined style = Inlined.ofResources(List.of(CHARTS + "dist/uPlot.min.css", OWN + "report.css"));
        Stream<String> own = Stream.of(
                        "packed",
                        "data",
                        "words",
                        "units",
                        "colours",
                        "series",
                        "map",
                        "map-sites",
                        "section",
                        "section-controls",
                        "map-controls",
                        "chart",
                        "hydrograph",
                        "responses",
                        "superposed",
                        "limits",
                        "what-if",
                        "interference",
                        "attribution",
                        "attribution-map",
                        "balance",
                        "tables",
                        "page")
                .map(name -> OWN + "report-" + name + ".js");
        List<Inlined> scripts = List.of(
                Inlined.ofResources(List.of(CHARTS + "dist/uPlot.iife.min.js")),
                Inlined.ofResources(List.of(ARRAYS + "dist/d3-array.min.js")),
                Inlined.ofResources(List.of(CONTOURS + "dist/d3-contour.min.js")),
                Inlined.ofResources(own.toList()));
        List<Licence> licences = List.of(
                new Licence("uPlot 1.6.30", Inlined.read(CHARTS + "LICENSE")),
                new Licence("d3-array 3.2.4", Inlined.read(ARRAYS + "LICENSE")),
                new Licence("d3-contour 4.0.2", Inlined.read(CONTOURS + "LICENSE")));
        return new PageParts(style, scripts, licences);
    }

    /** Content-Security-Policy of the page: nothing is fetched, and nothing runs but the parts above. */
    public String policy() {
        return Inlined.policy(style, scripts);
    }
}
