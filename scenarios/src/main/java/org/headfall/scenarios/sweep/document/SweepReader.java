package org.headfall.scenarios.sweep.document;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.DocumentParser;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.document.ParsedDocument;
import org.headfall.scenarios.document.ScenarioFolder;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.jspecify.annotations.Nullable;

/** Reads a sweep document and the base scenario that it names, and reports every problem at once. */
public final class SweepReader {

    private final ParsedDocument parsed;
    private final Path file;
    private final FileReach reach;
    private final String toolVersion;
    private final Problems problems;

    private SweepReader(ParsedDocument parsed, FileReach reach, String toolVersion) {
        this.parsed = parsed;
        problems = parsed.problems();
        file = parsed.file().toAbsolutePath().normalize();
        this.reach = reach;
        this.toolVersion = toolVersion;
    }

    /**
     * Reads a sweep.
     *
     * @param file the sweep document
     * @param reach which files it and its base scenario may name
     * @param toolVersion program and version
     * @return the sweep
     * @throws InputException with all problems of both documents
     * @throws IOException if a file of the base scenario cannot be read any more
     */
    public static SweepDocument read(Path file, FileReach reach, String toolVersion)
            throws InputException, IOException {
        return read(ParsedDocument.of(file), reach, toolVersion);
    }

    /**
     * Reads a sweep whose document is parsed.
     *
     * @param document the sweep document
     * @param reach which files it and its base scenario may name
     * @param toolVersion program and version
     * @return the sweep
     * @throws InputException with all problems of both documents
     * @throws IOException if a file of the base scenario cannot be read any more
     */
    public static SweepDocument read(ParsedDocument document, FileReach reach, String toolVersion)
            throws InputException, IOException {
        return new SweepReader(document, reach, toolVersion).read();
    }

    /**
     * Whether a document is that of a sweep, right or wrong, by its keys.
     *
     * @param document a document
     * @return whether it has a base and no aquifer; no, if it cannot be read
     */
    public static boolean isSweep(ParsedDocument document) {
        List<String> keys = document.keys();
        return (keys.contains("base") || keys.contains("vary")) && !keys.contains("aquifer");
    }

    private ValueCheck valueCheck(BaseScenario base) {
        return new ValueCheck(base, String.valueOf(file.getFileName()), problems);
    }

    private SweepDocument read() throws InputException, IOException {
        @Nullable
        Section document =
                parsed.node().map(node -> Section.of(node, "", problems)).orElse(null);
        if (document == null) {
            throw new InputException(problems.sorted());
        }
        @Nullable String title = document.text("title");
        @Nullable BaseScenario base = base(document);
        VariableReader reader = new VariableReader(document, base == null ? null : base.node());
        List<Variable> variables = reader.read();
        if (base != null) {
            valueCheck(base).check(variables);
        }
        CorrelationReader correlationReader = new CorrelationReader(document, variables, reader.refused());
        List<Correlation> correlations = correlationReader.read();
        @Nullable Design design = new DesignReader(document, variables, reader.refused()).read();
        correlationReader.check(design);
        if (base != null && design != null) {
            List<Correlation> possible = problems.isEmpty() ? correlations : List.of();
            valueCheck(base).checkSizes(new RunList(variables, design, possible), variables);
        }
        @Nullable FigureReader figureReader = base == null ? null : new FigureReader(document, base.plan());
        List<KeptFigure> figures = figureReader == null ? List.of() : figureReader.read();
        @Nullable Boolean keepsHeads = document.optionalChoice("keep_heads", Map.of("yes", true, "no", false));
        document.has("keep");
        document.has("ask");
        boolean repeats =
                design instanceof Design.Sampled sampled && !sampled.forEachOf().isEmpty();
        @Nullable
        Questions questions = figureReader == null
                ? null
                : new QuestionReader(document, figures, figureReader.refused(), repeats).read();
        if (figures.isEmpty() && problems.isEmpty()) {
            document.refuse(
                    "keep",
                    Finding.of(ProblemKind.EMPTY_VALUE, "nothing", "figures to keep, or a base scenario with limits"));
        }
        document.done();
        problems.throwIfAny();
        if (title == null || base == null || design == null || questions == null) {
            throw new IllegalStateException("something is missing and was not reported");
        }
        return new SweepDocument(
                title, base, variables, correlations, design, figures, Boolean.TRUE.equals(keepsHeads), questions);
    }

    /** The base scenario, or null after all its problems have been added. */
    private @Nullable BaseScenario base(Section document) throws IOException {
        @Nullable String name = document.text("base");
        if (name == null) {
            return null;
        }
        @Nullable
        Path path =
                new ScenarioFolder(file, reach).find(name, document.placeOf("base"), document.nameOf("base"), problems);
        @Nullable DocumentNode node = path == null ? null : new DocumentParser(name, problems).parse(path);
        if (path == null || node == null) {
            return null;
        }
        try {
            RunPlan plan = RunPlanner.plan(ScenarioReader.read(node, path, reach), toolVersion, 1);
            return new BaseScenario(path, node, reach, plan);
        } catch (InputException wrong) {
            wrong.problems().forEach(problems::add);
            return null;
        }
    }
}
