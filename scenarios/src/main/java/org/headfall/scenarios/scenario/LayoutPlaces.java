package org.headfall.scenarios.scenario;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.headfall.scenarios.scenario.SpacingSpecification.Layout;
import org.headfall.scenarios.spatial.Position;

/** Where the bores of a layout stand. */
public final class LayoutPlaces {

    private LayoutPlaces() {}

    /**
     * Places of bores around the origin.
     *
     * @param layout the layout
     * @param count how many
     * @param spacing distance of neighbours (m)
     */
    public static List<Position> of(Layout layout, int count, double spacing) {
        return switch (layout) {
            case LINE -> line(count, spacing);
            case GRID -> grid(count, spacing);
            case HEXAGON -> hexagon(count, spacing);
            case RING -> ring(count, spacing);
        };
    }

    private static List<Position> line(int count, double spacing) {
        List<Position> places = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            places.add(new Position((i - 0.5 * (count - 1)) * spacing, 0));
        }
        return places;
    }

    private static List<Position> grid(int count, double spacing) {
        int side = (int) Math.ceil(Math.sqrt(count));
        List<Position> places = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            places.add(new Position(i % side * spacing, Math.floorDiv(i, side) * spacing));
        }
        return places;
    }

    private static List<Position> hexagon(int count, double spacing) {
        // The nearest places lie well within so many rows of the middle.
        int reach = (int) Math.ceil(Math.sqrt(count)) + 1;
        List<Position> lattice = new ArrayList<>();
        for (int row = -reach; row <= reach; row++) {
            for (int column = -reach; column <= reach; column++) {
                lattice.add(new Position((column + 0.5 * (row & 1)) * spacing, row * spacing * Math.sqrt(0.75)));
            }
        }
        lattice.sort(Comparator.comparingDouble(
                        (Position place) -> Math.rint(1e6 * Math.hypot(place.x(), place.y()) / spacing))
                .thenComparingDouble(place -> Math.atan2(place.y(), place.x())));
        return List.copyOf(lattice.subList(0, count));
    }

    private static List<Position> ring(int count, double spacing) {
        double radius = count == 1 ? 0 : spacing / (2 * Math.sin(Math.PI / count));
        List<Position> places = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double angle = 2 * Math.PI * i / count;
            places.add(new Position(radius * Math.cos(angle), radius * Math.sin(angle)));
        }
        return places;
    }

    /**
     * The same layout turned and moved.
     *
     * @param layout the layout
     * @param count how many bores
     * @param spacing distance of neighbours (m)
     * @param direction of the line or of the rows (degrees clockwise from north); 90 leaves them along x
     * @param centre the mean of all places
     */
    public static List<Position> around(Layout layout, int count, double spacing, double direction, Position centre) {
        List<Position> places = of(layout, count, spacing);
        double meanX = places.stream().mapToDouble(Position::x).average().orElse(0);
        double meanY = places.stream().mapToDouble(Position::y).average().orElse(0);
        double sine = Math.sin(Math.toRadians(direction));
        double cosine = Math.cos(Math.toRadians(direction));
        return places.stream()
                .map(place -> {
                    double along = place.x() - meanX;
                    double across = place.y() - meanY;
                    return new Position(
                            centre.x() + along * sine - across * cosine, centre.y() + along * cosine + across * sine);
                })
                .toList();
    }
}
