package org.headfall.scenarios.report.page;

import java.util.List;
import org.headfall.scenarios.evidence.Assumption;
import org.headfall.scenarios.evidence.CheckedItem;
import org.headfall.scenarios.report.page.PageTable.Column;

/** Assumptions and the checklist of a reviewer as tables. */
final class EvidenceTables {

    private EvidenceTables() {}

    static PageTable assumptions(List<Assumption> assumptions) {
        List<Column> columns = List.of(
                new Column("Assumed", Quantity.TEXT),
                new Column("In this run", Quantity.TEXT),
                new Column("Data", Quantity.TEXT),
                new Column("Resources", Quantity.TEXT),
                new Column("Technical", Quantity.TEXT),
                new Column("Effect on the answer", Quantity.TEXT));
        return new PageTable(
                "assumptions",
                "Assumptions",
                columns,
                assumptions.stream().map(EvidenceTables::row).toList());
    }

    private static List<Cell> row(Assumption assumption) {
        return List.of(
                Cell.text(assumption.statement()),
                Cell.text(assumption.here()),
                Cell.text(assumption.data().words()),
                Cell.text(assumption.resources().words()),
                Cell.text(assumption.technical().words()),
                Cell.text(assumption.effect().words()));
    }

    static PageTable checklist(List<CheckedItem> items) {
        List<Column> columns = List.of(
                new Column("Looked for", Quantity.TEXT),
                new Column("State", Quantity.TEXT),
                new Column("Found", Quantity.TEXT),
                new Column("Asked for by", Quantity.TEXT));
        return new PageTable(
                "review",
                "Checklist of a reviewer",
                columns,
                items.stream().map(EvidenceTables::row).toList());
    }

    private static List<Cell> row(CheckedItem item) {
        Cell.Tone tone = switch (item.state()) {
            case SHOWN -> Cell.Tone.GOOD;
            case NOT_MET -> Cell.Tone.BAD;
            case NOT_SHOWN, OPEN -> Cell.Tone.CLOSE;
        };
        return List.of(
                Cell.text(item.item()),
                Cell.text(item.state().words()).marked(tone),
                Cell.text(item.found()),
                Cell.text(item.source()));
    }
}
