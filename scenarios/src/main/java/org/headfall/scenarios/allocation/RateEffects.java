package org.headfall.scenarios.allocation;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.solver.response.CoupledResponses;

/** What rates do to requirements: drawdown and volumes in proportion to them, and losses in the bores. */
final class RateEffects {

    private final RateVariables variables;
    private final VolumeByRates volumes;
    private DrawdownByRates drawdown;

    /** Drawdown by a unit of each variable at what a requirement is measured from. */
    private final Map<Requirement, double[]> references = new HashMap<>();

    /**
     * Effects.
     *
     * @param variables the rates
     * @param drawdown drawdown by them
     */
    RateEffects(RateVariables variables, DrawdownByRates drawdown) {
        this.variables = variables;
        volumes = new VolumeByRates(variables);
        this.drawdown = drawdown;
    }

    RateVariables variables() {
        return variables;
    }

    /** From now on effects are those of other drawdown, such as in the state of another run. */
    void follow(DrawdownByRates other) {
        drawdown = other;
        references.clear();
    }

    /** Drawdown by rates as it is taken to be now. */
    DrawdownByRates drawdown() {
        return drawdown;
    }

    /** Effect of rates on each requirement and day, losses included. */
    double[][] of(double[] rates, List<Requirement> requirements) {
        Map<DrawdownByRates.Counted, double[]> days = new HashMap<>();
        Map<DrawdownByRates.Counted, CoupledResponses.Changes> changes = new HashMap<>();
        List<Requirement> onHead = requirements.stream()
                .filter(one -> !(one.subject() instanceof Requirement.OfVolume))
                .toList();
        for (Requirement one : onHead) {
            days.computeIfAbsent(one.counted(), counted -> days(onHead, counted));
        }
        days.forEach((counted, some) -> changes.put(counted, drawdown.on(rates, counted, some)));
        double[][] effects = new double[requirements.size()][];
        for (int r = 0; r < effects.length; r++) {
            Requirement one = requirements.get(r);
            if (one.subject() instanceof Requirement.OfVolume of) {
                effects[r] = volumes.of(rates, of.parts());
                continue;
            }
            double[] known = Objects.requireNonNull(days.get(one.counted()));
            CoupledResponses.Changes by = Objects.requireNonNull(changes.get(one.counted()));
            double[][] found = by.drawdown();
            effects[r] = new double[one.days().length];
            double from = 0;
            for (Map.Entry<Double, Double> reference : one.reference().entrySet()) {
                int at = Arrays.binarySearch(known, reference.getKey());
                from += at < 0 ? 0 : reference.getValue() * found[at][one.station()];
            }
            for (int k = 0; k < effects[r].length; k++) {
                double day = one.days()[k];
                double effect = found[Arrays.binarySearch(known, day)][one.station()];
                if (one.declineYears() > 0) {
                    int before = Arrays.binarySearch(known, earlier(one, day));
                    effect = (effect - (before < 0 ? 0 : found[before][one.station()])) / one.declineYears();
                }
                if (one.subject() instanceof LimitedFlow flow) {
                    effect += flow.perDischarge() * by.lessDischarge()[Arrays.binarySearch(known, day)][one.station()];
                }
                effects[r][k] = one.perMetre(k) * (effect - from) + loss(one, rates, day);
            }
        }
        return effects;
    }

    /** Days on which drawdown by some bores is wanted, increasing. */
    private static double[] days(List<Requirement> requirements, DrawdownByRates.Counted counted) {
        TreeSet<Double> days = new TreeSet<>();
        for (Requirement one : requirements) {
            if (one.counted().equals(counted)) {
                one.reference().keySet().stream().filter(day -> day > 0).forEach(days::add);
                for (double day : one.days()) {
                    days.add(day);
                    if (one.declineYears() > 0 && earlier(one, day) > 0) {
                        days.add(earlier(one, day));
                    }
                }
            }
        }
        return days.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** The day from which on a rate of decline on another is a mean. */
    private static double earlier(Requirement one, double day) {
        return day - one.declineYears() * RunCalendar.DAYS_PER_YEAR;
    }

    /** Loss in the bore that a requirement is about on a day, or head that it needs (m); none if it is about none. */
    double loss(Requirement one, double[] rates, double day) {
        return one.own()
                .map(own -> own.at().applyAsDouble(variables.rate(rates, own.bore(), day)))
                .orElse(0.0);
    }

    /** Effect of a unit of each variable on a requirement on one of its days, without losses. */
    double[] coefficients(Requirement one, int k) {
        if (one.subject() instanceof Requirement.OfVolume of) {
            return volumes.coefficients(of.parts().get(k));
        }
        double day = one.days()[k];
        if (one.subject() instanceof LimitedFlow flow) {
            double[] offered = drawdown.offeredBy(one.station(), flow.perDischarge(), day);
            Arrays.setAll(offered, v -> one.perMetre(k) * offered[v]);
            return offered;
        }
        double[] now = drawdown.by(one.station(), one.counted(), day);
        if (one.declineYears() > 0) {
            double before = earlier(one, day);
            double[] then = before > 0 ? drawdown.by(one.station(), one.counted(), before) : new double[now.length];
            Arrays.setAll(now, v -> (now[v] - then[v]) / one.declineYears());
        }
        double[] from = references.computeIfAbsent(one, this::atReference);
        Arrays.setAll(now, v -> one.perMetre(k) * (now[v] - from[v]));
        return now;
    }

    private double[] atReference(Requirement one) {
        double[] sum = new double[variables.count()];
        one.reference().forEach((day, weight) -> {
            double[] then = day > 0 ? drawdown.by(one.station(), one.counted(), day) : new double[sum.length];
            Arrays.setAll(sum, v -> sum[v] + weight * then[v]);
        });
        return sum;
    }

    /**
     * Puts the tangent to the loss in a bore, or to the head that it needs, which touches it at some rate, on the left and right of a row.
     *
     * @param one a requirement
     * @param k number of the day of the row
     * @param touching the rate (m³/d)
     * @param coefficients left side of the row, changed
     * @return what the bound has to grow by
     */
    double addTangent(Requirement one, int k, double touching, double[] coefficients) {
        RateBlocks.Block block = variables.blocks().at(one.days()[k]);
        if (one.own().isEmpty() || block == null) {
            return 0;
        }
        Requirement.Own own = one.own().get();
        double slope = own.slope().applyAsDouble(touching);
        coefficients[variables.variable(own.bore(), block.group())] += slope;
        return slope * touching - own.at().applyAsDouble(touching);
    }
}
