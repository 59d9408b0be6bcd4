package org.headfall.cli.answer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.headfall.scenarios.accounts.AccountSummary;
import org.headfall.scenarios.evidence.Doubt;
import org.headfall.scenarios.evidence.NeverFlowing;
import org.headfall.scenarios.evidence.UnmetRates;
import org.headfall.scenarios.findings.ArtesianHead;
import org.headfall.scenarios.findings.BedAdjustment;
import org.headfall.scenarios.findings.FlowByItself;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.results.AccountSummaries;
import org.headfall.scenarios.results.AnsweredFrom;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.SolvedBy;

/**
 * The figures of a run that are wanted first.
 *
 * @param title title of the scenario
 * @param from first day
 * @param until last day
 * @param verdict whether the field holds
 * @param limits every limit at every place
 * @param largestLossOfHead bore, spring or point that has lost most head, of all recorded days (m)
 * @param leastWaterAbovePump bore with the least water above its pump intake, of all recorded days (m)
 * @param stopFlowing bores and springs that stop flowing by themselves at least for a time, the first to stop first
 * @param neverFlow springs and bores left to flow that never do, since head stays below their outlet
 * @param overEntitlement holders, or bores where none has a holder, that take more than their entitlement in a water year
 * @param unmetRates pumped bores that do not give what is asked of them, with the reason
 * @param cellsNotConfined cells in which head falls below the top of the aquifer
 * @param headErrorMetres largest numerical error of head at a bore, spring or point (m)
 * @param gridAndBoundaryInHeadError whether that error holds those of the grid and of far boundaries, as far as there
 *     are any, beside that of time stepping
 * @param balanceDiscrepancy largest discrepancy of a time step's water balance, as a share of what passed
 * @param bedAdjusts how long the sealing bed takes to adjust to a change of head, in words; absent without one that stores
 * @param effort what the run took
 * @param answeredFrom the unit responses it was answered from, in words; absent if it was simulated on the grid
 * @param simulatedBecause why it was simulated although an answer from unit responses was asked for
 * @param folder folder of the results
 * @param files names of the files in it
 */
public record RunAnswer(
        String title,
        LocalDate from,
        LocalDate until,
        Verdict verdict,
        List<LimitAnswer> limits,
        Optional<Extreme> largestLossOfHead,
        Optional<Extreme> leastWaterAbovePump,
        List<FlowEnd> stopFlowing,
        List<Doubt> neverFlow,
        List<AccountSummary> overEntitlement,
        List<Doubt> unmetRates,
        int cellsNotConfined,
        OptionalDouble headErrorMetres,
        boolean gridAndBoundaryInHeadError,
        double balanceDiscrepancy,
        Optional<String> bedAdjusts,
        Effort effort,
        Optional<String> answeredFrom,
        Optional<String> simulatedBecause,
        String folder,
        List<String> files) {

    private static final double MEBIBYTE = 1 << 20;

    /** Copies the lists. */
    public RunAnswer {
        limits = List.copyOf(limits);
        stopFlowing = List.copyOf(stopFlowing);
        neverFlow = List.copyOf(neverFlow);
        overEntitlement = List.copyOf(overEntitlement);
        unmetRates = List.copyOf(unmetRates);
        files = List.copyOf(files);
    }

    /**
     * A place and a date with a length.
     *
     * @param station bore, spring or point
     * @param metres the length (m)
     * @param on date
     */
    public record Extreme(String station, double metres, LocalDate on) {}

    /**
     * The end of flow.
     *
     * @param station name of the bore or spring
     * @param spring whether it is a spring
     * @param on first day with head below its outlet; it may flow again later
     */
    public record FlowEnd(String station, boolean spring, LocalDate on) {}

    /**
     * What a run took.
     *
     * @param cells cells of the grid
     * @param steps time steps, of discharges alone where heads are superposed
     * @param superposed whether heads were found by superposition
     * @param solvedBy how heads were found and why so, in words; empty if that is not known
     * @param seconds elapsed time, files and comparisons included (s)
     * @param peakMemoryMebibytes largest memory of the program (MiB)
     * @param processors processors it could use
     */
    public record Effort(
            int cells,
            long steps,
            boolean superposed,
            String solvedBy,
            double seconds,
            double peakMemoryMebibytes,
            int processors) {}

    /**
     * The answer of a run.
     *
     * @param run the run
     * @param folder folder of its results
     * @return the figures
     * @throws IOException if the folder cannot be listed
     */
    public static RunAnswer of(FinishedRun run, Path folder) throws IOException {
        return of(run, folder, Optional.empty());
    }

    /**
     * The answer of a run that was to be answered from unit responses.
     *
     * @param run the run
     * @param folder folder of its results
     * @param simulatedBecause why it was simulated instead, if it was
     * @return the figures
     * @throws IOException if the folder cannot be listed
     */
    public static RunAnswer of(FinishedRun run, Path folder, Optional<String> simulatedBecause) throws IOException {
        RunCalendar calendar = run.description().calendar();
        List<LimitAnswer> limits = run.limits().stream()
                .map(result -> LimitAnswer.of(result, calendar))
                .toList();
        return new RunAnswer(
                run.description().title(),
                calendar.at(0).toLocalDate(),
                calendar.at(run.description().endDay()).toLocalDate(),
                Verdict.of(limits),
                limits,
                extremes(run, at -> OptionalDouble.of(at.loss())).max(Comparator.comparingDouble(Extreme::metres)),
                extremes(run, ArtesianHead.AtDate::waterAbovePump).min(Comparator.comparingDouble(Extreme::metres)),
                stopFlowing(run),
                NeverFlowing.of(run),
                AccountSummaries.ofHolders(AccountSummaries.read(folder)).stream()
                        .filter(AccountSummary::isOver)
                        .toList(),
                UnmetRates.of(run),
                run.findings().confinement().cells(),
                run.figures().stationHeadError().stream()
                        .mapToDouble(Double::doubleValue)
                        .filter(Double::isFinite)
                        .max(),
                run.figures().errorBudget().isPresent(),
                run.figures().solver().largestBalanceDiscrepancy(),
                BedAdjustment.of(run.description()).map(BedAdjustment::words),
                effort(run),
                run.figures().answeredFrom().map(AnsweredFrom::words),
                simulatedBecause,
                folder.toString(),
                files(folder));
    }

    private static Stream<Extreme> extremes(FinishedRun run, Function<ArtesianHead.AtDate, OptionalDouble> length) {
        RunCalendar calendar = run.description().calendar();
        return run.findings().artesianHead().stream()
                .flatMap(head -> head.extremes().stream()
                        .filter(at -> length.apply(at).isPresent())
                        .map(at -> new Extreme(
                                head.station(),
                                length.apply(at).getAsDouble(),
                                calendar.at(at.day()).toLocalDate())));
    }

    private static List<FlowEnd> stopFlowing(FinishedRun run) {
        RunCalendar calendar = run.description().calendar();
        Set<String> springs =
                run.description().springs().stream().map(Station::name).collect(Collectors.toSet());
        return run.findings().artesianHead().stream()
                .filter(head -> head.flowByItself() instanceof FlowByItself.Stops)
                .map(head -> new FlowEnd(
                        head.station(),
                        springs.contains(head.station()),
                        calendar.at(((FlowByItself.Stops) head.flowByItself()).day())
                                .toLocalDate()))
                .sorted(Comparator.comparing(FlowEnd::on))
                .toList();
    }

    private static Effort effort(FinishedRun run) {
        var figures = run.figures();
        return new Effort(
                figures.solver().cells(),
                figures.solver().steps(),
                figures.solvedBy().map(SolvedBy::superposition).orElse(false),
                figures.solvedBy().map(SolvedBy::words).orElse(""),
                figures.secondsInAll(),
                figures.peakMemory() / MEBIBYTE,
                figures.processors());
    }

    private static List<String> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(Files::isRegularFile)
                    .map(file -> String.valueOf(file.getFileName()))
                    .sorted()
                    .toList();
        }
    }
}
