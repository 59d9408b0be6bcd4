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
 * @param views what it draws, at most one of each kind
 * @param tables tables
 * @param conditions under which conditions its figures hold, a paragraph each; none if the answer says so
 * @param cautions what to be careful about, one sentence each
 */
public record PlanningPage(
        String kind,
        String title,
        String program,
        List<String> answers,
        List<PlanningView> views,
        List<PlanningTable> tables,
        List<String> conditions,
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
                    OWN + "planning/planning-view.js",
                    OWN + "planning/planning-map.js",
                    OWN + "planning/planning-reading.js",
                    OWN + "planning/planning-rates.js",
                    OWN + "planning/planning-steps.js",
                    OWN + "planning/planning-curves.js",
                    OWN + "planning/planning-numbers.js",
                    OWN + "planning/planning-page.js")));

    /** Copies the lists. */
    public PlanningPage {
        answers = List.copyOf(answers);
        views = List.copyOf(views);
        conditions = List.copyOf(conditions);
        tables = List.copyOf(tables);
        cautions = List.copyOf(cautions);
    }

    /** The map of cells, if there is one. */
    public Optional<PlanningMap> map() {
        return view(PlanningMap.class);
    }

    /** Curves over spacing, if there are any. */
    public Optional<PlanningCurves> curves() {
        return view(PlanningCurves.class);
    }

    /** Rates of bores, if there are any. */
    public Optional<PlanningRates> rates() {
        return view(PlanningRates.class);
    }

    private <T> Optional<T> view(Class<T> kind) {
        return views.stream().filter(kind::isInstance).map(kind::cast).findFirst();
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
