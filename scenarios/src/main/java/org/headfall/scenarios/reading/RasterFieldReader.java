package org.headfall.scenarios.reading;

import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.raster.Raster;
import org.headfall.scenarios.raster.RasterCoverage;
import org.headfall.scenarios.raster.RasterFile;
import org.headfall.scenarios.raster.RasterLimits;
import org.headfall.scenarios.raster.RasterReader;
import org.headfall.scenarios.scenario.CoordinateSystem;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.scenario.SpatialFile;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.headfall.solver.wording.PlainNumber;
import org.jspecify.annotations.Nullable;

/**
 * Reads a field from a raster, converts it and checks its values, its coordinate reference system and that it covers
 * the grid. The unit is that of the document, else that of the file, else metres for levels and lengths.
 */
final class RasterFieldReader {
    private final Inputs inputs;
    private final MapArea area;

    RasterFieldReader(Inputs inputs, MapArea area) {
        this.inputs = inputs;
        this.area = area;
    }

    @Nullable
    Field read(Section section, SpatialFile file, Dimension dimension, AllowedRange range) {
        @Nullable String layer = section.optionalText("layer");
        @Nullable String typedUnit = section.optionalText("unit");
        try {
            RasterFile read = new RasterReader(RasterLimits.DEFAULT).read(file.path(), layer);
            double factor = MapUnit.factor(
                    section, "raster", typedUnit == null ? read.unit().orElse(null) : typedUnit, dimension);
            if (Double.isNaN(factor)) {
                return null;
            }
            Raster raster = factor == 1 ? read.raster() : read.raster().map(value -> value * factor);
            checkCoordinates(file, read);
            checkCover(file, raster);
            checkValues(file, raster, dimension, range);
            return new Field.FromRaster(file, raster);
        } catch (SpatialFormatException wrong) {
            inputs.report(file, wrong);
            return null;
        }
    }

    private void checkCoordinates(SpatialFile file, RasterFile read) {
        if (area.coordinates() instanceof CoordinateSystem.Projected projected
                && read.epsgCode().isPresent()
                && read.epsgCode().getAsInt() != projected.code()) {
            report(
                    file,
                    ProblemKind.COORDINATE_SYSTEM,
                    "EPSG:" + read.epsgCode().getAsInt(),
                    projected.toString());
        }
    }

    private void checkCover(SpatialFile file, Raster raster) {
        if (area.needed() == null) {
            return;
        }
        RasterCoverage cover = RasterCoverage.of(raster, area.needed());
        boolean covers = cover.gaps().isEmpty() && (cover.holes() == 0 || area.holesAllowed());
        if (!covers) {
            report(file, ProblemKind.RASTER_COVER, cover.missing(), "values in all of " + area.needed() + " (m)");
        }
    }

    private void checkValues(SpatialFile file, Raster raster, Dimension dimension, AllowedRange range) {
        String first = "";
        int wrong = 0;
        for (int row = 0; row < raster.rows(); row++) {
            for (int column = 0; column < raster.columns(); column++) {
                double value = raster.value(column, row);
                if (!Double.isNaN(value) && !range.contains(value) && wrong++ == 0) {
                    first = PlainNumber.of(value) + " " + dimension.unit() + " at x "
                            + PlainNumber.of(raster.centreX(column)) + ", y " + PlainNumber.of(raster.centreY(row));
                }
            }
        }
        if (wrong > 0) {
            String found = wrong == 1 ? first : first + ", and " + (wrong - 1) + " more such values";
            report(file, ProblemKind.OUT_OF_RANGE, found, range.describe(dimension.unit()));
        }
    }

    private void report(SpatialFile file, ProblemKind kind, String found, String allowed) {
        inputs.problems().add(file.place(), file.name(), Finding.of(kind, found, allowed));
    }
}
