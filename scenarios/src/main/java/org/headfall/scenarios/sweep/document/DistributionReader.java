package org.headfall.scenarios.sweep.document;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.sweep.sampling.Distribution;
import org.headfall.scenarios.sweep.sampling.Sampling;
import org.jspecify.annotations.Nullable;

/**
 * Reads a distribution, {@code uniform}, {@code normal}, {@code lognormal} or {@code triangular}, which {@code at_least} and
 * {@code at_most} may cut.
 */
final class DistributionReader {

    private static final String ABOVE_ZERO = "more than zero";

    /** Share of a distribution that its ends have to leave; of less hardly a value can be told from the next. Common practice, no source. */
    private static final double LEAST_SHARE = 1e-6;

    private static final double QUARTER = 0.25;
    private static final double HALF = 0.5;

    private final Section given;
    private final String name;

    /**
     * A reader.
     *
     * @param given the section of the distribution
     * @param name name of the variable
     */
    DistributionReader(Section given, String name) {
        this.given = given;
        this.name = name;
    }

    /** The values of a distribution, or null after everything that is wrong with it has been reported. */
    @Nullable
    Variation read(String way) {
        List<String> keys = switch (way) {
            case "uniform" -> List.of("from", "to");
            case "normal" -> List.of("mean", "deviation");
            case "lognormal" -> List.of("median");
            default -> List.of("least", "likely", "most");
        };
        List<Measure> parameters = measures(keys);
        @Nullable
        Double ofLog = way.equals("lognormal") ? Entries.number(given, "deviation_of_log") : Double.valueOf(0);
        List<String> ends =
                List.of("at_least", "at_most").stream().filter(given::has).toList();
        List<Measure> cuts = measures(ends);
        if (parameters.size() < keys.size() || ofLog == null || cuts.size() < ends.size()) {
            return null;
        }
        List<Measure> all = new ArrayList<>(parameters);
        all.addAll(cuts);
        if (!Entries.haveOneUnit(given, name, all.toArray(Measure[]::new))) {
            return null;
        }
        @Nullable Distribution whole = distribution(way, parameters, ofLog);
        @Nullable Distribution cut = whole == null || ends.isEmpty() ? whole : cut(whole, ends, cuts);
        return cut == null ? null : new Variation.Drawn(cut, parameters.get(0).unit(), given.placeOf(keys.get(0)));
    }

    /** The numbers under keys; one that cannot be read is reported and left out. */
    private List<Measure> measures(List<String> keys) {
        List<Measure> measures = new ArrayList<>();
        for (String key : keys) {
            @Nullable Measure measure = Entries.measure(given, key);
            if (measure != null) {
                measures.add(measure);
            }
        }
        return measures;
    }

    private @Nullable Distribution distribution(String way, List<Measure> parameters, double ofLog) {
        double first = parameters.get(0).number();
        double last = parameters.get(parameters.size() - 1).number();
        double greatest = Distribution.Lognormal.LARGEST_DEVIATION_OF_LOG;
        boolean sound = switch (way) {
            case "uniform" -> require("to", first < last, "more than from, " + given.text("from"));
            case "normal" -> require("deviation", last > 0, ABOVE_ZERO);
            case "lognormal" -> {
                // both are looked at, so that both are told
                boolean positive = require("median", first > 0, ABOVE_ZERO);
                boolean inRange = require(
                        "deviation_of_log",
                        ofLog > 0 && ofLog <= greatest,
                        "more than zero, at most " + (int) greatest);
                yield positive && inRange;
            }
            default -> inOrder(first, parameters.get(1).number(), last);
        };
        if (!sound) {
            return null;
        }
        Distribution distribution = switch (way) {
            case "uniform" -> new Distribution.Uniform(first, last);
            case "normal" -> new Distribution.Normal(first, last);
            case "lognormal" -> new Distribution.Lognormal(first, ofLog);
            default -> new Distribution.Triangular(first, parameters.get(1).number(), last);
        };
        boolean finite = DoubleStream.of(Sampling.LEAST_COORDINATE, HALF, 1 - Sampling.LEAST_COORDINATE)
                .map(distribution::quantile)
                .allMatch(Double::isFinite);
        if (!finite) {
            refuse("so large that its values have no number", "values below 1e308");
            return null;
        }
        return distribution;
    }

    private boolean inOrder(double least, double likely, double most) {
        String inOrder = "at least likely, " + given.text("likely") + ", and more than least, " + given.text("least");
        // both are looked at, so that both are told
        boolean aboveLeast = require("likely", likely >= least, "at least least, " + given.text("least"));
        boolean belowMost = require("most", most >= likely && most > least, inOrder);
        return aboveLeast && belowMost;
    }

    private boolean require(String key, boolean holds, String allowed) {
        if (!holds) {
            given.refuse(key, Finding.of(ProblemKind.OUT_OF_RANGE, String.valueOf(given.text(key)), allowed));
        }
        return holds;
    }

    private @Nullable Distribution cut(Distribution whole, List<String> ends, List<Measure> cuts) {
        double least = Double.NEGATIVE_INFINITY;
        double most = Double.POSITIVE_INFINITY;
        for (int i = 0; i < ends.size(); i++) {
            if (ends.get(i).equals("at_least")) {
                least = cuts.get(i).number();
            } else {
                most = cuts.get(i).number();
            }
        }
        if (least >= most) {
            require("at_most", false, "more than at_least, " + given.text("at_least"));
            return null;
        }
        if (whole.probability(most) - whole.probability(least) < LEAST_SHARE) {
            String unit = cuts.get(0).unit();
            String allowed = "an end that leaves a millionth of the distribution at least; half of it lies between "
                    + Measure.rounded(whole.quantile(QUARTER), unit).text() + " and "
                    + Measure.rounded(whole.quantile(1 - QUARTER), unit).text();
            require(ends.get(0), false, allowed);
            return null;
        }
        return new Distribution.Truncated(whole, least, most);
    }

    private void refuse(String found, String allowed) {
        given.values().problems().add(given.place(), name, Finding.of(ProblemKind.OUT_OF_RANGE, found, allowed));
    }
}
