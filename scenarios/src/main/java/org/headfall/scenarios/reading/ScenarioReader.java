package org.headfall.scenarios.reading;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.document.ParsedDocument;
import org.headfall.scenarios.document.ScenarioFolder;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.scenario.AccountsSpecification;
import org.headfall.scenarios.scenario.AquiferSpecification;
import org.headfall.scenarios.scenario.Area;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.BoundarySpecification;
import org.headfall.scenarios.scenario.CaseSpecification;
import org.headfall.scenarios.scenario.CoordinateSystem;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.scenario.GridSpecification;
import org.headfall.scenarios.scenario.LimitSpecification;
import org.headfall.scenarios.scenario.MeasurementSpecification;
import org.headfall.scenarios.scenario.OutputSpecification;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.scenario.Planning;
import org.headfall.scenarios.scenario.ProtectedPoint;
import org.headfall.scenarios.scenario.RechargeSpecification;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.scenarios.scenario.SealingBedSpecification;
import org.headfall.scenarios.scenario.SpringSpecification;
import org.headfall.scenarios.scenario.StartSpecification;
import org.headfall.scenarios.spatial.Extent;
import org.jspecify.annotations.Nullable;

/** Reads a scenario document with the files beside it and reports every problem at once. */
public final class ScenarioReader {
    private final Inputs inputs;

    private ScenarioReader(Inputs inputs) {
        this.inputs = inputs;
    }

    /**
     * Reads a document.
     *
     * @param document the scenario document
     * @param reach which files it may name
     * @return the scenario, if there is no problem, and everything that is wrong if there is; nothing is thrown for bad
     *     input
     */
    public static ScenarioReading read(Path document, FileReach reach) {
        return read(ParsedDocument.of(document), reach);
    }

    /**
     * Reads a document that is parsed.
     *
     * @param document the scenario document
     * @param reach which files it may name
     * @return as from {@link #read(Path, FileReach)}
     */
    public static ScenarioReading read(ParsedDocument document, FileReach reach) {
        return read(document.node().orElse(null), document.problems(), new ScenarioFolder(document.file(), reach));
    }

    /**
     * Reads a document that has been changed since it was parsed, so that its file says something else.
     *
     * @param node the document as it is to be read
     * @param document the scenario document that it was parsed from; files are found beside it
     * @param reach which files it may name
     * @return as from {@link #read(Path, FileReach)}
     */
    public static ScenarioReading read(DocumentNode node, Path document, FileReach reach) {
        return read(node, new Problems(), new ScenarioFolder(document, reach));
    }

    private static ScenarioReading read(@Nullable DocumentNode node, Problems problems, ScenarioFolder folder) {
        @Nullable Section section = node == null ? null : Section.of(node, "", problems);
        @Nullable
        Scenario scenario = section == null ? null : new ScenarioReader(new Inputs(problems, folder)).scenario(section);
        return new ScenarioReading(
                problems.isEmpty() ? Optional.ofNullable(scenario) : Optional.empty(), problems, folder);
    }

    /** What levels are above: a document may say "metres above national height datum" or only the last three words. */
    private static String levelOf(String datum) {
        return datum.replaceFirst("(?i)^(metres|meters|m) above\\s+(?=\\S)", "");
    }

    private @Nullable Scenario scenario(Section document) {
        @Nullable String title = document.text("title");
        @Nullable String description = document.optionalText("description");
        @Nullable String datum = document.text("datum");
        @Nullable CoordinateSystem coordinates = new CoordinateSystemReader().read(document);
        @Nullable Period period = new PeriodReader(inputs).read(document);
        GridReader grids = new GridReader();
        @Nullable GridSpecification grid = grids.read(document);
        @Nullable Extent extent = grids.extent();
        MapArea wholeGrid = MapArea.ofGrid(extent, coordinates);
        @Nullable Section aquiferSection = document.section("aquifer");
        @Nullable Area within = aquiferSection == null ? null : within(aquiferSection, wholeGrid);
        MapArea area = within == null ? wholeGrid : wholeGrid.within(within);
        AquiferReader aquifers = new AquiferReader(inputs, area);
        @Nullable
        AquiferSpecification aquifer = aquiferSection == null ? null : aquifers.aquifer(aquiferSection, within);
        @Nullable Field ground = aquifers.ground(document);
        @Nullable SealingBedSpecification bed = aquifers.sealingBed(document);
        List<BoundarySpecification> boundaries = new BoundaryReader(inputs, extent).read(document);
        List<RechargeSpecification> recharges = new RechargeReader(inputs, area).read(document);
        PositionReader positions = new PositionReader(inputs.problems(), extent);
        NameRegister names = new NameRegister(inputs.problems());
        PointReader points = new PointReader(inputs, positions, names);
        List<SpringSpecification> springs = points.springs(document);
        List<ProtectedPoint> protectedPoints = points.protectedPoints(document);
        BoreReader boreReader = new BoreReader(inputs, positions, names);
        List<BoreSpecification> bores = boreReader.read(document);
        if (period != null) {
            new BoreNotices(period, inputs.problems()).of(bores);
        }
        List<MeasurementSpecification> measurements =
                new MeasurementReader(inputs, names, boreReader.known(), period).read(document);
        Optional<AccountsSpecification> accounts =
                new AccountsReader(inputs, names, boreReader.known(), period).read(document);
        List<CaseSpecification> cases = new CaseReader(period, boreReader.known()).read(document);
        KnownPlaces known = new KnownPlaces(
                names.names(),
                springs.stream().map(SpringSpecification::name).collect(Collectors.toSet()),
                protectedPoints.stream().map(ProtectedPoint::name).collect(Collectors.toSet()),
                boreReader.known(),
                cases.stream().map(CaseSpecification::name).collect(Collectors.toSet()),
                document.has("siting"));
        List<LimitSpecification> limits =
                new LimitReader(inputs, known, wholeGrid, period, accounts.isPresent()).read(document);
        @Nullable StartSpecification start = new StartReader(inputs, area, headsAreHeld(document, bed)).read(document);
        OutputSpecification output = new OutputReader(inputs, period).read(document);
        Planning planning = new Planning(
                new SitingReader(inputs, wholeGrid, period, boreReader.known()).read(document),
                new AllocationReader(inputs, bores, period, boreReader.known()).read(document),
                new SpacingReader(positions, period).read(document));
        document.done();
        if (title == null
                || datum == null
                || coordinates == null
                || period == null
                || grid == null
                || aquifer == null
                || ground == null
                || start == null) {
            return null;
        }
        return new Scenario(
                title,
                description == null ? "" : description,
                levelOf(datum),
                coordinates,
                period,
                grid,
                aquifer,
                ground,
                Optional.ofNullable(bed),
                boundaries,
                recharges,
                springs,
                bores,
                protectedPoints,
                measurements,
                accounts,
                cases,
                limits,
                start,
                output,
                planning);
    }

    private @Nullable Area within(Section aquifer, MapArea area) {
        return aquifer.has("within")
                ? new FeatureFileReader(inputs, area).area(inputs.spatialFile(aquifer, "within"))
                : null;
    }

    /** Whether something decides what heads are in the long run; a bed with problems of its own counts as one. */
    private static boolean headsAreHeld(Section document, @Nullable SealingBedSpecification bed) {
        boolean tight = bed != null
                && bed.verticalConductivity() instanceof Field.Constant conductivity
                && conductivity.value() == 0;
        return BoundaryReader.giveHeads(document) || (document.has("sealing_bed") && !tight);
    }
}
