package org.headfall.scenarios.evidence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.findings.Crossing;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.Station.BoreSite;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.FinishedRun;

/**
 * Bores that do not give what the scenario asks of them, or could not in truth: a rate that is cut back, a pump that never
 * delivers, a head below the bottom of the aquifer. The run goes on, so nothing else says so.
 */
public final class UnmetRates {

    /** Share of the rate asked for that may be missing. */
    private static final double MISSING_THAT_COUNTS = 0.01;

    private final FinishedRun run;
    private final List<Doubt> doubts = new ArrayList<>();

    private UnmetRates(FinishedRun run) {
        this.run = run;
    }

    /** One for each pumped bore and reason, in the order of the bores. */
    public static List<Doubt> of(FinishedRun run) {
        UnmetRates unmet = new UnmetRates(run);
        List<Station> stations = run.description().stations();
        for (int i = 0; i < stations.size(); i++) {
            if (stations.get(i) instanceof BoreSite bore && bore.use() == BoreSite.Use.PUMPED) {
                unmet.look(bore, run.recording().series().get(i));
            }
        }
        return unmet.doubts;
    }

    private void look(BoreSite bore, StationSeries series) {
        lookForBottom(bore, series);
        int worst = -1;
        int first = -1;
        double missing = 0;
        for (int k = 0; k < series.days().length; k++) {
            double wanted = series.wantedDischarge()[k];
            double lacks = wanted - series.discharge()[k];
            if (wanted > 0 && lacks > MISSING_THAT_COUNTS * wanted) {
                first = first < 0 ? k : first;
                worst = lacks > missing ? k : worst;
                missing = Math.max(missing, lacks);
            }
        }
        if (first >= 0) {
            add(
                    bore,
                    "gives less than the rate asked for, first on %s, by %.2f of %.2f L/s at most: its level is held at the"
                            + " lowest level. Ask for less, set the pump deeper, or share the rate among more bores.",
                    date(series.days()[first]),
                    DischargeUnit.LITRES_PER_SECOND.of(missing),
                    DischargeUnit.LITRES_PER_SECOND.of(series.wantedDischarge()[worst]));
        } else if (Arrays.stream(series.discharge()).allMatch(rate -> rate == 0)) {
            add(
                    bore,
                    "gives no water in the whole run. If it should, look at its rate, pump curve, delivery level and lowest"
                            + " level.");
        }
    }

    private void lookForBottom(BoreSite bore, StationSeries series) {
        double bottom =
                run.description().aquifer().bottom()[run.description().grid().locate(bore.x(), bore.y())];
        Crossing.below(series.days(), series.head(), bottom, 0)
                .ifPresent(day -> add(
                        bore,
                        "head falls below the bottom of the aquifer, %.2f m, first on %s: the aquifer cannot give this rate. Ask"
                                + " for less, or give the bore a lowest_level at which pumping is cut back.",
                        bottom,
                        date(day)));
    }

    private LocalDate date(double day) {
        return run.description().calendar().at(day).toLocalDate();
    }

    private void add(BoreSite bore, String sentence, Object... values) {
        doubts.add(new Doubt(bore.name(), String.format(Locale.ROOT, sentence, values)));
    }
}
