package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.schedule.PiecewiseSchedule;

/**
 * The bores of a problem that take given rates whatever heads are. Drawdown is linear in what is taken, so bores whose
 * rates change in proportion act as one source: its shares of the cells are the sum of theirs. A lowest level that a bore
 * must keep is left aside here; whether it is kept is for the caller to look at afterwards.
 *
 * <p>Tiny case: three bores from day 0 on at 100, 200 and 300 m³/d are one source of 600 m³/d that takes a sixth, a third and
 * a half of it by the weights of each.
 */
public final class GivenRates {

    /** Rates of two bores that differ by less than this share of the largest are in proportion. */
    private static final double IN_PROPORTION = 1e-12;

    private final FlowProblem problem;
    private final int[] kinds;
    private final int[] given;
    private final double[] days;
    private final double lastDay;
    private final double[] atRest;
    private final PointDischarges points;
    private final List<Source> sources = new ArrayList<>();

    /**
     * Some bores together.
     *
     * @param kind the kind of these bores
     * @param givenBack whether this is what they take at the start, which the run itself leaves as it is: only a run without
     *     them gives it back; otherwise it is by how much their rates differ from that
     * @param strengths discharge of each bore of the problem (m³/d) by a unit of the inflow's schedule
     * @param inflow what they take, as an inflow that is negative
     */
    @SuppressWarnings("ArrayRecordComponent") // between two classes, never compared
    public record Source(int kind, boolean givenBack, double[] strengths, ChangingSource inflow) {}

    /**
     * The given rates of a problem.
     *
     * @param problem the problem
     * @param startingFrom the same problem with the operations that had brought about a start at rest; none if the run starts
     *     from given heads
     * @param kinds kind of each bore: a source never joins bores of different kinds
     * @param lastDay day of the end of the run (d)
     */
    public GivenRates(FlowProblem problem, Optional<FlowProblem> startingFrom, int[] kinds, double lastDay) {
        this.problem = problem;
        this.kinds = kinds.clone();
        this.lastDay = lastDay;
        List<Bore> bores = problem.bores();
        List<Bore> before = startingFrom.map(FlowProblem::bores).orElse(bores);
        given = IntStream.range(0, bores.size())
                .filter(i -> takesGivenRates(bores.get(i)) && takesGivenRates(before.get(i)))
                .toArray();
        days = days(lastDay);
        atRest = new double[bores.size()];
        if (startingFrom.isPresent()) {
            for (int bore : given) {
                atRest[bore] = rate(before.get(bore), 0);
            }
        }
        points = new PointDischarges(problem);
        join();
    }

    private static boolean takesGivenRates(Bore bore) {
        return bore.phases().stream()
                .map(OperatingPhase::operation)
                .allMatch(operation -> operation instanceof Operation.Off || operation instanceof Operation.PumpedRate);
    }

    /** Rate of a bore that takes given rates (m³/d). */
    private static double rate(Bore bore, double day) {
        return bore.operationAt(day) instanceof Operation.PumpedRate pumped
                ? pumped.rate().at(day)
                : 0;
    }

    /** The start, and each day before the end on which a rate jumps or bends. */
    private double[] days(double end) {
        FlowProblem alone = new FlowProblem(
                problem.aquifer(),
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(),
                Arrays.stream(given).mapToObj(problem.bores()::get).toList());
        TreeSet<Double> all = new TreeSet<>();
        all.add(0.0);
        Arrays.stream(alone.jumps(0, end)).forEach(all::add);
        Arrays.stream(alone.bends(0, end)).forEach(all::add);
        return all.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private void join() {
        List<Joined> joined = new ArrayList<>();
        for (int bore : given) {
            double[] changes = rates(bore);
            double rest = atRest[bore];
            double[] held = new double[changes.length];
            Arrays.fill(held, rest);
            Arrays.setAll(changes, i -> changes[i] - rest);
            add(joined, bore, kinds[bore], false, changes);
            add(joined, bore, kinds[bore], true, held);
        }
        joined.forEach(one -> sources.add(one.source()));
    }

    /** Rate of a bore at the beginning of each stretch and at its end, before any jump there (m³/d). */
    private double[] rates(int bore) {
        double[] rates = new double[2 * days.length];
        for (int i = 0; i < days.length; i++) {
            double end = i + 1 < days.length ? days[i + 1] : lastDay;
            rates[2 * i] = rate(problem.bores().get(bore), days[i]);
            rates[2 * i + 1] = rate(problem.bores().get(bore), Math.nextDown(end));
        }
        return rates;
    }

    private void add(List<Joined> joined, int bore, int kind, boolean givenBack, double[] course) {
        double largest = 0;
        for (double value : course) {
            largest = Math.abs(value) > Math.abs(largest) ? value : largest;
        }
        if (largest == 0) {
            return;
        }
        double strength = largest;
        double[] unit = Arrays.stream(course).map(value -> value / strength).toArray();
        Joined fitting = joined.stream()
                .filter(one -> one.fits(kind, givenBack, unit))
                .findFirst()
                .orElseGet(() -> {
                    Joined first = new Joined(kind, givenBack, unit);
                    joined.add(first);
                    return first;
                });
        fitting.strengths[bore] = strength;
    }

    /** Bores found to change in proportion so far. */
    private final class Joined {

        private final int kind;
        private final boolean givenBack;
        private final double[] course;
        private final double[] strengths = new double[problem.bores().size()];

        Joined(int kind, boolean givenBack, double[] course) {
            this.kind = kind;
            this.givenBack = givenBack;
            this.course = course;
        }

        boolean fits(int otherKind, boolean otherGivenBack, double[] other) {
            return kind == otherKind
                    && givenBack == otherGivenBack
                    && IntStream.range(0, course.length).allMatch(i -> Math.abs(course[i] - other[i]) <= IN_PROPORTION);
        }

        Source source() {
            double[] field = new double[problem.aquifer().grid().cellCount()];
            for (int bore = 0; bore < strengths.length; bore++) {
                points.weights(bore).add(strengths[bore], field);
            }
            int[] cells = IntStream.range(0, field.length)
                    .filter(cell -> field[cell] != 0)
                    .toArray();
            double scale = Arrays.stream(cells)
                    .mapToDouble(cell -> Math.abs(field[cell]))
                    .sum();
            double[] shares = Arrays.stream(cells)
                    .mapToDouble(cell -> field[cell] / scale)
                    .toArray();
            String names = String.join(
                    ", ",
                    IntStream.range(0, strengths.length)
                            .filter(bore -> strengths[bore] != 0)
                            .mapToObj(bore -> problem.bores().get(bore).name())
                            .toList());
            ChangingSource inflow = new ChangingSource(names, new CellWeights(cells, shares), -scale, schedule(), 0);
            return new Source(kind, givenBack, strengths, inflow);
        }

        private PiecewiseSchedule schedule() {
            double[] begin = new double[days.length];
            double[] end = new double[days.length];
            Arrays.setAll(begin, i -> course[2 * i]);
            Arrays.setAll(end, i -> course[2 * i + 1]);
            return new PiecewiseSchedule(days, begin, end, lastDay);
        }
    }

    FlowProblem problem() {
        return problem;
    }

    /** All bores and springs of the problem. */
    PointDischarges points() {
        return points;
    }

    /** The sources; none of bores that take what they took at the start. */
    public List<Source> sources() {
        return List.copyOf(sources);
    }

    /** The bores that take given rates, by their place in the problem; a copy. */
    public int[] bores() {
        return given.clone();
    }

    /** Rate of a bore that takes given rates (m³/d). */
    public double rate(int bore, double day) {
        return rate(problem.bores().get(bore), day);
    }

    /** Rate of such a bore before a start at rest (m³/d), zero before given heads. */
    public double rateAtRest(int bore) {
        return atRest[bore];
    }

    /** Lowest level that such a bore must keep at a moment (m above datum), if it has one and takes water then. */
    public OptionalDouble lowestLevel(int bore, double day) {
        return problem.bores().get(bore).operationAt(day) instanceof Operation.PumpedRate pumped
                        && pumped.rate().at(day) > 0
                ? pumped.lowestLevel()
                : OptionalDouble.empty();
    }

    /** The days after the start and before the end on which a rate jumps or bends (d), a copy. */
    public double[] changes() {
        return Arrays.copyOfRange(days, 1, days.length);
    }

    /** Whether a bore is of a kind that is among some. */
    public boolean isOfKinds(int bore, boolean[] some) {
        return kinds[bore] < some.length && some[kinds[bore]];
    }

    /** A problem with the same bores, without those that take given rates: what is left follows head. */
    public FlowProblem withoutThem(FlowProblem other) {
        return other.withBores(IntStream.range(0, kinds.length)
                .filter(bore -> Arrays.binarySearch(given, bore) < 0)
                .mapToObj(other.bores()::get)
                .toList());
    }
}
