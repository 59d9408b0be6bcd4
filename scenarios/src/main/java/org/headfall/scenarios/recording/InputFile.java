package org.headfall.scenarios.recording;

/**
 * A file that a run was made from.
 *
 * @param path path as the scenario names it; the scenario's own file name for the document itself
 * @param sha256 SHA-256 of its bytes, 64 lower-case hexadecimal digits
 */
public record InputFile(String path, String sha256) {

    /** Checks the digits. */
    public InputFile {
        if (!sha256.matches("[0-9a-f]{64}")) {
            throw new IllegalArgumentException("a SHA-256 has 64 hexadecimal digits, found '" + sha256 + "'");
        }
    }
}
