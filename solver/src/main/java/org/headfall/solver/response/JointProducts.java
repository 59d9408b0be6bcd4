package org.headfall.solver.response;

import org.ejml.data.DMatrixRMaj;
import org.headfall.solver.flow.SourceFields;
import org.headfall.solver.flow.TransferValues;

/**
 * Products of the solutions of several sources at all shifts, each over its norm and with its even part taken out, so that it
 * stands at right angles to an even fall of all heads. They follow from transfer functions as in {@link ReducedModel}, with
 * {@code H_ij} of two sources in place of H. Solutions are numbered source after source.
 */
final class JointProducts {

    private final TransferValues transfer;
    private final int[] places;
    private final double evenNorm;
    private final double evenStiffness;
    private final double[] norms;
    private final double[] evenPart;
    private final double[] passed;
    private final DMatrixRMaj mass;
    private final DMatrixRMaj stiffness;

    /**
     * Products.
     *
     * @param transfer transfer functions among all places
     * @param fields what the solutions mean for the water balance
     * @param sources numbers of the sources
     * @param places their places in the transfer functions
     */
    JointProducts(TransferValues transfer, SourceFields fields, int[] sources, int[] places) {
        this.transfer = transfer;
        this.places = places;
        int shifts = transfer.shifts().length;
        int solutions = sources.length * shifts;
        evenNorm = Math.sqrt(fields.releasedByEvenFall());
        evenStiffness = fields.passedByEvenFall() / fields.releasedByEvenFall();
        norms = new double[solutions];
        evenPart = new double[solutions];
        passed = new double[solutions];
        for (int i = 0; i < sources.length; i++) {
            double[] falls = transfer.falls(places[i], places[i]);
            double[] released = fields.released(sources[i]);
            double[] through = fields.passed(sources[i]);
            for (int a = 0; a < shifts; a++) {
                int solution = i * shifts + a;
                // A source that cancels out does nothing, and is never chosen.
                norms[solution] = falls[a] > 0 ? Math.sqrt(falls[a]) : Double.POSITIVE_INFINITY;
                evenPart[solution] = released[a] / (norms[solution] * evenNorm);
                passed[solution] = through[a] / (norms[solution] * evenNorm);
            }
        }
        mass = new DMatrixRMaj(solutions, solutions);
        stiffness = new DMatrixRMaj(solutions, solutions);
        for (int i = 0; i < sources.length; i++) {
            for (int j = 0; j < sources.length; j++) {
                setPair(i, j);
            }
        }
    }

    private void setPair(int i, int j) {
        double[] shifts = transfer.shifts();
        double[] values = transfer.values(places[i], places[j]);
        double[] falls = transfer.falls(places[i], places[j]);
        for (int a = 0; a < shifts.length; a++) {
            for (int b = 0; b < shifts.length; b++) {
                double apart = shifts[a] - shifts[b];
                if (a == b) {
                    set(i * shifts.length + a, j * shifts.length + a, falls[a], values[a] - shifts[a] * falls[a]);
                } else {
                    set(
                            i * shifts.length + a,
                            j * shifts.length + b,
                            (values[b] - values[a]) / apart,
                            (shifts[a] * values[a] - shifts[b] * values[b]) / apart);
                }
            }
        }
    }

    private void set(int row, int column, double m, double l) {
        double norm = norms[row] * norms[column];
        mass.set(row, column, m / norm - evenPart[row] * evenPart[column]);
        double ofEven = evenPart[row] * passed[column] + passed[row] * evenPart[column];
        stiffness.set(row, column, l / norm - ofEven + evenPart[row] * evenPart[column] * evenStiffness);
    }

    /** Norm of an even fall by one metre (m). */
    double evenNorm() {
        return evenNorm;
    }

    /** Stiffness of an even fall, over the square of its norm (1/d). */
    double evenStiffness() {
        return evenStiffness;
    }

    /** Norm of a solution: the square root of its product with itself, infinite if the source cancels out. */
    double norm(int solution) {
        return norms[solution];
    }

    /** Part of a solution that is an even fall, each over its norm (-). */
    double evenPart(int solution) {
        return evenPart[solution];
    }

    /** Stiffness between what is left of a solution and an even fall (1/d). */
    double stiffnessToEven(int solution) {
        return passed[solution] - evenPart[solution] * evenStiffness;
    }

    /** Stiffness between what is left of two solutions (1/d). */
    double stiffness(int one, int other) {
        return stiffness.get(one, other);
    }

    /** Products of what is left of all solutions; not to be changed. */
    DMatrixRMaj mass() {
        return mass;
    }

    /** How strongly a source drives a solution, even part included: its transfer function there, over the norm. */
    double driven(int solution, int source) {
        int shifts = transfer.shifts().length;
        return transfer.values(places[solution / shifts], places[source])[solution % shifts] / norms[solution];
    }
}
