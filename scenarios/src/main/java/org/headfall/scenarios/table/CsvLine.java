package org.headfall.scenarios.table;

import org.headfall.scenarios.problem.Place;

/**
 * One record of a CSV file with the place of each value.
 *
 * @param file name of the file
 * @param values the values without quotes
 * @param lines line each value begins in
 * @param columns column each value begins at, its opening quote included
 * @param endLine line the record ends in
 * @param endColumn column behind the last character
 */
@SuppressWarnings("ArrayRecordComponent") // made once per row by the parser and never compared or shared
record CsvLine(String file, String[] values, int[] lines, int[] columns, int endLine, int endColumn) {
    int size() {
        return values.length;
    }

    /** Where a value begins; where the record ends for a value that is not there. */
    Place place(int index) {
        return index < values.length
                ? new Place(file, lines[index], columns[index])
                : new Place(file, endLine, endColumn);
    }
}
