package org.headfall.scenarios.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.ReportDate;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.NeededHead;
import org.headfall.solver.bore.NeededLevel;
import org.headfall.solver.bore.Operation;

/**
 * Makes the interference tables of a run from drawdown split by cause.
 *
 * <p>Loss of yield of a bore whose discharge follows head: its own drawdown is taken as proportional to its discharge,
 * {@code s = R Q} with R as computed at the date (or the last report date on which it gave water). Without neighbours
 * it would find the head {@code h + s + n}, h being head at its wall and n the drawdown due to neighbours, and give
 * the Q' for which {@code h + s + n - R Q'} is the head that its rule needs at its wall: outlet or lowest level, friction
 * and well loss.
 */
public final class InterferenceAnalysis {

    /** Records hold the state before a change on the same day, so the operation must be that of the moment before. */
    private static final double MOMENT = 1e-6;

    private static final double NOTHING = 1e-9;

    private final RunDescription description;
    private final Recording recording;
    private final List<Bore> bores;

    /**
     * Analysis of a run.
     *
     * @param description the run
     * @param recording what it recorded
     * @param bores bores of the flow problem, in the order of the stations
     */
    public InterferenceAnalysis(RunDescription description, Recording recording, List<Bore> bores) {
        this.description = description;
        this.recording = recording;
        this.bores = List.copyOf(bores);
    }

    /**
     * One table for each report date among the days of the split.
     *
     * @param split drawdown split by cause
     * @return the tables, in order of time
     */
    public List<InterferenceTable> tables(InterferenceDrawdown split) {
        List<InterferenceTable> tables = new ArrayList<>();
        double[] ownResponse = new double[bores.size()];
        for (ReportDate date : description.reportDates()) {
            for (int k = 0; k < split.days().length; k++) {
                if (Math.abs(split.days()[k] - date.day()) < MOMENT) {
                    tables.add(table(date, split.drawdown()[k], split.remainder()[k], ownResponse));
                }
            }
        }
        return tables;
    }

    private InterferenceTable table(ReportDate date, double[][] drawdown, double[] remainder, double[] ownResponse) {
        List<InterferenceTable.BoreShare> shares = new ArrayList<>();
        for (int bore = 0; bore < bores.size(); bore++) {
            shares.add(share(bore, date.day(), drawdown[bore], ownResponse));
        }
        List<String> names = description.stations().stream()
                .limit(drawdown.length)
                .map(Station::name)
                .toList();
        return new InterferenceTable(date.label(), date.day(), names, drawdown, remainder, shares, fieldLoss(shares));
    }

    private InterferenceTable.BoreShare share(int bore, double day, double[] row, double[] ownResponse) {
        StationSeries series = recording.series().get(bore);
        double own = row[bore];
        double neighbours = sum(row, 0, bores.size()) - own;
        double rate = series.dischargeAt(day);
        if (rate > NOTHING && own > 0) {
            ownResponse[bore] = own / rate;
        }
        Operation operation = bores.get(bore).operationAt(day - MOMENT);
        boolean pumped = !(operation instanceof Operation.FreeFlow) && rate > NOTHING;
        return new InterferenceTable.BoreShare(
                bores.get(bore).name(),
                own,
                neighbours,
                sum(row, bores.size(), row.length),
                series.head()[0] - series.headAt(day),
                rate,
                pumped ? OptionalDouble.of(neighbours) : OptionalDouble.empty(),
                rateAlone(bore, day, operation, own + neighbours, ownResponse[bore]));
    }

    /** Discharge without neighbours (m³/d) of a bore whose discharge follows head, if its own response is known. */
    private OptionalDouble rateAlone(int bore, double day, Operation operation, double byBores, double ownResponse) {
        StationSeries series = recording.series().get(bore);
        double undisturbed = series.headAt(day) + byBores;
        if (ownResponse <= 0) {
            return OptionalDouble.empty();
        }
        if (operation instanceof Operation.FreeFlow) {
            return discharge(bore, operation, undisturbed, ownResponse, Double.POSITIVE_INFINITY);
        }
        if (operation instanceof Operation.PumpedByCurve pumped) {
            double most = pumped.curve().largestFlow();
            return discharge(bore, operation, undisturbed, ownResponse, most);
        }
        double wanted = StationSeries.interpolate(series.days(), series.wantedDischarge(), day);
        return wanted > series.dischargeAt(day) * (1 + MOMENT)
                ? discharge(bore, operation, undisturbed, ownResponse, wanted)
                : OptionalDouble.empty();
    }

    /** Discharge by the rule of a bore, if it has one, where head at its wall falls evenly with it. */
    private OptionalDouble discharge(
            int bore, Operation operation, double undisturbed, double ownResponse, double most) {
        Bore ruled = bores.get(bore);
        Aquifer aquifer = description.aquifer();
        int cell = aquifer.grid().locate(ruled.x(), ruled.y());
        double transmissivity = aquifer.effectiveTransmissivity(cell);
        Optional<NeededLevel> level = operation.neededLevel();
        return level.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(new NeededHead(level.get(), ruled.lossIn(transmissivity), ruled.column())
                        .discharge(undisturbed, ownResponse, most));
    }

    private static InterferenceTable.FieldLoss fieldLoss(List<InterferenceTable.BoreShare> shares) {
        double pumped = 0;
        double lift = 0;
        double lost = 0;
        double alone = 0;
        for (InterferenceTable.BoreShare share : shares) {
            if (share.extraLift().isPresent()) {
                pumped += share.rate();
                lift += share.rate() * share.extraLift().getAsDouble();
            }
            lost += share.lossOfYield().orElse(0);
            alone += share.rateAlone().orElse(0);
        }
        return new InterferenceTable.FieldLoss(pumped, pumped > 0 ? lift / pumped : 0, lost, alone);
    }

    private static double sum(double[] values, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += values[i];
        }
        return sum;
    }
}
