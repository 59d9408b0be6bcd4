package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.headfall.solver.allocation.Programme;

/**
 * Programmes that are solved one after another, each keeping what those before it have got: the yields of holders in the
 * order of their seniority, then the goal (lexicographic programming; Isermann 1982, OR Spektrum 4, 223-228).
 */
final class ServedInTurn {

    private static final double KEPT_SHARE = 1 - 1e-6;

    private final SharedWater water;
    private final List<Wish> wishes;
    private final List<Turn> turns = new ArrayList<>();

    /** A programme that was solved, with all that it had to keep and how what it got is kept for those after it. */
    private record Turn(String name, Programme programme, List<Wish> kept) {
        Turn {
            kept = List.copyOf(kept);
        }
    }

    /**
     * Nobody has been served yet.
     *
     * @param water the requirements
     * @param wishes what must be kept by everyone
     */
    ServedInTurn(SharedWater water, List<Wish> wishes) {
        this.water = water;
        this.wishes = new ArrayList<>(wishes);
    }

    /**
     * Serves somebody, and keeps what was got for those who follow.
     *
     * @param name of what is wanted
     * @param programme what is wanted
     * @param atMost the wish that the value of the programme stays at most at what it is given
     * @param relaxed receives by how much each requirement had to give way
     */
    void serve(String name, Programme programme, DoubleFunction<Wish> atMost, double[] relaxed) {
        SharedWater.Best best = last(name, programme, relaxed);
        wishes.add(atMost.apply(best.value() * KEPT_SHARE));
    }

    /**
     * Serves the last.
     *
     * @param name of what is wanted
     * @param programme what is wanted
     * @param relaxed receives by how much each requirement had to give way
     * @return the rates
     */
    SharedWater.Best last(String name, Programme programme, double[] relaxed) {
        turns.add(new Turn(name, programme, wishes));
        return water.solve(name, programme, wishes, relaxed);
    }

    /**
     * Serves the last anew, who wants something else now.
     *
     * @param programme what is wanted
     * @param relaxed receives by how much each requirement had to give way
     * @return the rates
     */
    SharedWater.Best lastAgain(Programme programme, double[] relaxed) {
        Turn last = turns.remove(turns.size() - 1);
        turns.add(new Turn(last.name(), programme, last.kept()));
        return water.solve(last.name(), programme, last.kept(), relaxed);
    }

    /** What the last wants. */
    Programme wanted() {
        return turns.get(turns.size() - 1).programme();
    }

    /** What the last had to keep besides the requirements. */
    List<Wish> wishes() {
        return List.copyOf(wishes);
    }

    /**
     * What requirements cost the last, with all others served anew: a unit more of a requirement lowers the value of turn j by
     * {@code P_j = p_j - sum over i < j of q_ij P_i}, with p_j its price where all that those before have got stays, and q_ij the price of
     * what turn i has got.
     *
     * @return by how much what the last wants to be small would fall for a unit more of each requirement; negative where
     *     those before take more of it than it gives
     */
    double[] prices() {
        List<double[]> inTurn = new ArrayList<>();
        for (Turn turn : turns) {
            SharedWater.Prices prices = water.prices(turn.name(), turn.programme(), turn.kept());
            double[] own = prices.ofRequirements();
            int first = turn.kept().size() - inTurn.size();
            for (int i = 0; i < inTurn.size(); i++) {
                for (int r = 0; r < own.length; r++) {
                    own[r] -= prices.ofWishes()[first + i] * KEPT_SHARE * inTurn.get(i)[r];
                }
            }
            inTurn.add(own);
        }
        return inTurn.get(inTurn.size() - 1);
    }
}
