package org.headfall.scenarios.report;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LeftOut;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.report.content.WhatIf;
import org.headfall.scenarios.results.FinishedRun;

/** Which limits of a run a reader who changes its rates can have judged again, and why the others cannot. */
final class WhatIfConditions {

    private final FinishedRun run;
    private final RunDescription description;
    private final List<WhatIf.Taker> takers;
    private final List<WhatIf.Condition> judged = new ArrayList<>();
    private final List<WhatIf.NotJudged> notJudged = new ArrayList<>();

    /**
     * Sorts the limits.
     *
     * @param run the run
     * @param takers what its bores and springs do
     */
    WhatIfConditions(FinishedRun run, List<WhatIf.Taker> takers) {
        this.run = run;
        this.description = run.description();
        this.takers = takers;
        for (int i = 0; i < run.limits().size(); i++) {
            Limit limit = run.limits().get(i).limit();
            Optional<String> obstacle = obstacle(limit, run.limits().get(i).outcome());
            if (obstacle.isPresent()) {
                notJudged.add(new WhatIf.NotJudged(i, obstacle.get()));
            } else {
                judged.add(condition(i, limit));
            }
        }
    }

    List<WhatIf.Condition> judged() {
        return judged;
    }

    List<WhatIf.NotJudged> notJudged() {
        return notJudged;
    }

    /** Why the page cannot judge a limit, as a sentence; nothing if it can. */
    private Optional<String> obstacle(Limit limit, Outcome outcome) {
        if (outcome instanceof Outcome.NotEvaluated missing) {
            return Optional.of(missing.reason());
        }
        if (quantity(limit.quantity()).isEmpty()) {
            return Optional.of("It limits " + limit.quantity().words() + ", not a head or a fall of head.");
        }
        if (!(limit.place() instanceof LimitPlace.AtStation)) {
            return Optional.of("It holds for a part of the map; heads are found at bores, springs and points only.");
        }
        if (limit.period().afterTakingStops()) {
            return Optional.of("It counts on after the run, when taking has stopped.");
        }
        if (!limit.needsOtherRun()) {
            return Optional.empty();
        }
        return LeftOut.any(limit.comparison())
                ? unknownWithout(limit.comparison())
                : Optional.of(
                        "It is compared with " + limit.comparison().words() + ", of which no heads are kept here.");
    }

    /** What stays when some bores are left out has to follow a known rule, or its change of discharge is not known. */
    private Optional<String> unknownWithout(Comparison comparison) {
        BitSet left = LeftOut.bores(description, comparison);
        return IntStream.range(0, takers.size())
                .filter(cause -> !left.get(cause))
                .filter(cause -> takers.get(cause).rule() == WhatIf.Rule.OTHER || isCutBack(cause))
                .mapToObj(cause -> description.stations().get(cause).name()
                        + " would give another discharge without the " + comparison.cause()
                        + ", which this page cannot find: its pump or the loss in it follows no rule known here.")
                .findFirst();
    }

    private boolean isCutBack(int cause) {
        StationSeries series = run.recording().series().get(cause);
        return takers.get(cause).rule() == WhatIf.Rule.RATE
                && IntStream.range(0, series.days().length)
                        .anyMatch(i -> RunSites.isCutBack(series.wantedDischarge()[i], series.discharge()[i]));
    }

    private WhatIf.Condition condition(int place, Limit limit) {
        List<Integer> causes = limit.needsOtherRun()
                ? LeftOut.bores(description, limit.comparison()).stream()
                        .boxed()
                        .toList()
                : List.of();
        return new WhatIf.Condition(
                place,
                description.stationIndex(limit.station()),
                quantity(limit.quantity()).orElseThrow(),
                causes,
                reference(limit.comparison()),
                limit.period().fromDay(),
                limit.period().toDay().orElse(description.endDay()),
                limit.quantity() instanceof LimitedQuantity.DeclineRate decline ? decline.overYears() : 0);
    }

    /** What a drawdown is measured from if not from another run. */
    private static WhatIf.Reference reference(Comparison comparison) {
        if (comparison instanceof Comparison.OnDay on) {
            return new WhatIf.Reference(on.day(), on.day());
        }
        return comparison instanceof Comparison.MeanOfYears mean
                ? new WhatIf.Reference(mean.fromDay(), mean.toDay())
                : new WhatIf.Reference(0, 0);
    }

    /** What the page can judge: it knows heads, but no discharges, volumes or distances of limits. */
    private static Optional<WhatIf.Limited> quantity(LimitedQuantity quantity) {
        if (quantity instanceof LimitedQuantity.FloorLevel) {
            return Optional.of(WhatIf.Limited.FLOOR_LEVEL);
        }
        if (quantity instanceof LimitedQuantity.DeclineRate) {
            return Optional.of(WhatIf.Limited.DECLINE_RATE);
        }
        return quantity instanceof LimitedQuantity.Drawdown ? Optional.of(WhatIf.Limited.DRAWDOWN) : Optional.empty();
    }
}
