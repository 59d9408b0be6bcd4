package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.document.ValueReader;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.scenario.BoreSelection;
import org.headfall.scenarios.scenario.LimitSpecification;
import org.headfall.scenarios.scenario.LimitSpecification.At;
import org.headfall.scenarios.scenario.SpatialFile;
import org.headfall.scenarios.vector.Feature;
import org.headfall.scenarios.vector.PropertyValue;
import org.jspecify.annotations.Nullable;

/** Reads the places that a limit holds for: names, groups of bores, shapes of a map, or every cell. */
final class LimitPlaceReader {
    private static final String EVERY_CELL = "every cell";
    private static final String BORES_OF = "bores of ";

    private final Inputs inputs;
    private final KnownPlaces known;
    private final MapArea area;

    LimitPlaceReader(Inputs inputs, KnownPlaces known, MapArea area) {
        this.inputs = inputs;
        this.known = known;
        this.area = area;
    }

    /** Whether a place takes the grid to judge, for nothing is recorded there. */
    static boolean isOnTheMap(At at) {
        return at instanceof LimitSpecification.Shapes || at instanceof LimitSpecification.EveryCell;
    }

    List<At> read(Section section, @Nullable LimitKind kind) {
        List<At> places = new ArrayList<>();
        @Nullable DocumentNode node = section.node("at");
        if (node == null) {
            return places;
        }
        List<DocumentNode> nodes = node instanceof DocumentNode.Listing listing ? listing.entries() : List.of(node);
        if (nodes.isEmpty()) {
            section.refuse("at", Finding.of(ProblemKind.EMPTY_VALUE, "an empty list", "at least one name"));
        }
        for (DocumentNode one : nodes) {
            @Nullable At at = one instanceof DocumentNode.Mapping ? shapes(section, one) : named(section, one);
            if (at != null && kind != null && fits(section, one, kind, at)) {
                if (places.contains(at)) {
                    section.values()
                            .refuse(
                                    one,
                                    section.nameOf("at"),
                                    Finding.of(ProblemKind.DUPLICATE_NAME, one.shown(), "each place once"));
                }
                places.add(at);
            }
        }
        return places;
    }

    private @Nullable At named(Section section, DocumentNode node) {
        @Nullable String name = section.values().text(node, section.nameOf("at"));
        if (name == null) {
            return null;
        }
        Map<String, At> groups = groups();
        if (known.names().contains(name)) {
            return new LimitSpecification.NamedPlace(name);
        }
        if (!groups.containsKey(name) && known.bores().complete()) {
            Set<String> allowed = new TreeSet<>(known.names());
            allowed.addAll(groups.keySet());
            section.values()
                    .refuse(
                            node,
                            section.nameOf("at"),
                            new Finding(
                                    ProblemKind.UNKNOWN_NAME,
                                    name,
                                    "the name of a bore, a spring or a protected point, " + EVERY_CELL
                                            + ", existing bores, proposed bores, all bores, or bores of a holder or"
                                            + " class",
                                    NearestSpelling.of(name, allowed)));
        }
        @Nullable At group = groups.get(name);
        return group instanceof LimitSpecification.Bores bores && refused(section, node, bores.bores()) ? null : group;
    }

    /** Refuses bores that are not there, for a limit at them could not be crossed. */
    private boolean refused(Section section, DocumentNode node, BoreSelection bores) {
        boolean proposed = bores instanceof BoreSelection.Proposed;
        boolean missing = (proposed && !known.bores().hasProposal() && !known.seeksBores())
                || (bores instanceof BoreSelection.Existing && !known.bores().hasExisting());
        if (missing) {
            String group = proposed ? "proposed" : "existing";
            section.values()
                    .refuse(
                            node,
                            section.nameOf("at"),
                            Finding.of(
                                    ProblemKind.UNKNOWN_NAME,
                                    bores.words() + ", but no bore is " + group,
                                    "a place that there is, or a bore of the group " + group));
        }
        return missing;
    }

    private Map<String, At> groups() {
        Map<String, At> groups = new LinkedHashMap<>();
        groups.put(EVERY_CELL, new LimitSpecification.EveryCell());
        groups.put("all bores", new LimitSpecification.Bores(new BoreSelection.All()));
        groups.put("existing bores", new LimitSpecification.Bores(new BoreSelection.Existing()));
        groups.put("proposed bores", new LimitSpecification.Bores(new BoreSelection.Proposed()));
        for (String userClass : known.bores().classes()) {
            groups.put(BORES_OF + userClass, new LimitSpecification.Bores(new BoreSelection.OfClass(userClass)));
        }
        for (String holder : known.bores().holders()) {
            groups.put(BORES_OF + holder, new LimitSpecification.Bores(new BoreSelection.OfHolder(holder)));
        }
        return groups;
    }

    private @Nullable At shapes(Section outer, DocumentNode node) {
        @Nullable Section section = Section.of(node, outer.nameOf("at"), inputs.problems());
        @Nullable
        String key = section == null ? null : inputs.onlyOneOf(section, outer.nameOf("at"), "polygons", "lines");
        if (section == null) {
            return null;
        }
        @Nullable SpatialFile file = key == null ? null : inputs.spatialFile(section, key);
        @Nullable String name = section.optionalText("name");
        section.done();
        if (file == null || key == null) {
            return null;
        }
        FeatureFileReader reader = new FeatureFileReader(inputs, area);
        @Nullable List<Feature> features = key.equals("polygons") ? reader.polygons(file) : reader.lines(file);
        if (features == null) {
            return null;
        }
        List<Feature> chosen = features.stream()
                .filter(feature -> name == null || name.equals(nameOf(feature)))
                .toList();
        if (chosen.isEmpty()) {
            section.refuse("name", ValueReader.notAChoice(String.valueOf(name), namesOf(features)));
            return null;
        }
        return new LimitSpecification.Shapes(
                file,
                name == null ? "" : name,
                chosen.stream().map(Feature::geometry).toList());
    }

    private static Set<String> namesOf(List<Feature> features) {
        Set<String> names = new TreeSet<>();
        features.forEach(feature -> names.add(nameOf(feature)));
        return names;
    }

    private static String nameOf(Feature feature) {
        return feature.properties().get("name") instanceof PropertyValue.TextValue text ? text.value() : "";
    }

    private boolean fits(Section section, DocumentNode node, LimitKind kind, At at) {
        String found = kind.words() + " at " + node.shown();
        @Nullable
        String allowed = switch (kind.where()) {
            case ANYWHERE ->
                kind == LimitKind.DISTANCE && at instanceof LimitSpecification.EveryCell
                        ? "distance at bores, springs, protected points or shapes"
                        : null;
            case STATIONS -> isOnTheMap(at) ? kind.words() + " at bores, springs or protected points" : null;
            case BORES -> isBores(at) ? null : kind.words() + " at bores";
            case SPRINGS ->
                at instanceof LimitSpecification.NamedPlace place
                                && known.springs().contains(place.name())
                        ? null
                        : kind.words() + " at springs";
        };
        if (allowed != null) {
            section.values()
                    .refuse(node, section.nameOf("at"), Finding.of(ProblemKind.CONFLICTING_KEYS, found, allowed));
        }
        return allowed == null;
    }

    /** A share of the head above a level that a place does not have could never be evaluated. */
    void requireLevel(Section section, LimitSpecification.OwnLevel level, List<At> places) {
        if (level == LimitSpecification.OwnLevel.AQUIFER_TOP) {
            return;
        }
        for (At at : places) {
            @Nullable String without = null;
            if (at instanceof LimitSpecification.NamedPlace place && !hasLevel(level, place.name())) {
                without = "above a level that '" + place.name() + "' does not have";
            } else if (at instanceof LimitSpecification.Bores
                    && !known.seeksBores()
                    && !known.bores().anyHasLevel(level)) {
                without = "above a level that no bore has";
            }
            if (without != null) {
                section.refuse(
                        "at",
                        Finding.of(
                                ProblemKind.NOT_A_CHOICE,
                                without,
                                "bores with " + BoreWords.LEVELS.get(level)
                                        + ", or another level above which head counts"));
            }
        }
    }

    private boolean hasLevel(LimitSpecification.OwnLevel level, String name) {
        return known.springs().contains(name)
                ? level == LimitSpecification.OwnLevel.OUTLET
                : known.isBore(name) && known.bores().hasLevel(level, name);
    }

    private boolean isBores(At at) {
        return at instanceof LimitSpecification.Bores
                || (at instanceof LimitSpecification.NamedPlace place && known.isBore(place.name()));
    }
}
