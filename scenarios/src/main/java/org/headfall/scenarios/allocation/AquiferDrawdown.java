package org.headfall.scenarios.allocation;

import java.util.Map;
import org.headfall.solver.response.CoupledResponses;
import org.headfall.solver.response.UnitResponses;

/** Drawdown by rates in the aquifer alone, as if no spring and no bore answered it: superposition of unit responses. */
final class AquiferDrawdown implements DrawdownByRates {

    private final UnitResponses responses;
    private final RateVariables variables;

    /**
     * Drawdown.
     *
     * @param responses responses of all stations to all bores
     * @param variables the rates
     */
    AquiferDrawdown(UnitResponses responses, RateVariables variables) {
        this.responses = responses;
        this.variables = variables;
    }

    @Override
    public CoupledResponses.Changes on(double[] rates, Counted counted, double[] days) {
        double[][] all = new double[days.length][];
        for (int k = 0; k < days.length; k++) {
            all[k] = on(rates, counted, days[k]);
        }
        return new CoupledResponses.Changes(all, new double[days.length][responses.causes()]);
    }

    private double[] on(double[] rates, Counted counted, double day) {
        double[] sum = new double[responses.receptors()];
        double[] amounts = new double[responses.causes()];
        for (Map.Entry<Double, RateVariables.Change> change :
                variables.changesBefore(day).entrySet()) {
            boolean any = false;
            for (int b = 0; b < variables.bores(); b++) {
                double amount = counted.bores().get(b) ? variables.step(rates, b, change.getValue()) : 0;
                amounts[variables.station(b)] = amount;
                any |= amount != 0;
            }
            if (any) {
                responses.table().addSteps(day - change.getKey(), amounts, sum);
            }
        }
        return sum;
    }

    @Override
    public double[] by(int station, Counted counted, double day) {
        double[] effects = new double[variables.count()];
        for (int b = counted.bores().nextSetBit(0); b >= 0; b = counted.bores().nextSetBit(b + 1)) {
            int bore = variables.station(b);
            variables.addSteps(b, day, begun -> responses.at(station, bore, day - begun), effects);
        }
        return effects;
    }

    @Override
    public double[] offeredBy(int bore, double perDischarge, double day) {
        return by(bore, variables.everyone(), day);
    }

    @Override
    public double[] bySteady(int station, double day) {
        double[] effects = new double[variables.bores()];
        for (int b = 0; b < effects.length; b++) {
            effects[b] = responses.at(station, variables.station(b), day);
        }
        return effects;
    }

    @Override
    public boolean isAnswered() {
        return false;
    }
}
