package org.headfall.scenarios.siting;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitMargins;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.VolumeAccount;
import org.headfall.scenarios.quantity.VolumeUnit;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.scenario.BoreSelection;
import org.headfall.scenarios.scenario.SitingSpecification;

/**
 * What a run leaves of a limit on the volume of some bores to new bores that are some of them, by parts of water years. An
 * account only grows within a water year, so the end of each part that counts decides; what a steady rate takes until then is
 * the same wherever the bore stands. What free-flowing bores among them give less by the new ones is not counted: less is
 * taken in all than this says, never more.
 */
final class VolumeHeadroom {

    /** Days of a water year without a 29 February. */
    private static final double SHORTEST_YEAR = 365;

    private final Limit limit;
    private final double[] days;
    private final double[] margins;
    private final double[] perRate;
    private final boolean holdsAWholeYear;

    /** Days until which an account runs, what is left then (ML), and what a unit rate takes by then (ML by m³/d). */
    private record Part(double day, double margin, double perRate) {}

    private VolumeHeadroom(Limit limit, List<Part> parts, boolean holdsAWholeYear) {
        this.limit = limit;
        days = parts.stream().mapToDouble(Part::day).toArray();
        margins = parts.stream().mapToDouble(Part::margin).toArray();
        perRate = parts.stream().mapToDouble(Part::perRate).toArray();
        this.holdsAWholeYear = holdsAWholeYear;
    }

    /**
     * Headroom of a limit.
     *
     * @param limit a limit on volume without an {@linkplain #obstacle obstacle}
     * @param base the run without new bores
     * @param last day on which the new bores stop (d); they take from the start on
     */
    static VolumeHeadroom of(Limit limit, RunInMemory base, double last) {
        RunDescription run = base.plan().description();
        LimitMargins series = base.margins(limit);
        LimitedQuantity.Volume quantity = (LimitedQuantity.Volume) limit.quantity();
        List<VolumeAccount.Part> taking = new VolumeAccount(run, limit.place(), quantity)
                .parts(limit.period(), run.endDay()).stream()
                        .filter(part -> taken(part, last) > 0)
                        .toList();
        double longest =
                taking.stream().mapToDouble(part -> taken(part, last)).max().orElse(0);
        return new VolumeHeadroom(
                limit,
                taking.stream()
                        .map(part -> new Part(
                                part.toDay(),
                                StationSeries.interpolate(series.days(), series.margins(), part.toDay()),
                                VolumeUnit.MEGALITRES.of(taken(part, last))))
                        .toList(),
                longest >= SHORTEST_YEAR);
    }

    /** Days of a part on which a new bore takes; what it took before the part but in the same water year counts as well. */
    private static double taken(VolumeAccount.Part part, double last) {
        return Math.min(part.toDay(), last) - Math.max(0, part.fromDay());
    }

    /**
     * Why new bores do not count for a limit on volume.
     *
     * @param limit the limit
     * @param siting whose bores are looked for
     * @return the reason in words that go on after its name; absent if they count
     */
    static Optional<String> obstacle(Limit limit, SitingSpecification siting) {
        boolean counts = limit.place() instanceof LimitPlace.Together together
                && groups(siting.holder()).contains(together.selection());
        return counts
                ? Optional.empty()
                : Optional.of("counts the taking of " + limit.place().words() + " only");
    }

    /** Groups that new bores belong to: they are part of the proposal, and of no class of users. */
    private static Set<BoreSelection> groups(String holder) {
        BoreSelection all = new BoreSelection.All();
        BoreSelection proposed = new BoreSelection.Proposed();
        return holder.isEmpty() ? Set.of(all, proposed) : Set.of(all, proposed, new BoreSelection.OfHolder(holder));
    }

    /** Largest rate of one more bore that keeps the limit (m³/d): negative where it is crossed, infinite if nothing counts. */
    double largestRate() {
        return IntStream.range(0, days.length)
                .mapToDouble(part -> margins[part] / perRate[part])
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** Counts a bore. */
    void use(double rate) {
        for (int part = 0; part < days.length; part++) {
            margins[part] -= rate * perRate[part];
        }
    }

    /** What a bore takes of the limit in the part of which least is left; absent if nothing counts. */
    Optional<Site.Effect> effect(double rate) {
        OptionalInt least = IntStream.range(0, days.length).reduce((a, b) -> margins[b] < margins[a] ? b : a);
        return least.stream()
                .mapToObj(part -> new Site.Effect(
                        words(), limit.quantity().unit(), days[part], rate * perRate[part], margins[part]))
                .findFirst();
    }

    /** What it is, for tables. */
    String words() {
        return limit.nameAndPlace();
    }

    /** What to say where no whole water year is counted, in which the rate would take more than in the parts that are. */
    Optional<String> caution() {
        return holdsAWholeYear || days.length == 0
                ? Optional.empty()
                : Optional.of(
                        "Of '" + words() + "' only parts of water years in which new bores take are counted: the rates"
                                + " found may break it in a whole year.");
    }
}
