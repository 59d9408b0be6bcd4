package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.List;
import org.headfall.solver.schedule.Schedule;

/**
 * Water balances of a run found by superposition, from one day with heads of all cells to the next. Every term is computed by
 * itself: releases and flows that follow heads as linear functions of the solutions that the heads are sums of, what is given
 * from its schedule, discharges from their history. So the discrepancy tells how well all of them together satisfy the flow
 * equation in the sum over all cells.
 *
 * <p>What a cell gives and takes back between the two days cancels. Leakage and flows through boundaries count as inflow or
 * outflow by cells as they ran at the start; a cell whose flow has turned since is put right by the mean of its heads on the
 * two days.
 */
final class FieldBalance {

    private final SourceFields fields;
    private final BalanceParts parts;
    private final FlowEquation equation;
    private final FlowProblem problem;
    private final double[] startHead;
    private double[] head;
    private float[] released;
    private double[] content;
    private double day;

    FieldBalance(SourceFields fields, double[] startHead) {
        this.fields = fields;
        problem = fields.problem();
        parts = fields.balance();
        equation = new FlowEquation(problem);
        this.startHead = startHead;
        head = startHead.clone();
        released = new float[startHead.length];
        content = new double[parts.count()];
    }

    /**
     * Closes the balance at a day and begins the next.
     *
     * @param reached the state on the day
     * @param headThen head of each cell then (m above datum); copied
     * @param releasedThen what the bed over each cell has released since the start (m³), empty if it stores nothing; copied
     */
    WaterBalance close(ReachedDay reached, double[] headThen, float[] releasedThen) {
        FlowRates volumes = new FlowRates(2 + equation.termCount() + reached.taken().length);
        double[] contentThen = fields.partsOf(reached.weights());
        addRelease(
                0, contentThen[BalanceParts.STORAGE] - content[BalanceParts.STORAGE], storageGross(headThen), volumes);
        addRelease(1, contentThen[BalanceParts.BED] - content[BalanceParts.BED], bedGross(releasedThen), volumes);
        double[] passed = fields.partsOf(reached.integral());
        for (int i = 0; i < parts.flows().size(); i++) {
            BalanceParts.Flow flow = parts.flows().get(i);
            double volume = atStartHeads(flow, reached.day()) + passed[BalanceParts.FIRST_FLOW + i];
            addFlow(flow, volume, turned(flow, headThen, reached.day()), volumes);
        }
        addGiven(reached.day(), volumes);
        int firstPoint = 2 + equation.termCount();
        for (int i = 0; i < reached.taken().length; i++) {
            volumes.add(firstPoint + i, reached.givenBack()[i]);
            volumes.add(firstPoint + i, -reached.taken()[i]);
        }
        WaterBalance balance = balance(reached.day(), volumes);
        head = headThen.clone();
        released = releasedThen.clone();
        content = contentThen;
        day = reached.day();
        return balance;
    }

    private static void addRelease(int term, double net, double gross, FlowRates volumes) {
        double all = Math.max(gross, Math.abs(net));
        volumes.add(term, 0.5 * (all + net));
        volumes.add(term, 0.5 * (net - all));
    }

    private double storageGross(double[] headThen) {
        double sum = 0;
        for (int cell = 0; cell < head.length; cell++) {
            sum += parts.storage()[cell] * Math.abs(head[cell] - headThen[cell]);
        }
        return sum;
    }

    private double bedGross(float[] releasedThen) {
        double sum = 0;
        for (int cell = 0; cell < releasedThen.length; cell++) {
            sum += Math.abs(releasedThen[cell] - released[cell]);
        }
        return sum;
    }

    /** Volume that would have passed had heads stayed as at the start (m³). */
    private double atStartHeads(BalanceParts.Flow flow, double until) {
        double time = until - day;
        double sum = 0;
        double conductance = 0;
        int[] cells = flow.conductance().cells();
        for (int k = 0; k < cells.length; k++) {
            double own = flow.conductance().weights()[k];
            conductance += own;
            double level = flow.level() == null ? flow.ownLevel()[cells[k]] : 0;
            sum += own * (level - startHead[cells[k]]);
        }
        double ofSchedule = flow.level() == null ? 0 : integral(flow.level(), day, until, 0);
        return sum * time + conductance * ofSchedule;
    }

    /** Volume of those cells whose flow has turned, by the mean of heads on both days (m³), as a size. */
    private double turned(BalanceParts.Flow flow, double[] headThen, double until) {
        double time = until - day;
        double common = flow.level() == null ? 0 : integral(flow.level(), day, until, 0) / time;
        double sum = 0;
        int[] cells = flow.conductance().cells();
        for (int k = 0; k < cells.length; k++) {
            int cell = cells[k];
            double level = flow.level() == null ? flow.ownLevel()[cell] : common;
            double above = level - 0.5 * (head[cell] + headThen[cell]);
            if (above > 0 != flow.enters()) {
                sum += flow.conductance().weights()[k] * Math.abs(above) * time;
            }
        }
        return sum;
    }

    private static void addFlow(BalanceParts.Flow flow, double volume, double turned, FlowRates volumes) {
        int term = 2 + flow.term();
        double sign = flow.enters() ? 1 : -1;
        volumes.add(term, volume + sign * turned);
        volumes.add(term, -sign * turned);
    }

    /** Boundaries with a given flow, and recharge. */
    private void addGiven(double until, FlowRates volumes) {
        int term = 3;
        for (BoundaryFaces boundary : equation.boundaries()) {
            if (boundary.givesFlow()) {
                addGiven(term, boundary.schedule(), 1, until, volumes);
            }
            term++;
        }
        for (RechargeCells recharge : equation.recharges()) {
            addGiven(term++, recharge.factor(), recharge.total(), until, volumes);
        }
    }

    private void addGiven(int term, Schedule schedule, double scale, double until, FlowRates volumes) {
        volumes.add(term, scale * integral(schedule, day, until, 1));
        volumes.add(term, scale * integral(schedule, day, until, -1));
    }

    /** Integral of a schedule, or of its positive (1) or negative (-1) part alone. */
    private static double integral(Schedule schedule, double from, double to, int sign) {
        List<Double> ends = new ArrayList<>();
        for (double[] days : new double[][] {schedule.jumps(), schedule.bends()}) {
            for (double day : days) {
                if (day > from && day < to) {
                    ends.add(day);
                }
            }
        }
        ends.add(to);
        ends.sort(null);
        double sum = 0;
        double begin = from;
        for (double end : ends) {
            if (end > begin) {
                double first = schedule.at(begin);
                double last = schedule.at(Math.nextDown(end));
                sum += StraightPiece.integral(first, last, end - begin, sign);
                begin = end;
            }
        }
        return sum;
    }

    private WaterBalance balance(double until, FlowRates volumes) {
        List<WaterBalance.Term> names = FlowSystem.terms(problem, equation);
        List<WaterBalance.Term> filled = new ArrayList<>();
        for (int term = 0; term < names.size(); term++) {
            WaterBalance.Term name = names.get(term);
            filled.add(new WaterBalance.Term(name.name(), name.kind(), volumes.inflow(term), volumes.outflow(term)));
        }
        double discrepancy = new WaterBalance(day, until, filled, 0).relativeDiscrepancy();
        return new WaterBalance(day, until, filled, discrepancy);
    }
}
