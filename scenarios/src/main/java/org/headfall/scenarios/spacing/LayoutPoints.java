package org.headfall.scenarios.spacing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.headfall.scenarios.scenario.Position;
import org.headfall.scenarios.scenario.SpacingSpecification.Layout;
import org.jgrapht.Graph;
import org.jgrapht.alg.spanning.KruskalMinimumSpanningTree;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;

/** Where the bores of a layout stand, and how long the pipe that joins them is. */
final class LayoutPoints {

    private LayoutPoints() {}

    /**
     * Places of bores around the origin.
     *
     * @param layout the layout
     * @param count how many
     * @param spacing distance of neighbours (m)
     */
    static List<Position> of(Layout layout, int count, double spacing) {
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
        int reach = count;
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

    /** Length of the shortest pipe that joins all places: their minimum spanning tree (Kruskal 1956) (m). */
    static double pipe(List<Position> places) {
        Graph<Integer, DefaultWeightedEdge> graph = new SimpleWeightedGraph<>(DefaultWeightedEdge.class);
        for (int i = 0; i < places.size(); i++) {
            graph.addVertex(i);
            for (int j = 0; j < i; j++) {
                graph.setEdgeWeight(graph.addEdge(i, j), distance(places.get(i), places.get(j)));
            }
        }
        return places.size() < 2
                ? 0
                : new KruskalMinimumSpanningTree<>(graph).getSpanningTree().getWeight();
    }

    static double distance(Position a, Position b) {
        return Math.hypot(a.x() - b.x(), a.y() - b.y());
    }
}
