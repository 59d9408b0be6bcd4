package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.findings.ArtesianHead;
import org.headfall.scenarios.findings.FlowByItself;
import org.headfall.scenarios.findings.HeadPressure;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.recording.RunCalendar;

/** Writes {@code artesian-head.csv}: one line a station and report date. */
final class ArtesianHeadTable {

    private static final List<String> HEADER = List.of(
            "name",
            "kind",
            "when",
            "date",
            "ground level (m above datum)",
            "outlet level (m above datum)",
            "head above ground at start (m)",
            "pressure at ground at start (kPa at 9.79 kPa/m)",
            "head above ground (m)",
            "pressure at ground (kPa at 9.79 kPa/m)",
            "mean temperature of water in bore (degC)",
            "pressure at ground with this water at start (kPa)",
            "pressure at ground with this water (kPa)",
            "loss of head since start (m)",
            "decline over last five years (m/yr)",
            "flows by itself",
            "stops flowing by itself on",
            "water level in bore (m above datum)",
            "water above pump intake (m)",
            "discharge at start (m3/d)",
            "discharge (m3/d)",
            "discharge at start (L/s)",
            "discharge (L/s)",
            "head below aquifer top");

    private ArtesianHeadTable() {}

    static void write(Path target, List<ArtesianHead> losses, RunCalendar calendar) throws IOException {
        try (CsvFile file = new CsvFile(target, HEADER)) {
            for (ArtesianHead loss : losses) {
                for (ArtesianHead.AtDate at : loss.atDates()) {
                    file.line(line(loss, at, calendar));
                }
            }
            file.complete();
        }
    }

    private static CsvLineCells line(ArtesianHead loss, ArtesianHead.AtDate at, RunCalendar calendar) {
        CsvLineCells cells = new CsvLineCells()
                .text(loss.station())
                .text(loss.kind())
                .text(at.label())
                .date(calendar.at(at.day()))
                .number(loss.groundLevel(), 2)
                .number(loss.outletLevel(), 2)
                .number(loss.headAboveGroundBefore(), 2)
                .number(HeadPressure.atGround(loss.headAboveGroundBefore()), 1)
                .number(at.headAboveGround(), 2)
                .number(HeadPressure.atGround(at.headAboveGround()), 1)
                .number(meanTemperature(loss), 1)
                .number(loss.hotPressureAtGround(loss.headAboveGroundBefore()), 1)
                .number(loss.hotPressureAtGround(at.headAboveGround()), 1)
                .number(at.loss(), 3)
                .number(at.declineRate(), 4);
        flowByItself(cells, loss.flowByItself(), calendar);
        return cells.number(at.levelInBore(), 2)
                .number(at.waterAbovePump(), 2)
                .number(loss.flowBefore(), 2)
                .number(at.flow(), 2)
                .number(litresPerSecond(loss.flowBefore()), 3)
                .number(litresPerSecond(at.flow()), 3)
                .text(at.belowAquiferTop() ? "yes: figures in doubt" : "no");
    }

    private static OptionalDouble meanTemperature(ArtesianHead loss) {
        return loss.hotColumn().isPresent()
                ? OptionalDouble.of(loss.hotColumn().get().meanTemperature())
                : OptionalDouble.empty();
    }

    private static void flowByItself(CsvLineCells cells, FlowByItself flow, RunCalendar calendar) {
        cells.text(FlowWords.of(flow, calendar));
        if (flow instanceof FlowByItself.Stops stops) {
            cells.date(calendar.at(stops.day()));
        } else {
            cells.empty();
        }
    }

    private static OptionalDouble litresPerSecond(OptionalDouble perDay) {
        return perDay.isPresent()
                ? OptionalDouble.of(DischargeUnit.LITRES_PER_SECOND.of(perDay.getAsDouble()))
                : OptionalDouble.empty();
    }
}
