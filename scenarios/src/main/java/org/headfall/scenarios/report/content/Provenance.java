package org.headfall.scenarios.report.content;

import java.util.List;

/**
 * Where the report came from, enough for a stranger to make it again.
 *
 * @param version version of the program
 * @param command command that runs the scenario again
 * @param files input files
 * @param facts what the run took: cells, steps, seconds, as label and value
 */
public record Provenance(String version, String command, List<InputFile> files, List<Fact> facts) {

    /** Copies the lists. */
    public Provenance {
        files = List.copyOf(files);
        facts = List.copyOf(facts);
    }

    /**
     * A file the run read.
     *
     * @param name path as written in the scenario
     * @param sha256 SHA-256 of the content, hexadecimal
     */
    public record InputFile(String name, String sha256) {}

    /**
     * A labelled value.
     *
     * @param label what it is
     * @param value value with its unit
     */
    public record Fact(String label, String value) {}
}
