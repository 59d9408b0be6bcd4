package org.headfall.scenarios.report.picture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.headfall.scenarios.report.content.Hydrograph;
import org.headfall.scenarios.report.content.ReportContent;

/** All still pictures of a report. */
public final class ReportPictures {

    private static final int LONGEST_NAME = 40;

    private ReportPictures() {}

    /**
     * Writes the pictures of the last date of a report: the map of drawdown, the first section, the hydrograph of each
     * site, and the last table of interference.
     *
     * @param content the report
     * @param folder where to, made if it is missing; files of the same names are replaced
     * @return names of the pictures, each with an SVG and a PNG file
     * @throws IOException if a file cannot be written
     */
    public static List<String> write(ReportContent content, Path folder) throws IOException {
        Files.createDirectories(folder);
        List<String> names = new ArrayList<>();
        write(new MapPicture(content), folder, "map-drawdown", names);
        if (!content.sections().isEmpty()) {
            write(new SectionPicture(content), folder, "section", names);
        }
        if (!content.interference().isEmpty()) {
            write(new InterferencePicture(content), folder, "interference", names);
        }
        int number = 1;
        for (Hydrograph hydrograph : content.hydrographs()) {
            String name = String.format(Locale.ROOT, "hydrograph-%02d-%s", number++, fileName(hydrograph.site()));
            write(new HydrographPicture(content, hydrograph), folder, name, names);
        }
        return names;
    }

    private static void write(Picture picture, Path folder, String name, List<String> names) throws IOException {
        PictureFile.write(picture, folder, name);
        names.add(name);
    }

    /** A name that every file system takes: lower-case letters, digits and hyphens. */
    static String fileName(String name) {
        String plain = Normalizer.normalize(name, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^a-z0-9]+", "-")
                .replaceAll("^-|-$", "");
        return plain.substring(0, Math.min(LONGEST_NAME, plain.length()));
    }
}
