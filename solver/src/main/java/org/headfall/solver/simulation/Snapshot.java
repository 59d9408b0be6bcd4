package org.headfall.solver.simulation;

import org.headfall.solver.flow.WaterBalance;

/**
 * State of the field at a recorded day. The arrays belong to the simulation and change after the call that delivers
 * them: copy what is to be kept. Bores and springs are in the order of the flow problem.
 *
 * @param day days since the start of the period
 * @param head head of each cell as the solver carries it (m above datum): that at its centre but beside a fixed head, see
 *     {@link org.headfall.solver.nearfield.CentreHeads}
 * @param boreWallHead head in the aquifer at the wall of each bore (m above datum), own drawdown included
 * @param boreLevel water level in each bore (m above datum): to where the wall head less losses carries
 *     the bore's water
 * @param boreRate discharge of each bore (m³/d)
 * @param boreWantedRate discharge asked of each bore (m³/d): above {@code boreRate} where the lowest level cuts it;
 *     equal to it for free flow and pump curves
 * @param springDischarge discharge of each spring (m³/d)
 * @param springHead head in the cell of each spring (m above datum)
 * @param headError error of {@code head} that the time steps have left, as estimated (m), with its sign
 * @param balance water that passed since the previous snapshot
 */
@SuppressWarnings("ArrayRecordComponent") // views of the running state, as said above
public record Snapshot(
        double day,
        double[] head,
        double[] boreWallHead,
        double[] boreLevel,
        double[] boreRate,
        double[] boreWantedRate,
        double[] springDischarge,
        double[] springHead,
        double[] headError,
        WaterBalance balance) {}
