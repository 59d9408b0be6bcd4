package org.headfall.scenarios.reading;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.ScenarioFolder;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.scenario.SpatialFile;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.jspecify.annotations.Nullable;

/**
 * What all readers of one document share.
 *
 * @param problems receives what is wrong
 * @param folder finds the files the document names
 */
record Inputs(Problems problems, ScenarioFolder folder) {
    /** A table beside the document. */
    record TableFile(Path path, String name) {}

    /** The table a key names, or null after a problem has been reported. */
    @Nullable
    TableFile table(Section section, String key) {
        @Nullable String text = section.text(key);
        return text == null ? null : table(text, section.placeOf(key), section.nameOf(key));
    }

    /** The table a text names, or null after a problem has been reported. */
    @Nullable
    TableFile table(String text, Place place, String subject) {
        @Nullable Path path = folder.find(text, place, subject, problems);
        return path == null ? null : new TableFile(path, folder.nameOf(path));
    }

    /** The raster or GeoJSON file a key names, or null after a problem has been reported. */
    @Nullable
    SpatialFile spatialFile(Section section, String key) {
        @Nullable String text = section.text(key);
        if (text == null) {
            return null;
        }
        @Nullable Path path = folder.find(text, section.placeOf(key), section.nameOf(key), problems);
        return path == null
                ? null
                : new SpatialFile(path, folder.nameOf(path), section.placeOf(key), section.nameOf(key));
    }

    /**
     * Reports what a reader of map files found: in the file if it knows the line, else where the document names the file.
     *
     * @param file the file
     * @param wrong what was found
     * @param kind what it is
     */
    void report(SpatialFile file, SpatialFormatException wrong, ProblemKind kind) {
        Place place = wrong.line() == 0 ? file.place() : new Place(file.name(), wrong.line(), wrong.column());
        problems.add(place, file.name(), Finding.of(kind, wrong.found(), wrong.allowed()));
    }

    /** Reports that a map file as a whole cannot be read. */
    void report(SpatialFile file, SpatialFormatException wrong) {
        report(file, wrong, wrong.line() == 0 ? ProblemKind.FILE_UNREADABLE : ProblemKind.SYNTAX);
    }

    /** The sections of a list; entries of another form are reported and left out. */
    List<Section> sections(Section outer, String key) {
        List<Section> sections = new ArrayList<>();
        int number = 0;
        for (DocumentNode node : outer.optionalList(key)) {
            number++;
            @Nullable Section section = Section.of(node, outer.nameOf(key) + "[" + number + "]", problems);
            if (section != null) {
                sections.add(section);
            }
        }
        return sections;
    }

    /**
     * Reports keys that exclude each other, or the lack of all of them.
     *
     * @return the one key that is there, or null after a problem has been reported
     */
    @Nullable
    String onlyOneOf(Section section, String subject, String... keys) {
        List<String> present = new ArrayList<>();
        for (String key : keys) {
            if (section.has(key)) {
                present.add(key);
            }
        }
        if (present.size() == 1) {
            return present.get(0);
        }
        String allowed = "one of the keys " + String.join(", ", keys);
        if (present.isEmpty()) {
            problems.add(section.place(), subject, Finding.of(ProblemKind.MISSING_KEY, "none of them", allowed));
        } else {
            String found = String.join(" and ", present);
            section.refuse(present.get(1), Finding.of(ProblemKind.CONFLICTING_KEYS, found, allowed));
        }
        return null;
    }
}
