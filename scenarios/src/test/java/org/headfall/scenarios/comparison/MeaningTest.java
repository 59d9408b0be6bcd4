package org.headfall.scenarios.comparison;

import static java.lang.Double.NaN;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.findings.ArtesianHeadAnalysis;
import org.headfall.scenarios.findings.Confinement;
import org.headfall.scenarios.findings.Findings;
import org.headfall.scenarios.findings.Recoveries;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.Station.BoreSite.Use;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.RunFigures;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.bore.WaterColumn;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.simulation.RunStatistics;
import org.junit.jupiter.api.Test;

/** What is said of each kind of place, from series made up so that the words follow by hand. */
class MeaningTest {

    private static final double ONE_LITRE_PER_SECOND = 86.4;
    private static final LocalDate DATE = LocalDate.of(2028, 7, 1);

    /** A run of a year in which a place has one head, level, discharge and wanted discharge (L/s) all the time. */
    private static FinishedRun run(Station station, double head, double level, double flow, double wanted) {
        return run(station, head, level, head, level, flow, wanted);
    }

    /** A run of a year in which head and level run straight from the first values to the second. */
    private static FinishedRun run(
            Station station,
            double headBefore,
            double levelBefore,
            double head,
            double level,
            double flow,
            double wanted) {
        RunCalendar calendar = new RunCalendar(LocalDateTime.of(2027, 7, 1, 0, 0));
        double[] days = {0, calendar.day(DATE.atStartOfDay())};
        Aquifer aquifer = Aquifer.homogeneous(SmallField.grid(), 100, 1e-4);
        RunDescription description = SmallField.plainRun("made up", calendar, days[1], aquifer, List.of(station));
        StationSeries series = new StationSeries(
                days,
                new double[] {headBefore, head},
                new double[] {levelBefore, level},
                new double[] {flow * ONE_LITRE_PER_SECOND, flow * ONE_LITRE_PER_SECOND},
                new double[] {wanted * ONE_LITRE_PER_SECOND, wanted * ONE_LITRE_PER_SECOND});
        double[] never = new double[aquifer.grid().cellCount()];
        Arrays.fill(never, Double.NaN);
        Recording recording = new Recording(days, List.of(series), List.of(), List.of(), never);
        Findings findings = new Findings(
                new ArtesianHeadAnalysis(description, recording).ofAllStations(),
                List.of(),
                List.of(),
                List.of(),
                Confinement.of(description, recording),
                Recoveries.NONE);
        RunFigures figures = new RunFigures(
                new RunStatistics(12, 1, 0, 1, 1, 0, 0, 0),
                List.of(0.0),
                "",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                0,
                0,
                1);
        return new FinishedRun(description, recording, findings, List.of(), figures);
    }

    private static String meaning(FinishedRun first, FinishedRun second) {
        return new Meaning(first, second).of("place", DATE);
    }

    private static Station.BoreSite bore(OptionalDouble outlet, OptionalDouble intake, Station.BoreSite.Use use) {
        return new Station.BoreSite(
                "place",
                500_200,
                6_900_250,
                100,
                outlet,
                intake,
                intake,
                -50,
                0.1,
                WellLoss.NONE,
                Optional.empty(),
                "",
                false,
                use,
                "in words");
    }

    @Test
    void aSpringGivesLess() {
        Station spring = new Station.SpringSite("place", 500_200, 6_900_250, 100, 102, 10);
        assertEquals(
                "gives 3.0 L/s instead of 4.0, 25 % less",
                meaning(run(spring, 106, NaN, 4, NaN), run(spring, 105, NaN, 3, NaN)));
        assertEquals(
                "dries up on 2028-04-18, in the first run not; gives 0.0 L/s instead of 4.0, 100 % less",
                meaning(run(spring, 106, NaN, 4, NaN), run(spring, 106, NaN, 101, NaN, 0, NaN)));
        assertEquals(
                "gives no water in either run", meaning(run(spring, 101, NaN, 0, NaN), run(spring, 99, NaN, 0, NaN)));
    }

    @Test
    void aFlowingBoreGivesLessOrTakesMoreItself() {
        Station bore = bore(OptionalDouble.of(101), OptionalDouble.empty(), Use.FREE_FLOWING);
        assertEquals(
                "gives 1.5 L/s instead of 2.0, 25 % less",
                meaning(run(bore, 110, 101, 2, NaN), run(bore, 108, 101, 1.5, NaN)));
        assertEquals(
                "gives 8.0 L/s instead of 2.0, which is part of the cause",
                meaning(run(bore, 110, 101, 2, NaN), run(bore, 108, 101, 8, NaN)));
    }

    @Test
    void aPumpStandsLessDeepInWater() {
        Station known = bore(OptionalDouble.empty(), OptionalDouble.of(60), Use.PUMPED);
        assertEquals(
                "water stands 3.0 m above the pump intake instead of 7.5 m",
                meaning(run(known, 70, 67.5, 5, 5), run(known, 66, 63, 5, 5)));
        assertEquals(
                "water falls to the pump intake on 2028-05-18, in the first run not;"
                        + " gives 4.0 L/s instead of 5.0, 20 % less; water stands 1.0 m below the pump intake instead of 7.5 m above",
                meaning(run(known, 70, 67.5, 5, 5), run(known, 70, 67.5, 66, 59, 4, 5)));
        Station unknown = bore(OptionalDouble.empty(), OptionalDouble.empty(), Use.PUMPED);
        assertEquals(
                "takes 2.0 L/s more itself, which is part of the cause; water stands 4.5 m lower in the bore and must be lifted"
                        + " that much more",
                meaning(run(unknown, 70, 67.5, 5, 5), run(unknown, 66, 63, 7, 7)));
    }

    /** Where head is lower the level in a bore may still be higher: it takes less in the second run. */
    @Test
    void aLevelThatIsHigherIsSaidToBe() {
        Station unknown = bore(OptionalDouble.empty(), OptionalDouble.empty(), Use.PUMPED);
        assertEquals(
                "gives 2.0 L/s instead of 5.0, 60 % less; water stands 0.8 m higher in the bore and must be lifted that much"
                        + " less",
                meaning(run(unknown, 70, 62, 5, 5), run(unknown, 66, 62.8, 2, 2)));
    }

    /**
     * Water of 60 degC has a density of 983.2 kg/m3 and water of 20 degC 998.2 (common tables of water, from memory), so 151 m of
     * it from the screen to the outlet weigh as much as 148.7 m of cold water: it flows from a head of 98.7 m on.
     */
    @Test
    void aHotBoreFlowsFromALowerHead() {
        Station.BoreSite shut = SmallField.bore(
                "place", 500_200, 6_900_250, OptionalDouble.of(101), OptionalDouble.empty(), false, Use.IDLE);
        WaterColumn hot = WaterColumn.ofOneTemperature(60, -50);
        Station bore = new Station.BoreSite(
                shut.name(),
                shut.x(),
                shut.y(),
                shut.groundLevel(),
                shut.outletLevel(),
                shut.pumpIntake(),
                shut.lowestLevel(),
                shut.aquiferTop(),
                shut.screenRadius(),
                shut.wellLoss(),
                Optional.of(hot),
                shut.holder(),
                shut.proposed(),
                shut.use(),
                shut.operation());
        assertEquals(-50 + 151 * 983.2 / 998.2, bore.outletHead().getAsDouble(), 0.03);
        assertEquals(
                "head stands 1.3 m above its outlet instead of 6.3 m",
                meaning(run(bore, 105, 105, 0, NaN), run(bore, 100, 100, 0, NaN)));
    }

    @Test
    void placesThatGiveNothingHaveALowerHead() {
        Station shut = bore(OptionalDouble.of(101), OptionalDouble.empty(), Use.IDLE);
        assertEquals(
                "stops flowing by itself on 2028-04-18, in the first run not;"
                        + " head stands 1.0 m below its outlet instead of 4.0 m above",
                meaning(run(shut, 105, 105, 0, NaN), run(shut, 105, 105, 100, 100, 0, NaN)));
        Station observed = bore(OptionalDouble.empty(), OptionalDouble.empty(), Use.IDLE);
        assertEquals(
                "only its head is lower: it is not in use",
                meaning(run(observed, 105, 105, 0, NaN), run(observed, 100, 100, 0, NaN)));
        Station point = new Station.ProtectedPoint("place", 500_200, 6_900_250, 100, OptionalDouble.empty());
        assertEquals(
                "only its head is lower: no water is taken here",
                meaning(run(point, 105, NaN, NaN, NaN), run(point, 100, NaN, NaN, NaN)));
    }
}
