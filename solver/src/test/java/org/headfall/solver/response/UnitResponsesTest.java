package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The reference is the simulation, which knows nothing of Laplace space, with one bore pumped and steps held tightly. */
class UnitResponsesTest {

    private static final double RATE = 1000;
    private static final double END = 400;
    private static final double[] DAYS = {0.002, 0.013, 0.11, 0.9, 7, 42, 180, END};

    /** The second bore stands in the cell of the first, the third some cells off. */
    private static final double[] EASTINGS = {10_130, 10_320, 13_580};

    private static final double[] POINT = {9_400, 6_600};

    static Stream<FlowProblem> problems() {
        FlowProblem field = InterferenceTest.field();
        FlowProblem closed =
                new FlowProblem(field.aquifer(), Optional.empty(), List.of(), List.of(), List.of(), bores(-1));
        FlowProblem underBed = new FlowProblem(
                field.aquifer(), field.sealingBed(), field.boundaries(), List.of(), List.of(), bores(-1));
        FlowProblem besideHead =
                new FlowProblem(field.aquifer(), Optional.empty(), field.boundaries(), List.of(), List.of(), bores(-1));
        return Stream.of(underBed, besideHead, closed, island(field));
    }

    /** The bores stand in a part of the aquifer that dead cells part from the given head: nothing holds its heads. */
    private static FlowProblem island(FlowProblem field) {
        Aquifer whole = field.aquifer();
        boolean[] active = whole.active().clone();
        for (int cell = 0; cell < active.length; cell++) {
            active[cell] &= whole.grid().column(cell) != 12;
        }
        Aquifer parted = new Aquifer(
                whole.grid(),
                whole.transmissivityX(),
                whole.transmissivityY(),
                whole.storativity(),
                whole.top(),
                whole.bottom(),
                active);
        return new FlowProblem(parted, Optional.empty(), field.boundaries(), List.of(), List.of(), bores(-1));
    }

    private static List<Bore> bores(int pumped) {
        Operation operation = new Operation.PumpedRate(Schedule.constant(RATE), OptionalDouble.empty());
        List<Bore> bores = new ArrayList<>();
        for (int i = 0; i < EASTINGS.length; i++) {
            List<OperatingPhase> phases = i == pumped ? List.of(new OperatingPhase(0, operation)) : List.of();
            bores.add(new Bore("bore " + i, EASTINGS[i], 7_310, 0.1, new WellLoss(0, 0), phases));
        }
        return bores;
    }

    private static ObservedHead point(FlowProblem problem) {
        return new ObservedHead(problem.aquifer(), POINT[0], POINT[1], problem.nearFields());
    }

    /**
     * Under a storing bed, beside a given head, in a closed aquifer and a closed part of one: to 0.01 mm for 1,000 m³/d, and to
     * the share that is stated.
     */
    @ParameterizedTest
    @MethodSource("problems")
    void agreeWithTheSimulation(FlowProblem problem) {
        ObservedHead point = point(problem);
        UnitResponses responses = UnitResponses.of(problem, List.of(point), END, 1);
        double[] start = InterferenceTest.level(problem.aquifer().grid().cellCount(), InterferenceTest.START_HEAD);
        for (int cause = 0; cause < EASTINGS.length; cause++) {
            int pumped = cause;
            double stated = SuperpositionError.SHARE_OF_RESPONSES
                    * RATE
                    * responses.table().largestEffects()[pumped];
            Settings tight = new Settings(1e-7, Double.POSITIVE_INFINITY, 1);
            try (Simulation simulation = new Simulation(problem.withBores(bores(cause)), tight)) {
                simulation.run(start, 0, END, DAYS, state -> {
                    for (int receptor = 0; receptor <= EASTINGS.length; receptor++) {
                        double head = receptor < EASTINGS.length
                                ? state.boreWallHead()[receptor]
                                : point.at(state.head(), state.boreRate());
                        double response = RATE * responses.at(receptor, pumped, state.day());
                        assertEquals(
                                InterferenceTest.START_HEAD - head,
                                response,
                                Math.min(1e-5, stated),
                                receptor + " by " + pumped + " on day " + state.day());
                    }
                });
            }
        }
    }

    /**
     * Drawdown by a pumped bore at itself never falls. At others it may in the first moments, since weights of the near
     * field change sign: by 0.014 mm at most for 1,000 m³/d here, in the simulation too.
     */
    @ParameterizedTest
    @MethodSource("problems")
    void neverFall(FlowProblem problem) {
        UnitResponses responses = UnitResponses.of(problem, List.of(point(problem)), END, 1);
        for (int receptor = 0; receptor < responses.receptors(); receptor++) {
            for (int cause = 0; cause < responses.causes(); cause++) {
                double allowed = receptor == cause ? 0 : 2e-5 / RATE;
                double before = responses.at(receptor, cause, 1e-3);
                for (double time = 1e-3; time < END; time *= 1.05) {
                    double now = responses.at(receptor, cause, time);
                    assertTrue(now >= before - allowed, receptor + " by " + cause + " after " + time + " d");
                    before = now;
                }
            }
        }
    }

    /** Bores at one place are one bore, whichever of them is pumped. */
    @Test
    void takeBoresAtOnePlaceForOne() {
        List<Bore> bores = new ArrayList<>(bores(-1));
        Bore first = bores.get(0);
        bores.add(new Bore("again", first.x(), first.y(), first.screenRadius(), first.wellLoss(), List.of()));
        FlowProblem problem = InterferenceTest.field().withBores(bores);
        UnitResponses responses = UnitResponses.of(problem, List.of(), END, 1);
        for (double time : new double[] {0.01, 1, END}) {
            double own = responses.at(0, 0, time);
            assertEquals(own, responses.at(3, 0, time), 1e-8 * own);
            assertEquals(own, responses.at(3, 3, time), 1e-8 * own);
            assertEquals(responses.at(2, 0, time), responses.at(2, 3, time), 1e-8 * own);
        }
    }
}
