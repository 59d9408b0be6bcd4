package org.headfall.scenarios.report.page;

import java.util.List;
import org.headfall.scenarios.accounts.AccountSummary;
import org.headfall.scenarios.report.page.PageTable.Column;

/** What holders take in a water year against what they may take. */
final class AccountTable {

    private AccountTable() {}

    static PageTable of(List<AccountSummary> accounts) {
        return new PageTable(
                "accounts",
                "Water years against entitlements, those over them first",
                List.of(
                        new Column("Account of", Quantity.TEXT),
                        new Column("Years over the entitlement", Quantity.TEXT),
                        new Column("Years compared", Quantity.TEXT),
                        new Column("Worst water year from", Quantity.DATE),
                        new Column("Counts in that year", Quantity.LIMITED_VOLUME),
                        new Column("Entitlement", Quantity.LIMITED_VOLUME)),
                accounts.stream().map(AccountTable::row).toList());
    }

    private static List<Cell> row(AccountSummary account) {
        Cell over = Cell.figure(Sentence.of(String.valueOf(account.yearsOver())), account.yearsOver());
        return List.of(
                Cell.text(account.name()),
                account.isOver() ? over.marked(Cell.Tone.BAD) : over,
                Cell.figure(Sentence.of(String.valueOf(account.years())), account.years()),
                Cell.date(account.worstFrom(), ""),
                Cell.number(Quantity.LIMITED_VOLUME, account.countedMegalitres()),
                Cell.number(Quantity.LIMITED_VOLUME, account.entitlementMegalitres()));
    }
}
