package org.headfall.scenarios.sweep.page;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.sweep.document.Aim;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.results.ChoiceSentences;
import org.headfall.scenarios.sweep.results.Numbers;
import org.headfall.scenarios.sweep.results.RankedChoices;
import org.headfall.scenarios.sweep.results.SweepTable;
import org.headfall.scenarios.sweep.statistics.Ranks;
import org.headfall.scenarios.sweep.statistics.Share;

/** Tables of choices that got the same samples: from the best on, and the best compromises. */
final class ChoiceTables {

    private static final int MOST_ROWS = 2_000;

    private final SweepTable table;
    private final RankedChoices choices;

    ChoiceTables(SweepTable table, RankedChoices choices) {
        this.table = table;
        this.choices = choices;
    }

    List<SweepPage.Table> all() {
        List<SweepPage.Table> tables = new ArrayList<>();
        addRanked(tables);
        addFront(tables);
        return tables;
    }

    private void addRanked(List<SweepPage.Table> tables) {
        List<RankedChoices.Choice> ranked = choices.ranked();
        if (ranked.isEmpty()) {
            return;
        }
        Aim aim = table.sweep().questions().ranking().orElseThrow();
        List<String> header = new ArrayList<>(List.of(
                "choice",
                table.sweep().figure(aim.figure()).heading() + ", " + new ChoiceSentences(table, choices).measure(aim),
                "± 95 % of sampling",
                "told apart from the best"));
        if (choices.hasLimits()) {
            header.addAll(List.of("keeps all limits in", "95 % interval of sampling"));
        }
        addHeadings(header);
        List<List<String>> rows = new ArrayList<>();
        for (int place = 0; place < Math.min(MOST_ROWS, ranked.size()); place++) {
            RankedChoices.Choice choice = ranked.get(place);
            List<String> row = new ArrayList<>(List.of(
                    choice.name(),
                    Numbers.words(choice.value()),
                    Numbers.error(choice.error()),
                    place == 0 ? "the best" : choice.likeTheBest() ? "no" : "yes"));
            if (choices.hasLimits()) {
                Share share = choice.keepsLimits();
                boolean judged = share.of() > 0;
                row.add(judged ? share.count() + " of " + share.of() + " runs" : "could not be judged");
                row.add(judged ? Numbers.perCent(share.low()) + " to " + Numbers.perCent(share.high()) : "");
            }
            addSpreads(row, choice.places());
            rows.add(row);
        }
        tables.add(new SweepPage.Table("best", "Choices from the best on, and what they give up", header, rows));
    }

    private void addFront(List<SweepPage.Table> tables) {
        List<RankedChoices.Traded> front = choices.traded().stream()
                .filter(RankedChoices.Traded::isCompromise)
                .limit(MOST_ROWS)
                .toList();
        if (front.isEmpty()) {
            return;
        }
        List<String> header = new ArrayList<>(List.of("choice"));
        table.sweep().questions().tradeOff().forEach(aim -> {
            header.add(table.sweep().figure(aim.figure()).heading() + ", " + ChoiceSentences.over(aim));
            header.add("± 95 % of sampling");
        });
        List<List<String>> rows = new ArrayList<>();
        for (RankedChoices.Traded choice : front) {
            List<String> row = new ArrayList<>(List.of(choice.name()));
            for (int i = 0; i < choice.values().size(); i++) {
                row.add(Numbers.words(choice.values().get(i)));
                row.add(Numbers.error(choice.errors().get(i)));
            }
            rows.add(row);
        }
        tables.add(new SweepPage.Table("front", "The best compromises", header, rows));
    }

    private void addHeadings(List<String> header) {
        for (KeptFigure figure : table.sweep().figuresOfTables()) {
            header.add(figure.heading() + ": median (10 % to 90 % of runs)");
        }
    }

    private void addSpreads(List<String> row, List<Integer> places) {
        for (KeptFigure figure : table.sweep().figuresOfTables()) {
            double[] column = table.figure(figure.name());
            double[] values =
                    places.stream().mapToDouble(place -> column[place]).toArray();
            double middle = Ranks.quantile(values, 0.5);
            row.add(
                    Double.isNaN(middle)
                            ? Numbers.words(middle)
                            : Numbers.words(middle) + " (" + Numbers.words(Ranks.quantile(values, Bands.TAIL)) + " to "
                                    + Numbers.words(Ranks.quantile(values, 1 - Bands.TAIL)) + ")");
        }
    }
}
