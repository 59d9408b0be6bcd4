package org.headfall.scenarios.reading;

import java.util.Map;
import java.util.TreeMap;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.scenario.StartSpecification;
import org.jspecify.annotations.Nullable;

/** Reads the start: {@code {steady: with existing bores}}, {@code {steady: without bores}} or {@code {heads: ...}}. */
final class StartReader {
    static final Map<String, StartSpecification> STEADY = new TreeMap<>(Map.of(
            "with existing bores", new StartSpecification.SteadyWithExistingBores(),
            "without bores", new StartSpecification.SteadyWithoutBores()));

    private final Inputs inputs;
    private final MapArea area;

    StartReader(Inputs inputs, MapArea area) {
        this.inputs = inputs;
        this.area = area;
    }

    @Nullable
    StartSpecification read(Section document) {
        @Nullable Section section = document.section("start");
        if (section == null) {
            return null;
        }
        @Nullable String key = inputs.onlyOneOf(section, "start", "steady", "heads");
        @Nullable StartSpecification start = key == null ? null : read(section, key);
        section.done();
        return start;
    }

    private @Nullable StartSpecification read(Section section, String key) {
        if (key.equals("steady")) {
            return section.choice("steady", STEADY);
        }
        @Nullable Field heads = new AquiferReader(inputs, area).heads(section);
        return heads == null ? null : new StartSpecification.GivenHeads(heads);
    }
}
