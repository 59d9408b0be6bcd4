package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import org.headfall.scenarios.recording.RecordSink;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationValues;
import ucar.ma2.DataType;
import ucar.nc2.Attribute;
import ucar.nc2.Variable;

/**
 * Writes {@code bores.nc}: series of bores, springs and protected points as CF time series (discrete sampling
 * geometry), one station each. Each record is on disk when {@link #stations} returns. Drawdown is head of the first
 * record, which is that of the start, less head.
 */
public final class BoresFile implements RecordSink, AutoCloseable {

    private static final String SUMMARY =
            "Head, water level and discharge of bores, springs and protected points of a confined aquifer.";

    private final GrowingFile file;
    private final Variable time;
    private final Variable head;
    private final Variable drawdown;
    private final Variable level;
    private final Variable discharge;
    private final Variable wantedDischarge;
    private double[] startHead = new double[0];
    private int records;

    /**
     * Opens the file and writes what does not change with time.
     *
     * @param target final path; while it grows it is called {@code target.part}
     * @param description the run
     * @param now time of writing, for its history
     * @throws IOException if the file cannot be written
     */
    public BoresFile(Path target, RunDescription description, Instant now) throws IOException {
        file = new GrowingFile(target);
        file.globals(GlobalAttributes.of(description, SUMMARY, now));
        file.global("featureType", "timeSeries");
        file.unlimited("time");
        time = CommonVariables.time(file, description.calendar());
        StationVariables stations = StationVariables.define(file, description);
        CommonVariables.gridMapping(file, description);
        head = series(
                description,
                "hydraulic_head",
                "hydraulic head (of a bore: at its wall) above " + description.datum(),
                "m");
        drawdown = series(description, "drawdown", "drawdown: hydraulic head at the start of the run less head", "m");
        level = series(description, "water_level_in_bore", "water level in the bore above " + description.datum(), "m");
        discharge = series(description, "discharge", "discharge of a bore or spring", "m3 d-1");
        wantedDischarge = series(description, "wanted_discharge", "discharge asked of a bore", "m3 d-1");
        file.create();
        stations.write(file, description);
        file.endRecord();
    }

    private Variable series(RunDescription description, String name, String longName, String units) {
        Variable series = file.variable(
                name,
                DataType.DOUBLE,
                "time station",
                "long_name",
                longName,
                "units",
                units,
                "cell_methods",
                "time: point",
                "coordinates",
                StationVariables.coordinates(description));
        series.addAttribute(new Attribute("_FillValue", GrowingFile.DOUBLE_FILL));
        CommonVariables.placed(series, description);
        return series;
    }

    @Override
    public void stations(StationValues values) throws IOException {
        if (records == 0) {
            startHead = values.head().clone();
        }
        double[] fall = new double[startHead.length];
        for (int i = 0; i < fall.length; i++) {
            fall[i] = startHead[i] - values.head()[i];
        }
        row(head, values.head());
        row(drawdown, fall);
        row(level, values.levelInBore());
        row(discharge, values.discharge());
        row(wantedDischarge, values.wantedDischarge());
        file.writeDoubles(time, new int[] {records}, new int[] {1}, new double[] {values.day()});
        file.endRecord();
        records++;
    }

    private void row(Variable variable, double[] values) throws IOException {
        double[] filled = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            filled[i] = Double.isNaN(values[i]) ? GrowingFile.DOUBLE_FILL : values[i];
        }
        file.writeDoubles(variable, new int[] {records, 0}, new int[] {1, filled.length}, filled);
    }

    /**
     * Closes the file and gives it its final name.
     *
     * @throws IOException if that fails
     */
    public void complete() throws IOException {
        file.complete();
    }

    /** Closes the file; unless completed it keeps the name {@code bores.nc.part}. */
    @Override
    public void close() throws IOException {
        file.close();
    }
}
