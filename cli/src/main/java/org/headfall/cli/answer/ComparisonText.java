package org.headfall.cli.answer;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.headfall.scenarios.comparison.AffectedArea;
import org.headfall.scenarios.comparison.AffectedPlace;
import org.headfall.scenarios.comparison.MapDifference;
import org.headfall.scenarios.comparison.RunComparison;
import org.headfall.scenarios.comparison.StationDifference;
import org.headfall.scenarios.quantity.Significant;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;

/** The summary of two runs side by side: how they differ in themselves, then places, springs and areas at the last date. */
public final class ComparisonText {

    private static final int MOST_SHOWN = 10;
    private static final double SQUARE_METRES_PER_SQUARE_KILOMETRE = 1e6;

    private final RunComparison comparison;
    private final List<Double> thresholds;
    private final TextBlock block;
    private final LocalDate date;
    private final MapDifference lastMap;

    /**
     * A summary.
     *
     * @param comparison the comparison
     * @param thresholds how much lower head must be for a place to count as affected (m), increasing
     * @param block where it goes
     */
    public ComparisonText(RunComparison comparison, List<Double> thresholds, TextBlock block) {
        this.comparison = comparison;
        this.thresholds = thresholds;
        this.block = block;
        date = comparison.lastDate();
        lastMap = comparison.maps().get(comparison.maps().size() - 1);
    }

    /** Writes it. */
    public void write() {
        references();
        springs();
        places();
        proposed();
        areas();
        if (comparison.first().description().mapReference().isEmpty()) {
            block.sentence("affected-areas.geojson has the metres of the local grid, not longitude and latitude.");
        }
    }

    private void references() {
        block.labelled("First run", words(comparison.first().description()));
        block.labelled("Second run", words(comparison.second().description()));
        block.labelled("Compared on", date + ", the last day of both");
        if (!comparison.differentFields().isEmpty()) {
            block.sentence(
                    "The runs differ in more than what their bores do, so not all that follows is due to bores:");
            comparison.differentFields().forEach(block::item);
        }
        if (!comparison.fieldsNotCompared().isEmpty()) {
            block.sentence("What could not be compared, and may be other in the second run: "
                    + String.join(", ", comparison.fieldsNotCompared()) + ".");
        }
        block.blank();
    }

    private static String words(RunDescription run) {
        return run.title() + ", " + run.calendar().at(0).toLocalDate() + " to "
                + run.calendar().at(run.endDay()).toLocalDate();
    }

    private List<StationDifference> atDate() {
        return comparison.stations().stream()
                .filter(station -> station.date().equals(date))
                .toList();
    }

    private void places() {
        double least = thresholds.get(0);
        List<AffectedPlace> onAnyDate = comparison.affected(List.of(least)).stream()
                .filter(place -> !isSpring(place.station()))
                .toList();
        List<AffectedPlace> affected = onAnyDate.stream()
                .filter(place -> place.date().equals(date))
                .sorted(Comparator.comparingDouble(AffectedPlace::lowerBy).reversed())
                .toList();
        if (affected.isEmpty()) {
            block.sentence("No bore or point has a head that is lower then by " + metres(least) + " or more" + largest()
                    + "." + (onAnyDate.isEmpty() ? "" : " On earlier dates there are some, see affected-places.csv."));
            return;
        }
        block.sentence(
                "Bores and points whose head is then lower by " + metres(least) + " or more: " + affected.size());
        affected.stream().limit(MOST_SHOWN).forEach(place -> block.item(words(place)));
        if (affected.size() > MOST_SHOWN) {
            block.item("and " + (affected.size() - MOST_SHOWN) + " more, see affected-places.csv");
        }
    }

    private String largest() {
        return atDate().stream()
                .filter(station ->
                        !comparison.proposedBores().contains(station.station()) && !isSpring(station.station()))
                .max(Comparator.comparingDouble(StationDifference::lowerBy))
                .filter(station -> station.lowerBy() > 0)
                .map(station -> String.format(
                        Locale.ROOT, "; the largest difference is %.2f m at %s", station.lowerBy(), station.station()))
                .orElse("");
    }

    private static String words(AffectedPlace place) {
        String holder = place.holder().isBlank() ? "" : " (" + place.holder() + ")";
        return place.station() + holder + ": head " + lower(place.lowerBy(), place.error()) + "; " + place.meaning();
    }

    private static String metres(double length) {
        return BigDecimal.valueOf(length).stripTrailingZeros().toPlainString() + " m";
    }

    private void springs() {
        List<StationDifference> springs =
                atDate().stream().filter(station -> isSpring(station.station())).toList();
        if (!springs.isEmpty()) {
            block.sentence("Springs in the second run then:");
            springs.forEach(spring -> block.item(words(spring)));
        }
    }

    private boolean isSpring(String name) {
        return comparison.second().description().springs().stream()
                .map(Station::name)
                .anyMatch(name::equals);
    }

    private String words(StationDifference spring) {
        return spring.station() + ": head " + lower(spring.lowerBy(), spring.error()) + "; "
                + comparison.meaning(spring);
    }

    /** How much lower a head is, to the centimetre. */
    private static String lower(double lowerBy, double error) {
        double shown = Math.rint(lowerBy * 100) / 100;
        String change = shown == 0
                ? "the same"
                : String.format(Locale.ROOT, "%.2f m %s", Math.abs(shown), shown > 0 ? "lower" : "higher");
        return change + (error >= 0.005 ? String.format(Locale.ROOT, " (numerical error up to %.2f m)", error) : "");
    }

    private void proposed() {
        if (!comparison.proposedBores().isEmpty()) {
            block.sentence("Proposed bores that take more in the second run count as cause, not as affected: "
                    + String.join(", ", comparison.proposedBores()) + ".");
        }
    }

    private void areas() {
        String when = lastMap.date().equals(date) ? "then" : "on " + lastMap.date() + ", the last map of both";
        block.sentence("Area where head is lower " + when + ": "
                + thresholds.stream()
                        .map(threshold -> "by " + metres(threshold) + " or more " + area(threshold))
                        .collect(Collectors.joining("; "))
                + ".");
    }

    private String area(double threshold) {
        double area = AffectedArea.of(comparison.first().description().grid(), lastMap.lowerBy(), threshold)
                        .getArea()
                / SQUARE_METRES_PER_SQUARE_KILOMETRE;
        return area == 0 ? "none" : Significant.text(area) + " km2";
    }
}
