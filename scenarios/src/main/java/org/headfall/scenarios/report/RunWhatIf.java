package org.headfall.scenarios.report;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
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
        List<WhatIf.Taker> takers =
                IntStream.range(0, responses.causes()).mapToObj(this::taker).toList();
        WhatIfConditions conditions = new WhatIfConditions(run, takers);
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
                takers,
                conditions.judged(),
                conditions.notJudged());
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
        if (station instanceof Station.SpringSite spring) {
            WhatIf.Loss loss = new WhatIf.Loss(1 / spring.conductance(), 0);
            return new WhatIf.Taker(WhatIf.Rule.HEAD, false, "", Double.NaN, loss, spring.outlet());
        }
        Station.BoreSite bore = (Station.BoreSite) station;
        double outlet = bore.outletHead().orElse(Double.NaN);
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
}
