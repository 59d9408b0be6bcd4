package org.headfall.scenarios.spacing;

import java.util.List;
import org.headfall.scenarios.spatial.Position;
import org.jgrapht.Graph;
import org.jgrapht.alg.spanning.KruskalMinimumSpanningTree;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;

/** Distances between the bores of a layout, and how long the pipe that joins them is. */
final class LayoutDistances {

    private LayoutDistances() {}

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
