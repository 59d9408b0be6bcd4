package org.headfall.scenarios.raster;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A raster and what its file says about it.
 *
 * @param file where it was read from
 * @param raster the values and where they lie
 * @param epsgCode code of the projected coordinate reference system, if the file states one
 * @param unit unit of the values as the file writes it, if it does
 */
public record RasterFile(Path file, Raster raster, OptionalInt epsgCode, Optional<String> unit) {}
