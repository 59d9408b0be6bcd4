package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * What has to be known of {@code summary.json} before the rest of a folder is read: whether this version can read it, and
 * how large its NetCDF files were when they were written, so that one that was cut short is not taken for whole.
 *
 * @param format format of the file
 * @param toolVersion program and version that wrote it
 * @param netcdfSizes size of each NetCDF file (bytes)
 */
record SummaryHead(int format, String toolVersion, Map<String, Long> netcdfSizes) {

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    /** A file without sizes has none to hold others against. */
    SummaryHead {
        netcdfSizes = netcdfSizes == null ? Map.of() : Map.copyOf(netcdfSizes);
    }

    /**
     * Sizes of the NetCDF files of a folder.
     *
     * @param folder the folder, with all files of the run in it
     * @return size by name, in order of the names
     */
    static Map<String, Long> sizesIn(Path folder) throws IOException {
        Map<String, Long> sizes = new TreeMap<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                String name = String.valueOf(file.getFileName());
                if (name.endsWith(".nc")) {
                    sizes.put(name, Files.size(file));
                }
            }
        }
        return sizes;
    }

    /**
     * Reads it, and checks what it says of the folder.
     *
     * @param folder folder of finished results
     * @throws ResultsException if it is damaged or of another format, or a NetCDF file is not as it was written; a file
     *     that is not there is left to those who need it
     */
    static void check(Path folder) throws IOException {
        Path file = folder.resolve(SummaryFile.NAME);
        SummaryHead head = read(file);
        if (head.format() != Summary.FORMAT) {
            throw new ResultsException(
                    ResultsException.Kind.DAMAGED,
                    file,
                    "was written by " + head.toolVersion() + " in format " + head.format()
                            + ", this version reads format " + Summary.FORMAT
                            + ": run the scenario again (headfall run); its document and files are in "
                            + KeptInputs.NAME + " beside it");
        }
        for (Map.Entry<String, Long> written : head.netcdfSizes().entrySet()) {
            Path netcdf = folder.resolve(written.getKey());
            if (Files.exists(netcdf) && Files.size(netcdf) != written.getValue()) {
                throw new ResultsException(
                        ResultsException.Kind.DAMAGED,
                        netcdf,
                        "has " + Files.size(netcdf) + " bytes, was written with " + written.getValue()
                                + ": it was cut short or changed; copy the folder anew or run the scenario again");
            }
        }
    }

    private static SummaryHead read(Path file) throws IOException {
        try {
            return MAPPER.readValue(Files.readString(file), SummaryHead.class);
        } catch (JacksonException e) {
            throw damaged(file, e.getOriginalMessage(), e);
        } catch (CharacterCodingException e) {
            throw damaged(file, "its bytes are no UTF-8", e);
        }
    }

    /** That a file is no summary. */
    static ResultsException damaged(Path file, String reason, Exception cause) {
        return new ResultsException(ResultsException.Kind.DAMAGED, file, "is no summary of a run: " + reason, cause);
    }
}
