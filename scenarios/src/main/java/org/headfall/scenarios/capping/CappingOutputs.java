package org.headfall.scenarios.capping;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.quantity.VolumeUnit;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.results.CsvFile;
import org.headfall.scenarios.results.CsvLineCells;
import org.headfall.scenarios.results.WrittenFiles;

/** Writes the folder of a capping study. */
public final class CappingOutputs {

    /** What a folder of a study may hold. */
    public static final WrittenFiles FILES = WrittenFiles.named("(capping-order|capping-gains|capping-water)\\.csv");

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
     * Writes {@code capping-order.csv}, one line a bore, {@code capping-water.csv}, where the water is that each saves, and
     * {@code capping-gains.csv}, the recovery of each place.
     *
     * @param folder the folder
     * @throws IOException if a file cannot be written
     */
    public void into(Path folder) throws IOException {
        writeOrder(folder.resolve("capping-order.csv"));
        writeWater(folder.resolve("capping-water.csv"));
        writeGains(folder.resolve("capping-gains.csv"));
    }

    private void writeOrder(Path target) throws IOException {
        try (CsvFile file = new CsvFile(
                target,
                List.of(
                        "order",
                        "bore to shut",
                        "holder",
                        "water saved (ML/yr)",
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
                        .number(perMegalitre(bore.gainAtSprings()), 6)
                        .number(perMegalitre(bore.gainElsewhere()), 6)
                        .text(String.join("; ", bore.flowAgain())));
            }
            file.complete();
        }
    }

    private void writeWater(Path target) throws IOException {
        CsvFile.write(
                target,
                List.of(
                        "bore to shut",
                        "holder",
                        "water saved by the end (ML)",
                        "of that more in the aquifer (ML)",
                        "more in the sealing bed (ML)",
                        "more at springs (ML)",
                        "more at other bores (ML)",
                        "out through boundaries or not in there (ML)",
                        "out through the sealing bed or not in there (ML)",
                        "not accounted for (ML)"),
                bores,
                bore -> new CsvLineCells()
                        .text(bore.name())
                        .text(bore.holder())
                        .number(VolumeUnit.MEGALITRES.of(bore.water().saved()), 3)
                        .number(VolumeUnit.MEGALITRES.of(bore.water().inAquifer()), 3)
                        .number(VolumeUnit.MEGALITRES.of(bore.water().inSealingBed()), 3)
                        .number(VolumeUnit.MEGALITRES.of(bore.water().atSprings()), 3)
                        .number(VolumeUnit.MEGALITRES.of(bore.water().atBores()), 3)
                        .number(VolumeUnit.MEGALITRES.of(bore.water().throughBoundaries()), 3)
                        .number(VolumeUnit.MEGALITRES.of(bore.water().throughSealingBed()), 3)
                        .number(VolumeUnit.MEGALITRES.of(bore.water().unaccounted()), 6));
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
