package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;

/** Heads of the whole grid at every day on which {@code heads.nc} holds them, read one day at a time. */
public final class HeadRecords implements AutoCloseable {

    private final RecordedFile file;
    private final double[] days;

    /**
     * Opens the file of a results folder.
     *
     * @param folder the folder; its {@code heads.nc} must be complete
     * @throws IOException if the file is missing or damaged
     */
    public HeadRecords(Path folder) throws IOException {
        file = new RecordedFile(folder.resolve("heads.nc"));
        days = file.doubles("time");
    }

    /** Recorded days (d since the start), increasing. */
    public double[] days() {
        return days.clone();
    }

    /**
     * Heads of a day.
     *
     * @param record place of the day among {@link #days()}
     * @return head of each cell (m above datum), in the order of the grid; NaN where there is no aquifer
     * @throws IOException if it cannot be read
     */
    public double[] head(int record) throws IOException {
        return file.record("hydraulic_head", record);
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
