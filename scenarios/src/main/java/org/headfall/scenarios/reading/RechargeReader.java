package org.headfall.scenarios.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.reading.TimeCourseReader.Shape;
import org.headfall.scenarios.scenario.Area;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.scenario.RechargeSpecification;
import org.headfall.scenarios.scenario.TimeCourse;
import org.jspecify.annotations.Nullable;

/** Reads recharge by rain: a depth of water over time, steady, mapped or changing, on the grid or within polygons. */
final class RechargeReader {
    private final Inputs inputs;
    private final FieldReader fields;
    private final TimeCourseReader courses;
    private final FeatureFileReader features;

    RechargeReader(Inputs inputs, MapArea area) {
        this.inputs = inputs;
        this.fields = new FieldReader(inputs, area);
        this.courses = new TimeCourseReader(inputs);
        this.features = new FeatureFileReader(inputs, area);
    }

    List<RechargeSpecification> read(Section document) {
        List<RechargeSpecification> recharges = new ArrayList<>();
        NameRegister names = new NameRegister(inputs.problems());
        for (Section section : inputs.sections(document, "recharge")) {
            @Nullable String name = section.text("name");
            RechargeSpecification.@Nullable Rate rate = rate(section);
            boolean partial = section.has("within");
            @Nullable Area within = partial ? features.area(inputs.spatialFile(section, "within")) : null;
            section.done();
            if (name != null) {
                names.add(name, section.placeOf("name"), section.nameOf("name"));
            }
            if (name != null && rate != null && (within != null || !partial)) {
                recharges.add(new RechargeSpecification(name, rate, Optional.ofNullable(within)));
            }
        }
        return recharges;
    }

    private RechargeSpecification.@Nullable Rate rate(Section section) {
        if (section.optionalNode("rate") instanceof DocumentNode.Mapping mapping
                && mapping.entries().stream().anyMatch(entry -> entry.key().equals("file"))) {
            @Nullable
            TimeCourse course =
                    courses.required(section, "rate", Dimension.RECHARGE, ValueRanges.RECHARGE, Shape.STEPS, "rate");
            return course == null ? null : new RechargeSpecification.ChangingRate(course);
        }
        @Nullable Field field = fields.required(section, "rate", Dimension.RECHARGE, ValueRanges.RECHARGE);
        return field == null ? null : new RechargeSpecification.SteadyRate(field);
    }
}
