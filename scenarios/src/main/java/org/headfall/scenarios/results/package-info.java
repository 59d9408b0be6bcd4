/**
 * The folder of a run: its files, how they are written so that none is ever half there under its final name, and how
 * a finished folder is read back.
 *
 * <table>
 *   <caption>Files of a results folder</caption>
 *   <tr><td>{@code heads.nc}</td><td>grids: head and drawdown over time, transmissivity, storativity, top and bottom
 *       of the aquifer, ground, sealing bed, where it stopped being confined; water balance of each period. NetCDF-3,
 *       CF 1.8.</td></tr>
 *   <tr><td>{@code bores.nc}</td><td>series of bores, springs and protected points, CF discrete sampling geometry
 *       (timeSeries).</td></tr>
 *   <tr><td>{@code discharges.nc}</td><td>discharge of bores and springs in straight pieces of time, with its
 *       jumps.</td></tr>
 *   <tr><td>{@code summary.json}</td><td>everything that is no grid and no series: title, datum, calendar, stations,
 *       findings, limits, what the run took. UTF-8.</td></tr>
 *   <tr><td>{@code artesian-head.csv}</td><td>loss of artesian head, one line a station and report date.</td></tr>
 *   <tr><td>{@code decline.csv}</td><td>slope of decline and what it leads to, one line a station and report date.</td></tr>
 *   <tr><td>{@code measured-heads.csv}</td><td>measured beside computed heads; only where heads are given.</td></tr>
 *   <tr><td>{@code inputs.zip}</td><td>the document and the files that it names.</td></tr>
 *   <tr><td>{@code interference.csv}</td><td>drawdown by cause, one line a pair and report date, and shares.</td></tr>
 *   <tr><td>{@code bores.csv}</td><td>the series of {@code bores.nc} in long form.</td></tr>
 *   <tr><td>{@code water-balance.csv}</td><td>one line a period and term, and the discrepancy.</td></tr>
 *   <tr><td>{@code limits.csv}</td><td>one line a limit.</td></tr>
 *   <tr><td>{@code doubts.csv}</td><td>error budget, one line a station and report date; only of a run that was
 *       repeated to find it.</td></tr>
 *   <tr><td>{@code head-*.tif, drawdown-*.tif}</td><td>evenly resampled rasters at the start, the report dates and the
 *       end.</td></tr>
 *   <tr><td>{@code bores.geojson}</td><td>stations with their figures at the end.</td></tr>
 *   <tr><td>{@code report.html}</td><td>written by the package {@code report}.</td></tr>
 * </table>
 *
 * <p>While a run goes on its folder is called {@code NAME.part} and the two NetCDF files {@code heads.nc.part} and
 * {@code bores.nc.part}; each record is on disk as soon as it is made. The folder takes its final name when all
 * files are complete.
 *
 * <p>In memory a finished run is a {@link org.headfall.scenarios.results.FinishedRun}: description, recording,
 * findings, limits and statistics, the same whether it has just ended or was read back.
 */
@NullMarked
package org.headfall.scenarios.results;

import org.jspecify.annotations.NullMarked;
