package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.BoreCompletion;
import org.headfall.scenarios.scenario.BoreLicence;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.BoreSpecification.Group;
import org.headfall.scenarios.scenario.BoreSpecification.Levels;
import org.headfall.scenarios.scenario.BoreSpecification.WellLossSpecification;
import org.headfall.scenarios.spatial.Position;
import org.jspecify.annotations.Nullable;

/**
 * Reads the bores: a list of bores, of tables ({@code {file: bores.csv, changes: changes.csv}}) or of both; one table
 * may stand alone.
 */
final class BoreReader {
    private final Inputs inputs;
    private final PositionReader positions;
    private final NameRegister names;
    private final OperationReader operations;
    private final KnownBores known = new KnownBores();
    private final CompletionReader completions = new CompletionReader();

    BoreReader(Inputs inputs, PositionReader positions, NameRegister names) {
        this.inputs = inputs;
        this.positions = positions;
        this.names = names;
        this.operations = new OperationReader(inputs);
    }

    /** What other parts of the document may say of the bores that have been read. */
    KnownBores known() {
        return known;
    }

    List<BoreSpecification> read(Section document) {
        List<BoreDraft> drafts = new ArrayList<>();
        if (document.optionalNode("bores") instanceof DocumentNode.Mapping) {
            @Nullable Section section = document.section("bores");
            if (section != null) {
                table(section, drafts);
            }
        } else {
            for (Section section : inputs.sections(document, "bores")) {
                readOne(section, drafts);
            }
        }
        for (List<Section> layout : new LayoutReader(inputs, positions).read(document)) {
            layout(layout, drafts);
        }
        return drafts.stream().map(draft -> draft.finish(inputs.problems())).toList();
    }

    /** The bores of a layout; what is wrong with one is wrong with the next and said once. */
    private void layout(List<Section> layout, List<BoreDraft> drafts) {
        if (layout.isEmpty()) {
            known.miss();
        }
        long before = inputs.problems().count();
        for (Section section : layout) {
            @Nullable BoreDraft draft = bore(section);
            if (draft != null) {
                drafts.add(draft);
            }
            if (inputs.problems().count() > before) {
                known.miss();
                return;
            }
        }
    }

    private void readOne(Section section, List<BoreDraft> drafts) {
        if (section.has("file")) {
            table(section, drafts);
            return;
        }
        @Nullable BoreDraft draft = bore(section);
        if (draft != null) {
            drafts.add(draft);
        }
    }

    private void table(Section section, List<BoreDraft> drafts) {
        Inputs.@Nullable TableFile file = inputs.table(section, "file");
        Inputs.@Nullable TableFile changes = section.has("changes") ? inputs.table(section, "changes") : null;
        section.done();
        BoreTableReader tables = new BoreTableReader(inputs, positions, names, known);
        List<BoreDraft> read = file == null ? List.of() : tables.bores(file);
        if (file == null) {
            known.miss();
        }
        if (changes != null) {
            tables.changes(changes, read);
        }
        drafts.addAll(read);
    }

    private @Nullable BoreDraft bore(Section section) {
        @Nullable String name = section.text("name");
        if (name != null) {
            names.add(name, section.placeOf("name"), section.nameOf("name"));
            GroupWords.requireOther(name, section.placeOf("name"), section.nameOf("name"), inputs.problems());
        } else {
            known.miss();
        }
        @Nullable Position position = positions.required(section, "at");
        @Nullable String holder = section.optionalText("holder");
        requireNoGroup(section, "holder", holder);
        known.addHolder(holder == null ? "" : holder);
        BoreLicence licence = licence(section);
        @Nullable Group group = section.choice("group", BoreWords.GROUPS);
        known.addGroup(group, section.has("entitlement"));
        @Nullable Quantity radius = section.quantity("screen_radius", Dimension.LENGTH, ValueRanges.SCREEN_RADIUS);
        if (name != null) {
            known.addLevels(name, section::has);
        }
        Levels levels = levels(section);
        WellLossSpecification wellLoss = completions.wellLoss(section);
        BoreCompletion completion = completions.completion(section);
        List<OperationReader.PlacedPhase> phases = operations.phases(section);
        section.done();
        if (name == null || position == null || group == null || radius == null) {
            return null;
        }
        BoreSpecification bore = new BoreSpecification(
                name,
                position,
                holder == null ? "" : holder,
                licence,
                group,
                radius.value(),
                levels,
                wellLoss,
                completion,
                List.of(),
                section.place());
        BoreDraft draft = new BoreDraft(bore, levelPlace(section));
        phases.forEach(phase -> draft.add(phase.phase(), phase.place(), inputs.problems()));
        return draft;
    }

    private BoreLicence licence(Section section) {
        @Nullable String userClass = section.optionalText("class");
        @Nullable String zone = section.optionalText("zone");
        @Nullable
        Quantity entitlement = section.optionalQuantity("entitlement", Dimension.RATE, ValueRanges.ENTITLEMENT);
        requireNoGroup(section, "class", userClass);
        known.addClass(userClass == null ? "" : userClass);
        return new BoreLicence(
                userClass == null ? "" : userClass,
                zone == null ? "" : zone,
                entitlement == null ? OptionalDouble.empty() : OptionalDouble.of(entitlement.value()));
    }

    private void requireNoGroup(Section section, String key, @Nullable String name) {
        if (name != null) {
            GroupWords.requireOther(name, section.placeOf(key), section.nameOf(key), inputs.problems());
        }
    }

    private static Levels levels(Section section) {
        return new Levels(
                level(section, "ground_level"),
                level(section, "outlet_level"),
                level(section, "pump_intake_level"),
                level(section, "lowest_level"));
    }

    private static OptionalDouble level(Section section, String key) {
        @Nullable Quantity level = section.optionalQuantity(key, Dimension.LEVEL, ValueRanges.LEVEL);
        return level == null ? OptionalDouble.empty() : OptionalDouble.of(level.value());
    }

    private static Place levelPlace(Section section) {
        for (String key : List.of("pump_intake_level", "lowest_level", "operation")) {
            if (section.has(key)) {
                return section.placeOf(key);
            }
        }
        return section.place();
    }
}
