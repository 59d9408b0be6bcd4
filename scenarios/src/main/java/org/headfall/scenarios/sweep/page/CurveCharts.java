package org.headfall.scenarios.sweep.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.document.Variation;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.results.SweepTable;

/**
 * Draws figures that something is asked of over numbers that were chosen, such as the spacing of bores; one small chart for
 * each value of another choice, such as their pattern.
 */
final class CurveCharts {

    private static final int MOST_CHARTS = 8;

    private final SweepTable table;

    CurveCharts(SweepTable table) {
        this.table = table;
    }

    List<Chart.Group> all() {
        List<Chart.Group> charts = new ArrayList<>();
        for (Variable variable : table.sweep().variables()) {
            if (variable.numeric() && isChoice(variable)) {
                asked().forEach(name ->
                        group(variable, table.sweep().figure(name)).ifPresent(charts::add));
            }
        }
        return charts;
    }

    private static boolean isChoice(Variable variable) {
        return variable.variation() instanceof Variation.Listed
                && !variable.variation().isDrawn();
    }

    private Set<String> asked() {
        Set<String> names = new LinkedHashSet<>();
        table.sweep().questions().ranking().ifPresent(aim -> names.add(aim.figure()));
        table.sweep().questions().tradeOff().forEach(aim -> names.add(aim.figure()));
        names.addAll(table.sweep().questions().sensitivity());
        return names;
    }

    /** Bands of the runs of each value of the variable. */
    @SuppressWarnings("ArrayRecordComponent") // drawn once, never compared
    private record Curve(double[] at, int fewest, Bands bands) {
        static Curve of(Map<Double, List<Double>> byValue) {
            return new Curve(
                    byValue.keySet().stream().mapToDouble(Double::doubleValue).toArray(),
                    byValue.values().stream().mapToInt(List::size).min().orElse(0),
                    Bands.of(byValue.values().stream()
                            .map(values -> values.stream()
                                    .mapToDouble(Double::doubleValue)
                                    .toArray())
                            .toList()));
        }
    }

    private Optional<Chart.Group> group(Variable variable, KeptFigure figure) {
        Optional<Variable> other = other(variable);
        Map<String, Curve> curves = curves(variable, figure, other);
        if (curves.values().stream().allMatch(curve -> curve.at().length < 2)) {
            return Optional.empty();
        }
        ChartScale across = ChartDrawing.across(curves.values().stream()
                .flatMapToDouble(curve -> Arrays.stream(curve.at()))
                .toArray());
        ChartScale up = ChartDrawing.up(curves.values().stream()
                .flatMapToDouble(curve -> curve.bands().edges())
                .toArray());
        List<Chart> charts = new ArrayList<>();
        curves.forEach((name, curve) -> charts.add(
                chart(name.isEmpty() ? figure.name() : name, curve, across, up, variable.heading(), figure.heading())));
        int fewest = curves.values().stream().mapToInt(Curve::fewest).min().orElse(0);
        String note = fewest > 1
                ? "Middle line: half of the runs lie below. Dashed lines: a tenth below the lower, a tenth above the upper."
                        + " Each point is of " + fewest + " runs or more."
                : "Each point is of one run or more; where it is of one, all lines are that run.";
        return Optional.of(new Chart.Group(
                figure.name() + " by " + variable.name()
                        + other.map(by -> " and " + by.name()).orElse(""),
                note,
                charts));
    }

    /** Another choice of few values, words rather than numbers if there are both. */
    private Optional<Variable> other(Variable variable) {
        List<Variable> others = table.sweep().variables().stream()
                .filter(other -> !other.equals(variable)
                        && isChoice(other)
                        && ((Variation.Listed) other.variation()).inputs().size() <= MOST_CHARTS)
                .toList();
        return others.stream()
                .filter(other -> !other.numeric())
                .findFirst()
                .or(() -> others.stream().findFirst());
    }

    private Map<String, Curve> curves(Variable variable, KeptFigure figure, Optional<Variable> other) {
        double[] values = table.figure(figure.name());
        double[] given = table.input(variable.name());
        Map<String, Map<Double, List<Double>>> byOther = new LinkedHashMap<>();
        for (int place = 0; place < values.length; place++) {
            if (Double.isFinite(values[place])) {
                String name = other.isEmpty() ? "" : other.get().name() + " " + table.inputText(other.get(), place);
                byOther.computeIfAbsent(name, first -> new TreeMap<>())
                        .computeIfAbsent(given[place], first -> new ArrayList<>())
                        .add(values[place]);
            }
        }
        Map<String, Curve> curves = new LinkedHashMap<>();
        byOther.forEach((name, byValue) -> curves.put(name, Curve.of(byValue)));
        return curves;
    }

    private static Chart chart(
            String title, Curve curve, ChartScale across, ChartScale up, String acrossName, String upName) {
        double[] x = Arrays.stream(curve.at()).map(across::place).toArray();
        return new ChartDrawing()
                .axes(across, up)
                .line(
                        "low",
                        x,
                        Arrays.stream(curve.bands().low()).map(up::place).toArray())
                .line(
                        "high",
                        x,
                        Arrays.stream(curve.bands().high()).map(up::place).toArray())
                .line(
                        "middle",
                        x,
                        Arrays.stream(curve.bands().middle()).map(up::place).toArray())
                .named(title, acrossName, upName);
    }
}
