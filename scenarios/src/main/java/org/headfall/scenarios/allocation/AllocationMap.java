package org.headfall.scenarios.allocation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.headfall.scenarios.planning.PlanningRates;
import org.headfall.scenarios.planning.PlanningRates.Kind;
import org.headfall.scenarios.planning.PlanningRates.Mark;
import org.headfall.scenarios.planning.PlanningTable;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.recording.Station;

/** Where rates are taken, and what is to be said of limits at each place. */
final class AllocationMap {

    private final AllocationResult result;
    private final Map<String, AllocationResult.BoreRates> sharing;

    /** Words for the mean taking of each bore: the figures of the table. */
    private final Map<String, String> means;

    /**
     * The map of an allocation.
     *
     * @param result the allocation
     * @param yields its table of yields: bore, ML/yr, L/s
     */
    AllocationMap(AllocationResult result, PlanningTable yields) {
        this.result = result;
        sharing = result.bores().stream()
                .collect(Collectors.toMap(AllocationResult.BoreRates::name, Function.identity()));
        means = yields.rows().stream()
                .collect(Collectors.toMap(row -> row.get(0), row -> row.get(2) + " L/s, " + row.get(1) + " ML/yr"));
    }

    /** Words for the mean taking of a bore. */
    String mean(AllocationResult.BoreRates bore) {
        return Objects.requireNonNull(means.get(bore.name()), bore.name());
    }

    double[] x() {
        return result.run().grid().x().centres();
    }

    double[] y() {
        return result.run().grid().y().centres();
    }

    /** Whether each cell is of the aquifer. */
    boolean[] inside() {
        return result.run().aquifer().active();
    }

    List<PlanningRates.Place> places() {
        return result.run().stations().stream().map(this::place).toList();
    }

    private PlanningRates.Place place(Station station) {
        List<AllocationResult.Kept> here = result.requirements().stream()
                .filter(one -> one.places().contains(station.name()))
                .toList();
        AllocationResult.BoreRates bore = sharing.get(station.name());
        List<String> words = new ArrayList<>();
        if (bore != null) {
            words.add(bore.rests() ? "rests" : mean(bore) + " on average");
        } else if (station instanceof Station.BoreSite other) {
            words.add(other.operation());
        }
        here.forEach(one -> words.add(
                one.givesWay()
                        ? AllocationWords.kept(result, one) + "; has to give way"
                        : AllocationWords.kept(result, one)));
        double rate = bore == null ? 0 : DischargeUnit.LITRES_PER_SECOND.of(bore.yield());
        return new PlanningRates.Place(
                kind(station, bore), station.name(), station.x(), station.y(), rate, mark(here), words);
    }

    private static Kind kind(Station station, AllocationResult.@org.jspecify.annotations.Nullable BoreRates bore) {
        if (bore != null) {
            return bore.rests() ? Kind.RESTING : Kind.SHARING;
        }
        if (station instanceof Station.BoreSite) {
            return Kind.BORE;
        }
        return station instanceof Station.SpringSite ? Kind.SPRING : Kind.POINT;
    }

    /** What a bore itself can give is marked where it holds the rate back only, as every bore has some. */
    private Mark mark(List<AllocationResult.Kept> here) {
        if (here.stream().anyMatch(AllocationResult.Kept::givesWay)) {
            return Mark.GIVES_WAY;
        }
        if (here.stream().anyMatch(AllocationResult.Kept::binds)) {
            return Mark.BINDS;
        }
        return here.stream().anyMatch(AllocationResult.Kept::ofDocument) ? Mark.KEPT : Mark.NONE;
    }
}
