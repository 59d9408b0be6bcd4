package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.responses.KeyPart;
import org.headfall.solver.response.ResponseTable;
import org.headfall.solver.response.UnitResponses;

/** Reads {@code responses.nc} back. */
public final class ResponsesReader {

    private ResponsesReader() {}

    /**
     * Reads the responses of a run.
     *
     * @param folder folder of its results
     * @return the responses
     * @throws ResultsException if the folder has no responses or the file is damaged
     */
    public static ReadResponses read(Path folder) throws ResultsException {
        Path path = folder.resolve(ResponsesFile.NAME);
        if (!Files.isRegularFile(path)) {
            CaseFolders.requireNone(folder, "--responses ");
            throw new ResultsException(
                    ResultsException.Kind.NOT_FINISHED,
                    folder,
                    "holds no unit responses: " + ResponsesFile.NAME
                            + " is missing; run the scenario first (headfall run)");
        }
        try {
            if (Files.isRegularFile(folder.resolve(SummaryFile.NAME))) {
                FileChanges.requireUnchanged(folder, List.of(ResponsesFile.NAME));
            }
            return read(folder, path);
        } catch (ResultsException e) {
            throw e;
        } catch (IOException | IllegalArgumentException e) {
            throw ResultsException.damaged(path, "cannot be read, " + e.getMessage(), e);
        }
    }

    /**
     * Hashes of what the responses of a run depend on, to tell whether two runs are of one field.
     *
     * @param folder folder of its results
     * @return the hashes that the file has; none if the folder has no responses
     * @throws ResultsException if the file is damaged or changed
     */
    public static Map<KeyPart, String> keyParts(Path folder) throws ResultsException {
        Path path = folder.resolve(ResponsesFile.NAME);
        if (!Files.isRegularFile(path)) {
            return Map.of();
        }
        FileChanges.requireUnchanged(folder, List.of(ResponsesFile.NAME));
        try (RecordedFile file = new RecordedFile(path)) {
            Map<String, String> attributes = file.globals();
            Map<KeyPart, String> parts = new EnumMap<>(KeyPart.class);
            for (KeyPart part : KeyPart.values()) {
                String digest = attributes.get(ResponsesFile.attribute(part));
                if (digest != null) {
                    parts.put(part, digest);
                }
            }
            return parts;
        } catch (ResultsException e) {
            throw e;
        } catch (IOException e) {
            throw ResultsException.damaged(path, "cannot be read, " + e.getMessage(), e);
        }
    }

    private static ReadResponses read(Path folder, Path path) throws IOException {
        try (RecordedFile file = new RecordedFile(path)) {
            double[] times = file.doubles("response_time");
            double[] atStart = file.doubles("undisturbed_head_at_start");
            ResponseTable causes = table(file, "cause", times, atStart.length);
            Optional<double[]> steady =
                    file.has("steady_response") ? Optional.of(file.doubles("steady_response")) : Optional.empty();
            return new ReadResponses(
                    folder,
                    file.globals(),
                    new UnitResponses(causes, steady),
                    atStart,
                    table(file, "source", times, atStart.length));
        }
    }

    /** A file without causes of a kind gives a table without curves. */
    private static ResponseTable table(RecordedFile file, String kind, double[] times, int stations)
            throws IOException {
        int curves = file.has(kind + "_name") ? file.shape(kind + "_name")[0] * stations : 0;
        double[] atOnce = curves == 0 ? new double[0] : file.doubles(kind + "_response_at_once");
        double[] values = curves == 0 ? new double[0] : file.doubles(kind + "_response");
        double[] rates = curves == 0 ? new double[0] : file.doubles(kind + "_response_rate");
        return new ResponseTable(
                stations, times, atOnce, rows(values, times.length, curves), rows(rates, times.length, curves));
    }

    private static double[][] rows(double[] values, int count, int length) {
        double[][] rows = new double[count][length];
        for (int i = 0; i < count; i++) {
            System.arraycopy(values, i * length, rows[i], 0, length);
        }
        return rows;
    }
}
