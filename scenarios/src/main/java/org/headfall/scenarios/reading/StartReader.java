package org.headfall.scenarios.reading;

import java.util.Map;
import java.util.TreeMap;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
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
    private final boolean headsAreHeld;

    /**
     * A reader.
     *
     * @param inputs what all readers share
     * @param area what maps have to fit
     * @param headsAreHeld whether a boundary or a sealing bed decides what heads are in the long run
     */
    StartReader(Inputs inputs, MapArea area, boolean headsAreHeld) {
        this.inputs = inputs;
        this.area = area;
        this.headsAreHeld = headsAreHeld;
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
            if (!headsAreHeld) {
                section.refuse(
                        "steady",
                        Finding.of(
                                ProblemKind.NOTHING_HOLDS_HEADS,
                                "no boundary with a head and no sealing bed that leaks",
                                "a steady start with fixed_head, far_head or sealing_bed; else given heads"));
            }
            return section.choice("steady", STEADY);
        }
        @Nullable Field heads = new AquiferReader(inputs, area).heads(section);
        return heads == null ? null : new StartSpecification.GivenHeads(heads);
    }
}
