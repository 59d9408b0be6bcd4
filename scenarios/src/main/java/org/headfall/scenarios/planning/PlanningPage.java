package org.headfall.scenarios.planning;

import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.report.page.Inlined;

/**
 * What the page of a plan shows.
 *
 * @param kind what was planned, such as "Where new bores can go"
 * @param title title of the scenario
 * @param program program and version
 * @param answers the answer, one sentence each
 * @param map the map, if there is one
 * @param curves the curves, if there are any
 * @param tables tables
 * @param cautions what to be careful about, one sentence each
 */
public record PlanningPage(
        String kind,
        String title,
        String program,
        List<String> answers,
        Optional<PlanningMap> map,
        Optional<PlanningCurves> curves,
        List<PlanningTable> tables,
        List<String> cautions) {

    private static final String OWN = "/org/headfall/scenarios/";
    private static final String CHARTS = "/META-INF/resources/webjars/uplot/1.6.30/";
    private static final Inlined STYLE = Inlined.ofResources(
            List.of(CHARTS + "dist/uPlot.min.css", OWN + "report/report.css", OWN + "planning/planning.css"));
    private static final List<Inlined> SCRIPTS = List.of(
            Inlined.ofResources(List.of(CHARTS + "dist/uPlot.iife.min.js")),
            Inlined.ofResources(List.of(
                    OWN + "report/report-packed.js",
                    OWN + "report/report-colours.js",
                    OWN + "planning/planning-data.js",
                    OWN + "planning/planning-map.js",
                    OWN + "planning/planning-reading.js",
                    OWN + "planning/planning-curves.js",
                    OWN + "planning/planning-page.js")));

    /** Copies the lists. */
    public PlanningPage {
        answers = List.copyOf(answers);
        tables = List.copyOf(tables);
        cautions = List.copyOf(cautions);
    }

    /** The style sheet. */
    public Inlined style() {
        return STYLE;
    }

    /** The scripts, in the order in which they run. */
    public List<Inlined> scripts() {
        return SCRIPTS;
    }

    /** Licence of the library that draws the curves. */
    public String licence() {
        return Inlined.read(CHARTS + "LICENSE");
    }

    /** JSON of the figures, without any character that could end the element it stands in. */
    public String data() {
        return PlanningData.of(this);
    }

    /** Content-Security-Policy of the page: nothing is fetched, and nothing runs but its own scripts. */
    public String policy() {
        return Inlined.policy(STYLE, SCRIPTS);
    }
}
