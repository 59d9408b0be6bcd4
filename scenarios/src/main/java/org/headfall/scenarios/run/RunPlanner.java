package org.headfall.scenarios.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.headfall.scenarios.assembly.Model;
import org.headfall.scenarios.assembly.ModelAssembly;
import org.headfall.scenarios.document.UsedFile;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.recording.InputFile;
import org.headfall.scenarios.recording.MapReference;
import org.headfall.scenarios.recording.Measurement;
import org.headfall.scenarios.recording.Provenance;
import org.headfall.scenarios.recording.ReportDate;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.reference.CoordinateReference;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.CaseSpecification;
import org.headfall.scenarios.scenario.CoordinateSystem;
import org.headfall.scenarios.scenario.MeasurementSpecification;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.scenarios.scenario.StartSpecification;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.WaterColumn;
import org.headfall.solver.simulation.Settings;

/** Makes a scenario document that has been read ready to run. */
public final class RunPlanner {

    private final Scenario scenario;
    private final Model model;
    private final Optional<String> assumedOfCase;

    private RunPlanner(Scenario scenario, Model model, Optional<String> assumedOfCase) {
        this.assumedOfCase = assumedOfCase;
        this.scenario = scenario;
        this.model = model;
    }

    /**
     * The plan of a scenario.
     *
     * @param reading the document as it was read
     * @param toolVersion program and version, such as "Headfall 0.1.0"
     * @param threads threads to compute with, here and in the run
     * @return the plan
     * @throws InputException with all problems of the document and of what it means on the grid
     * @throws IOException if a file of the scenario cannot be read any more
     */
    public static RunPlan plan(ScenarioReading reading, String toolVersion, int threads)
            throws InputException, IOException {
        Scenario scenario = reading.orThrow();
        // Hashing the files takes a while and needs nothing of what they mean on cells.
        try (SideTasks tasks = new SideTasks(threads)) {
            Future<Provenance> provenance = tasks.add(() -> provenance(reading, toolVersion));
            Model model = assembled(reading, threads);
            tasks.help();
            return new RunPlanner(scenario, model, Optional.empty()).plan(result(provenance), threads);
        }
    }

    private static Provenance result(Future<Provenance> provenance) throws IOException {
        try {
            return SideTasks.result(provenance);
        } catch (UncheckedIOException unreadable) {
            throw unreadable.getCause();
        }
    }

    /**
     * What a scenario is on the grid.
     *
     * @param threads threads to put its fields on cells with
     * @throws InputException with all problems of the document and of what it means on the grid
     */
    static Model assembled(ScenarioReading reading, int threads) throws InputException {
        Scenario scenario = reading.orThrow();
        requireAPlace(scenario, reading);
        Optional<Model> model = ModelAssembly.assemble(scenario, reading.problems(), threads);
        reading.problems().throwIfAny();
        return model.orElseThrow();
    }

    /** The plan of a scenario that has been assembled. */
    static RunPlan plan(ScenarioReading reading, Model model, String toolVersion, int threads)
            throws InputException, IOException {
        return new RunPlanner(reading.orThrow(), model, Optional.empty())
                .plan(provenance(reading, toolVersion), threads);
    }

    /** The plan of a scenario that has been assembled and differs from a planned one in what bores do alone. */
    static RunPlan planLike(RunPlan like, ScenarioReading reading, Model model) throws InputException {
        Scenario scenario = reading.orThrow();
        List<Station> stations = new StationPlanner(scenario, model).stations();
        return new RunPlanner(scenario, model, Optional.empty())
                .plan(like.description().withStations(stations), like.settings().threads());
    }

    /**
     * The plans of all cases of a scenario. All start from the heads of the document as it is and are recorded on the
     * same days, so that limits can compare them.
     *
     * @param reading the document as it was read
     * @param toolVersion program and version, such as "Headfall 0.1.0"
     * @param threads threads to compute with, here and in the runs
     * @return one plan a case, in the order of the document; none if it has no cases
     * @throws InputException with all problems of the document and of what it means on the grid
     * @throws IOException if a file of the scenario cannot be read any more
     */
    public static List<CasePlan> cases(ScenarioReading reading, String toolVersion, int threads)
            throws InputException, IOException {
        Scenario scenario = reading.orThrow();
        if (scenario.cases().isEmpty()) {
            return List.of();
        }
        RunPlan plain = plan(reading, toolVersion, threads);
        List<CasePlan> plans = new ArrayList<>();
        TreeSet<Double> days = new TreeSet<>();
        for (CaseSpecification one : scenario.cases()) {
            Scenario taking = scenario.inCase(one);
            Optional<Model> model = ModelAssembly.assemble(taking, reading.problems(), threads);
            reading.problems().throwIfAny();
            RunPlan plan = new RunPlanner(taking, model.orElseThrow(), Optional.of(one.assumption(scenario.bores())))
                    .plan(plain.description().provenance(), threads);
            Arrays.stream(plan.stationDays()).forEach(days::add);
            plans.add(new CasePlan(one.name(), plan));
        }
        double[] all = days.stream().mapToDouble(Double::doubleValue).toArray();
        return plans.stream()
                .map(one -> new CasePlan(
                        one.name(), one.plan().asCase(plain.problem().bores(), all)))
                .toList();
    }

    /** All results but heads of the grid are about places, and a file of their series needs at least one. */
    private static void requireAPlace(Scenario scenario, ScenarioReading reading) throws InputException {
        if (scenario.bores().isEmpty()
                && scenario.springs().isEmpty()
                && scenario.protectedPoints().isEmpty()) {
            reading.problems()
                    .add(
                            Place.ofFile(
                                    reading.folder().nameOf(reading.folder().document())),
                            "a place to compute for",
                            Finding.of(
                                    ProblemKind.MISSING_KEY,
                                    "no bore, no spring and no protected point",
                                    "at least one under bores, springs or protected"));
            reading.problems().throwIfAny();
        }
    }

    private RunPlan plan(Provenance provenance, int threads) {
        return plan(description(provenance), threads);
    }

    private RunPlan plan(RunDescription description, int threads) {
        Settings assembled = model.settings();
        LimitPlanner limits = new LimitPlanner(scenario, model);
        return new RunPlan(
                description,
                model.problem(),
                start(),
                new Settings(assembled.accuracy(), assembled.largestStep(), threads),
                stationDays(limits),
                model.outputDays().grids(),
                limits.limits(),
                limits.mapPlaces(),
                scenario.accounts().map(accounts -> AccountPlanner.plan(accounts, scenario)),
                false,
                scenario.output().solving());
    }

    private double[] stationDays(LimitPlanner limits) {
        return DoubleStream.concat(Arrays.stream(model.outputDays().stations()), Arrays.stream(limits.days()))
                .sorted()
                .distinct()
                .toArray();
    }

    private RunDescription description(Provenance provenance) {
        Period period = scenario.period();
        return new RunDescription(
                scenario.title(),
                scenario.description(),
                scenario.datum(),
                mapReference(),
                new RunCalendar(period.from().atStartOfDay()),
                model.days(),
                provenance,
                model.problem().aquifer(),
                model.problem().sealingBed(),
                model.ground(),
                new StationPlanner(scenario, model).stations(),
                scenario.output().reportDates().stream().map(this::reportDate).toList(),
                scenario.measurements().stream().map(this::measurement).toList(),
                assumptions());
    }

    private List<String> assumptions() {
        return Stream.concat(BoresBesideSides.sentences(model.problem()).stream(), assumedOfCase.stream())
                .toList();
    }

    private Optional<MapReference> mapReference() {
        return scenario.coordinates() instanceof CoordinateSystem.Projected projected
                ? Optional.of(new MapReference(CoordinateReference.ofEpsg(projected.code())))
                : Optional.empty();
    }

    /** The document first, as results name it. */
    private static Provenance provenance(ScenarioReading reading, String toolVersion) throws IOException {
        List<UsedFile> files = new ArrayList<>(reading.folder().usedFiles());
        String document = reading.folder().nameOf(reading.folder().document());
        files.sort(Comparator.comparing(file -> !file.name().equals(document)));
        return new Provenance(
                toolVersion,
                Files.readString(reading.folder().document(), StandardCharsets.UTF_8),
                files.stream()
                        .map(file -> new InputFile(file.name(), file.sha256()))
                        .toList());
    }

    private ReportDate reportDate(LocalDate date) {
        Period period = scenario.period();
        int years = date.getYear() - period.from().getYear();
        String label = years > 0 && period.from().plusYears(years).equals(date)
                ? "after " + years + (years == 1 ? " year" : " years")
                : date.toString();
        return new ReportDate(label, period.day(date));
    }

    /** What a gauge shows is the head of the column of water that stands in its bore. */
    private Measurement measurement(MeasurementSpecification given) {
        double day = scenario.period().day(given.date());
        if (given.reading() instanceof MeasurementSpecification.Head level) {
            return new Measurement(
                    given.name(), day, level.head(), String.format(Locale.ROOT, "head %.2f m", level.head()));
        }
        MeasurementSpecification.Gauge gauge = (MeasurementSpecification.Gauge) given.reading();
        WaterColumn column = model.problem().bores().stream()
                .filter(bore -> bore.name().equals(given.name()))
                .map(Bore::column)
                .findFirst()
                .orElse(WaterColumn.REFERENCE);
        return new Measurement(
                given.name(),
                day,
                column.headOfGauge(gauge.pressure(), gauge.level()),
                String.format(Locale.ROOT, "gauge %.1f kPa at %.2f m", gauge.pressure(), gauge.level()));
    }

    private StartHeads start() {
        if (model.start() instanceof Model.GivenHeads given) {
            return new StartHeads.Given(given.heads());
        }
        boolean without = scenario.start() instanceof StartSpecification.SteadyWithoutBores;
        Set<String> operated = scenario.bores().stream()
                .filter(bore -> !without && bore.group() == BoreSpecification.Group.EXISTING)
                .map(BoreSpecification::name)
                .collect(Collectors.toSet());
        return new StartHeads.Steady(operated);
    }
}
