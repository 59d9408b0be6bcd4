package org.headfall.scenarios.evidence;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.headfall.scenarios.evidence.Assumption.Score;
import org.headfall.scenarios.findings.BedAdjustment;
import org.headfall.scenarios.findings.Confinement;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.flow.WaterBalance.Kind;

/**
 * What every run takes for granted, with what this one shows of it. How much the answer depends on a source of water
 * goes by its share of what came in, or of the largest loss of head: much from a third on, some from a tenth on (common
 * practice, no source). The other scores are those of a choice that the program makes, or lets a document make, in the eyes
 * of those who made the program.
 */
final class RunAssumptions {

    private static final double MUCH = 1.0 / 3;
    private static final double SOME = 0.1;

    private final FinishedRun run;
    private final Map<Kind, Double> shares;

    private RunAssumptions(FinishedRun run) {
        this.run = run;
        shares = shares(run.recording().balances());
    }

    static List<Assumption> of(FinishedRun run) {
        return new RunAssumptions(run).assumptions();
    }

    /** Share of each kind in what came in more than it went out. */
    private static Map<Kind, Double> shares(List<WaterBalance> balances) {
        Map<Kind, Double> net = new EnumMap<>(Kind.class);
        for (WaterBalance balance : balances) {
            balance.terms().forEach(term -> net.merge(term.kind(), term.inflow() - term.outflow(), Double::sum));
        }
        net.values().removeIf(volume -> volume <= 0);
        double all = net.values().stream().mapToDouble(Double::doubleValue).sum();
        net.replaceAll((kind, volume) -> volume / all);
        return net;
    }

    private List<Assumption> assumptions() {
        RunDescription description = run.description();
        List<Assumption> all = new ArrayList<>();
        all.add(confined());
        all.add(new Assumption(
                "Beyond the sides of the grid things are as the scenario says.",
                share(Kind.BOUNDARY, "came through the sides"),
                Score.HIGH,
                Score.MEDIUM,
                Score.LOW,
                effect(Kind.BOUNDARY)));
        if (shares.containsKey(Kind.RECHARGE)) {
            all.add(new Assumption(
                    "Recharge goes on as given, also in a changing climate.",
                    share(Kind.RECHARGE, "came from recharge"),
                    Score.HIGH,
                    Score.LOW,
                    Score.LOW,
                    effect(Kind.RECHARGE)));
        }
        description
                .sealingBed()
                .ifPresent(bed -> all.add(new Assumption(
                        "The level above the sealing bed does not change, however much water passes through the bed.",
                        share(Kind.LEAKAGE, "came through the bed from above") + " "
                                + share(Kind.SEALING_BED_STORAGE, "came from storage in the bed")
                                + BedAdjustment.of(description)
                                        .map(adjustment ->
                                                " The bed adjusts to a change of head in " + adjustment.words() + ".")
                                        .orElse(""),
                        Score.MEDIUM,
                        Score.LOW,
                        Score.HIGH,
                        effect(Kind.LEAKAGE))));
        all.add(new Assumption(
                "Transmissivity and storativity between the places where they are known are as the scenario spreads"
                        + " them, with no faults or fractures that it does not show.",
                "Not tested by this run: it takes runs with other values.",
                Score.HIGH,
                Score.MEDIUM,
                Score.LOW,
                Score.HIGH));
        all.add(start());
        all.add(cells());
        all.add(density(description));
        all.add(new Assumption(
                "Bores take what the scenario asks of them, for as long as it says.",
                description.bores().size() + " bores, of which "
                        + description.bores().stream()
                                .filter(Station.BoreSite::proposed)
                                .count()
                        + " are proposed.",
                Score.HIGH,
                Score.LOW,
                Score.LOW,
                Score.HIGH));
        return all;
    }

    private Assumption confined() {
        Confinement confinement = run.findings().confinement();
        return confinement.cells() == 0
                ? new Assumption(
                        "The aquifer is one layer, full under its sealing bed, and water moves along it only.",
                        "Head stays above the top of the aquifer everywhere.",
                        Score.LOW,
                        Score.LOW,
                        Score.HIGH,
                        Score.LOW)
                : new Assumption(
                        "The aquifer is one layer, full under its sealing bed, and water moves along it only.",
                        "Broken: head falls below the top of the aquifer in " + confinement.cells() + " cells.",
                        Score.LOW,
                        Score.LOW,
                        Score.HIGH,
                        Score.HIGH);
    }

    private Assumption start() {
        return new Assumption(
                "Heads at the start are those of the scenario, and nothing from before them goes on but what they show.",
                run.figures()
                        .drift()
                        .map(drift -> String.format(
                                Locale.ROOT,
                                "Kept as at the start, head moves by %+.3f m at %s.",
                                drift.change(),
                                drift.station()))
                        .orElse("They are a state at rest, found before the run."),
                Score.HIGH,
                Score.LOW,
                Score.LOW,
                share(run.figures()
                        .drift()
                        .map(drift -> Math.abs(drift.change()))
                        .orElse(0.0)));
    }

    private Assumption cells() {
        double error = run.figures().stationHeadError().stream()
                .mapToDouble(Double::doubleValue)
                .filter(Double::isFinite)
                .max()
                .orElse(0);
        boolean known = run.figures().errorBudget().isPresent();
        return new Assumption(
                "Cells and time steps are small enough.",
                known
                        ? String.format(Locale.ROOT, "Numerical error of head at most %.3f m in all.", error)
                        : "Only the error of the time steps was found; a run with --doubts finds that of the grid.",
                Score.LOW,
                Score.MEDIUM,
                Score.HIGH,
                known ? share(error) : Score.MEDIUM);
    }

    /** Effect of what moves heads by some metres: its share of the largest loss of head. */
    private Score share(double metres) {
        return score(LossOfHead.of(run).share(metres));
    }

    private static Assumption density(RunDescription description) {
        long hot = description.bores().stream()
                .filter(bore -> bore.hotColumn().isPresent())
                .count();
        return new Assumption(
                "Water is fresh and of 20\u00a0\u00b0C, but for bores whose temperature is given; salt is not counted.",
                hot == 0
                        ? "No temperature is given."
                        : "The temperature is given of " + (hot == 1 ? "one bore." : hot + " bores."),
                Score.MEDIUM,
                Score.LOW,
                Score.MEDIUM,
                Score.MEDIUM);
    }

    private String share(Kind kind, String words) {
        return String.format(Locale.ROOT, "%.0f\u00a0%% of the water %s.", 100 * shares.getOrDefault(kind, 0.0), words);
    }

    private Score effect(Kind kind) {
        return score(shares.getOrDefault(kind, 0.0));
    }

    private static Score score(double share) {
        if (share >= MUCH) {
            return Score.HIGH;
        }
        return share >= SOME ? Score.MEDIUM : Score.LOW;
    }
}
