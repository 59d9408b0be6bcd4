package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import org.headfall.scenarios.recording.RecordSink;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.grid.RectilinearGrid;
import org.jspecify.annotations.Nullable;
import ucar.ma2.Array;
import ucar.ma2.DataType;
import ucar.nc2.Attribute;
import ucar.nc2.Variable;

/**
 * Writes {@code heads.nc}: heads and drawdown of the grid over time, what the aquifer is, and the water balance of each
 * period between records. The file comes into being with the first record, which is that of the start; each record is
 * on disk when {@link #grid} returns. Drawdown is head of the first record less head, computed before rounding.
 */
public final class HeadsFile implements RecordSink, AutoCloseable {

    private static final String SUMMARY =
            "Hydraulic head and drawdown of a confined aquifer on a rectilinear grid, with its water balance.";

    private final Path target;
    private final RunDescription description;
    private final Instant now;
    private final float[] buffer;
    private final int[] shape;
    private @Nullable Layout layout;
    private double[] startHead = new double[0];
    private double previousDay;
    private int records;

    /**
     * File of a run.
     *
     * @param target final path; while it grows it is called {@code target.part}
     * @param description the run
     * @param now time of writing, for its history
     */
    public HeadsFile(Path target, RunDescription description, Instant now) {
        this.target = target;
        this.description = description;
        this.now = now;
        RectilinearGrid grid = description.grid();
        buffer = new float[grid.cellCount()];
        shape = new int[] {1, grid.rows(), grid.columns()};
    }

    /** The open file and its variables. */
    private record Layout(
            GrowingFile file,
            Variable time,
            Variable timeBounds,
            Variable head,
            Variable drawdown,
            Variable notConfinedSince,
            BalanceVariables balance) {}

    @Override
    public void grid(double day, double[] head, WaterBalance balance, double[] notConfinedSince) throws IOException {
        Layout to = layout;
        if (to == null) {
            to = begin(day, head, balance);
            layout = to;
        }
        int[] origin = {records, 0, 0};
        for (int cell = 0; cell < head.length; cell++) {
            buffer[cell] = active(cell) ? (float) head[cell] : GrowingFile.FLOAT_FILL;
        }
        to.file.write(to.head, origin, Array.factory(DataType.FLOAT, shape, buffer));
        for (int cell = 0; cell < head.length; cell++) {
            buffer[cell] = active(cell) ? (float) (startHead[cell] - head[cell]) : GrowingFile.FLOAT_FILL;
        }
        to.file.write(to.drawdown, origin, Array.factory(DataType.FLOAT, shape, buffer));
        writeNotConfined(to, notConfinedSince);
        to.balance.write(to.file, records, balance);
        to.file.writeDoubles(to.timeBounds, new int[] {records, 0}, new int[] {1, 2}, new double[] {previousDay, day});
        to.file.writeDoubles(to.time, new int[] {records}, new int[] {1}, new double[] {day});
        to.file.endRecord();
        previousDay = day;
        records++;
    }

    private boolean active(int cell) {
        return description.aquifer().active()[cell];
    }

    private Layout begin(double day, double[] head, WaterBalance balance) throws IOException {
        startHead = head.clone();
        previousDay = day;
        GrowingFile file = new GrowingFile(target);
        file.globals(GlobalAttributes.of(description, SUMMARY, now));
        file.unlimited("time");
        Variable time = CommonVariables.time(file, description.calendar());
        time.addAttribute(new Attribute("bounds", "time_bnds"));
        GridVariables grid = GridVariables.define(file, description);
        Variable timeBounds = file.variable("time_bnds", DataType.DOUBLE, "time nv");
        CommonVariables.gridMapping(file, description);
        Variable headVariable = field(file, "hydraulic_head", "hydraulic head above " + description.datum());
        Variable drawdown = field(file, "drawdown", "drawdown: hydraulic head at the start of the run less head");
        Variable notConfined = notConfinedSince(file);
        BalanceVariables balanceVariables = BalanceVariables.define(file, balance.terms());
        file.create();
        grid.write(file, description);
        balanceVariables.writeTerms(file, balance.terms());
        return new Layout(file, time, timeBounds, headVariable, drawdown, notConfined, balanceVariables);
    }

    private Variable field(GrowingFile file, String name, String longName) {
        Variable field = file.variable(
                name,
                DataType.FLOAT,
                "time y x",
                "long_name",
                longName,
                "units",
                "m",
                "cell_methods",
                "time: point area: mean");
        field.addAttribute(new Attribute("_FillValue", GrowingFile.FLOAT_FILL));
        CommonVariables.placed(field, description);
        return field;
    }

    private Variable notConfinedSince(GrowingFile file) {
        Variable since = file.variable(
                "not_confined_since",
                DataType.DOUBLE,
                "y x",
                "long_name",
                "first recorded time with head below the aquifer top",
                "units",
                CommonVariables.timeUnits(description.calendar()),
                "calendar",
                "standard");
        since.addAttribute(new Attribute("_FillValue", GrowingFile.DOUBLE_FILL));
        CommonVariables.placed(since, description);
        return since;
    }

    private void writeNotConfined(Layout to, double[] since) throws IOException {
        double[] values = new double[since.length];
        for (int cell = 0; cell < since.length; cell++) {
            values[cell] = Double.isNaN(since[cell]) ? GrowingFile.DOUBLE_FILL : since[cell];
        }
        to.file.writeDoubles(to.notConfinedSince, new int[] {0, 0}, new int[] {shape[1], shape[2]}, values);
    }

    /**
     * Closes the file and gives it its final name.
     *
     * @throws IOException if that fails
     * @throws IllegalStateException if there is no record
     */
    public void complete() throws IOException {
        if (layout == null) {
            throw new IllegalStateException("heads.nc has no record");
        }
        layout.file.complete();
    }

    /** Closes the file; unless completed it keeps the name {@code heads.nc.part}. */
    @Override
    public void close() throws IOException {
        if (layout != null) {
            layout.file.close();
        }
    }

    /** Expected size of the file (bytes). */
    public static long expectedSize(Aquifer aquifer, int records) {
        long fixedBytesPerCell = 60;
        long bytesPerCellAndRecord = 8;
        return aquifer.grid().cellCount() * (fixedBytesPerCell + records * bytesPerCellAndRecord);
    }
}
