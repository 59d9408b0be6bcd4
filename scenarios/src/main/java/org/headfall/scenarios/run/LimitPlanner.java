package org.headfall.scenarios.run;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.headfall.scenarios.assembly.MapCells;
import org.headfall.scenarios.assembly.Model;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPeriod;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.LimitedQuantity.ShareOfAvailableHead;
import org.headfall.scenarios.limits.MapPlaces;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.quantity.VolumeUnit;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.WaterYear;
import org.headfall.scenarios.scenario.AccountsSpecification;
import org.headfall.scenarios.scenario.BoreSelection;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.LimitSpecification;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;

/** Makes the limits of a scenario ready to be judged, each at one place. */
final class LimitPlanner {

    private static final double PER_CENT = 100;

    private final Scenario scenario;
    private final Model model;
    private final Map<String, MapPlaces.Part> parts = new HashMap<>();

    LimitPlanner(Scenario scenario, Model model) {
        this.scenario = scenario;
        this.model = model;
    }

    /** One limit a place: the document may name several places in one. */
    List<Limit> limits() {
        return scenario.limits().stream()
                .flatMap(limit ->
                        limit.at().stream().flatMap(at -> places(limit, at)).map(place -> limit(limit, place)))
                .toList();
    }

    private Limit limit(LimitSpecification limit, LimitPlace place) {
        return new Limit(
                limit.name(),
                quantity(limit, place),
                place,
                comparison(limit),
                period(limit.when()),
                limit.howSure(),
                limit.text());
    }

    private Stream<LimitPlace> places(LimitSpecification limit, LimitSpecification.At at) {
        if (at instanceof LimitSpecification.NamedPlace named) {
            return Stream.of(new LimitPlace.AtStation(named.name()));
        }
        if (at instanceof LimitSpecification.Bores bores) {
            List<String> names = names(bores.bores());
            // a group without bores stays one place, so that its limit is not lost
            return limit.quantity() instanceof LimitSpecification.Volume || names.isEmpty()
                    ? Stream.of(new LimitPlace.Together(bores.bores(), names))
                    : names.stream().map(LimitPlace.AtStation::new);
        }
        return Stream.of(new LimitPlace.OnMap(mapWords(at)));
    }

    private static String mapWords(LimitSpecification.At at) {
        if (!(at instanceof LimitSpecification.Shapes shapes)) {
            return "every cell";
        }
        return shapes.name().isEmpty()
                ? shapes.file().name()
                : shapes.name() + " (" + shapes.file().name() + ")";
    }

    /** The parts of the map that limits hold for. */
    MapPlaces mapPlaces() {
        MapCells cells = new MapCells(model.problem().aquifer());
        for (LimitSpecification limit : scenario.limits()) {
            for (LimitSpecification.At at : limit.at()) {
                if (at instanceof LimitSpecification.Shapes shapes) {
                    parts.put(mapWords(at), new MapPlaces.Part(shapes.shapes(), cells.meetingAnyOf(shapes.shapes())));
                } else if (at instanceof LimitSpecification.EveryCell) {
                    parts.put(mapWords(at), new MapPlaces.Part(List.of(), cells.all()));
                }
            }
        }
        return new MapPlaces(
                parts, sortedWithin(limitDays(limit -> limit.at().stream().anyMatch(LimitPlanner::isOnTheMap))));
    }

    private static boolean isOnTheMap(LimitSpecification.At at) {
        return at instanceof LimitSpecification.Shapes || at instanceof LimitSpecification.EveryCell;
    }

    private List<String> names(BoreSelection selection) {
        return scenario.bores().stream()
                .filter(selection::has)
                .map(BoreSpecification::name)
                .toList();
    }

    private LimitedQuantity quantity(LimitSpecification limit, LimitPlace place) {
        LimitSpecification.Quantity quantity = limit.quantity();
        if (quantity instanceof LimitSpecification.Drawdown drawdown) {
            return new LimitedQuantity.Drawdown(drawdown.atMost());
        }
        if (quantity instanceof LimitSpecification.FloorLevel floor) {
            return new LimitedQuantity.FloorLevel(floor.atLeast());
        }
        if (quantity instanceof LimitSpecification.Pressure pressure) {
            return new LimitedQuantity.Pressure(pressure.atLeast(), pressure.gaugeLevel());
        }
        if (quantity instanceof LimitSpecification.DeclineRate rate) {
            return new LimitedQuantity.DeclineRate(rate.atMost() * Period.DAYS_PER_YEAR, rate.overYears());
        }
        if (quantity instanceof LimitSpecification.ShareOfAvailableHead share) {
            return new ShareOfAvailableHead(PER_CENT * share.atLeast(), base(share.above()));
        }
        if (quantity instanceof LimitSpecification.Distance distance) {
            return new LimitedQuantity.Distance(distance.atLeast(), names(limit.cause()));
        }
        return ofDischarge(quantity, place);
    }

    private LimitedQuantity ofDischarge(LimitSpecification.Quantity quantity, LimitPlace place) {
        if (quantity instanceof LimitSpecification.Flow flow) {
            return new LimitedQuantity.Flow(
                    DischargeUnit.LITRES_PER_SECOND.of(flow.atLeast()), openTimes(place.words()));
        }
        if (quantity instanceof LimitSpecification.SpringDischarge discharge) {
            return new LimitedQuantity.SpringDischarge(DischargeUnit.LITRES_PER_SECOND.of(discharge.atLeast()));
        }
        if (quantity instanceof LimitSpecification.ShareOfSpringDischarge share) {
            return new LimitedQuantity.ShareOfSpringDischarge(PER_CENT * share.atLeast());
        }
        LimitSpecification.Volume volume = (LimitSpecification.Volume) quantity;
        AccountsSpecification accounts = scenario.accounts().orElseThrow();
        List<String> bores = place instanceof LimitPlace.Together together ? together.bores() : List.of(place.words());
        return new LimitedQuantity.Volume(
                VolumeUnit.MEGALITRES.of(volume.atMost()), accounts.waterYearBegins(), meters(accounts, bores));
    }

    private List<LimitedQuantity.Volume.MeteredBore> meters(AccountsSpecification accounts, List<String> bores) {
        return bores.stream()
                .map(bore -> new LimitedQuantity.Volume.MeteredBore(
                        bore,
                        accounts.readings().stream()
                                .filter(reading -> reading.bore().equals(bore))
                                .map(reading -> new LimitedQuantity.Volume.Reading(
                                        scenario.period().day(reading.date()), reading.volume()))
                                .toList()))
                .filter(metered -> !metered.readings().isEmpty())
                .toList();
    }

    private static ShareOfAvailableHead.Base base(LimitSpecification.Base above) {
        if (above instanceof LimitSpecification.GivenLevel given) {
            return new ShareOfAvailableHead.Base(ShareOfAvailableHead.BaseKind.GIVEN, OptionalDouble.of(given.level()));
        }
        ShareOfAvailableHead.BaseKind kind = switch ((LimitSpecification.OwnLevel) above) {
            case AQUIFER_TOP -> ShareOfAvailableHead.BaseKind.AQUIFER_TOP;
            case PUMP_INTAKE -> ShareOfAvailableHead.BaseKind.PUMP_INTAKE;
            case OUTLET -> ShareOfAvailableHead.BaseKind.OUTLET;
        };
        return new ShareOfAvailableHead.Base(kind, OptionalDouble.empty());
    }

    private List<LimitedQuantity.Flow.OpenTime> openTimes(String name) {
        Optional<Bore> bore = model.problem().bores().stream()
                .filter(one -> one.name().equals(name))
                .findFirst();
        List<OperatingPhase> phases = bore.map(Bore::phases).orElse(List.of());
        return Stream.iterate(0, i -> i < phases.size(), i -> i + 1)
                .filter(i -> phases.get(i).operation() instanceof Operation.FreeFlow)
                .map(i -> new LimitedQuantity.Flow.OpenTime(
                        Math.max(phases.get(i).fromDay(), -1),
                        i + 1 < phases.size() ? phases.get(i + 1).fromDay() : model.days()))
                .filter(open -> open.toDay() > 0)
                .toList();
    }

    private Comparison comparison(LimitSpecification limit) {
        LimitSpecification.Reference reference = limit.comparedWith();
        Period period = scenario.period();
        if (reference instanceof LimitSpecification.OnDate on) {
            return new Comparison.OnDay(period.day(on.date()), on.date().toString());
        }
        if (reference instanceof LimitSpecification.MeanOfYears mean) {
            return new Comparison.MeanOfYears(
                    period.day(mean.begins()), period.day(mean.ends()), mean.first() + " to " + mean.last());
        }
        if (reference instanceof LimitSpecification.BeforeAnyTaking) {
            return new Comparison.BeforeAnyTaking();
        }
        if (reference instanceof LimitSpecification.OtherCase other) {
            return new Comparison.WithCase(other.name());
        }
        if (reference instanceof LimitSpecification.WithoutThem
                || limit.quantity() instanceof LimitSpecification.Distance) {
            return without(limit.cause());
        }
        return reference instanceof LimitSpecification.TheStart ? new Comparison.Start() : new Comparison.Nothing();
    }

    private Comparison without(BoreSelection cause) {
        if (cause instanceof BoreSelection.Proposed) {
            return new Comparison.WithoutProposedBores();
        }
        if (cause instanceof BoreSelection.OfHolder of) {
            return new Comparison.WithoutHolder(of.holder());
        }
        return cause instanceof BoreSelection.All
                ? new Comparison.WithoutAnyBore()
                : new Comparison.WithoutBores(cause.words(), names(cause));
    }

    private static LimitPeriod period(LimitSpecification.When when) {
        return new LimitPeriod(
                when.fromDay(),
                Double.isFinite(when.toDay()) ? OptionalDouble.of(when.toDay()) : OptionalDouble.empty(),
                when.afterTakingStops());
    }

    /** Days that must be recorded so that limits need no interpolation where it would be wrong, in order. */
    double[] days() {
        Set<Double> days = limitDays(limit -> true);
        scenario.accounts().ifPresent(accounts -> addWaterYears(accounts, days));
        return sortedWithin(days);
    }

    /** Days on which some limits begin or end to count, and with which they compare. */
    private Set<Double> limitDays(Predicate<LimitSpecification> which) {
        Set<Double> days = new TreeSet<>();
        for (LimitSpecification limit : scenario.limits().stream().filter(which).toList()) {
            days.add(limit.when().fromDay());
            days.add(limit.when().toDay());
            Comparison comparison = comparison(limit);
            if (comparison instanceof Comparison.OnDay on) {
                days.add(on.day());
            } else if (comparison instanceof Comparison.MeanOfYears mean) {
                days.add(mean.fromDay());
                days.add(mean.toDay());
            }
        }
        return days;
    }

    private double[] sortedWithin(Set<Double> days) {
        return days.stream()
                .sorted()
                .mapToDouble(Double::doubleValue)
                .filter(day -> day >= 0 && day <= model.days())
                .toArray();
    }

    private void addWaterYears(AccountsSpecification accounts, Set<Double> days) {
        RunCalendar calendar = new RunCalendar(scenario.period().from().atStartOfDay());
        WaterYear.within(calendar, accounts.waterYearBegins(), 0, model.days()).forEach(year -> days.add(year.toDay()));
    }
}
