package org.headfall.scenarios.rerun;

import java.io.IOException;
import java.nio.file.Path;
import org.headfall.scenarios.raster.Raster;
import org.headfall.scenarios.raster.RasterLimits;
import org.headfall.scenarios.raster.RasterReader;

/** Compares two GeoTIFF pixel by pixel: how they are packed depends on the computer. */
final class RasterComparison {

    private final Tally tally = new Tally();

    FileComparison of(Path before, Path now) throws IOException {
        RasterReader reader = new RasterReader(RasterLimits.DEFAULT);
        Raster kept = UnreadableException.ifNotRead(() -> reader.read(before).raster());
        compare(kept, reader.read(now).raster());
        return tally.of(String.valueOf(before.getFileName()));
    }

    private void compare(Raster before, Raster now) {
        if (!before.extent().equals(now.extent()) || before.columns() != now.columns() || before.rows() != now.rows()) {
            tally.differs("extent and size", before.toString(), now.toString());
            return;
        }
        for (int row = 0; row < before.rows(); row++) {
            for (int column = 0; column < before.columns(); column++) {
                double x = before.centreX(column);
                double y = before.centreY(row);
                tally.numbers(before.value(column, row), now.value(column, row), () -> "at x " + x + ", y " + y);
            }
        }
    }
}
