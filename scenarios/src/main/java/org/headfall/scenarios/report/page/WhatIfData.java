package org.headfall.scenarios.report.page;

import org.headfall.scenarios.report.content.WhatIf;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Responses, discharges and rules for the part of the page that changes rates. */
final class WhatIfData {

    /** What responses are rounded to (d/m²): 0.1 mm for each 1,000 m³/d. */
    private static final double RESPONSE_QUANTUM = 1e-7;

    private static final double DISCHARGE_QUANTUM = 0.01;

    private WhatIfData() {}

    static void put(ObjectNode node, WhatIf whatIf) {
        ArrayNode stations = node.putArray("stations");
        whatIf.stations().forEach(stations::add);
        double[] lags = whatIf.lags();
        node.put("firstLag", lags[0]);
        node.put("lastLag", lags[lags.length - 1]);
        node.put("lags", lags.length);
        node.put("responseQuantum", RESPONSE_QUANTUM);
        node.put("responses", packed(whatIf.responses(), RESPONSE_QUANTUM));
        ArrayNode days = node.putArray("days");
        for (double day : whatIf.days()) {
            days.add(day);
        }
        node.put("dischargeQuantum", DISCHARGE_QUANTUM);
        node.put("begin", packed(whatIf.begin(), DISCHARGE_QUANTUM));
        node.put("end", packed(whatIf.end(), DISCHARGE_QUANTUM));
        ArrayNode takers = node.putArray("takers");
        whatIf.takers().forEach(taker -> putTaker(takers.addObject(), taker));
        ArrayNode limits = node.putArray("limits");
        whatIf.limits().forEach(limit -> putCondition(limits.addObject(), limit));
        ArrayNode notJudged = node.putArray("notJudged");
        whatIf.notJudged()
                .forEach(limit ->
                        notJudged.addObject().put("limit", limit.limit()).put("reason", limit.reason()));
    }

    private static String packed(double[][] rows, double quantum) {
        int length = rows.length == 0 ? 1 : rows[0].length;
        double[] all = new double[rows.length * length];
        for (int row = 0; row < rows.length; row++) {
            System.arraycopy(rows[row], 0, all, row * length, length);
        }
        return new PackedNumbers(quantum, length).add(all).text();
    }

    private static void putTaker(ObjectNode node, WhatIf.Taker taker) {
        node.put("rule", taker.rule().name());
        node.put("proposed", taker.proposed());
        node.put("holder", taker.holder());
        PageData.putNumber(node, "lowestLevel", taker.lowestLevel());
        node.put("linearLoss", taker.loss().linear());
        node.put("quadraticLoss", taker.loss().quadratic());
        PageData.putNumber(node, "outlet", taker.outlet());
    }

    private static void putCondition(ObjectNode node, WhatIf.Condition limit) {
        node.put("limit", limit.limit());
        node.put("station", limit.station());
        node.put("quantity", limit.quantity().name());
        ArrayNode causes = node.putArray("causes");
        limit.causes().forEach(causes::add);
        node.putArray("reference")
                .add(limit.reference().fromDay())
                .add(limit.reference().toDay());
        node.put("fromDay", limit.fromDay());
        node.put("toDay", limit.toDay());
        node.put("years", limit.years());
    }
}
