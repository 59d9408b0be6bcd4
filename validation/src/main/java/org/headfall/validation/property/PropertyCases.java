package org.headfall.validation.property;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Part;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.Standing;
import org.headfall.validation.check.Tolerance;
import org.headfall.validation.check.ValidationCase;
import org.headfall.validation.property.RandomFields.Ending;

/** The cases of this package. */
public final class PropertyCases {

    /** First seed; each further field has the next one. Set by {@code -Dheadfall.validation.seed}. */
    private static final long FIRST_SEED = Long.getLong("headfall.validation.seed", 20261125L);

    private static final int FIELDS = 4;

    /** Runs that must agree but for rounding are made so exact that time stepping does not blur them. */
    private static final double EXACT = 1e-6;

    private static final Source LINEARITY = new Source(
            "Bear",
            1979,
            "Hydraulics of Groundwater",
            "linearity and self-adjointness of confined flow",
            Standing.DERIVED);

    private PropertyCases() {}

    /** All of them. */
    public static List<ValidationCase> all() {
        return List.of(
                property(
                        "reciprocity",
                        "The response of A to pumping at B is that of B to pumping at A",
                        "Siting maps and interference matrices may take either bore as the cause.",
                        PropertyCases::reciprocity),
                property(
                        "superposition",
                        "Drawdowns of bores one by one add up to that of all together",
                        "Drawdown may be split by cause, exactly.",
                        PropertyCases::superposition),
                property(
                        "conservation",
                        "Water in is water out, in each step and over the run",
                        "No term of the balance is missing or counted twice.",
                        PropertyCases::conservation),
                property(
                        "maximum-principle",
                        "Where water is only taken heads fall everywhere, and nowhere below the bores",
                        "No overshoot of the time stepping or the grid.",
                        PropertyCases::maximumPrinciple),
                property(
                        "symmetry",
                        "A field mirrored or turned by a quarter gives the mirrored or turned drawdown",
                        "No direction of the grid is treated in another way.",
                        PropertyCases::symmetry),
                property(
                        "scaling",
                        "Twice T, S, leakage and rate: the same drawdown; twice the rate alone: twice the drawdown",
                        "Units and coefficients enter as the equation has them.",
                        PropertyCases::scaling),
                property(
                        "rest",
                        "Without stress nothing moves",
                        "No source of its own in grid, bed or time stepping.",
                        PropertyCases::rest),
                property(
                        "refinement-elsewhere",
                        "Finer cells far from bore and reader change next to nothing",
                        "Answers do not hang on cells that do not matter.",
                        PropertyCases::refinementElsewhere),
                property(
                        "restart",
                        "A run stopped half-way and taken up from its heads ends as an unbroken one",
                        "Heads are the whole state where the bed stores no water.",
                        PropertyCases::restart));
    }

    private static ValidationCase property(String name, String title, String proves, Check check) {
        return new ValidationCase(
                name,
                title,
                Part.PROPERTIES,
                List.of(LINEARITY),
                proves,
                "That drawdowns are right: a wrong program can be symmetric too.",
                ValidationCase.Pace.FAST,
                findings -> {
                    for (long seed = FIRST_SEED; seed < FIRST_SEED + FIELDS; seed++) {
                        check.run(new Random(seed), "seed " + seed, findings);
                    }
                    findings.note("Seeds " + FIRST_SEED + " to " + (FIRST_SEED + FIELDS - 1)
                            + "; others with -Dheadfall.validation.seed=N");
                });
    }

    /** A check of one random field. */
    @FunctionalInterface
    private interface Check {
        void run(Random random, String seed, Findings findings);
    }

    private static void reciprocity(Random random, String seed, Findings findings) {
        FlowProblem problem = RandomFields.problem(random);
        Bore one = RandomFields.withRate(problem.bores().get(0), 1000);
        Bore other = RandomFields.withRate(problem.bores().get(1), 1000);
        Bore oneOff = RandomFields.withRate(one, 0);
        Bore otherOff = RandomFields.withRate(other, 0);
        double atOther = -RandomFields.run(problem.withBores(List.of(one, otherOff)), EXACT, RandomFields.DAYS)
                .wallHead()[1];
        double atOne = -RandomFields.run(problem.withBores(List.of(oneOff, other)), EXACT, RandomFields.DAYS)
                .wallHead()[0];
        findings.compare(Comparison.withFormula(
                seed + ", drawdown of A by B against that of B by A",
                "m",
                atOther,
                atOne,
                Tolerance.share(1e-5, atOther, "1e-5: runs with a step error of 1e-6 m")));
    }

    private static void superposition(Random random, String seed, Findings findings) {
        FlowProblem problem = RandomFields.problem(random);
        List<Bore> bores = problem.bores();
        Ending together = RandomFields.run(problem, EXACT, RandomFields.DAYS);
        double[] sum = new double[together.head().length];
        double[] wallSum = new double[bores.size()];
        for (int i = 0; i < bores.size(); i++) {
            List<Bore> alone = new ArrayList<>();
            for (int j = 0; j < bores.size(); j++) {
                alone.add(i == j ? bores.get(j) : RandomFields.withRate(bores.get(j), 0));
            }
            Ending ending = RandomFields.run(problem.withBores(alone), EXACT, RandomFields.DAYS);
            add(sum, ending.head());
            add(wallSum, ending.wallHead());
        }
        String why = "1e-5: runs with a step error of 1e-6 m";
        compareWorst(seed + ", cells", sum, together.head(), 1e-5, why, findings);
        compareWorst(seed + ", bores", wallSum, together.wallHead(), 1e-5, why, findings);
    }

    private static void add(double[] sum, double[] values) {
        for (int i = 0; i < sum.length; i++) {
            sum[i] += values[i];
        }
    }

    /** Compares where two fields differ most; the share is of the largest value of the first. */
    private static void compareWorst(
            String what, double[] expected, double[] ours, double share, String why, Findings findings) {
        int worst = 0;
        double largest = 0;
        for (int i = 0; i < expected.length; i++) {
            largest = Math.max(largest, Math.abs(expected[i]));
            if (!(Math.abs(ours[i] - expected[i]) <= Math.abs(ours[worst] - expected[worst]))) {
                worst = i;
            }
        }
        findings.compare(Comparison.withFormula(
                what + ", head where they differ most",
                "m",
                expected[worst],
                ours[worst],
                Tolerance.share(share, largest, why)));
    }

    private static void conservation(Random random, String seed, Findings findings) {
        Ending ending = RandomFields.run(RandomFields.problem(random), 1e-3, RandomFields.DAYS);
        Tolerance bar = new Tolerance(1e-6, "a millionth of what passes; the linear solver is asked for 1e-9");
        findings.compare(Comparison.withFormula(
                seed + ", discrepancy of the run over throughput", "-", 0, ending.discrepancy(), bar));
        findings.compare(Comparison.withFormula(
                seed + ", discrepancy of the worst step over throughput",
                "-",
                0,
                ending.largestStepDiscrepancy(),
                bar));
    }

    private static void maximumPrinciple(Random random, String seed, Findings findings) {
        FlowProblem problem = RandomFields.problem(random);
        Ending ending = RandomFields.run(problem, 1e-3, RandomFields.DAYS);
        double highest = Arrays.stream(ending.head()).max().orElseThrow();
        double lowest = Arrays.stream(ending.head()).min().orElseThrow();
        double lowestWall = Arrays.stream(ending.wallHead()).min().orElseThrow();
        Tolerance step = new Tolerance(1e-3, "the 1 mm that a step may err by");
        findings.compare(Comparison.withFormula(
                seed + ", rise of any head above its start", "m", 0, Math.max(0, highest), step));
        findings.compare(Comparison.withFormula(
                seed + ", fall of any cell below the lowest bore", "m", 0, Math.max(0, lowestWall - lowest), step));
    }

    private static void symmetry(Random random, String seed, Findings findings) {
        RectilinearGrid grid = RandomFields.grid(random);
        Aquifer aquifer = RandomFields.aquifer(grid, random);
        SealingBed bed = RandomFields.bed(grid, random);
        List<Bore> bores = RandomFields.bores(grid, random);
        double[] plain = leaking(aquifer, bed, bores).head();
        for (Turned turned : new Turned[] {Turned.mirrored(grid), Turned.quarter(grid)}) {
            double[] other = leaking(turned.aquifer(aquifer), turned.bed(bed), turned.bores(bores))
                    .head();
            compareWorst(
                    seed + ", " + turned.name(),
                    turned.field(plain),
                    other,
                    1e-6,
                    "1e-6: the same sums in another order",
                    findings);
        }
    }

    /** A run that only the bed holds. */
    private static Ending leaking(Aquifer aquifer, SealingBed bed, List<Bore> bores) {
        FlowProblem problem = new FlowProblem(aquifer, Optional.of(bed), List.of(), List.of(), List.of(), bores);
        return RandomFields.run(problem, EXACT, RandomFields.DAYS);
    }

    private static void scaling(Random random, String seed, Findings findings) {
        FlowProblem problem = RandomFields.problem(random);
        Ending plain = RandomFields.run(problem, EXACT, RandomFields.DAYS);
        List<Bore> doubled = problem.bores().stream()
                .map(bore -> RandomFields.withRate(bore, 2 * rate(bore)))
                .toList();
        Aquifer aquifer = problem.aquifer();
        Aquifer stronger = new Aquifer(
                aquifer.grid(),
                times(2, aquifer.transmissivityX()),
                times(2, aquifer.transmissivityY()),
                times(2, aquifer.storativity()),
                aquifer.top(),
                aquifer.bottom(),
                aquifer.active());
        FlowProblem scaled = new FlowProblem(
                stronger,
                problem.sealingBed()
                        .map(bed -> new SealingBed(
                                bed.thickness(),
                                times(2, bed.verticalConductivity()),
                                times(2, bed.specificStorage()),
                                bed.headAbove())),
                problem.boundaries(),
                List.of(),
                List.of(),
                doubled);
        compareWorst(
                seed + ", all doubled",
                plain.head(),
                RandomFields.run(scaled, EXACT, RandomFields.DAYS).head(),
                1e-6,
                "1e-6: the same equation",
                findings);
        compareWorst(
                seed + ", rates doubled",
                times(2, plain.head()),
                RandomFields.run(problem.withBores(doubled), EXACT, RandomFields.DAYS)
                        .head(),
                1e-5,
                "1e-5: runs with a step error of 1e-6 m",
                findings);
    }

    private static double rate(Bore bore) {
        var pumped = (Operation.PumpedRate) bore.operationAt(0);
        return pumped.rate().at(0);
    }

    private static double[] times(double factor, double[] values) {
        return Arrays.stream(values).map(value -> factor * value).toArray();
    }

    private static void rest(Random random, String seed, Findings findings) {
        FlowProblem problem = RandomFields.problem(random);
        Ending still = RandomFields.run(problem.withBores(List.of()), 1e-3, 10_000);
        double largest = Arrays.stream(still.head()).map(Math::abs).max().orElseThrow();
        findings.compare(Comparison.withFormula(
                seed + ", largest head after 10,000 days", "m", 0, largest, new Tolerance(1e-9, "rounding")));
    }

    private static void refinementElsewhere(Random random, String seed, Findings findings) {
        double rate = 1000 + 1000 * random.nextDouble();
        double x = 3000 + 500 * random.nextDouble();
        double y = 10_000 + 500 * random.nextDouble();
        double[] edges = new double[41];
        for (int i = 0; i < edges.length; i++) {
            edges[i] = 500 * i;
        }
        double[] finer = new double[edges.length + 12];
        System.arraycopy(edges, 0, finer, 0, 29);
        for (int i = 0; i < 24; i++) {
            finer[29 + i] = 14_000 + 250 * (i + 1);
        }
        Axis rows = Axis.uniform(0, 500, 40);
        Ending plain = homogeneous(new RectilinearGrid(Axis.ofEdges(edges), rows), x, y, rate);
        Ending refined = homogeneous(new RectilinearGrid(Axis.ofEdges(finer), rows), x, y, rate);
        double expected = -plain.wallHead()[0];
        findings.compare(Comparison.withFormula(
                seed + ", drawdown in the bore",
                "m",
                expected,
                -refined.wallHead()[0],
                new Tolerance(2e-3, "1 mm of time error in each run")));
    }

    private static Ending homogeneous(RectilinearGrid grid, double x, double y, double rate) {
        FlowProblem problem = new FlowProblem(
                Aquifer.homogeneous(grid, 200, 2e-4),
                Optional.empty(),
                RandomFields.rim(grid),
                List.of(),
                List.of(),
                List.of(RandomFields.pumped("A", x, y, rate)));
        return RandomFields.run(problem, 1e-3, RandomFields.DAYS);
    }

    private static void restart(Random random, String seed, Findings findings) {
        FlowProblem problem = RandomFields.problem(random);
        FlowProblem dry = new FlowProblem(
                problem.aquifer(), Optional.empty(), problem.boundaries(), List.of(), List.of(), problem.bores());
        double half = 0.5 * RandomFields.DAYS;
        Ending unbroken = RandomFields.run(dry, 1e-5, RandomFields.DAYS);
        Ending first = RandomFields.run(dry, 1e-5, half);
        Ending second = RandomFields.run(dry, first.head(), half, RandomFields.DAYS, 1e-5);
        Tolerance bar = new Tolerance(1e-4, "some steps of 1e-5 m each");
        for (int i = 0; i < unbroken.wallHead().length; i++) {
            findings.compare(Comparison.withFormula(
                    seed + ", head in bore " + i, "m", unbroken.wallHead()[i], second.wallHead()[i], bar));
        }
        int worst = 0;
        for (int i = 0; i < unbroken.head().length; i++) {
            if (Math.abs(unbroken.head()[i] - second.head()[i])
                    > Math.abs(unbroken.head()[worst] - second.head()[worst])) {
                worst = i;
            }
        }
        findings.compare(Comparison.withFormula(
                seed + ", head of the cell that differs most", "m", unbroken.head()[worst], second.head()[worst], bar));
    }
}
