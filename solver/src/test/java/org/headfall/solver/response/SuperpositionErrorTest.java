package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.headfall.solver.analytic.function.WellFunction;
import org.junit.jupiter.api.Test;

/** A curve of Theis (1935) for each of two causes, at two receptors: T = 100 m²/d, S = 1e-4, at 100 m and at 500 m. */
class SuperpositionErrorTest {

    private static final double T = 100;
    private static final double TOLERANCE = 1e-4;
    private static final double END = 3000;
    private static final double[] REFERENCE = {50, 0};

    /** Of each cause at its own receptor, by and large (d/m²). */
    private static final double[] LARGEST = {0.012, 0.008};

    private static ResponseTable table() {
        double[] times = ShiftLadder.times(1e-3, END);
        double[] scale = {100.0 * 100.0 * 1e-4 / (4 * T), 500.0 * 500.0 * 1e-4 / (4 * T)};
        double[][] values = new double[times.length][4];
        double[][] rates = new double[times.length][4];
        for (int i = 0; i < times.length; i++) {
            for (int curve = 0; curve < 4; curve++) {
                double of = scale[curve == 0 || curve == 3 ? 0 : 1];
                values[i][curve] = WellFunction.of(of / times[i]) / (4 * Math.PI * T);
                rates[i][curve] = Math.exp(-of / times[i]) / times[i] / (4 * Math.PI * T);
            }
        }
        return new ResponseTable(2, times, new double[4], values, rates);
    }

    /** Discharges held from the start on: what modes say is off from the table by no more than is stated. */
    @Test
    void whatModesAreOffByIsWithinTheError() {
        ResponseTable table = table();
        SharedModes modes = SharedModes.of(table);
        double[] change = {1450, 900};
        SuperpositionError error = new SuperpositionError(modes, LARGEST, REFERENCE, TOLERANCE);
        error.step(0, new double[] {REFERENCE[0] + change[0], REFERENCE[1] + change[1]});
        double largest = 0;
        for (double time : Arrays.stream(table.times()).filter(t -> t > 0.02).toArray()) {
            Superposition superposition = new Superposition(modes);
            superposition.lookAhead(time, change, change);
            for (int receptor = 0; receptor < 2; receptor++) {
                double expected = change[0] * table.at(receptor, 0, time) + change[1] * table.at(receptor, 1, time);
                largest = Math.max(largest, Math.abs(expected - superposition.drawdown(receptor)));
            }
        }
        double stated = error.until(END);
        assertTrue(largest > 0 && largest <= stated, "off by " + largest + ", stated " + stated);
        assertTrue(stated < 1e-3, "stated " + stated);
        assertEquals(stated, error.ofModes(END, 1450), stated * 0.5, "both moved by as much as the first");
        assertTrue(error.ofModes(END, 1450) >= stated, "the second has moved by less");
    }

    /** The worst step counts, the tolerance of rules once and only if some were met; moving back takes nothing away. */
    @Test
    void partsAddUp() {
        SharedModes modes = SharedModes.of(table());
        SuperpositionError error = new SuperpositionError(modes, LARGEST, REFERENCE, TOLERANCE);
        assertEquals(0, error.until(END), "nothing has moved");
        error.step(3e-4, REFERENCE);
        error.step(1e-4, REFERENCE);
        assertEquals(3e-4, error.until(END), 1e-15);
        error.meetRules();
        error.meetRules();
        assertEquals(3e-4 + TOLERANCE, error.until(END), 1e-15);
        error.step(0, new double[] {REFERENCE[0] + 2000, 2000});
        error.step(0, REFERENCE);
        assertEquals(3e-4 + TOLERANCE + error.ofModes(END, 2000), error.until(END), 1e-12);
    }

    /** A millionth of what each cause does at most where it does most, and none of it in the error of superposing. */
    @Test
    void whatResponsesAreOffByStandsApart() {
        SuperpositionError error = new SuperpositionError(SharedModes.of(table()), LARGEST, REFERENCE, TOLERANCE);
        error.step(0, new double[] {1050, 300});
        double superposing = error.until(END);
        error.step(0, REFERENCE);
        assertEquals(1e-6 * (0.012 * 1000 + 0.008 * 300), error.ofResponses(), 1e-18);
        assertEquals(1e-6 * (0.012 + 0.008) * 500, error.ofResponses(500), 1e-18);
        assertEquals(superposing, error.until(END));
    }

    @Test
    void copiesGoOnByThemselves() {
        SuperpositionError error = new SuperpositionError(SharedModes.of(table()), LARGEST, REFERENCE, TOLERANCE);
        error.step(3e-4, REFERENCE);
        SuperpositionError copy = error.copy();
        copy.meetRules();
        copy.step(5e-4, REFERENCE);
        assertEquals(3e-4, error.until(END), 1e-15);
        assertEquals(5e-4 + TOLERANCE, copy.until(END), 1e-15);
    }
}
