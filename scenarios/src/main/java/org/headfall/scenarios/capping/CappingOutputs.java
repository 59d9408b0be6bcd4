package org.headfall.scenarios.capping;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.results.CsvFile;
import org.headfall.scenarios.results.CsvLineCells;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.WrittenFiles;

/** Writes the folder of a capping study. */
public final class CappingOutputs {

    private static final WrittenFiles FILES = WrittenFiles.named("(capping-order|capping-gains)\\.csv");

    private final List<ShutBore> bores;
    private final RunCalendar calendar;

    /**
     * Outputs of a study.
     *
     * @param bores the bores in order
     * @param calendar calendar of the run
     */
    public CappingOutputs(List<ShutBore> bores, RunCalendar calendar) {
        this.bores = List.copyOf(bores);
        this.calendar = calendar;
    }

    /**
     * Writes {@code capping-order.csv}, one line a bore, and {@code capping-gains.csv}, the recovery of each place.
     *
     * @param target the folder
     * @param overwrite whether an older study there may be replaced
     * @throws ResultsException if it may not, or a file cannot be written
     */
    public void into(Path target, boolean overwrite) throws ResultsException {
        try (ResultsFolder folder = ResultsFolder.open(target, overwrite, FILES)) {
            writeOrder(folder.file("capping-order.csv"));
            writeGains(folder.file("capping-gains.csv"));
            folder.complete();
        } catch (IOException e) {
            throw ResultsFolder.explained(e, target);
        }
    }

    private void writeOrder(Path target) throws IOException {
        try (CsvFile file = new CsvFile(
                target,
                List.of(
                        "order",
                        "bore to shut",
                        "holder",
                        "water saved (ML/yr)",
                        "of that not given by springs and flowing bores at the end (ML/yr)",
                        "mean gain of head at springs (m per ML/yr)",
                        "mean gain of head at other places (m per ML/yr)",
                        "flow by themselves again"))) {
            for (int i = 0; i < bores.size(); i++) {
                ShutBore bore = bores.get(i);
                file.line(new CsvLineCells()
                        .number(i + 1, 0)
                        .text(bore.name())
                        .text(bore.holder())
                        .number(DischargeUnit.MEGALITRES_PER_YEAR.of(bore.saved()), 2)
                        .number(DischargeUnit.MEGALITRES_PER_YEAR.of(bore.notGivenElsewhere()), 2)
                        .number(perMegalitre(bore.gainAtSprings()), 6)
                        .number(perMegalitre(bore.gainElsewhere()), 6)
                        .text(String.join("; ", bore.flowAgain())));
            }
            file.complete();
        }
    }

    private static double perMegalitre(OptionalDouble gain) {
        return DischargeUnit.MEGALITRES_PER_YEAR.per(gain.orElse(Double.NaN));
    }

    private void writeGains(Path target) throws IOException {
        try (CsvFile file = new CsvFile(
                target,
                List.of(
                        "bore to shut",
                        "place",
                        "kind",
                        "holder",
                        "date",
                        "gain of head (m)",
                        "gain of discharge (m3/d)",
                        "flows by itself again"))) {
            for (ShutBore bore : bores) {
                for (Gain gain : bore.gains()) {
                    file.line(new CsvLineCells()
                            .text(bore.name())
                            .text(gain.station())
                            .text(gain.kind())
                            .text(gain.holder())
                            .date(calendar.at(gain.day()))
                            .number(gain.head(), 4)
                            .number(gain.discharge(), 2)
                            .text(gain.flowsAgain() ? "yes" : "no"));
                }
            }
            file.complete();
        }
    }
}
