package org.headfall.scenarios.recording;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.nearfield.CentreHeads;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.simulation.SimulationObserver;
import org.headfall.solver.simulation.Snapshot;

/**
 * Gathers the recording of a run while it goes on and hands each record to the sinks. The first snapshot must be that
 * of the start; give the state as it was operated before the run begins, else a bore that starts on day 0 has its own
 * drawdown counted into what was there before. Used by one thread.
 */
public final class Recorder implements SimulationObserver {

    private final RunDescription description;
    private final RecordPlan plan;
    private final List<RecordSink> sinks;
    private final List<ObservedHead> points;
    private final CentreHeads centres;
    private final List<StationValues> values = new ArrayList<>();
    private final List<WaterBalance> balances = new ArrayList<>();
    private final List<HeadGrid> grids = new ArrayList<>();
    private final double[] notConfinedSince;
    private final BalanceSum balanceSum = new BalanceSum(0);

    /**
     * Recorder of a run.
     *
     * @param description the run
     * @param boundaries what passes through the rim of its aquifer
     * @param plan what is recorded when
     * @param sinks are handed each record, in this order
     * @throws IllegalArgumentException if a protected point lies outside the active aquifer
     */
    public Recorder(
            RunDescription description, List<OuterBoundary> boundaries, RecordPlan plan, List<RecordSink> sinks) {
        this.description = description;
        this.plan = plan;
        this.sinks = List.copyOf(sinks);
        List<NearField> bores = PointHeads.nearFields(description, boundaries);
        points = PointHeads.beside(description, bores);
        centres = new CentreHeads(bores);
        notConfinedSince = new double[description.grid().cellCount()];
        Arrays.fill(notConfinedSince, Double.NaN);
    }

    /**
     * Takes a snapshot; a day that was recorded already is passed over.
     *
     * @param snapshot state of the field
     * @throws UncheckedIOException if a sink fails
     */
    @Override
    public void recorded(Snapshot snapshot) {
        double day = snapshot.day();
        if (isRecorded(day)) {
            return;
        }
        stations(stationValues(snapshot));
        grid(day, snapshot.head(), snapshot.balance());
    }

    private boolean isRecorded(double day) {
        return !values.isEmpty() && values.get(values.size() - 1).day() >= day;
    }

    /**
     * Takes values of the stations on a day, of a run that knows them without the grid; a day that was recorded already is
     * passed over.
     *
     * @param record the values
     * @throws UncheckedIOException if a sink fails
     */
    public void stations(StationValues record) {
        if (isRecorded(record.day())) {
            return;
        }
        values.add(record);
        try {
            for (RecordSink sink : sinks) {
                sink.stations(record);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Takes heads of the grid on a day whose stations have been recorded, and keeps those at the centres of cells.
     *
     * @param day days since the start
     * @param carried head of each cell as the solver carries it (m above datum)
     * @param balance water that passed since the day before
     * @throws UncheckedIOException if a sink fails
     */
    public void grid(double day, double[] carried, WaterBalance balance) {
        double[] head = centres.differ() ? centres.of(carried, discharges(day)) : carried;
        markNotConfined(day, head);
        balanceSum.add(balance);
        if (Arrays.binarySearch(plan.gridDays(), day) >= 0) {
            try {
                recordGrid(day, head);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    /**
     * Cells that are confined so far, and in which head stood lower than some height above the top of the aquifer on one of
     * two days: in between it may have fallen below it.
     *
     * @param before head of each cell on one day (m above datum)
     * @param after head of each cell on the other (m above datum)
     * @param height the height (m)
     * @return the cells
     */
    public int[] cellsNearTop(double[] before, double[] after, double height) {
        Aquifer aquifer = description.aquifer();
        return IntStream.range(0, before.length)
                .filter(cell -> aquifer.active()[cell]
                        && Double.isNaN(notConfinedSince[cell])
                        && Math.min(before[cell], after[cell]) < aquifer.top()[cell] + height)
                .toArray();
    }

    /**
     * Takes heads of some cells on a recorded day without a grid.
     *
     * @param day days since the start
     * @param cells the cells
     * @param carried head of each of these cells as the solver carries it (m above datum)
     */
    public void confinement(double day, int[] cells, double[] carried) {
        double[] head = centres.in(cells, carried, discharges(day));
        for (int i = 0; i < cells.length; i++) {
            if (head[i] < description.aquifer().top()[cells[i]] && Double.isNaN(notConfinedSince[cells[i]])) {
                notConfinedSince[cells[i]] = day;
            }
        }
    }

    /** Discharge of each station on a recorded day, the bores first (m³/d). */
    private double[] discharges(double day) {
        for (int record = values.size() - 1; record >= 0; record--) {
            if (values.get(record).day() == day) {
                return values.get(record).discharge();
            }
        }
        throw new IllegalStateException("the stations on day " + day + " have not been recorded");
    }

    private void recordGrid(double day, double[] head) throws IOException {
        WaterBalance balance = balanceSum.close(day);
        if (balance.toDay() > balance.fromDay()) {
            balances.add(balance);
        }
        if (Arrays.binarySearch(plan.keptDays(), day) >= 0) {
            grids.add(new HeadGrid(day, activeOnly(head)));
        }
        for (RecordSink sink : sinks) {
            sink.grid(day, head, balance, notConfinedSince);
        }
    }

    private double[] activeOnly(double[] head) {
        double[] copy = head.clone();
        boolean[] active = description.aquifer().active();
        for (int cell = 0; cell < copy.length; cell++) {
            if (!active[cell]) {
                copy[cell] = Double.NaN;
            }
        }
        return copy;
    }

    private void markNotConfined(double day, double[] head) {
        Aquifer aquifer = description.aquifer();
        for (int cell = 0; cell < head.length; cell++) {
            if (aquifer.active()[cell] && head[cell] < aquifer.top()[cell] && Double.isNaN(notConfinedSince[cell])) {
                notConfinedSince[cell] = day;
            }
        }
    }

    private StationValues stationValues(Snapshot snapshot) {
        int bores = snapshot.boreWallHead().length;
        int springs = snapshot.springHead().length;
        int stations = bores + springs + points.size();
        double[] head = Arrays.copyOf(snapshot.boreWallHead(), stations);
        double[] discharge = padded(snapshot.boreRate(), stations);
        System.arraycopy(snapshot.springHead(), 0, head, bores, springs);
        System.arraycopy(snapshot.springDischarge(), 0, discharge, bores, springs);
        for (int i = 0; i < points.size(); i++) {
            head[bores + springs + i] = points.get(i).at(snapshot.head(), snapshot.boreRate());
        }
        return new StationValues(
                snapshot.day(),
                head,
                padded(snapshot.boreLevel(), stations),
                discharge,
                padded(snapshot.boreWantedRate(), stations));
    }

    private static double[] padded(double[] values, int length) {
        double[] padded = Arrays.copyOf(values, length);
        Arrays.fill(padded, values.length, length, Double.NaN);
        return padded;
    }

    /**
     * What has been recorded so far.
     *
     * @throws IllegalStateException if nothing has been recorded
     */
    public Recording recording() {
        if (values.isEmpty()) {
            throw new IllegalStateException("nothing has been recorded yet");
        }
        double[] days = values.stream().mapToDouble(StationValues::day).toArray();
        List<StationSeries> series = new ArrayList<>();
        for (int i = 0; i < description.stations().size(); i++) {
            series.add(seriesOf(i, days));
        }
        return new Recording(days, series, balances, grids, notConfinedSince.clone());
    }

    private StationSeries seriesOf(int station, double[] days) {
        return new StationSeries(
                days,
                values.stream().mapToDouble(v -> v.head()[station]).toArray(),
                values.stream().mapToDouble(v -> v.levelInBore()[station]).toArray(),
                values.stream().mapToDouble(v -> v.discharge()[station]).toArray(),
                values.stream().mapToDouble(v -> v.wantedDischarge()[station]).toArray());
    }
}
