package org.headfall.scenarios.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URISyntaxException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.document.UsedFile;
import org.headfall.scenarios.scenario.AquiferSpecification;
import org.headfall.scenarios.scenario.BoreOperation;
import org.headfall.scenarios.scenario.BoreSelection;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.BoreSpecification.Phase;
import org.headfall.scenarios.scenario.BoundaryCondition;
import org.headfall.scenarios.scenario.BoundarySpecification;
import org.headfall.scenarios.scenario.CoordinateSystem;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.scenario.GridSpecification;
import org.headfall.scenarios.scenario.LimitSpecification;
import org.headfall.scenarios.scenario.OutputSpecification;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.scenario.RechargeSpecification;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.scenarios.scenario.Solving;
import org.headfall.scenarios.scenario.Spread;
import org.headfall.scenarios.scenario.StartSpecification;
import org.headfall.scenarios.scenario.TimeCourse;
import org.headfall.scenarios.scenario.TimeCourse.DatedValue;
import org.headfall.scenarios.spatial.Extent;
import org.headfall.scenarios.spatial.Position;
import org.headfall.solver.aquifer.Side;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The scenario of src/test/resources/scenario/quandong uses every part of a document. */
class ScenarioReaderTest {
    private static ScenarioReading reading;
    private static Scenario scenario;

    @BeforeAll
    static void readTheWholeScenario() throws Exception {
        reading = ScenarioReader.read(resource("/scenario/quandong/quandong.yaml"), FileReach.FOLDER_OF_DOCUMENT);
        scenario = reading.orThrow();
    }

    static Path resource(String name) throws URISyntaxException {
        return Path.of(ScenarioReaderTest.class.getResource(name).toURI());
    }

    @Test
    void readsPeriodByTheCalendar() {
        assertEquals(new Period(LocalDate.of(2026, 7, 1), LocalDate.of(2076, 7, 1)), scenario.period());
        assertEquals(18263, scenario.period().days());
        assertEquals(LocalDate.of(2027, 7, 1), scenario.period().date(365));
        assertEquals(LocalDate.of(2026, 7, 31), scenario.period().after(30));
    }

    @Test
    void readsGridInMetres() {
        assertEquals(
                new Extent(300_000, 6_500_000, 380_000, 6_560_000),
                scenario.grid().extent());
        assertEquals(2000, scenario.grid().cell());
        assertEquals(
                new GridSpecification.Refinement(GridSpecification.Around.BORES_AND_SPRINGS, 50, 1.4),
                scenario.grid().refinement().orElseThrow());
        assertEquals(new CoordinateSystem.Projected(7854), scenario.coordinates());
    }

    @Test
    void readsAquiferAndBed() {
        AquiferSpecification.WithRatio transmissivity = assertInstanceOf(
                AquiferSpecification.WithRatio.class, scenario.aquifer().transmissivity());
        assertEquals(2, transmissivity.xOverY());
        Field.FromPoints points = assertInstanceOf(Field.FromPoints.class, transmissivity.mean());
        assertEquals(Spread.LOG_KRIGING, points.spread());
        assertEquals(
                new Field.PointValue(new Position(350_000, 6_530_000), 350),
                points.points().get(1));
        assertEquals(new Field.Constant(2e-4), scenario.aquifer().storativity());
        assertEquals(new Field.Constant(-120), scenario.aquifer().top());
        assertEquals(
                new Field.Constant(3e-6), scenario.sealingBed().orElseThrow().specificStorage());
        assertEquals(new Field.Constant(150), scenario.ground());
    }

    @Test
    void readsBoundaries() {
        BoundarySpecification east = scenario.boundaries().get(0);
        assertEquals(Side.EAST, east.side());
        assertEquals(
                new BoundaryCondition.FixedHead(new TimeCourse.Lines(List.of(
                        new DatedValue(LocalDate.of(2026, 7, 1), 190),
                        new DatedValue(LocalDate.of(2050, 7, 1), 186.5)))),
                east.condition());
        BoundarySpecification west = scenario.boundaries().get(1);
        assertEquals(Optional.of(new BoundarySpecification.Stretch(6_500_000, 6_540_000)), west.part());
        assertEquals(new BoundaryCondition.FarHead(new TimeCourse.Steady(120), 60_000), west.condition());
        assertEquals(
                new BoundaryCondition.GivenFlow(new TimeCourse.Steady(-1036.8)),
                scenario.boundaries().get(2).condition());
    }

    @Test
    void readsRechargeThatChanges() {
        RechargeSpecification.ChangingRate rate = assertInstanceOf(
                RechargeSpecification.ChangingRate.class,
                scenario.recharges().get(0).rate());
        TimeCourse.Steps steps = assertInstanceOf(TimeCourse.Steps.class, rate.rate());
        assertEquals(0.008 / 365.25, steps.values().get(0).value(), 1e-18);
    }

    @Test
    void readsBoresOfTheTableWithTheirChanges() {
        BoreSpecification town1 = scenario.bores().get(0);
        assertEquals("Town 1", town1.name());
        assertEquals(0.108, town1.screenRadius(), 1e-15);
        assertEquals(
                List.of(
                        new Phase(Optional.empty(), new BoreOperation.Pumped(new TimeCourse.Steady(800))),
                        new Phase(
                                Optional.of(LocalDate.of(2036, 7, 1)),
                                new BoreOperation.Pumped(new TimeCourse.Steady(1296))),
                        new Phase(Optional.of(LocalDate.of(2056, 7, 1)), new BoreOperation.Off())),
                town1.phases());
        BoreSpecification station = scenario.bores().get(1);
        assertEquals(BoreSpecification.Group.EXISTING, station.group());
        assertEquals(OptionalDouble.of(151.5), station.levels().outlet());
        assertEquals(
                List.of(
                        new Phase(Optional.of(LocalDate.of(1962, 5, 1)), new BoreOperation.FreeFlow()),
                        new Phase(Optional.of(LocalDate.of(2090, 1, 1)), new BoreOperation.Off())),
                station.phases());
        assertEquals("bores.csv:3:1", station.place().toString());
    }

    @Test
    void readsTheBoreOfTheDocument() {
        BoreSpecification town3 = scenario.bores().get(2);
        assertEquals(new Position(341_500, 6_531_000), town3.position());
        assertEquals(OptionalDouble.of(75), town3.levels().pumpingFloor());
        assertEquals(1e-4, town3.wellLoss().linear());
        assertEquals(1900 / 86_400.0 / 86_400.0, town3.wellLoss().turbulent(), 1e-20);
        assertEquals(3, town3.phases().size());
        BoreOperation.Pumped late = assertInstanceOf(
                BoreOperation.Pumped.class, town3.phases().get(1).operation());
        assertEquals(
                2,
                assertInstanceOf(TimeCourse.Steps.class, late.rate()).values().size());
    }

    @Test
    void readsLimits() {
        LimitSpecification springs = scenario.limits().get(0);
        assertEquals(new LimitSpecification.Drawdown(0.2), springs.quantity());
        assertEquals(new BoreSelection.Proposed(), springs.cause());
        assertEquals(new LimitSpecification.WithoutThem(), springs.comparedWith());
        assertEquals(List.of(new LimitSpecification.NamedPlace("Quandong Springs")), springs.at());
        assertEquals("no more than 0.2 m at any spring", springs.text());
        LimitSpecification pumps = scenario.limits().get(1);
        assertEquals(new LimitSpecification.FloorLevel(80), pumps.quantity());
        assertEquals(new LimitSpecification.Nothing(), pumps.comparedWith());
        assertEquals(new LimitSpecification.When(0, 7305), pumps.when());
        LimitSpecification decline = scenario.limits().get(2);
        assertEquals(
                0.3 / 365.25,
                assertInstanceOf(LimitSpecification.DeclineRate.class, decline.quantity())
                        .atMost(),
                1e-17);
        assertEquals(new LimitSpecification.When(3653, Double.POSITIVE_INFINITY), decline.when());
        assertEquals(
                new BoreSelection.OfHolder("Saltbush Station"),
                scenario.limits().get(3).cause());
    }

    @Test
    void whatEveryoneDoesIsMeasuredFromTheStartOrFromARunWithoutAnyBore() {
        for (int i = 4; i < 6; i++) {
            assertEquals(new BoreSelection.All(), scenario.limits().get(i).cause());
        }
        assertEquals(new LimitSpecification.TheStart(), scenario.limits().get(4).comparedWith());
        assertEquals(
                new LimitSpecification.WithoutThem(), scenario.limits().get(5).comparedWith());
    }

    @Test
    void theDatumIsTheLevelItselfWithOrWithoutTheWordsMetresAbove() {
        assertEquals("national height datum", scenario.datum());
    }

    @Test
    void readsStartAndOutput() {
        assertEquals(new StartSpecification.SteadyWithExistingBores(), scenario.start());
        OutputSpecification output = scenario.output();
        assertEquals(
                new OutputSpecification.On(List.of(LocalDate.of(2036, 7, 1), LocalDate.of(2076, 7, 1))),
                output.grids());
        assertEquals(
                List.of(LocalDate.of(2027, 7, 1), LocalDate.of(2036, 7, 1), LocalDate.of(2076, 7, 1)),
                output.reportDates());
        assertEquals(0.001, output.headTolerance());
        assertEquals(Solving.BY_STEPS, output.solving());
    }

    @Test
    void keepsEveryFileItUsed() throws Exception {
        assertEquals(
                List.of(
                        "bores.csv",
                        "changes.csv",
                        "intake.csv",
                        "late.csv",
                        "pump.csv",
                        "quandong.yaml",
                        "rain.csv",
                        "tests.csv"),
                reading.folder().usedFiles().stream().map(UsedFile::name).toList());
        assertTrue(reading.problems().isEmpty());
    }
}
