package org.headfall.scenarios.results;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.headfall.scenarios.recording.Provenance;
import org.headfall.scenarios.recording.RunDescription;

/**
 * Global attributes of both NetCDF files, after CF 1.8 and ACDD 1.3, with what is needed to run the scenario again: its
 * text, the version of the tool, and the SHA-256 of every input file.
 */
final class GlobalAttributes {

    static final String SCENARIO = "scenario_document";
    static final String INPUTS = "input_files_sha256";

    /** Sources of the methods behind the figures. */
    private static final String REFERENCES =
            "Time steps: Hosea and Shampine 1996, Applied Numerical Mathematics 20, 21-37."
                    + " Heads at bores: Thiem 1906, Hydrologische Methoden."
                    + " Sealing bed: Hantush 1960, Journal of Geophysical Research 65(11), 3713-3725.";

    private static final DateTimeFormatter DATE_TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss");

    private GlobalAttributes() {}

    /** The attributes in the order of the file. */
    static Map<String, String> of(RunDescription description, String summary, Instant now) {
        Provenance provenance = description.provenance();
        String made = now.truncatedTo(ChronoUnit.SECONDS).toString();
        String inputs = inputs(provenance);
        Map<String, String> attributes = new LinkedHashMap<>();
        attributes.put("Conventions", "CF-1.8 ACDD-1.3");
        attributes.put("title", description.title());
        attributes.put("summary", summary);
        attributes.put("keywords", "groundwater, confined aquifer, hydraulic head, drawdown, bore, spring");
        attributes.put("institution", "not stated in the scenario");
        attributes.put("creator_name", "not stated in the scenario");
        attributes.put("license", "not stated in the scenario");
        attributes.put("source", provenance.toolVersion());
        attributes.put(
                "history",
                made + " " + provenance.toolVersion() + " run; inputs by SHA-256: " + inputs.replace("\n", "; "));
        attributes.put("references", REFERENCES);
        attributes.put(
                "comment",
                "Levels are above datum: " + description.datum()
                        + ". Computed, not measured; no approval of anything.");
        attributes.put(
                "id",
                provenance.inputs().isEmpty()
                        ? "none"
                        : provenance.inputs().get(0).sha256());
        attributes.put("naming_authority", "org.headfall: SHA-256 of the scenario document");
        attributes.put("date_created", made);
        attributes.put("time_coverage_start", text(description.calendar().start()));
        attributes.put("time_coverage_end", text(description.calendar().at(description.endDay())));
        attributes.put(INPUTS, inputs);
        attributes.put(SCENARIO, provenance.scenarioText());
        return attributes;
    }

    /** One line a file: digits, two spaces, path. */
    private static String inputs(Provenance provenance) {
        return provenance.inputs().stream()
                .map(input -> input.sha256() + "  " + input.path())
                .collect(Collectors.joining("\n"));
    }

    private static String text(LocalDateTime date) {
        return date.format(DATE_TIME);
    }
}
