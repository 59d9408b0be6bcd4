package org.headfall.scenarios.recording;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.reference.CoordinateReference;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.bore.WaterColumn;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.simulation.Snapshot;

/** An invented field of 4 x 3 uneven cells with two bores, a spring and a protected point, and made-up snapshots. */
public final class SmallField {

    /** Cell outside the aquifer. */
    public static final int INACTIVE = 3;

    private SmallField() {}

    /** Grid with edges 0, 100, 250, 450, 1000 m eastward from 500 000 m and 0, 200, 300, 700 m from 6 900 000 m. */
    public static RectilinearGrid grid() {
        return new RectilinearGrid(
                Axis.ofEdges(500_000, 500_100, 500_250, 500_450, 501_000),
                Axis.ofEdges(6_900_000, 6_900_200, 6_900_300, 6_900_700));
    }

    public static RunDescription description() {
        return description(stations());
    }

    /** A run on a local grid under level ground at 100 m, without a bed, to be reported after one and two years. */
    public static RunDescription plainRun(
            String title, RunCalendar calendar, double endDay, Aquifer aquifer, List<Station> stations) {
        return new RunDescription(
                title,
                "",
                "an invented datum",
                Optional.empty(),
                calendar,
                endDay,
                new Provenance("Headfall test", "title: " + title + "\n", List.of()),
                aquifer,
                Optional.empty(),
                filled(aquifer.grid().cellCount(), 100),
                stations,
                List.of(ReportDate.afterYears(calendar, 1), ReportDate.afterYears(calendar, 2)),
                List.of(),
                List.of());
    }

    public static RunDescription description(List<Station> stations) {
        RunCalendar calendar = new RunCalendar(LocalDateTime.of(2027, 7, 1, 0, 0));
        int cells = grid().cellCount();
        boolean[] active = new boolean[cells];
        Arrays.fill(active, true);
        active[INACTIVE] = false;
        return new RunDescription(
                "Invented \"field\" of Gidgee Flat",
                "What does <Gidgee> lose?",
                "an invented datum, é",
                Optional.of(new MapReference(CoordinateReference.parse("EPSG:7854"))),
                calendar,
                calendar.yearsAfter(0, 10),
                new Provenance(
                        "Headfall 0.1.0",
                        "title: Gidgee\nbores: []\n",
                        List.of(
                                new InputFile("gidgee.yaml", "0".repeat(64)),
                                new InputFile("bores, old.csv", "a1".repeat(32)))),
                new Aquifer(
                        grid(),
                        filled(cells, 200),
                        filled(cells, 100),
                        filled(cells, 2e-4),
                        filled(cells, -50),
                        filled(cells, -120),
                        active),
                Optional.of(new SealingBed(
                        filled(cells, 80), filled(cells, 1e-6), filled(cells, 3e-6), filled(cells, 150))),
                filled(cells, 100),
                stations,
                List.of(ReportDate.afterYears(calendar, 1), ReportDate.afterYears(calendar, 10)),
                List.of(new Measurement("Lignum Spring", 400, 119.25, "gauge 20.0 kPa at 117.21 m")),
                List.of("Ground is level."));
    }

    private static List<Station> stations() {
        return List.of(
                bore("Bore, \"north\"", 500_160, 6_900_250, OptionalDouble.of(101), OptionalDouble.of(40), false),
                bore(
                        "Brücke",
                        500_300,
                        6_900_100,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        true,
                        Station.BoreSite.Use.IDLE),
                new Station.SpringSite("Lignum Spring", 500_040, 6_900_500, 99, 98, 25),
                new Station.ProtectedPoint("Fence corner", 500_500, 6_900_400, 100, OptionalDouble.of(100.5)));
    }

    public static Station.BoreSite bore(
            String name, double x, double y, OptionalDouble outlet, OptionalDouble intake, boolean proposed) {
        return bore(name, x, y, outlet, intake, proposed, Station.BoreSite.Use.PUMPED);
    }

    public static Station.BoreSite bore(
            String name,
            double x,
            double y,
            OptionalDouble outlet,
            OptionalDouble intake,
            boolean proposed,
            Station.BoreSite.Use use) {
        return new Station.BoreSite(
                name,
                x,
                y,
                100,
                outlet,
                intake,
                intake,
                -50,
                0.1,
                new WellLoss(1e-4, 1e-7),
                Optional.of(WaterColumn.ofOneTemperature(60, -100)),
                "Shire, of \"G\"",
                proposed,
                use,
                "in words");
    }

    public static double[] filled(int length, double value) {
        double[] values = new double[length];
        Arrays.fill(values, value);
        return values;
    }

    /** Snapshot in which every head lies {@code fall} below 120 m plus a tenth of the cell's number. */
    public static Snapshot snapshot(double day, double previousDay, double fall) {
        double[] head = new double[grid().cellCount()];
        Arrays.setAll(head, cell -> 120 + 0.1 * cell - fall);
        return new Snapshot(
                day,
                head,
                new double[] {119 - fall, 118 - fall},
                new double[] {118 - fall, 117 - fall},
                new double[] {864, 432},
                new double[] {864, 500},
                new double[] {20},
                new double[] {120.8 - fall},
                new double[head.length],
                new WaterBalance(
                        previousDay,
                        day,
                        List.of(
                                new WaterBalance.Term("storage", WaterBalance.Kind.STORAGE, 10 * day, 0),
                                new WaterBalance.Term("leakage", WaterBalance.Kind.LEAKAGE, 2, 1),
                                new WaterBalance.Term("Lignum Spring", WaterBalance.Kind.SPRING, 0, 4),
                                new WaterBalance.Term("Brücke", WaterBalance.Kind.BORE, 0, 7)),
                        1e-9));
    }
}
