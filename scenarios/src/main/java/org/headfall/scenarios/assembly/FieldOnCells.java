package org.headfall.scenarios.assembly;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.interpolation.CellCentres;
import org.headfall.scenarios.interpolation.PointSpread;
import org.headfall.scenarios.interpolation.PolygonCells;
import org.headfall.scenarios.interpolation.ScatteredValues;
import org.headfall.scenarios.interpolation.SpreadValues;
import org.headfall.scenarios.interpolation.ValueScale;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.raster.Averaging;
import org.headfall.scenarios.raster.CellSampler;
import org.headfall.scenarios.raster.Raster;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.scenario.Field.PointValue;
import org.headfall.scenarios.scenario.SpatialFile;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.wording.PlainNumber;

/** Puts fields on the cells of a grid. */
final class FieldOnCells {
    private final RectilinearGrid grid;
    private final CellCentres centres;
    private final boolean[] active;
    private final Problems problems;
    private final int threads;
    private final List<SpreadField> spreads = new ArrayList<>();

    FieldOnCells(RectilinearGrid grid, boolean[] active, Problems problems, int threads) {
        this.grid = grid;
        this.centres = centres(grid);
        this.active = active;
        this.problems = problems;
        this.threads = threads;
    }

    /** The centres of the cells of a grid. */
    static CellCentres centres(RectilinearGrid grid) {
        return CellCentres.between(grid.x().edges(), grid.y().edges());
    }

    /**
     * Values of a field on every cell.
     *
     * @param field the field
     * @param averaging how several values within a cell become one
     * @param unused value of cells that do not belong to the aquifer and for which the field has none
     * @return one value a cell, all of them numbers; where a cell of the aquifer has none a problem is reported and the
     *     unused value stands in
     */
    double[] values(Field field, Averaging averaging, double unused) {
        if (field instanceof Field.Constant constant) {
            double[] values = new double[grid.cellCount()];
            Arrays.fill(values, constant.value());
            return values;
        }
        if (field instanceof Field.FromPoints points) {
            return spread(points);
        }
        if (field instanceof Field.FromPolygons polygons) {
            double[] values = values(polygons);
            fillHoles(values, polygons.file(), unused, "a value in every cell of the aquifer, or the key elsewhere");
            return values;
        }
        if (field instanceof Field.Random random) {
            return drawn(random, averaging, unused);
        }
        Field.FromRaster raster = (Field.FromRaster) field;
        double[] values = new CellSampler(grid.x().edges(), grid.y().edges()).cellValues(raster.raster(), averaging);
        fillHoles(values, raster.file(), unused, "a value in every cell of the aquifer");
        return values;
    }

    /** Values of a random field; the unused value everywhere after a problem has been reported. */
    private double[] drawn(Field.Random random, Averaging averaging, double unused) {
        try {
            Raster raster = RandomFieldOnGrid.draw(random, grid);
            return new CellSampler(grid.x().edges(), grid.y().edges()).cellValues(raster, averaging);
        } catch (IllegalArgumentException impossible) {
            problems.add(
                    random.place(),
                    random.key(),
                    Finding.of(
                            ProblemKind.OUT_OF_RANGE,
                            String.valueOf(impossible.getMessage()),
                            "a field that can be drawn: a shorter range, larger cells, fewer points, or another"
                                    + " variogram"));
            double[] values = new double[grid.cellCount()];
            Arrays.fill(values, unused);
            return values;
        }
    }

    private double[] values(Field.FromPolygons field) {
        double[] values = new PolygonCells(centres)
                .values(field.polygons().stream()
                        .map(part -> new PolygonCells.PolygonValue(part.polygon(), part.value()))
                        .toList());
        if (field.elsewhere().isPresent()) {
            double elsewhere = field.elsewhere().getAsDouble();
            for (int cell = 0; cell < values.length; cell++) {
                values[cell] = Double.isNaN(values[cell]) ? elsewhere : values[cell];
            }
        }
        return values;
    }

    private double[] spread(Field.FromPoints field) {
        List<PointValue> points = field.points();
        ScatteredValues scattered = new ScatteredValues(
                points.stream().mapToDouble(point -> point.position().x()).toArray(),
                points.stream().mapToDouble(point -> point.position().y()).toArray(),
                points.stream().mapToDouble(PointValue::value).toArray());
        PointSpread onCells = new PointSpread(centres, threads);
        SpreadValues spread = switch (field.spread()) {
            case NEAREST -> onCells.nearest(scattered);
            case INVERSE_DISTANCE -> onCells.inverseDistance(scattered, ValueScale.PLAIN);
            case LOG_INVERSE_DISTANCE -> onCells.inverseDistance(scattered, ValueScale.LOGARITHMIC);
            case KRIGING -> krige(onCells, scattered, ValueScale.PLAIN, field);
            case LOG_KRIGING -> krige(onCells, scattered, ValueScale.LOGARITHMIC, field);
        };
        spreads.add(new SpreadField(field.file().key(), field.file().name(), points.size(), spread.method()));
        return spread.cellValues();
    }

    private static SpreadValues krige(
            PointSpread onCells, ScatteredValues points, ValueScale scale, Field.FromPoints field) {
        return onCells.kriging(
                points, scale, field.variogram().range(), field.variogram().nuggetShare());
    }

    /** How the values at points that have been put on cells so far were spread. */
    List<SpreadField> spreads() {
        return List.copyOf(spreads);
    }

    private void fillHoles(double[] values, SpatialFile file, double unused, String allowed) {
        int missing = 0;
        int first = -1;
        for (int cell = 0; cell < values.length; cell++) {
            if (Double.isNaN(values[cell])) {
                if (active[cell]) {
                    first = missing == 0 ? cell : first;
                    missing++;
                }
                values[cell] = unused;
            }
        }
        if (missing > 0) {
            String found = "no value in " + missing + (missing == 1 ? " cell" : " cells")
                    + " of the aquifer, the first at x "
                    + PlainNumber.of(grid.centreX(first)) + ", y " + PlainNumber.of(grid.centreY(first));
            problems.add(file.place(), file.name(), Finding.of(ProblemKind.RASTER_COVER, found, allowed));
        }
    }
}
