package org.headfall.scenarios.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.recording.DischargeHistory;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.report.content.WhatIf;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.solver.response.UnitResponses;

/** What a reader needs to change the rates of a finished run. */
final class RunWhatIf {

    private static final double FIRST_LAG = 0.01;
    private static final int LAGS_PER_DECADE = 24;

    private final FinishedRun run;
    private final RunDescription description;
    private final UnitResponses responses;
    private final DischargeHistory discharges;

    RunWhatIf(FinishedRun run, UnitResponses responses, DischargeHistory discharges) {
        this.run = run;
        this.description = run.description();
        this.responses = responses;
        this.discharges = discharges;
    }

    WhatIf whatIf() {
        double[] lags = lags(description.endDay());
        int stations = description.stations().size();
        double[][] curves = new double[responses.causes() * stations][];
        for (int curve = 0; curve < curves.length; curve++) {
            int cause = curve / stations;
            int station = curve % stations;
            curves[curve] = Arrays.stream(lags)
                    .map(lag -> responses.at(station, cause, lag))
                    .toArray();
        }
        return new WhatIf(
                description.stations().stream().map(Station::name).toList(),
                lags,
                curves,
                discharges.days(),
                discharges.begin(),
                discharges.end(),
                IntStream.range(0, responses.causes()).mapToObj(this::taker).toList(),
                conditions());
    }

    /** Even over the logarithm of time, so that a reader finds the interval of a lag without searching. */
    private static double[] lags(double horizon) {
        int intervals = Math.max(1, (int) Math.ceil(LAGS_PER_DECADE * Math.log10(horizon / FIRST_LAG)));
        double[] lags = new double[intervals + 1];
        Arrays.setAll(lags, i -> FIRST_LAG * Math.pow(horizon / FIRST_LAG, (double) i / intervals));
        lags[intervals] = horizon;
        return lags;
    }

    private WhatIf.Taker taker(int cause) {
        Station station = description.stations().get(cause);
        double outlet = station.outletLevel().orElse(Double.NaN);
        if (station instanceof Station.SpringSite spring) {
            WhatIf.Loss loss = new WhatIf.Loss(1 / spring.conductance(), 0);
            return new WhatIf.Taker(WhatIf.Rule.HEAD, false, "", Double.NaN, loss, outlet);
        }
        Station.BoreSite bore = (Station.BoreSite) station;
        Optional<WhatIf.Loss> flow = bore.use() == Station.BoreSite.Use.FREE_FLOWING
                ? FlowLaw.of(run.recording().series().get(cause), outlet)
                : Optional.empty();
        return new WhatIf.Taker(
                rule(bore, flow.isPresent()),
                bore.proposed(),
                bore.holder(),
                bore.lowestLevel().orElse(Double.NaN),
                flow.orElse(lossInTheBore(run.recording().series().get(cause))),
                outlet);
    }

    /** A pump that follows its curve asks for no rate of its own. */
    private static WhatIf.Rule rule(Station.BoreSite bore, boolean flowKnown) {
        return switch (bore.use()) {
            case FREE_FLOWING -> flowKnown ? WhatIf.Rule.HEAD : WhatIf.Rule.OTHER;
            case PUMPED -> bore.operation().contains("pump curve") ? WhatIf.Rule.OTHER : WhatIf.Rule.RATE;
            case IDLE -> WhatIf.Rule.RATE;
        };
    }

    /** Loss between the wall and the inside of a bore, as it was recorded. */
    private static WhatIf.Loss lossInTheBore(StationSeries series) {
        double[] loss = new double[series.days().length];
        Arrays.setAll(loss, i -> series.head()[i] - series.levelInBore()[i]);
        return FlowLaw.fitted(series.discharge(), loss).orElse(new WhatIf.Loss(0, 0));
    }

    private List<WhatIf.Condition> conditions() {
        List<WhatIf.Condition> conditions = new ArrayList<>();
        for (int i = 0; i < run.limits().size(); i++) {
            int place = i;
            Limit limit = run.limits().get(i).limit();
            int station = description.stationIndex(limit.station());
            if (station >= 0 && isKnown(limit.comparison())) {
                quantity(limit.quantity())
                        .ifPresent(quantity -> conditions.add(condition(place, station, quantity, limit)));
            }
        }
        return conditions;
    }

    private WhatIf.Condition condition(int place, int station, WhatIf.Limited quantity, Limit limit) {
        return new WhatIf.Condition(
                place,
                station,
                quantity,
                causes(limit.comparison()),
                limit.period().fromDay(),
                limit.period().toDay().orElse(description.endDay()),
                limit.quantity() instanceof LimitedQuantity.DeclineRate decline ? decline.overYears() : 0);
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

    /** The page knows heads with and without bores, from the start on: none of other dates or cases. */
    private static boolean isKnown(Comparison comparison) {
        return comparison instanceof Comparison.Nothing
                || comparison instanceof Comparison.Start
                || comparison instanceof Comparison.WithoutAnyBore
                || comparison instanceof Comparison.WithoutProposedBores
                || comparison instanceof Comparison.WithoutHolder;
    }

    private List<Integer> causes(Comparison comparison) {
        if (comparison instanceof Comparison.Start) {
            return List.of();
        }
        List<Station.BoreSite> bores = description.bores();
        return IntStream.range(0, bores.size())
                .filter(i -> comparison instanceof Comparison.WithoutAnyBore
                        || (comparison instanceof Comparison.WithoutHolder without
                                ? bores.get(i).holder().equals(without.holder())
                                : bores.get(i).proposed()))
                .boxed()
                .toList();
    }
}
