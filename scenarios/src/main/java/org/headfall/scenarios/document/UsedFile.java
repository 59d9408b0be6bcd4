package org.headfall.scenarios.document;

import java.nio.file.Path;

/**
 * A file that a scenario is made of, for the record of a run.
 *
 * @param name name relative to the folder of the scenario document, with strokes {@code /}
 * @param path where it was read
 * @param size size (bytes)
 * @param sha256 SHA-256 hash, 64 hexadecimal digits
 */
public record UsedFile(String name, Path path, long size, String sha256) {}
