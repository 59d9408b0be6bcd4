package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.LayoutPlaces;
import org.headfall.scenarios.scenario.SpacingSpecification.Layout;
import org.headfall.scenarios.spatial.Position;
import org.jspecify.annotations.Nullable;

/**
 * Reads {@code layouts}: bores that stand in a pattern and share a rate evenly, {@code {name: Field, pattern: ring, bores:
 * 6, spacing: 800 m, direction: 90 deg, centre: [418 km, 6320 km], rate: 60 L/s, each: {...}}}. They become bores called
 * {@code Field 1} and so on, each as if it had been written in the list of bores.
 */
final class LayoutReader {

    private static final AllowedRange COUNT = AllowedRange.between(1, 200);
    private static final AllowedRange SPACING = AllowedRange.between(1, 1e6);
    private static final AllowedRange DIRECTION = AllowedRange.between(-360, 360);
    private static final double EAST = 90;
    private static final String EACH = "each";

    private final Inputs inputs;
    private final PositionReader positions;

    LayoutReader(Inputs inputs, PositionReader positions) {
        this.inputs = inputs;
        this.positions = positions;
    }

    /**
     * The bores of all layouts as sections of a list of bores.
     *
     * @param document the document
     * @return one list a layout, since bores of one all have the same problems
     */
    List<List<Section>> read(Section document) {
        List<List<Section>> layouts = new ArrayList<>();
        for (Section section : inputs.sections(document, "layouts")) {
            layouts.add(bores(section));
        }
        return layouts;
    }

    private List<Section> bores(Section section) {
        @Nullable String name = section.text("name");
        @Nullable Layout pattern = section.choice("pattern", SpacingReader.LAYOUTS);
        @Nullable Quantity count = section.quantity("bores", Dimension.NUMBER, COUNT);
        @Nullable Quantity spacing = section.quantity("spacing", Dimension.LENGTH, SPACING);
        boolean turned = section.has("direction");
        @Nullable Quantity direction = section.optionalQuantity("direction", Dimension.ANGLE, DIRECTION);
        @Nullable Position centre = positions.required(section, "centre");
        @Nullable Quantity rate = section.quantity("rate", Dimension.RATE, ValueRanges.RATE);
        @Nullable Section each = section.section(EACH);
        DocumentNode.@Nullable Mapping keys =
                section.optionalNode(EACH) instanceof DocumentNode.Mapping mapping ? mapping : null;
        section.done();
        if (count != null && count.value() != Math.rint(count.value())) {
            section.refuse("bores", Finding.of(ProblemKind.OUT_OF_RANGE, count.text(), "a whole number"));
            return List.of();
        }
        if (name == null
                || pattern == null
                || count == null
                || spacing == null
                || (turned && direction == null)
                || centre == null
                || rate == null
                || each == null
                || keys == null
                || !leavesTheRestToTheLayout(each)) {
            return List.of();
        }
        List<Position> places = LayoutPlaces.around(
                pattern, (int) count.value(), spacing.value(), direction == null ? EAST : direction.value(), centre);
        return sections(section, name, keys, places, rate.value() / places.size());
    }

    private static boolean leavesTheRestToTheLayout(Section each) {
        boolean leaves = true;
        for (String key : List.of("name", "at", "rate")) {
            if (each.has(key)) {
                each.refuse(
                        key,
                        Finding.of(
                                ProblemKind.CONFLICTING_KEYS,
                                "the key " + key,
                                "the other keys of a bore; name, place and rate follow from the layout"));
                leaves = false;
            }
        }
        return leaves;
    }

    private List<Section> sections(
            Section section, String name, DocumentNode.Mapping keys, List<Position> places, double rate) {
        List<Section> bores = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            List<DocumentNode.Entry> entries = new ArrayList<>(keys.entries());
            entries.add(entry(section, "name", scalar(section, "name", name + " " + (i + 1))));
            entries.add(entry(
                    section,
                    "at",
                    new DocumentNode.Listing(
                            section.placeOf("spacing"),
                            List.of(
                                    scalar(section, "spacing", places.get(i).x() + " m"),
                                    scalar(section, "spacing", places.get(i).y() + " m")))));
            entries.add(entry(section, "rate", scalar(section, "rate", rate + " " + Dimension.RATE.unit())));
            @Nullable
            Section bore = Section.of(
                    new DocumentNode.Mapping(keys.place(), List.copyOf(entries)),
                    section.nameOf(EACH),
                    inputs.problems());
            if (bore != null) {
                bores.add(bore);
            }
        }
        return bores;
    }

    private static DocumentNode.Entry entry(Section section, String key, DocumentNode value) {
        return new DocumentNode.Entry(section.placeOf(key), key, value);
    }

    private static DocumentNode scalar(Section section, String key, String text) {
        return new DocumentNode.Scalar(section.placeOf(key), text, false);
    }
}
