package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.AllocationSpecification;
import org.headfall.scenarios.scenario.AllocationSpecification.Goal;
import org.headfall.scenarios.scenario.AllocationSpecification.HolderMinimum;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.scenario.Season;
import org.headfall.scenarios.scenario.StatedRate;
import org.jspecify.annotations.Nullable;

/** Reads how bores are to share the water. */
final class AllocationReader {
    static final Map<String, Goal> GOALS = new TreeMap<>(Map.of(
            "largest yield", Goal.LARGEST_YIELD,
            "least energy", Goal.LEAST_ENERGY,
            "least effect on springs", Goal.LEAST_EFFECT_ON_SPRINGS));

    private static final AllowedRange RATE = AllowedRange.positiveUpTo(1e7);

    /** Rates that differ by less than this factor are the same, written in other units. */
    private static final double ROUNDING = 1 + 1e-9;

    private static final AllowedRange YEARS = AllowedRange.between(1, 1000);

    private final Inputs inputs;
    private final List<BoreSpecification> bores;
    private final @Nullable Period period;
    private final KnownBores known;

    AllocationReader(Inputs inputs, List<BoreSpecification> bores, @Nullable Period period, KnownBores known) {
        this.inputs = inputs;
        this.bores = bores;
        this.period = period;
        this.known = known;
    }

    Optional<AllocationSpecification> read(Section document) {
        @Nullable Section section = document.optionalSection("allocation");
        return section == null ? Optional.empty() : Optional.ofNullable(allocation(section));
    }

    private @Nullable AllocationSpecification allocation(Section section) {
        @Nullable Goal goal = section.choice("goal", GOALS);
        List<String> names = names(section);
        @Nullable Quantity largest = section.quantity("largest_rate", Dimension.RATE, RATE);
        double days = PlanningTimes.days(section, period);
        @Nullable Quantity total = section.optionalQuantity("total", Dimension.RATE, RATE);
        List<Season> seasons = seasons(section);
        int years = years(section, days);
        List<HolderMinimum> minimums = minimums(section, names, largest);
        List<String> seniority = holders(section, "seniority");
        @Nullable
        Quantity delivery = section.optionalQuantity("delivery_head", Dimension.LENGTH, AllowedRange.between(0, 5000));
        @Nullable Quantity efficiency = section.quantity("efficiency", Dimension.NUMBER, AllowedRange.positiveUpTo(1));
        section.done();
        if (total != null && largest != null && known.complete()) {
            refuseUnreachable(section, total, goal, names.size() * largest.value(), minimums);
        }
        if (goal != null && goal != Goal.LARGEST_YIELD && !section.has("total")) {
            section.refuse(
                    "goal", Finding.of(ProblemKind.CONFLICTING_KEYS, "no total", "this goal with the key total"));
        }
        return goal == null || largest == null || efficiency == null
                ? null
                : new AllocationSpecification(
                        goal,
                        names,
                        largest.value(),
                        days,
                        Optional.ofNullable(total).map(AllocationReader::stated),
                        seasons,
                        years,
                        minimums,
                        seniority,
                        delivery == null ? 0 : delivery.value(),
                        efficiency.value());
    }

    /** Proposed bores; all of them if none is named. */
    private List<String> names(Section section) {
        List<String> proposed = bores.stream()
                .filter(bore -> bore.group() == BoreSpecification.Group.PROPOSED)
                .map(BoreSpecification::name)
                .toList();
        List<String> names = section.has("bores") ? chosen(section, "bores", proposed, "a proposed bore") : proposed;
        if (proposed.isEmpty() && known.complete()) {
            inputs.problems()
                    .add(
                            section.place(),
                            section.nameOf("bores"),
                            Finding.of(ProblemKind.UNKNOWN_NAME, "no proposed bore", "at least one under bores"));
        }
        return names;
    }

    private List<String> holders(Section section, String key) {
        return section.has(key) ? chosen(section, key, List.copyOf(known.holders()), "a holder of bores") : List.of();
    }

    private List<String> chosen(Section section, String key, List<String> allowed, String what) {
        List<String> names = new ArrayList<>();
        Map<String, Place> places = new HashMap<>();
        List<DocumentNode> nodes = section.optionalList(key);
        for (DocumentNode node : nodes) {
            @Nullable String name = section.values().text(node, section.nameOf(key));
            if (name != null && places.containsKey(name)) {
                section.values()
                        .refuse(
                                node,
                                section.nameOf(key),
                                Finding.of(
                                        ProblemKind.DUPLICATE_NAME,
                                        name + ", first at " + places.get(name),
                                        "every name once"));
            } else if (name != null && allowed.contains(name)) {
                names.add(name);
                places.put(name, node.place());
            } else if (name != null && known.complete()) {
                section.values()
                        .refuse(
                                node,
                                section.nameOf(key),
                                new Finding(
                                        ProblemKind.UNKNOWN_NAME,
                                        name,
                                        allowed.isEmpty() ? what : what + ": " + String.join(", ", allowed),
                                        NearestSpelling.of(name, allowed)));
            }
        }
        if (nodes.isEmpty() && section.optionalNode(key) instanceof DocumentNode.Listing) {
            section.refuse(key, Finding.of(ProblemKind.EMPTY_VALUE, "an empty list", "at least one name"));
        }
        return names;
    }

    private List<Season> seasons(Section section) {
        List<Season> seasons = new ArrayList<>();
        for (Section one : inputs.sections(section, "seasons")) {
            Optional<Season> season = SeasonWords.ofKeys(one, inputs.problems());
            if (season.isPresent()) {
                refuseOverlap(one, season.get(), seasons);
                seasons.add(season.get());
            }
        }
        Optional<String> left = seasons.isEmpty() ? Optional.empty() : DaysInNoSeason.of(seasons);
        left.ifPresent(days -> inputs.problems()
                .notice(section.placeOf("seasons"), "bores that share take nothing on days in no season: " + days));
        return seasons;
    }

    /** A day of two seasons would have two rates. */
    private void refuseOverlap(Section section, Season season, List<Season> before) {
        for (int i = 0; i < before.size(); i++) {
            if (season.overlaps(before.get(i))) {
                inputs.problems()
                        .add(
                                section.place(),
                                section.nameOf("from"),
                                Finding.of(
                                        ProblemKind.CONFLICTING_KEYS,
                                        "a season that shares days with the season number " + (i + 1),
                                        "seasons that do not overlap"));
            }
        }
    }

    private int years(Section section, double days) {
        @Nullable Quantity years = section.optionalQuantity("rates_change_after", Dimension.TIME, ValueRanges.TIME);
        if (years == null) {
            return 0;
        }
        double count = years.value() / 365.25;
        if (count != Math.rint(count) || !YEARS.contains(count)) {
            section.refuse(
                    "rates_change_after",
                    Finding.of(ProblemKind.OUT_OF_RANGE, years.text(), "whole years, from 1 yr on"));
        } else if (period != null && period.day(period.after(years.value())) > days) {
            inputs.problems()
                    .notice(
                            section.placeOf("rates_change_after"),
                            "rates never change: bores that share take until " + period.date(days)
                                    + ", not longer than " + years.text());
        }
        return (int) Math.rint(count);
    }

    private static StatedRate stated(Quantity rate) {
        return new StatedRate(rate.value(), rate.unit(), rate.inUnit(1));
    }

    private List<HolderMinimum> minimums(Section section, List<String> names, @Nullable Quantity largest) {
        List<HolderMinimum> minimums = new ArrayList<>();
        Map<String, Place> places = new HashMap<>();
        for (Section one : inputs.sections(section, "minimums")) {
            @Nullable String holder = one.text("holder");
            @Nullable Quantity least = one.quantity("at_least", Dimension.RATE, RATE);
            one.done();
            if (holder != null && !known.holders().contains(holder) && known.complete()) {
                one.refuse("holder", known.unknownHolder(holder, ""));
            } else if (holder != null && places.containsKey(holder)) {
                one.refuse(
                        "holder",
                        Finding.of(
                                ProblemKind.DUPLICATE_NAME,
                                holder + ", first at " + places.get(holder),
                                "one minimum of each holder, which holds in every season and year"));
            } else if (holder != null && least != null) {
                places.put(holder, one.placeOf("holder"));
                minimums.add(new HolderMinimum(holder, stated(least)));
                if (largest != null && known.complete()) {
                    refuseUnreachable(one, holder, least, names, largest);
                }
            }
        }
        return minimums;
    }

    /** Refuses a minimum that all bores of its holder that share do not reach with the largest rate each. */
    private void refuseUnreachable(
            Section minimum, String holder, Quantity least, List<String> names, Quantity largest) {
        long sharing = bores.stream()
                .filter(bore -> names.contains(bore.name()) && bore.holder().equals(holder))
                .count();
        if (names.isEmpty()) {
            return; // why none share is a problem of its own
        }
        if (sharing == 0) {
            minimum.refuse(
                    "holder",
                    Finding.of(
                            ProblemKind.NOT_A_CHOICE,
                            holder + ", none of whose bores share",
                            "a holder of bores that share: " + String.join(", ", names)));
        } else if (least.value() > sharing * largest.value() * ROUNDING) {
            minimum.refuse("at_least", beyond(least, sharing * largest.value(), sharing));
        }
    }

    /** Refuses a total that all bores together do not reach where it has to be had, and one that minimums exceed where it is the most. */
    private static void refuseUnreachable(
            Section section, Quantity total, @Nullable Goal goal, double possible, List<HolderMinimum> minimums) {
        if (goal != null && goal != Goal.LARGEST_YIELD && total.value() > possible * ROUNDING) {
            section.refuse(
                    "total",
                    Finding.of(
                            ProblemKind.OUT_OF_RANGE,
                            total.text(),
                            String.format(
                                    Locale.ROOT,
                                    "at most %.2f %s, largest_rate of all bores that share",
                                    total.inUnit(possible),
                                    total.unit())));
        }
        if (goal == Goal.LARGEST_YIELD && !section.has("seasons")) {
            double needed =
                    minimums.stream().mapToDouble(one -> one.rate().value()).sum();
            if (needed > total.value() * ROUNDING) {
                section.refuse(
                        "total",
                        Finding.of(
                                ProblemKind.CONFLICTING_KEYS,
                                total.text(),
                                String.format(
                                        Locale.ROOT,
                                        "at least %.2f %s, what minimums come to",
                                        total.inUnit(needed),
                                        total.unit())));
            }
        }
    }

    private static Finding beyond(Quantity found, double possible, long sharing) {
        return Finding.of(
                ProblemKind.OUT_OF_RANGE,
                found.text(),
                String.format(
                        Locale.ROOT,
                        "at most %.2f %s, largest_rate of the %s",
                        found.inUnit(possible),
                        found.unit(),
                        sharing == 1
                                ? "one bore of this holder that shares"
                                : sharing + " bores of this holder that share"));
    }
}
