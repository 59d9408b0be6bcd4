package org.headfall.scenarios.planning;

import java.util.Arrays;
import java.util.Locale;
import org.headfall.scenarios.report.page.PackedNumbers;
import org.headfall.scenarios.report.page.ScreenGrid;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The figures of a page as JSON for its scripts. */
final class PlanningData {

    private static final JsonMapper MAPPER = new JsonMapper();
    private static final double RATE_QUANTUM = 0.05;
    private static final double LIFT_QUANTUM = 0.1;
    private static final int FIELDS = 4;

    private PlanningData() {}

    static String of(PlanningPage page) {
        ObjectNode root = MAPPER.createObjectNode();
        page.map().ifPresent(map -> putMap(root.putObject("map"), map));
        page.rates().ifPresent(rates -> putRates(root.putObject("rates"), rates));
        page.curves().ifPresent(curves -> putCurves(root.putObject("curves"), curves));
        return MAPPER.writeValueAsString(root).replace("<", "\\u003c");
    }

    private static void putMap(ObjectNode node, PlanningMap map) {
        int[][] kept = ScreenGrid.kept(map.x(), map.y(), FIELDS);
        putAll(node.putArray("x"), map.x(), kept[0]);
        putAll(node.putArray("y"), map.y(), kept[1]);
        node.put("rateQuantum", RATE_QUANTUM);
        node.put("liftQuantum", LIFT_QUANTUM);
        putPacked(node, "rate", map.largestRate(), RATE_QUANTUM, map.x().length, kept);
        putPacked(node, "ruling", map.ruling(), 1, map.x().length, kept);
        putPacked(node, "lift", map.lift(), LIFT_QUANTUM, map.x().length, kept);
        putPacked(node, "energy", map.energy(), 1, map.x().length, kept);
        map.reasons().forEach(node.putArray("reasons")::add);
        ArrayNode places = node.putArray("places");
        for (PlanningMap.Place place : map.places()) {
            places.addObject()
                    .put("kind", place.kind().name().toLowerCase(Locale.ROOT))
                    .put("name", place.name())
                    .put("label", place.label())
                    .put("x", place.x())
                    .put("y", place.y());
        }
    }

    private static void putRates(ObjectNode node, PlanningRates rates) {
        int[][] kept = ScreenGrid.kept(rates.x(), rates.y(), 1);
        putAll(node.putArray("x"), rates.x(), kept[0]);
        putAll(node.putArray("y"), rates.y(), kept[1]);
        double[] inside = new double[rates.inside().length];
        Arrays.setAll(inside, cell -> rates.inside()[cell] ? 1 : Double.NaN);
        putPacked(node, "inside", inside, 1, rates.x().length, kept);
        ArrayNode places = node.putArray("places");
        for (PlanningRates.Place place : rates.places()) {
            ObjectNode one = places.addObject()
                    .put("kind", place.kind().name().toLowerCase(Locale.ROOT))
                    .put("name", place.name())
                    .put("x", place.x())
                    .put("y", place.y())
                    .put("rate", place.rate())
                    .put("mark", place.mark().name().toLowerCase(Locale.ROOT));
            place.words().forEach(one.putArray("words")::add);
        }
        ArrayNode stretches = node.putArray("stretches");
        rates.steps()
                .stretches()
                .forEach(stretch ->
                        stretches.addObject().put("from", stretch.from()).put("words", stretch.words()));
        ArrayNode bores = node.putArray("bores");
        for (RateSteps.Bore bore : rates.steps().bores()) {
            bore.rates().forEach(bores.addArray()::add);
        }
    }

    private static void putAll(ArrayNode node, double[] positions, int[] kept) {
        for (int i : kept) {
            node.add(Math.rint(positions[i] * 10) / 10);
        }
    }

    private static void putPacked(
            ObjectNode node, String name, double[] values, double quantum, int width, int[][] kept) {
        double[] picked = new double[kept[0].length * kept[1].length];
        int next = 0;
        for (int row : kept[1]) {
            for (int column : kept[0]) {
                picked[next++] = values[row * width + column];
            }
        }
        node.put(name, new PackedNumbers(quantum, kept[0].length).add(picked).text());
    }

    private static void putCurves(ObjectNode node, PlanningCurves curves) {
        putNumbers(node.putArray("spacings"), curves.spacings());
        curves.measures().forEach(node.putArray("measures")::add);
        ArrayNode all = node.putArray("curves");
        for (PlanningCurves.Curve curve : curves.curves()) {
            ObjectNode one = all.addObject()
                    .put("layout", curve.layout())
                    .put("bores", curve.bores())
                    .put("bestSpacing", curve.bestSpacing())
                    .put("atEnd", curve.atEnd());
            ArrayNode values = one.putArray("values");
            curve.values().forEach(measure -> putNumbers(values.addArray(), measure));
            putNumbers(one.putArray("best"), curve.best());
        }
    }

    private static void putNumbers(ArrayNode node, double[] values) {
        for (double value : values) {
            if (Double.isFinite(value)) {
                node.add(value);
            } else {
                node.addNull();
            }
        }
    }
}
