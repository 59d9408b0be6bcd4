package org.headfall.scenarios.results;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.findings.ArtesianHeadAnalysis;
import org.headfall.scenarios.findings.AttributionTable;
import org.headfall.scenarios.findings.Confinement;
import org.headfall.scenarios.findings.Findings;
import org.headfall.scenarios.findings.InterferenceTable;
import org.headfall.scenarios.findings.Recoveries;
import org.headfall.scenarios.findings.Recovery;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitEvaluation;
import org.headfall.scenarios.limits.LimitPeriod;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.Station;
import org.headfall.solver.simulation.RunStatistics;

/** A finished run of the small invented field. */
final class FinishedField {

    private FinishedField() {}

    static FinishedRun run(RunDescription description) throws IOException {
        double year = description.reportDates().get(0).day();
        RecordPlan plan = RecordPlan.of(description, new double[] {30}, new double[] {year});
        Recorder recorder = new Recorder(description, List.of(), plan, List.of());
        recorder.recorded(SmallField.snapshot(0, 0, 0));
        recorder.recorded(SmallField.snapshot(30, 0, 1.25));
        recorder.recorded(SmallField.snapshot(year, 30, 200));
        recorder.recorded(SmallField.snapshot(description.endDay(), year, 3));
        Recording recording = recorder.recording();
        Findings findings = new Findings(
                new ArtesianHeadAnalysis(description, recording).ofAllStations(),
                List.of(interference(year)),
                List.of("Superposed unit responses; invented for a test."),
                List.of(attribution(year)),
                Confinement.of(description, recording),
                new Recoveries(
                        List.of(new Recovery(
                                "Br\u00fccke",
                                "bore",
                                "all bores",
                                description.endDay(),
                                1.5,
                                2.25,
                                description.endDay() + 365.25,
                                true,
                                OptionalDouble.of(description.endDay() + 730.5),
                                17 * description.endDay(),
                                0.001)),
                        List.of("How places recover when the taking of proposed bores stops: invented.")));
        List<Limit> limits = List.of(
                limit("=spring keeps water", new LimitedQuantity.Drawdown(0.2), "Lignum Spring"),
                limit("floor", new LimitedQuantity.FloorLevel(-500), "Brücke"),
                limit("unknown", new LimitedQuantity.DeclineRate(1, 1), "Nowhere"));
        return new FinishedRun(
                description,
                recording,
                findings,
                new LimitEvaluation(
                                description,
                                new RunSeries(recording.series(), Map.of()),
                                new double[] {0.01, 0.01, 0.01, 0.01},
                                List.of())
                        .evaluate(limits),
                new RunFigures(
                        new RunStatistics(12, 40, 3, 43, 120, 8e-4, 1e-12, 0.5),
                        List.of(0.01, 0.01, 0.01, 0.01),
                        "Invented.",
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        1.5,
                        123_456_789,
                        2));
    }

    /** The station in the third row follows head; of 0.1 m of drawdown that no bore explains, 0.03 m are not linear. */
    private static AttributionTable attribution(double day) {
        return new AttributionTable(
                "after 1 year",
                day,
                SmallField.description().stations().stream().map(Station::name).toList(),
                new double[][] {{2, 1}, {1, 3}, {0.5, 0.25}, {0.1, 0.2}},
                new double[][] {{0.5, 0}, {0.2, 0}, {0.1, 0}, {0, 0}},
                new double[] {0.07, 0.07, 0.07, 0.07},
                new double[] {3.1, 4.1, 0.85, 0.4},
                new double[][] {{}, {}, {43.2, 21.6}, {}},
                new double[][] {{}, {}, {8.64, -4.32}, {}},
                new double[] {Double.NaN, Double.NaN, 17.28, Double.NaN},
                new double[] {Double.NaN, Double.NaN, 86.4, Double.NaN});
    }

    private static Limit limit(String name, LimitedQuantity quantity, String station) {
        return new Limit(name, quantity, station, new Comparison.Start(), LimitPeriod.EVER, "Clause 7, \"all\"");
    }

    private static InterferenceTable interference(double year) {
        return new InterferenceTable(
                "after 1 year",
                year,
                List.of("Bore, \"north\"", "Brücke", "Lignum Spring"),
                new double[][] {{120, 60, -1}, {60, 100, -2}, {30, 40, -0.5}},
                new double[] {21, 42, 130.5},
                List.of(
                        new InterferenceTable.BoreShare(
                                "Bore, \"north\"",
                                120,
                                60,
                                -1,
                                200,
                                864,
                                OptionalDouble.of(60),
                                OptionalDouble.empty()),
                        new InterferenceTable.BoreShare(
                                "Brücke", 100, 60, -2, 200, 432, OptionalDouble.empty(), OptionalDouble.of(500))),
                new InterferenceTable.FieldLoss(864, 60, 68, 500));
    }
}
