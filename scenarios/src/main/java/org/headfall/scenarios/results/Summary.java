package org.headfall.scenarios.results;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.findings.Findings;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.recording.InputFile;
import org.headfall.scenarios.recording.Measurement;
import org.headfall.scenarios.recording.ReportDate;
import org.headfall.scenarios.recording.Station;

/**
 * What {@code summary.json} holds: everything about a run that is no grid and no series. Metres, days, m³/d; days count
 * from the start.
 *
 * @param format format of this file, raised when a reader of the old one would be misled
 * @param ownSha256 SHA-256 of this file itself, see {@link SummarySeal}
 * @param files what every other file of the folder is known again by, by name
 * @param title title of the scenario
 * @param purpose what it is for; empty if not given
 * @param datum vertical datum of all levels
 * @param coordinateReference code of the coordinate reference system of x and y, if there is one
 * @param start date and time of day 0
 * @param end date and time of the last day
 * @param endDay last day
 * @param toolVersion program and version
 * @param inputs every file read
 * @param assumptions what was assumed when the input was read
 * @param stations bores, springs, protected points
 * @param reportDates dates of the tables
 * @param measurements measured heads
 * @param findings what was found
 * @param limits outcome of each limit
 * @param figures how exact it is and what it took
 */
record Summary(
        int format,
        String ownSha256,
        Map<String, FileStamp> files,
        String title,
        String purpose,
        String datum,
        Optional<String> coordinateReference,
        LocalDateTime start,
        LocalDateTime end,
        double endDay,
        String toolVersion,
        List<InputFile> inputs,
        List<String> assumptions,
        List<Station> stations,
        List<ReportDate> reportDates,
        List<Measurement> measurements,
        Findings findings,
        List<LimitResult> limits,
        RunFigures figures) {

    static final int FORMAT = 6;

    /** The same with other files and its seal open. */
    Summary withFiles(Map<String, FileStamp> others) {
        return new Summary(
                format,
                SummarySeal.OPEN,
                others,
                title,
                purpose,
                datum,
                coordinateReference,
                start,
                end,
                endDay,
                toolVersion,
                inputs,
                assumptions,
                stations,
                reportDates,
                measurements,
                findings,
                limits,
                figures);
    }
}
