package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.accounts.WaterAccount;
import org.headfall.scenarios.quantity.VolumeUnit;

/** Writes {@code accounts.csv}: one line a water year and bore, holder, zone, or all bores together. */
public final class AccountsCsv {

    /** Name of the file in the folder of the results. */
    public static final String NAME = "accounts.csv";

    static final String FROM = "water year from";
    static final String OF = "account of";
    static final String ACCOUNT_NAME = "name";
    static final String COUNTED = "counts against the entitlement (ML)";
    static final String ENTITLEMENT = "entitlement (ML)";
    static final String LEFT = "left of the entitlement (ML)";

    private static final double PER_CENT = 100;

    private static final List<String> HEADER = List.of(
            FROM,
            "until before",
            OF,
            ACCOUNT_NAME,
            "bores",
            "metered bores",
            "taken in the run (ML)",
            "metered (ML)",
            COUNTED,
            ENTITLEMENT,
            LEFT,
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
                .text(account.name())
                .number(account.bores().size(), 0)
                .number(account.meteredBores(), 0);
        megalitres(cells, account.taken());
        megalitres(cells, account.metered());
        megalitres(cells, account.counted());
        megalitres(cells, account.entitlement());
        megalitres(cells, account.left());
        return cells.number(used(account), 1).text(remark(account));
    }

    private static void megalitres(CsvLineCells cells, OptionalDouble volume) {
        cells.number(VolumeUnit.MEGALITRES.of(volume.orElse(Double.NaN)), 3);
    }

    private static double used(WaterAccount account) {
        double entitlement = account.entitlement().orElse(0);
        return account.left().isPresent() && entitlement > 0
                ? PER_CENT * (1 - account.left().getAsDouble() / entitlement)
                : Double.NaN;
    }

    /** Whence what counts comes, and what keeps it from being compared with the entitlement. */
    private static String remark(WaterAccount account) {
        List<String> remarks = new ArrayList<>();
        int bores = account.bores().size();
        int metered = account.meteredBores();
        if (metered == bores) {
            remarks.add(
                    bores == 1
                            ? "The meter counts, on straight lines between readings."
                            : "All meters count, on straight lines between readings.");
        } else if (metered > 0) {
            remarks.add("Meters of " + metered + " of " + bores + " bores count, on straight lines between readings; "
                    + (account.taken().isPresent()
                            ? "of the others what the run takes."
                            : "of the others nothing is known."));
        }
        int unread = account.boresWithTooFewReadings();
        if (unread > 0) {
            remarks.add(
                    bores == 1
                            ? "Readings of its meter do not reach over the year, so it does not count."
                            : "Readings of " + unread
                                    + " of their meters do not reach over the year, so these do not count.");
        }
        if (account.countsPartOfAYear()) {
            remarks.add("The run has a part of the year only.");
        }
        if (bores > 1 && account.entitledBores() < bores) {
            remarks.add(account.entitledBores() + " of " + bores + " bores have an entitlement.");
        }
        return String.join(" ", remarks);
    }
}
