package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.ProtectedPoint;
import org.headfall.scenarios.scenario.SpringSpecification;
import org.headfall.scenarios.spatial.Position;
import org.jspecify.annotations.Nullable;

/** Reads springs and other protected points. */
final class PointReader {
    private final Inputs inputs;
    private final PositionReader positions;
    private final NameRegister names;

    PointReader(Inputs inputs, PositionReader positions, NameRegister names) {
        this.inputs = inputs;
        this.positions = positions;
        this.names = names;
    }

    List<SpringSpecification> springs(Section document) {
        List<SpringSpecification> springs = new ArrayList<>();
        for (Section section : inputs.sections(document, "springs")) {
            @Nullable String name = name(section);
            @Nullable Position position = positions.required(section, "at");
            @Nullable Quantity outlet = section.quantity("outlet", Dimension.LEVEL, ValueRanges.LEVEL);
            @Nullable
            Quantity conductance = section.quantity("conductance", Dimension.CONDUCTANCE, ValueRanges.CONDUCTANCE);
            section.done();
            if (name != null && position != null && outlet != null && conductance != null) {
                springs.add(
                        new SpringSpecification(name, position, outlet.value(), conductance.value(), section.place()));
            }
        }
        return springs;
    }

    List<ProtectedPoint> protectedPoints(Section document) {
        List<ProtectedPoint> points = new ArrayList<>();
        for (Section section : inputs.sections(document, "protected")) {
            @Nullable String name = name(section);
            @Nullable Position position = positions.required(section, "at");
            section.done();
            if (name != null && position != null) {
                points.add(new ProtectedPoint(name, position, section.place()));
            }
        }
        return points;
    }

    private @Nullable String name(Section section) {
        @Nullable String name = section.text("name");
        if (name != null) {
            names.add(name, section.placeOf("name"), section.nameOf("name"));
            GroupWords.requireOther(name, section.placeOf("name"), section.nameOf("name"), inputs.problems());
        }
        return name;
    }
}
