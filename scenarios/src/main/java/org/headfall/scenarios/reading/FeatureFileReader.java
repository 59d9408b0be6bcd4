package org.headfall.scenarios.reading;

import java.util.List;
import java.util.OptionalInt;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.scenario.Area;
import org.headfall.scenarios.scenario.CoordinateSystem;
import org.headfall.scenarios.scenario.SpatialFile;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.headfall.scenarios.vector.Feature;
import org.headfall.scenarios.vector.FeatureFile;
import org.headfall.scenarios.vector.GeoJsonReader;
import org.headfall.scenarios.vector.PlacementCheck;
import org.headfall.scenarios.vector.TextPosition;
import org.headfall.scenarios.vector.VectorLimits;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Lineal;
import org.locationtech.jts.geom.Polygonal;

/** Reads the polygons and lines of GeoJSON files and checks that they fit the scenario. */
final class FeatureFileReader {
    private final Inputs inputs;
    private final MapArea area;

    FeatureFileReader(Inputs inputs, MapArea area) {
        this.inputs = inputs;
        this.area = area;
    }

    /** The features, all of them polygons; null after problems have been reported. */
    @Nullable
    List<Feature> polygons(SpatialFile file) {
        return shapes(file, Polygonal.class, "polygons");
    }

    /** The features, all of them lines; null after problems have been reported. */
    @Nullable
    List<Feature> lines(SpatialFile file) {
        return shapes(file, Lineal.class, "lines");
    }

    private @Nullable List<Feature> shapes(SpatialFile file, Class<?> kind, String words) {
        long before = inputs.problems().count();
        try {
            FeatureFile read = new GeoJsonReader(VectorLimits.DEFAULT)
                    .read(file.path(), fault -> inputs.report(file, fault, ProblemKind.GEOMETRY));
            checkReference(file, read);
            if (area.grid() != null) {
                new PlacementCheck(area.grid())
                        .fault(read)
                        .ifPresent(fault -> inputs.report(file, fault, ProblemKind.COORDINATE_SYSTEM));
            }
            read.features().forEach(feature -> requireShape(file, feature, kind, words));
            return inputs.problems().count() == before ? read.features() : null;
        } catch (SpatialFormatException wrong) {
            inputs.report(file, wrong);
            return null;
        }
    }

    /** The polygons as an area; null after problems have been reported. */
    @Nullable
    Area area(@Nullable SpatialFile file) {
        @Nullable List<Feature> features = file == null ? null : polygons(file);
        return file == null || features == null
                ? null
                : new Area(file, features.stream().map(Feature::geometry).toList());
    }

    private void checkReference(SpatialFile file, FeatureFile read) {
        OptionalInt code = read.epsgCode();
        if (read.reference().isPresent()
                && area.coordinates() instanceof CoordinateSystem.Projected projected
                && (code.isEmpty() || code.getAsInt() != projected.code())) {
            inputs.problems()
                    .add(
                            file.place(),
                            file.name(),
                            Finding.of(
                                    ProblemKind.COORDINATE_SYSTEM,
                                    read.reference().get(),
                                    projected.toString()));
        }
    }

    private void requireShape(SpatialFile file, Feature feature, Class<?> kind, String words) {
        if (!kind.isInstance(feature.geometry())) {
            String found = "a " + feature.geometry().getGeometryType() + " as feature " + feature.number();
            inputs.problems()
                    .add(place(file, feature.position()), file.name(), Finding.of(ProblemKind.GEOMETRY, found, words));
        }
    }

    static Place place(SpatialFile file, TextPosition position) {
        return new Place(file.name(), position.line(), position.column());
    }
}
