package org.headfall.scenarios.sweep.document;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.QuantityException;
import org.headfall.scenarios.quantity.QuantityParser;
import org.jspecify.annotations.Nullable;

/** Reads parts of a sweep document that other documents have no use for. */
final class Entries {

    private Entries() {}

    /** The sections of a list; entries of another form are reported and left out. */
    static List<Section> sections(Section outer, String key) {
        List<Section> sections = new ArrayList<>();
        int number = 0;
        for (DocumentNode node : outer.optionalList(key)) {
            number++;
            @Nullable
            Section section = Section.of(
                    node, outer.nameOf(key) + "[" + number + "]", outer.values().problems());
            if (section != null) {
                sections.add(section);
            }
        }
        return sections;
    }

    /** The texts of a list. */
    static List<String> texts(Section section, String key) {
        List<String> texts = new ArrayList<>();
        for (DocumentNode node : section.optionalList(key)) {
            @Nullable String text = section.values().text(node, section.nameOf(key));
            if (text != null) {
                texts.add(text);
            }
        }
        return texts;
    }

    /** A number with its unit, or null after a problem has been reported. */
    static @Nullable Measure measure(Section section, String key) {
        @Nullable String text = section.text(key);
        if (text == null) {
            return null;
        }
        try {
            return Measure.parse(text);
        } catch (QuantityException wrong) {
            section.refuse(key, wrong.finding());
            return null;
        }
    }

    /** Whether all have one unit; if not, that is reported. */
    static boolean haveOneUnit(Section section, String subject, Measure... measures) {
        List<String> units = Stream.of(measures).map(Measure::unit).distinct().toList();
        if (units.size() > 1) {
            String found =
                    String.join(", ", Stream.of(measures).map(Measure::text).toList());
            Finding finding = Finding.of(ProblemKind.WRONG_UNIT, found, "one unit, written alike each time");
            section.values().problems().add(section.place(), subject, finding);
        }
        return units.size() == 1;
    }

    /** A number without a unit, or null after a problem has been reported. */
    static @Nullable Double number(Section section, String key) {
        @Nullable String text = section.text(key);
        if (text == null) {
            return null;
        }
        try {
            return QuantityParser.number(text);
        } catch (QuantityException wrong) {
            section.refuse(key, wrong.finding());
            return null;
        }
    }

    /** A whole number between two ends, or null after a problem has been reported. */
    static @Nullable Long whole(Section section, String key, long least, long most) {
        @Nullable Double number = number(section, key);
        if (number == null) {
            return null;
        }
        if (number != Math.rint(number) || number < least || number > most) {
            String allowed = "a whole number from " + least + " to " + most;
            section.refuse(key, Finding.of(ProblemKind.OUT_OF_RANGE, String.valueOf(section.text(key)), allowed));
            return null;
        }
        return number.longValue();
    }

    /** The one key of several that is there, or null after a problem has been reported. */
    static @Nullable String onlyOneOf(Section section, String subject, List<String> keys) {
        List<String> present = keys.stream().filter(section::has).toList();
        if (present.size() == 1) {
            return present.get(0);
        }
        String allowed = "one of the keys " + String.join(", ", keys);
        if (present.isEmpty()) {
            section.values()
                    .problems()
                    .add(section.place(), subject, Finding.of(ProblemKind.MISSING_KEY, "none of them", allowed));
        } else {
            section.refuse(
                    present.get(1), Finding.of(ProblemKind.CONFLICTING_KEYS, String.join(" and ", present), allowed));
        }
        return null;
    }
}
