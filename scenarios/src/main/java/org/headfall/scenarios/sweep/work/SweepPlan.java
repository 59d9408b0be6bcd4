package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.document.FileHash;
import org.headfall.scenarios.sweep.document.DocumentText;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.store.Definition;

/** What the store of a sweep has to hold: every run with its inputs and a hash of everything that decides its figures. */
final class SweepPlan {

    private final SweepDocument sweep;
    private final Path document;
    private final String program;

    SweepPlan(SweepDocument sweep, Path document, String program) {
        this.sweep = sweep;
        this.document = document;
        this.program = program;
    }

    /**
     * The definition of a part.
     *
     * @throws IOException if a file cannot be read any more
     */
    Definition definition(RunList runs, Part part) throws IOException {
        List<String> figures = sweep.figures().stream().map(KeptFigure::heading).toList();
        String baseKey = baseKey();
        String figuresKey = FileHash.ofTexts(figures);
        List<Definition.PlannedRun> planned = new ArrayList<>();
        List<String> inputs = new ArrayList<>();
        for (int i = 0; i < runs.size(); i++) {
            String json = InputsJson.of(runs.get(i));
            inputs.add(json);
            if (part.has(i + 1)) {
                String hash = FileHash.ofTexts(List.of(baseKey, figuresKey, program, json));
                planned.add(new Definition.PlannedRun(i + 1, json, hash));
            }
        }
        Map<String, String> texts = new LinkedHashMap<>();
        texts.put(Definition.TITLE, sweep.title());
        texts.put(Definition.SWEEP_DOCUMENT, Files.readString(document, StandardCharsets.UTF_8));
        texts.put(Definition.BASE_DOCUMENT, DocumentText.of(sweep.base().node()));
        texts.put(Definition.BASE_KEY, baseKey);
        texts.put(Definition.RUNS_KEY, FileHash.ofTexts(inputs));
        texts.put(Definition.FIGURES_KEY, figuresKey);
        texts.put(Definition.PROGRAM, program);
        texts.put(Definition.PART, part.toString());
        return new Definition(texts, figures, planned);
    }

    /** Of the document without comments, and of each file that it names or that a value of the sweep names. */
    private String baseKey() throws IOException {
        List<String> all = new ArrayList<>();
        all.add(DocumentText.of(sweep.base().node()));
        if (sweep.keepsHeads()) {
            all.add("heads are kept");
        }
        for (Variable variable : sweep.variables()) {
            all.add(variable.name());
            variable.keys().forEach(key -> all.add(key.text()));
            // What the texts of the runs do not say of their values.
            FilesOfSweep.fields(variable).ifPresent(field -> all.add(DocumentText.of(field.value())));
        }
        FilesOfSweep.of(sweep).stream()
                .map(file -> file.name() + " " + file.sha256())
                .sorted()
                .forEach(all::add);
        return FileHash.ofTexts(all);
    }
}
