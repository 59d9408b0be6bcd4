package org.headfall.validation.table;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.List;
import java.util.Optional;

/** The wrong entries of one table that have been found so far. */
final class KnownMisprints {

    private final List<NamedCsvRecord> rows;

    private KnownMisprints(List<NamedCsvRecord> rows) {
        this.rows = rows;
    }

    /** Those of a table. */
    static KnownMisprints of(String table) {
        return new KnownMisprints(ReferenceTable.rows("misprints.csv").stream()
                .filter(row -> row.getField("table").equals(table))
                .toList());
    }

    /** How we know that an entry is wrong, if it is listed. */
    Optional<String> evidence(String entry, String printed) {
        return rows.stream()
                .filter(row -> row.getField("entry").equals(entry)
                        && row.getField("printed").equals(printed))
                .map(row -> row.getField("evidence"))
                .findFirst();
    }
}
