package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.accounts.WaterAccount;

/** Writes {@code accounts.csv}: one line a water year and bore, holder, zone, or all bores together. */
public final class AccountsCsv {

    /** Name of the file in the folder of the results. */
    public static final String NAME = "accounts.csv";

    private static final double CUBIC_METRES_PER_MEGALITRE = 1000;
    private static final double PER_CENT = 100;

    private static final List<String> HEADER = List.of(
            "water year from",
            "until before",
            "account of",
            "name",
            "taken in the run (ML)",
            "metered (ML)",
            "entitlement (ML)",
            "left of the entitlement (ML)",
            "used of the entitlement (%)",
            "remark");

    private AccountsCsv() {}

    /**
     * Writes the file; it appears under its name when it is whole.
     *
     * @param folder folder of the results
     * @param accounts the accounts
     * @throws IOException if it cannot be written
     */
    public static void write(Path folder, List<WaterAccount> accounts) throws IOException {
        CsvFile.write(folder.resolve(NAME), HEADER, accounts, account -> line(account));
    }

    private static CsvLineCells line(WaterAccount account) {
        CsvLineCells cells = new CsvLineCells()
                .date(account.year().begins().atStartOfDay())
                .date(account.year().ends().atStartOfDay())
                .text(account.of().words())
                .text(account.name());
        megalitres(cells, account.taken());
        megalitres(cells, account.metered());
        megalitres(cells, account.entitlement());
        megalitres(cells, account.left());
        return cells.number(used(account), 1).text(remark(account));
    }

    private static void megalitres(CsvLineCells cells, OptionalDouble volume) {
        cells.number(volume.orElse(Double.NaN) / CUBIC_METRES_PER_MEGALITRE, 3);
    }

    private static double used(WaterAccount account) {
        double entitlement = account.entitlement().orElse(0);
        return account.left().isPresent() && entitlement > 0
                ? PER_CENT * (1 - account.left().getAsDouble() / entitlement)
                : Double.NaN;
    }

    private static String remark(WaterAccount account) {
        if (account.metered().isPresent()) {
            return "The meters count, on straight lines between readings.";
        }
        return account.wholeYear() || account.taken().isEmpty() ? "" : "The run has a part of the year only.";
    }
}
