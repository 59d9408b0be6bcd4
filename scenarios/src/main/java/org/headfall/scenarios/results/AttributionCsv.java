package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.headfall.scenarios.findings.AttributionSummary;
import org.headfall.scenarios.findings.AttributionTable;
import org.headfall.scenarios.findings.ShareBase;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;

/**
 * Writes {@code attribution.csv}: drawdown and loss of discharge at every place and report date, split by bore, by holder
 * and by group. What boundaries, recharge and the start do and what is not linear have a line each. The lines of one split and
 * these two add up to the whole. Shares are told where they say anything ({@link ShareBase}); otherwise a remark says why not.
 * They are those of the amounts as written, so that whoever divides these again, as the report does, finds the same.
 */
final class AttributionCsv {

    static final String NAME = "attribution.csv";

    static final String DATE = "date";
    static final String AT = "at";
    static final String SPLIT_BY = "split by";
    static final String CAUSE = "cause";
    static final String DRAWDOWN = "drawdown (m)";
    static final String SEASONAL_DRAWDOWN = "of it by the season (m)";
    static final String LOSS = "loss of discharge (L/s)";
    static final String SEASONAL_LOSS = "of it by the season (L/s)";

    static final String EVERYTHING = "everything";
    static final String BY_BORE = "bore";
    static final String BY_HOLDER = "holder";
    static final String BY_GROUP = "group";
    static final String NO_BORE = "no bore";
    static final String NO_CAUSE = "no cause";

    /** Decimals of metres and L/s: the least whole that shares are told of, a hundredth, has five digits. */
    private static final int DECIMALS = 6;

    private static final List<String> HEADER = List.of(
            "when",
            DATE,
            AT,
            SPLIT_BY,
            CAUSE,
            DRAWDOWN,
            SEASONAL_DRAWDOWN,
            "share of drawdown (%)",
            LOSS,
            SEASONAL_LOSS,
            "share of loss (%)",
            "remark");

    private final RunDescription description;
    private final CsvFile file;

    private AttributionCsv(RunDescription description, CsvFile file) {
        this.description = description;
        this.file = file;
    }

    static void write(Path target, List<AttributionTable> tables, RunDescription description) throws IOException {
        try (CsvFile file = new CsvFile(target, HEADER)) {
            AttributionCsv csv = new AttributionCsv(description, file);
            for (AttributionTable table : tables) {
                for (int row = 0; row < table.stations().size(); row++) {
                    csv.write(table, row);
                }
            }
            file.complete();
        }
    }

    private void write(AttributionTable table, int row) throws IOException {
        Effect all = new Effect(
                        table.wholeDrawdown()[row],
                        Arrays.stream(table.seasonal()[row]).sum(),
                        table.wholeLoss()[row],
                        Arrays.stream(table.seasonalLoss()[row]).sum())
                .asWritten();
        Effect drift = new Effect(table.drift()[row], 0, table.driftLoss()[row], 0).asWritten();
        List<Effect> parts = new ArrayList<>();
        Effect rest = all.less(drift);
        for (int bore = 0; bore < table.drawdown()[row].length; bore++) {
            Effect effect = effect(table, row, bore);
            parts.add(effect);
            rest = rest.less(effect);
        }
        parts.add(drift);
        parts.add(rest);
        Whole whole = Whole.of(all, parts);
        line(table, row, EVERYTHING, EVERYTHING, all, whole);
        split(table, row, BY_BORE, Station.BoreSite::name, whole);
        split(
                table,
                row,
                BY_HOLDER,
                site -> site.holder().isEmpty() ? AttributionSummary.HOLDER_NOT_STATED : site.holder(),
                whole);
        split(table, row, BY_GROUP, site -> site.proposed() ? "proposed" : "existing", whole);
        line(table, row, NO_BORE, "boundaries, recharge and the start", drift, whole);
        line(table, row, NO_CAUSE, "what is not linear", rest, whole);
    }

    private void split(
            AttributionTable table, int row, String by, Function<Station.BoreSite, String> cause, Whole whole)
            throws IOException {
        Map<String, Effect> effects = new LinkedHashMap<>();
        List<Station.BoreSite> sites = description.bores();
        for (int bore = 0; bore < sites.size(); bore++) {
            effects.merge(cause.apply(sites.get(bore)), effect(table, row, bore), Effect::plus);
        }
        for (Map.Entry<String, Effect> entry : effects.entrySet()) {
            line(table, row, by, entry.getKey(), entry.getValue(), whole);
        }
    }

    private static Effect effect(AttributionTable table, int row, int bore) {
        boolean follows = table.loss()[row].length > 0;
        return new Effect(
                        table.drawdown()[row][bore],
                        table.seasonal()[row][bore],
                        follows ? table.loss()[row][bore] : 0,
                        follows ? table.seasonalLoss()[row][bore] : 0)
                .asWritten();
    }

    private void line(AttributionTable table, int row, String by, String cause, Effect effect, Whole whole)
            throws IOException {
        CsvLineCells cells = new CsvLineCells()
                .text(table.label())
                .date(description.calendar().at(table.day()))
                .text(table.stations().get(row))
                .text(by)
                .text(cause)
                .number(effect.drawdown, DECIMALS)
                .number(effect.seasonal, DECIMALS)
                .number(whole.drawdown.percent(effect.drawdown), 1);
        if (!whole.losesDischarge()) {
            cells.empty().empty().empty();
        } else {
            cells.number(DischargeUnit.LITRES_PER_SECOND.of(effect.loss), DECIMALS)
                    .number(DischargeUnit.LITRES_PER_SECOND.of(effect.seasonalLoss), DECIMALS)
                    .number(whole.loss.percent(effect.loss), 1);
        }
        file.line(cells.text(whole.remark()));
    }

    /** What shares of drawdown and of the loss of discharge are told of; the loss is NaN where nothing follows head. */
    private record Whole(ShareBase drawdown, ShareBase loss) {

        static Whole of(Effect all, List<Effect> parts) {
            return new Whole(
                    ShareBase.of(
                            ShareBase.LEAST_DRAWDOWN,
                            all.drawdown,
                            parts.stream().mapToDouble(Effect::drawdown).toArray()),
                    ShareBase.of(
                            ShareBase.LEAST_LOSS,
                            all.loss,
                            parts.stream().mapToDouble(Effect::loss).toArray()));
        }

        boolean losesDischarge() {
            return !Double.isNaN(loss.whole());
        }

        /** Why shares are missing, blank where they are all there. */
        String remark() {
            List<String> reasons = new ArrayList<>();
            if (drawdown.sense() != ShareBase.Sense.SOUND) {
                reasons.add("no shares of drawdown: " + drawdown.sense().whyNot());
            }
            if (losesDischarge() && loss.sense() != ShareBase.Sense.SOUND) {
                reasons.add("no shares of loss: " + loss.sense().whyNot());
            }
            return String.join("; ", reasons);
        }
    }

    /** Drawdown and the seasonal part of it (m), loss of discharge and the seasonal part of that (m³/d). */
    private record Effect(double drawdown, double seasonal, double loss, double seasonalLoss) {

        private static final double PER_UNIT = Math.pow(10, DECIMALS);

        /** The same without the digits that are not written. */
        Effect asWritten() {
            return new Effect(written(drawdown), written(seasonal), writtenLoss(loss), writtenLoss(seasonalLoss));
        }

        private static double written(double value) {
            return Math.rint(value * PER_UNIT) / PER_UNIT;
        }

        private static double writtenLoss(double loss) {
            return DischargeUnit.LITRES_PER_SECOND.per(written(DischargeUnit.LITRES_PER_SECOND.of(loss)));
        }

        Effect plus(Effect other) {
            return new Effect(
                    drawdown + other.drawdown,
                    seasonal + other.seasonal,
                    loss + other.loss,
                    seasonalLoss + other.seasonalLoss);
        }

        Effect less(Effect other) {
            return new Effect(
                    drawdown - other.drawdown,
                    seasonal - other.seasonal,
                    loss - other.loss,
                    seasonalLoss - other.seasonalLoss);
        }
    }
}
