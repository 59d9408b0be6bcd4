package org.headfall.scenarios.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.headfall.scenarios.accounts.AccountSummary;
import org.headfall.scenarios.evidence.Assumption;
import org.headfall.scenarios.evidence.Assumption.Score;
import org.headfall.scenarios.evidence.CheckedItem;
import org.headfall.scenarios.evidence.CheckedItem.State;
import org.headfall.scenarios.evidence.Doubt;
import org.headfall.scenarios.evidence.Evidence;
import org.headfall.scenarios.findings.AttributedChange;
import org.headfall.scenarios.findings.AttributionSummary;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.report.content.ArtesianHead;
import org.headfall.scenarios.report.content.DatedField;
import org.headfall.scenarios.report.content.FieldMap;
import org.headfall.scenarios.report.content.Heading;
import org.headfall.scenarios.report.content.Hydrograph;
import org.headfall.scenarios.report.content.Interference;
import org.headfall.scenarios.report.content.LimitOutcome;
import org.headfall.scenarios.report.content.MeasuredHead;
import org.headfall.scenarios.report.content.Provenance;
import org.headfall.scenarios.report.content.Recovery;
import org.headfall.scenarios.report.content.ReferenceLevel;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.content.SectionLine;
import org.headfall.scenarios.report.content.Site;
import org.headfall.scenarios.report.content.SiteKind;
import org.headfall.scenarios.report.content.SiteState;
import org.headfall.scenarios.report.content.WhatIf;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.flow.WaterBalance.Kind;
import org.headfall.solver.flow.WaterBalance.Term;

/**
 * A report's content without a run: an invented basin, sloping west, with drawdown that grows with the logarithm of
 * time and distance as around pumped bores (Cooper and Jacob 1946). One seed gives one field.
 */
public final class InventedField {

    private static final LocalDate START = LocalDate.of(2026, 7, 1);
    private static final int[] YEARS = {0, 1, 5, 10, 20, 50};
    private static final double TRANSMISSIVITY = 180;
    private static final double STORATIVITY = 2e-4;

    private record Taker(String name, double x, double y, double rate) {}

    private final Random random;
    private final int columns;
    private final int rows;
    private final String hostile;
    private final List<Taker> takers = new ArrayList<>();

    private InventedField(long seed, int columns, int rows, String hostile) {
        this.random = new Random(seed);
        this.columns = columns;
        this.rows = rows;
        this.hostile = hostile;
        for (int i = 0; i < 9; i++) {
            takers.add(new Taker(
                    "Town bore " + (i + 1),
                    62_000 + i % 3 * 1_800 + random.nextInt(500),
                    41_000 + i / 3 * 1_700 + random.nextInt(500),
                    900 + random.nextInt(1_500)));
        }
        for (int i = 0; i < 4; i++) {
            takers.add(new Taker(
                    "Station bore " + (char) ('A' + i),
                    40_000 + random.nextInt(50_000),
                    25_000 + random.nextInt(40_000),
                    200 + random.nextInt(300)));
        }
    }

    public static ReportContent content(long seed, int columns, int rows) {
        return new InventedField(seed, columns, rows, "").content();
    }

    /** The same with a piece of text added to everything a user can word. */
    static ReportContent content(long seed, int columns, int rows, String hostile) {
        return new InventedField(seed, columns, rows, hostile).content();
    }

    static double head(ReportContent content, int date, int column, int row) {
        return content.map().heads().get(date).values()[row * content.map().x().length + column];
    }

    /** Drawdown that the run of a content owes to a bore with a constant rate, at a site after some months. */
    static double drawdownBy(ReportContent content, int cause, int site, int months) {
        var whatIf = content.whatIf().orElseThrow();
        double day = Math.rint(months * 30.4375);
        double[] curve = whatIf.responses()[cause * content.sites().size() + site];
        double at = 24 * Math.log10(day / 0.01);
        int before = (int) at;
        return whatIf.begin()[cause][0] * (curve[before] + (at - before) * (curve[before + 1] - curve[before]));
    }

    private double headBefore(double x, double y) {
        return 150 + 0.0011 * x + 4 * Math.sin(y / 30_000);
    }

    private double ground(double x, double y) {
        return 148 + 0.0009 * x + 9 * Math.sin(x / 17_000) * Math.cos(y / 21_000);
    }

    private double top(double x, double y) {
        return -260 + 0.0018 * x + 20 * Math.cos(y / 40_000);
    }

    private double drawdownBy(Taker taker, double x, double y, double days) {
        double distance = Math.max(25, Math.hypot(x - taker.x(), y - taker.y()));
        double reach = 2.25 * TRANSMISSIVITY * days / STORATIVITY;
        return days <= 0
                ? 0
                : taker.rate() / (4 * Math.PI * TRANSMISSIVITY) * Math.log1p(reach / (distance * distance));
    }

    private double drawdown(double x, double y, double days) {
        double capped = Math.max(0, days - 3652);
        Taker shut = new Taker("", 80_000, 60_000, 4_000);
        return takers.stream()
                        .mapToDouble(taker -> drawdownBy(taker, x, y, days))
                        .sum()
                - drawdownBy(shut, x, y, capped);
    }

    private static double days(int years) {
        return years * 365.25;
    }

    private ReportContent content() {
        double[] x = axis(columns, 160_000);
        double[] y = axis(rows, 90_000);
        List<DatedField> heads = IntStream.of(YEARS)
                .mapToObj(years -> new DatedField(
                        START.plusYears(years), grid(x, y, (a, b) -> headBefore(a, b) - drawdown(a, b, days(years)))))
                .toList();
        FieldMap map = new FieldMap(
                x,
                y,
                grid(x, y, this::ground),
                grid(x, y, this::top),
                grid(x, y, (a, b) -> top(a, b) - 90),
                heads,
                List.of(),
                "since 1 July 2026");
        List<Site> sites = sites();
        return new ReportContent(
                new Heading(
                        "Saltbush Plain town bores" + hostile,
                        "Can nine town bores give 12 ML a day for fifty years without harm to the springs?" + hostile,
                        "national height datum" + hostile,
                        "transverse Mercator, zone 54",
                        START,
                        START.plusYears(50)),
                map,
                sites,
                sites.stream().map(this::hydrograph).toList(),
                List.of(
                        new SectionLine(
                                "west to east through the town field" + hostile, 20_000, 43_000, 140_000, 43_000),
                        new SectionLine("south to north", 64_000, 5_000, 64_000, 85_000)),
                sites.stream().map(this::artesianHead).toList(),
                recoveries(),
                List.of(interference(10), interference(50)),
                attribution(),
                limits(),
                List.of(new AccountSummary("holder", "Station A" + hostile, 20, 3, START.plusYears(2), 95.2, 90)),
                List.of(
                        new MeasuredHead("Town bore 1" + hostile, START.plusDays(400), "gauge" + hostile, 180.2, 180.5),
                        new MeasuredHead("Station bore A", START.plusYears(2), "head", 178.2, 178.1)),
                Optional.of(whatIf(sites)),
                balance(),
                0.021,
                List.of(),
                List.of(),
                evidence(),
                provenance());
    }

    private List<Recovery> recoveries() {
        return List.of(
                new Recovery(
                        "Town bore 1" + hostile,
                        "proposed bores" + hostile,
                        START.plusYears(50),
                        12.5,
                        12.5,
                        START.plusYears(50),
                        false,
                        START.plusYears(61),
                        11,
                        START.plusYears(850)),
                new Recovery(
                        "Station bore A",
                        "proposed bores",
                        START.plusYears(50),
                        0.4,
                        0.9,
                        null,
                        true,
                        null,
                        Double.NaN,
                        START.plusYears(850)));
    }

    private static double[] axis(int cells, double length) {
        return IntStream.range(0, cells)
                .mapToDouble(i -> (i + 0.5) * length / cells)
                .toArray();
    }

    private static float[] grid(double[] x, double[] y, DoubleBinaryOperator value) {
        float[] values = new float[x.length * y.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = (float) value.applyAsDouble(x[i % x.length], y[i / x.length]);
        }
        return values;
    }

    private List<Site> sites() {
        List<Site> sites = new ArrayList<>();
        for (Taker taker : takers) {
            sites.add(site(
                    taker.name(), SiteKind.PUMPED_BORE, taker.x(), taker.y(), SiteState.RUNNING, SiteState.RUNNING));
        }
        sites.add(
                site("Old Number One", SiteKind.FREE_FLOWING_BORE, 80_000, 60_000, SiteState.FLOWING, SiteState.SHUT));
        sites.add(
                site("Drovers bore", SiteKind.FREE_FLOWING_BORE, 66_500, 46_500, SiteState.FLOWING, SiteState.STOPPED));
        sites.add(site("Wattle Springs", SiteKind.SPRING, 52_000, 30_000, SiteState.FLOWING, SiteState.FLOWING));
        return sites;
    }

    private Site site(String name, SiteKind kind, double x, double y, SiteState first, SiteState later) {
        List<SiteState> states = IntStream.of(YEARS)
                .mapToObj(years -> years >= 10 ? later : first)
                .toList();
        boolean pumped = kind == SiteKind.PUMPED_BORE;
        double ground = ground(x, y);
        return new Site(
                name + hostile,
                kind,
                name.startsWith("Town") ? "Shire" + hostile : "",
                x,
                y,
                ground,
                pumped ? Double.NaN : ground + 0.5,
                kind == SiteKind.SPRING ? Double.NaN : top(x, y),
                pumped ? ground - 60 : Double.NaN,
                pumped ? ground - 55 : Double.NaN,
                name.startsWith("Town"),
                (pumped ? "pumped" : "flows freely") + hostile,
                states);
    }

    private Hydrograph hydrograph(Site site) {
        double[] days = IntStream.rangeClosed(0, 600)
                .mapToDouble(month -> Math.rint(month * 30.4375))
                .toArray();
        float[] head = new float[days.length];
        float[] level = new float[days.length];
        float[] flow = new float[days.length];
        for (int i = 0; i < days.length; i++) {
            double season = 1.5 * Math.sin(2 * Math.PI * days[i] / 365.25);
            head[i] = (float) (headBefore(site.x(), site.y()) - drawdown(site.x(), site.y(), days[i]) - season);
            level[i] = head[i] - 2.5f;
            flow[i] = (float) (1_300 + 400 * season);
        }
        boolean bore = site.kind() != SiteKind.SPRING;
        List<ReferenceLevel> references = new ArrayList<>();
        references.add(new ReferenceLevel(ReferenceLevel.Kind.GROUND, "Ground", site.ground()));
        references.add(new ReferenceLevel(ReferenceLevel.Kind.OUTLET, "Outlet", site.outlet()));
        references.add(new ReferenceLevel(ReferenceLevel.Kind.PUMP_INTAKE, "Pump intake", site.intake()));
        references.add(
                new ReferenceLevel(ReferenceLevel.Kind.LIMIT, "Limit: working level" + hostile, site.ground() - 40));
        references.removeIf(reference -> Double.isNaN(reference.level()));
        return new Hydrograph(
                site.name(),
                days,
                head,
                bore ? level : new float[0],
                flow,
                references,
                List.of(new Hydrograph.Measurement(400, head[13])));
    }

    private ArtesianHead artesianHead(Site site) {
        double before = headBefore(site.x(), site.y()) - site.ground();
        boolean flows = site.kind() != SiteKind.PUMPED_BORE;
        List<ArtesianHead.Loss> losses = IntStream.of(YEARS)
                .skip(1)
                .mapToObj(years -> {
                    double loss = drawdown(site.x(), site.y(), days(years));
                    double earlier = drawdown(site.x(), site.y(), days(Math.max(0, years - 5)));
                    double intake = flows ? Double.NaN : before - loss - 2.5 - site.intake() + site.ground();
                    return new ArtesianHead.Loss(
                            START.plusYears(years),
                            before - loss,
                            Double.NaN,
                            loss,
                            (loss - earlier) / 5,
                            flows ? Double.NaN : loss + 2.5 - before,
                            intake,
                            flows ? Math.max(0, 120 - 3 * loss) : Double.NaN);
                })
                .toList();
        boolean stops = site.states().contains(SiteState.STOPPED);
        return new ArtesianHead(
                site.name(),
                before,
                Double.NaN,
                flows ? 120 : Double.NaN,
                stops ? LocalDate.of(2033, 4, 12) : null,
                losses,
                losses);
    }

    /** Summaries after ten and fifty years. */
    private List<AttributionSummary> attribution() {
        return List.of(attributionWithGivers(), attributionOfTakers());
    }

    /** More places than are shown; every fifth millimetre is a season's, and a spring loses what two bores take. */
    private AttributionSummary attributionOfTakers() {
        double[] shares = {0.4, 0.3, 0.1, 0.05, 0.05};
        List<AttributedChange> drawdown = IntStream.range(0, 23)
                .mapToObj(i -> change(attributedPlace(i), 8 - 0.3 * i, shares))
                .toList();
        return new AttributionSummary(START.plusYears(50), drawdown, List.of(change(attributedPlace(0), 86.4, shares)));
    }

    /**
     * At the first place one bore gives what it took before, and 0.0104 L/s are lost; at the second parts mostly cancel; at the
     * third is next to nothing.
     */
    private AttributionSummary attributionWithGivers() {
        return new AttributionSummary(
                START.plusYears(10),
                List.of(
                        change(attributedPlace(0), 4.004, 0.6, 0.4, 0.001, 0, -0.101),
                        change(attributedPlace(1), 0.4, 7.5, 0, 0, 0, -6.6),
                        change(attributedPlace(2), 0.004, 0.9)),
                List.of(change(attributedPlace(0), 0.9, 0.543, 0.457)));
    }

    /** The first places are sites of the map. */
    private String attributedPlace(int number) {
        List<String> sites = List.of("Wattle Springs", "Town bore 2", "Old Number One");
        return (number < sites.size() ? sites.get(number) : "Place " + number) + hostile;
    }

    /** Of the whole bores take some shares, boundaries eight per cent; the rest is not linear. */
    private AttributedChange change(String place, double whole, double... shares) {
        double bores = DoubleStream.of(shares).sum();
        return new AttributedChange(
                place,
                whole,
                0.2 * whole,
                IntStream.range(0, shares.length)
                        .mapToObj(i -> new AttributedChange.Cause("Town bore " + (i + 1) + hostile, shares[i] * whole))
                        .toList(),
                List.of(new AttributedChange.Cause("Town" + hostile, bores * whole)),
                List.of(
                        new AttributedChange.Cause("existing", 0.2 * whole),
                        new AttributedChange.Cause("proposed", (bores - 0.2) * whole)),
                0.08 * whole,
                (0.92 - bores) * whole);
    }

    private Interference interference(int years) {
        List<Interference.Row> table = takers.stream()
                .map(at -> {
                    List<Double> parts = takers.stream()
                            .map(by -> drawdownBy(by, at.x(), at.y(), days(years)))
                            .toList();
                    return new Interference.Row(
                            at.name() + hostile,
                            parts,
                            parts.stream().mapToDouble(Double::doubleValue).sum());
                })
                .toList();
        List<String> causes =
                takers.stream().map(taker -> taker.name() + hostile).toList();
        return new Interference(
                START.plusYears(years),
                causes,
                table,
                "By superposition of unit responses: every bore follows a rate.");
    }

    /** Constant rates from the first day on, so that a head changes by its drawdown times the change of the rate. */
    private WhatIf whatIf(List<Site> sites) {
        double[] lags = IntStream.rangeClosed(0, 160)
                .mapToDouble(i -> 0.01 * Math.pow(10, i / 24.0))
                .toArray();
        double[][] responses = new double[takers.size() * sites.size()][];
        double[][] rates = new double[takers.size()][];
        List<WhatIf.Taker> rules = new ArrayList<>();
        for (int cause = 0; cause < takers.size(); cause++) {
            Taker one = takers.get(cause);
            Taker unit = new Taker("", one.x(), one.y(), 1);
            rates[cause] = new double[] {one.rate()};
            rules.add(new WhatIf.Taker(
                    WhatIf.Rule.RATE,
                    sites.get(cause).proposed(),
                    sites.get(cause).holder(),
                    sites.get(cause).lowestLevel(),
                    new WhatIf.Loss(0, 1e-7),
                    Double.NaN));
            for (int i = 0; i < sites.size(); i++) {
                Site at = sites.get(i);
                responses[cause * sites.size() + i] = Arrays.stream(lags)
                        .map(lag -> drawdownBy(unit, at.x(), at.y(), lag))
                        .toArray();
            }
        }
        return new WhatIf(
                sites.stream().map(Site::name).toList(),
                lags,
                responses,
                new double[] {0, days(50)},
                rates,
                rates,
                rules,
                List.of(
                        new WhatIf.Condition(
                                0,
                                sites.size() - 1,
                                WhatIf.Limited.DRAWDOWN,
                                List.of(),
                                new WhatIf.Reference(0, 0),
                                0,
                                days(50),
                                0),
                        new WhatIf.Condition(
                                1,
                                9,
                                WhatIf.Limited.DRAWDOWN,
                                List.of(0, 1, 2, 3, 4, 5, 6, 7, 8),
                                new WhatIf.Reference(0, 0),
                                0,
                                days(50),
                                0)),
                List.of(new WhatIf.NotJudged(1, "It is judged again on the page all the same.")));
    }

    private List<LimitOutcome> limits() {
        double reached = drawdown(52_000, 30_000, days(50));
        return List.of(
                new LimitOutcome(
                        "springs keep their water" + hostile,
                        "Clause 7" + hostile,
                        "Wattle Springs",
                        "drawdown",
                        "by everyone, compared with 1 July 2026, ever",
                        9,
                        reached,
                        START.plusYears(50),
                        "m",
                        0.02,
                        9 - reached,
                        (9 - reached) / 9,
                        Outcome.Kind.CROSSED,
                        LocalDate.of(2041, 3, 1),
                        "",
                        Double.NaN,
                        Double.NaN),
                new LimitOutcome(
                        "neighbours",
                        "",
                        "Station bore A",
                        "drawdown",
                        "by the town, within 50 years",
                        20,
                        18.31,
                        START.plusYears(50),
                        "m",
                        0.02,
                        1.69,
                        1.69 / 20,
                        Outcome.Kind.HOLDS,
                        null,
                        "",
                        Double.NaN,
                        Double.NaN),
                new LimitOutcome(
                        "working level",
                        "",
                        "Town bore 5",
                        "water level",
                        "ever",
                        90,
                        93.2,
                        START.plusYears(50),
                        "m",
                        0.02,
                        3.2,
                        0.32,
                        Outcome.Kind.HOLDS,
                        null,
                        "",
                        Double.NaN,
                        Double.NaN));
    }

    private List<WaterBalance> balance() {
        return IntStream.range(0, 600)
                .mapToObj(month -> {
                    double from = Math.rint(month * 30.4375);
                    double to = Math.rint((month + 1) * 30.4375);
                    double volume = (to - from) * 14_000;
                    double share = Math.exp(-month / 300.0);
                    return new WaterBalance(
                            from,
                            to,
                            List.of(
                                    new Term("storage", Kind.STORAGE, volume * share, 0),
                                    new Term("leakage", Kind.LEAKAGE, volume * (1 - share) * 0.4, 0),
                                    new Term("eastern ranges" + hostile, Kind.BOUNDARY, volume * (1 - share) * 0.6, 0),
                                    new Term("Wattle Springs", Kind.SPRING, 0, volume * 0.05),
                                    new Term("Town bores", Kind.BORE, 0, volume * 0.95)),
                            3.2e-9);
                })
                .toList();
    }

    private Evidence evidence() {
        return new Evidence(
                "Can nine town bores give 12 ML a day?" + hostile,
                List.of("Quality of the water." + hostile),
                List.of(
                        new Assumption(
                                "The aquifer is one layer, full under its sealing bed." + hostile,
                                "Head stays above its top." + hostile,
                                Score.LOW,
                                Score.LOW,
                                Score.HIGH,
                                Score.LOW),
                        new Assumption(
                                "Transmissivity between the pumping tests follows their logarithms.",
                                "Not tested.",
                                Score.HIGH,
                                Score.MEDIUM,
                                Score.LOW,
                                Score.HIGH)),
                List.of(
                        new Doubt("Station bore C" + hostile, "has no measured level; the start comes from the model."),
                        new Doubt(
                                "",
                                "The eastern boundary moved 50 km farther out changes no figure by more than 0.04 m.")),
                List.of(
                        new CheckedItem("Water is accounted for" + hostile, "a book" + hostile, State.SHOWN, "1e-9 %"),
                        new CheckedItem("The aquifer stays full", "a book", State.NOT_MET, "3 cells" + hostile),
                        new CheckedItem("Fit", "a book", State.NOT_SHOWN, "no heads"),
                        new CheckedItem("Fit for the decision", "a book", State.OPEN, "people")));
    }

    private Provenance provenance() {
        return new Provenance(
                "0.1.0",
                "sh cli/headfall run saltbush-plain.yaml" + hostile,
                List.of(
                        new Provenance.InputFile("saltbush-plain.yaml" + hostile, "3f".repeat(32)),
                        new Provenance.InputFile("tests.csv", "a0".repeat(32))),
                List.of(
                        new Provenance.Fact("Cells", Integer.toString(columns * rows)),
                        new Provenance.Fact("Largest error estimate of a step", "0.004 m")));
    }
}
