package org.headfall.scenarios.limits;

import java.util.BitSet;
import java.util.List;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;

/** Which bores a comparison leaves out. */
public final class LeftOut {

    private LeftOut() {}

    /** Whether the comparison is with the same run without some bores. */
    public static boolean any(Comparison comparison) {
        return comparison instanceof Comparison.WithoutAnyBore
                || comparison instanceof Comparison.WithoutProposedBores
                || comparison instanceof Comparison.WithoutHolder
                || comparison instanceof Comparison.WithoutBores;
    }

    /**
     * The bores.
     *
     * @param description the run
     * @param comparison the comparison
     * @return bores by their place in the run; all if the comparison is not with a run without some
     */
    public static BitSet bores(RunDescription description, Comparison comparison) {
        List<Station.BoreSite> bores = description.bores();
        BitSet out = new BitSet();
        for (int i = 0; i < bores.size(); i++) {
            out.set(i, leaves(comparison, bores.get(i)));
        }
        return out;
    }

    private static boolean leaves(Comparison comparison, Station.BoreSite bore) {
        if (comparison instanceof Comparison.WithoutHolder without) {
            return bore.holder().equals(without.holder());
        }
        if (comparison instanceof Comparison.WithoutBores without) {
            return without.bores().contains(bore.name());
        }
        return !(comparison instanceof Comparison.WithoutProposedBores) || bore.proposed();
    }
}
