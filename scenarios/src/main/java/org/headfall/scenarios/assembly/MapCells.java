package org.headfall.scenarios.assembly;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.grid.RectilinearGrid;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygonal;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/**
 * The active cells that belong to shapes of the map: of a polygon those whose centres lie in it, and of a line, or of a
 * polygon too small to hold a centre, those that it touches.
 */
public final class MapCells {

    private static final GeometryFactory SHAPES = new GeometryFactory();

    private final RectilinearGrid grid;
    private final boolean[] active;

    /**
     * Cells of an aquifer.
     *
     * @param aquifer the aquifer
     */
    public MapCells(Aquifer aquifer) {
        grid = aquifer.grid();
        active = aquifer.active();
    }

    /** Every active cell. */
    public int[] all() {
        return IntStream.range(0, grid.cellCount()).filter(cell -> active[cell]).toArray();
    }

    /**
     * Active cells of any of some shapes.
     *
     * @param shapes polygons and lines (m)
     * @return the cells, increasing
     */
    public int[] meetingAnyOf(List<Geometry> shapes) {
        return shapes.stream()
                .flatMapToInt(shape -> IntStream.of(of(shape)))
                .sorted()
                .distinct()
                .toArray();
    }

    private int[] of(Geometry shape) {
        PreparedGeometry prepared = PreparedGeometryFactory.prepare(shape);
        Envelope bounds = shape.getEnvelopeInternal();
        List<Integer> held = new ArrayList<>();
        List<Integer> touched = new ArrayList<>();
        for (int cell : all()) {
            Envelope box = box(cell);
            if (!bounds.intersects(box)) {
                continue;
            }
            if (prepared.intersects(SHAPES.toGeometry(box))) {
                touched.add(cell);
            }
            if (prepared.intersects(SHAPES.createPoint(new Coordinate(grid.centreX(cell), grid.centreY(cell))))) {
                held.add(cell);
            }
        }
        List<Integer> cells = shape instanceof Polygonal && !held.isEmpty() ? held : touched;
        return cells.stream().mapToInt(Integer::intValue).toArray();
    }

    private Envelope box(int cell) {
        int column = grid.column(cell);
        int row = grid.row(cell);
        return new Envelope(
                grid.x().edge(column),
                grid.x().edge(column + 1),
                grid.y().edge(row),
                grid.y().edge(row + 1));
    }
}
