package org.headfall.scenarios.interpolation;

import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * What part of each cell of a rectilinear grid some polygons cover. Parts times cell areas add up to the area of the
 * polygons within the grid, so that rain on an outcrop is the right volume on cells of any size.
 */
public final class PolygonCover {
    private final GeometryFactory factory = new GeometryFactory();
    private final double[] edgesX;
    private final double[] edgesY;

    /**
     * Cover of one grid.
     *
     * @param edgesX ascending cell edges along x (m)
     * @param edgesY ascending cell edges along y (m)
     */
    public PolygonCover(double[] edgesX, double[] edgesY) {
        this.edgesX = edgesX.clone();
        this.edgesY = edgesY.clone();
    }

    /**
     * The covered part of each cell.
     *
     * @param areas polygons, each a proper shape; where they overlap they count once
     * @return one part from 0 to 1 a cell, row by row from south to north
     */
    public double[] shares(List<? extends Geometry> areas) {
        int columns = edgesX.length - 1;
        double[] shares = new double[columns * (edgesY.length - 1)];
        if (areas.isEmpty()) {
            return shares;
        }
        Geometry union = OverlayNGRobust.union(List.copyOf(areas));
        for (int row = 0; row < edgesY.length - 1; row++) {
            Geometry strip = common(union, rectangle(0, columns, row));
            if (!strip.isEmpty()) {
                fillRow(strip, row, shares);
            }
        }
        return shares;
    }

    private void fillRow(Geometry strip, int row, double[] shares) {
        PreparedGeometry prepared = PreparedGeometryFactory.prepare(strip);
        Envelope bounds = strip.getEnvelopeInternal();
        int columns = edgesX.length - 1;
        for (int column = 0; column < columns; column++) {
            if (edgesX[column + 1] > bounds.getMinX() && edgesX[column] < bounds.getMaxX()) {
                Geometry cell = rectangle(column, column + 1, row);
                shares[row * columns + column] = prepared.covers(cell)
                        ? 1
                        : Math.min(1, common(strip, cell).getArea() / cell.getArea());
            }
        }
    }

    /** The common area, without the lines and points in which areas touch. */
    private Geometry common(Geometry one, Geometry other) {
        Geometry common = OverlayNGRobust.overlay(one, other, OverlayNG.INTERSECTION);
        return factory.buildGeometry(PolygonExtracter.getPolygons(common));
    }

    private Geometry rectangle(int fromColumn, int toColumn, int row) {
        return factory.toGeometry(new Envelope(edgesX[fromColumn], edgesX[toColumn], edgesY[row], edgesY[row + 1]));
    }
}
