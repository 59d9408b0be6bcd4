package org.headfall.scenarios.results;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.headfall.scenarios.accounts.AccountSummary;
import org.headfall.scenarios.accounts.WaterAccount;

/** Reads {@code accounts.csv} back, one summary an account. */
public final class AccountSummaries {

    private AccountSummaries() {}

    /** One water year of an account; NaN for what is not known. */
    private record Year(LocalDate from, double counted, double entitlement, double left) {}

    /**
     * Reads.
     *
     * @param folder folder of results
     * @return a summary of each bore, holder and zone and of all bores, those with most years over their entitlement first,
     *     otherwise in the order of the file; empty if the run kept no accounts
     * @throws IOException if the file cannot be read
     */
    public static List<AccountSummary> read(Path folder) throws IOException {
        Path file = folder.resolve(AccountsCsv.NAME);
        if (!Files.isRegularFile(file)) {
            return List.of();
        }
        Map<List<String>, List<Year>> years = new LinkedHashMap<>();
        try (CsvReader<NamedCsvRecord> lines = CsvReader.builder().ofNamedCsvRecord(file)) {
            for (NamedCsvRecord line : lines) {
                List<String> account = List.of(line.getField(AccountsCsv.OF), line.getField(AccountsCsv.ACCOUNT_NAME));
                years.computeIfAbsent(account, one -> new ArrayList<>()).add(year(line));
            }
        } catch (IllegalArgumentException | java.util.NoSuchElementException damaged) {
            throw new IOException(AccountsCsv.NAME + " is damaged: " + damaged.getMessage(), damaged);
        }
        return years.entrySet().stream()
                .map(entry -> summary(entry.getKey(), entry.getValue()))
                .sorted(Comparator.comparingInt(AccountSummary::yearsOver).reversed())
                .toList();
    }

    /**
     * Accounts to show first: those of holders, or of bores where none has a holder.
     *
     * @param all summaries
     */
    public static List<AccountSummary> ofHolders(List<AccountSummary> all) {
        List<AccountSummary> holders = of(all, WaterAccount.Of.HOLDER).toList();
        return holders.isEmpty() ? of(all, WaterAccount.Of.BORE).toList() : holders;
    }

    private static Stream<AccountSummary> of(List<AccountSummary> all, WaterAccount.Of kind) {
        return all.stream().filter(one -> one.of().equals(kind.words()));
    }

    private static Year year(NamedCsvRecord line) {
        return new Year(
                LocalDate.parse(line.getField(AccountsCsv.FROM)),
                number(line.getField(AccountsCsv.COUNTED)),
                number(line.getField(AccountsCsv.ENTITLEMENT)),
                number(line.getField(AccountsCsv.LEFT)));
    }

    private static double number(String cell) {
        return cell.isEmpty() ? Double.NaN : Double.parseDouble(cell);
    }

    private static AccountSummary summary(List<String> account, List<Year> years) {
        List<Year> compared =
                years.stream().filter(year -> !Double.isNaN(year.left())).toList();
        Year worst = compared.isEmpty()
                ? years.stream()
                        .max(Comparator.comparingDouble(year -> Double.isNaN(year.counted()) ? -1 : year.counted()))
                        .orElseThrow()
                : compared.stream().min(Comparator.comparingDouble(Year::left)).orElseThrow();
        return new AccountSummary(
                account.get(0),
                account.get(1),
                compared.size(),
                (int) compared.stream().filter(year -> year.left() < 0).count(),
                worst.from(),
                worst.counted(),
                worst.entitlement());
    }
}
