package org.headfall.scenarios.report;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.headfall.scenarios.findings.Confinement;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.report.content.Assumption;
import org.headfall.scenarios.report.content.Assumption.Effect;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.flow.WaterBalance.Kind;

/**
 * What every run takes for granted, with what this one shows of it. How much the answer depends on a source of water
 * goes by its share of what came in: much from a third on, some from a tenth on (common practice, no source).
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
                effect(Kind.BOUNDARY)));
        if (shares.containsKey(Kind.RECHARGE)) {
            all.add(new Assumption(
                    "Recharge goes on as given, also in a changing climate.",
                    share(Kind.RECHARGE, "came from recharge"),
                    effect(Kind.RECHARGE)));
        }
        description
                .sealingBed()
                .ifPresent(bed -> all.add(new Assumption(
                        "The level above the sealing bed does not change, however much water passes through the bed.",
                        share(Kind.LEAKAGE, "came through the bed from above") + " "
                                + share(Kind.SEALING_BED_STORAGE, "came from storage in the bed"),
                        effect(Kind.LEAKAGE))));
        all.add(new Assumption(
                "Transmissivity and storativity between the places where they are known are as the scenario spreads"
                        + " them, with no faults or fractures that it does not show.",
                "Not tested by this run: it takes runs with other values.",
                Effect.HIGH));
        all.add(density(description));
        all.add(new Assumption(
                "Bores take what the scenario asks of them, for as long as it says.",
                description.bores().size() + " bores, of which "
                        + description.bores().stream()
                                .filter(Station.BoreSite::proposed)
                                .count()
                        + " are proposed.",
                Effect.HIGH));
        return all;
    }

    private Assumption confined() {
        Confinement confinement = run.findings().confinement();
        return confinement.cells() == 0
                ? new Assumption(
                        "The aquifer is one layer, full under its sealing bed, and water moves along it only.",
                        "Head stays above the top of the aquifer everywhere.",
                        Effect.LOW)
                : new Assumption(
                        "The aquifer is one layer, full under its sealing bed, and water moves along it only.",
                        "Broken: head falls below the top of the aquifer in " + confinement.cells() + " cells.",
                        Effect.HIGH);
    }

    private static Assumption density(RunDescription description) {
        long hot = description.bores().stream()
                .filter(bore -> bore.hotColumn().isPresent())
                .count();
        return new Assumption(
                "Water is fresh and of 20\u00a0\u00b0C, but for bores whose temperature is given; salt is not counted.",
                hot == 0 ? "No temperature is given." : "The temperature of " + hot + " bores is given.",
                Effect.MEDIUM);
    }

    private String share(Kind kind, String words) {
        return String.format(Locale.ROOT, "%.0f\u00a0%% of the water %s.", 100 * shares.getOrDefault(kind, 0.0), words);
    }

    private Effect effect(Kind kind) {
        double share = shares.getOrDefault(kind, 0.0);
        if (share >= MUCH) {
            return Effect.HIGH;
        }
        return share >= SOME ? Effect.MEDIUM : Effect.LOW;
    }
}
