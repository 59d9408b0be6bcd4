package org.headfall.scenarios.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.findings.ArtesianHead;
import org.headfall.scenarios.findings.Confinement;
import org.headfall.scenarios.findings.Findings;
import org.headfall.scenarios.findings.FlowByItself;
import org.headfall.scenarios.findings.Recoveries;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPeriod;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.report.content.LimitOutcome;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.content.SiteKind;
import org.headfall.scenarios.report.content.SiteState;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.RunFigures;
import org.headfall.solver.simulation.RunStatistics;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RunReportTest {

    private static final RunDescription DESCRIPTION = SmallField.description();
    private static final double END = DESCRIPTION.endDay();
    private static final double[] DAYS = {0, 365, END};

    @TempDir
    Path folder;

    private static StationSeries series(double head, double fall, double rate, double wanted) {
        double[] heads = {head, head - fall / 2, head - fall};
        double[] rates = {rate, rate, Math.min(rate, wanted / 2)};
        double[] asked = {wanted, wanted, wanted};
        return new StationSeries(DAYS, heads, heads, rates, asked);
    }

    private static FinishedRun run() {
        return run(DESCRIPTION);
    }

    private static Limit limit(String name) {
        return new Limit(
                name,
                new LimitedQuantity.Drawdown(3),
                "Lignum Spring",
                new Comparison.Start(),
                LimitPeriod.EVER,
                "Clause 4");
    }

    private static FinishedRun run(RunDescription description) {
        double[] start = SmallField.filled(SmallField.grid().cellCount(), 110);
        double[] end = Arrays.stream(start).map(head -> head - 4).toArray();
        start[SmallField.INACTIVE] = Double.NaN;
        end[SmallField.INACTIVE] = Double.NaN;
        Recording recording = new Recording(
                DAYS,
                List.of(
                        series(110, 4, 500, 500),
                        series(110, 4, 0, 0),
                        series(110, 14, 30, 0),
                        series(110, 4, Double.NaN, Double.NaN)),
                List.of(),
                List.of(new HeadGrid(0, start), new HeadGrid(END, end)),
                SmallField.filled(start.length, Double.NaN));
        Limit limit = limit("springs stay");
        Outcome crossed = new Outcome.Crossed(800, new Outcome.Worst(END, 14, -11, 0.03));
        Outcome missing = new Outcome.NotEvaluated("the run without proposed bores is missing");
        return new FinishedRun(
                description,
                recording,
                findings(),
                List.of(new LimitResult(limit, crossed), new LimitResult(limit("seeps stay"), missing)),
                new RunFigures(
                        new RunStatistics(12, 40, 2, 80, 300, 0.004, 3e-10, 1.5),
                        List.of(0.01, 0.03, 0.02, Double.NaN),
                        "Halving the tolerance.",
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        2.5,
                        200_000_000,
                        2));
    }

    private static Findings findings() {
        ArtesianHead.AtDate end = new ArtesianHead.AtDate(
                "after 10 years",
                END,
                -4,
                14,
                OptionalDouble.of(0.7),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(0),
                false);
        ArtesianHead head = new ArtesianHead(
                "Lignum Spring",
                "spring",
                99,
                OptionalDouble.of(98),
                11,
                OptionalDouble.of(30),
                Optional.empty(),
                new FlowByItself.Stops(1826, OptionalDouble.empty(), false),
                List.of(end),
                List.of(end));
        Confinement confinement = new Confinement(
                1, 20_000, 0, OptionalDouble.of(900), List.of(new Confinement.StationBelowTop("Brücke", 901, 0.4)));
        return new Findings(List.of(head), List.of(), List.of(), List.of(), confinement, Recoveries.NONE);
    }

    @Test
    void keepsDatesLevelsAndErrors() {
        ReportContent content = RunReport.of(run());
        assertEquals(LocalDate.of(2027, 7, 1), content.heading().start());
        assertEquals(LocalDate.of(2037, 7, 1), content.heading().end());
        assertEquals(2, content.map().heads().size());
        assertEquals(106f, content.map().heads().get(1).values()[0]);
        assertTrue(Float.isNaN(content.map().heads().get(1).values()[SmallField.INACTIVE]));
        assertEquals(0.03, content.headError());
        assertEquals(14, content.artesianHeads().get(0).losses().get(0).loss());
        assertEquals(LocalDate.of(2032, 6, 30), content.artesianHeads().get(0).stopsFlowing());
    }

    @Test
    void tellsWhatEachSiteIsAndDoes() {
        List<org.headfall.scenarios.report.content.Site> sites =
                RunReport.of(run()).sites();
        assertEquals(SiteKind.PUMPED_BORE, sites.get(0).kind());
        assertEquals(
                List.of(SiteState.RUNNING, SiteState.CUT_BACK), sites.get(0).states());
        assertEquals(SiteKind.IDLE_BORE, sites.get(1).kind());
        assertEquals(List.of(SiteState.FLOWING, SiteState.STOPPED), sites.get(2).states());
        assertEquals(SiteKind.PROTECTED_POINT, sites.get(3).kind());
    }

    @Test
    void aBoreIsWhatItIsUsedForWhateverLevelsAreKnownOfIt() {
        List<Station> stations = new ArrayList<>(DESCRIPTION.stations());
        stations.set(0, bore("pumped", Station.BoreSite.Use.PUMPED, OptionalDouble.empty()));
        stations.set(1, bore("flowing", Station.BoreSite.Use.FREE_FLOWING, OptionalDouble.of(40)));
        List<org.headfall.scenarios.report.content.Site> sites =
                RunReport.of(run(SmallField.description(stations))).sites();
        assertEquals(SiteKind.PUMPED_BORE, sites.get(0).kind());
        assertEquals(SiteKind.FREE_FLOWING_BORE, sites.get(1).kind());
    }

    private static Station bore(String name, Station.BoreSite.Use use, OptionalDouble intake) {
        return SmallField.bore(name, 500_160, 6_900_250, OptionalDouble.of(101), intake, false, use);
    }

    @Test
    void everyOutcomeOfALimitHasItsVerdict() {
        List<LimitOutcome> limits = RunReport.of(run()).limits();
        assertEquals(Outcome.Kind.CROSSED, limits.get(0).verdict());
        assertEquals(LocalDate.of(2029, 9, 8), limits.get(0).crossedOn());
        assertEquals(Outcome.Kind.NOT_EVALUATED, limits.get(1).verdict());
        assertEquals("the run without proposed bores is missing", limits.get(1).remark());
    }

    /** Where bores stand is the same on every day. */
    @Test
    void aDistanceHasNoDates() {
        FinishedRun run = run();
        Limit apart = new Limit(
                "apart",
                new LimitedQuantity.Distance(5000, List.of("Br\u00fccke")),
                "Lignum Spring",
                new Comparison.Start(),
                LimitPeriod.EVER,
                "");
        Outcome crossed = new Outcome.Crossed(0, new Outcome.Worst(0, 400, -4600, 0));
        LimitOutcome shown = RunReport.of(new FinishedRun(
                        run.description(),
                        run.recording(),
                        run.findings(),
                        List.of(new LimitResult(apart, crossed)),
                        run.figures()))
                .limits()
                .get(0);
        assertEquals(Outcome.Kind.CROSSED, shown.verdict());
        assertNull(shown.reachedOn());
        assertNull(shown.crossedOn());
    }

    /** The spring stops; nobody says of a pump or of a bore that is shut that it keeps flowing. */
    @Test
    void onlyWhatFlowsByItselfKeepsFlowing() throws Exception {
        Path file = folder.resolve("flows.html");
        FinishedRun run = run();
        ArtesianHead spring = run.findings().artesianHead().get(0);
        List<ArtesianHead> heads = List.of(
                flowing(spring, "Br\u00fccke", 5),
                flowing(spring, "Lignum Spring", 5),
                flowing(spring, "Lignum Spring", 0));
        Findings findings = new Findings(
                heads, List.of(), List.of(), List.of(), run.findings().confinement(), Recoveries.NONE);
        ReportWriter.write(
                RunReport.of(
                        new FinishedRun(run.description(), run.recording(), findings, run.limits(), run.figures())),
                file);
        assertEquals(1, Files.readString(file).split("keeps flowing", -1).length - 1);
    }

    private static ArtesianHead flowing(ArtesianHead like, String station, double flow) {
        ArtesianHead.AtDate end = new ArtesianHead.AtDate(
                "after 10 years",
                END,
                4,
                1,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(flow),
                false);
        return new ArtesianHead(
                station,
                like.kind(),
                like.groundLevel(),
                like.outletLevel(),
                like.headAboveGroundBefore(),
                OptionalDouble.of(30),
                Optional.empty(),
                new FlowByItself.Throughout(),
                List.of(end),
                List.of(end));
    }

    @Test
    void thePageNamesTheCrossedLimitAndTheLossOfConfinement() throws Exception {
        Path file = folder.resolve("report.html");
        ReportWriter.write(RunReport.of(run()), file);
        String html = Files.readString(file);
        String text = html.replaceAll("<[^>]*>", "").replaceAll("\\s+", " ");
        assertTrue(text.contains("One of 2 limits is crossed: \u201csprings stay\u201d, at Lignum Spring"), "verdict");
        assertTrue(
                text.contains("0 limits are kept; of 1 nothing sure can be said. The errors given count"),
                "all counted");
        assertTrue(text.contains("what the grid and far boundaries add was not tested"), "what was not tested");
        assertTrue(text.contains("; 1 crossed; of 1 nothing sure can be said"), "figure");
        assertTrue(html.contains("below the top of the aquifer in one cell"), "doubt");
        assertTrue(html.contains("0".repeat(64)), "hash of the scenario");
        assertTrue(text.contains("The folder of results holds no attribution.csv"), "attribution is left out");
    }
}
