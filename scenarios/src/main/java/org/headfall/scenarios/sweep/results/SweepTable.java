package org.headfall.scenarios.sweep.results;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.headfall.scenarios.run.RunWithoutFiles;
import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.store.FailedRuns;
import org.headfall.scenarios.sweep.store.StoredRun;
import org.headfall.scenarios.sweep.store.SweepStore;

/**
 * The runs of a sweep as columns of numbers, by number of the run less one. NaN stands for a run without a figure: one that
 * failed, is not made yet, or has none of that kind.
 */
public final class SweepTable {

    /** Stands for the sample of a run that is mixed of two. */
    public static final int MIXED = -1;

    private final SweepDocument sweep;
    private final RunList runs;
    private final StoredRun.Status[] status;
    private final Map<String, double[]> figures = new LinkedHashMap<>();
    private final Map<String, double[]> inputs = new LinkedHashMap<>();
    private final FailedRuns failures = new FailedRuns();

    private final Exceedance exceedance;

    private SweepTable(SweepDocument sweep) {
        this.sweep = sweep;
        exceedance = new Exceedance(sweep.base().plan());
        runs = new RunList(sweep);
        status = new StoredRun.Status[runs.size()];
    }

    /**
     * Reads a store.
     *
     * @param sweep the sweep
     * @param store its store
     * @return the table
     * @throws IOException if the store cannot be read
     */
    public static SweepTable read(SweepDocument sweep, SweepStore store) throws IOException {
        SweepTable table = new SweepTable(sweep);
        List<double[]> columns = new ArrayList<>();
        for (KeptFigure figure : sweep.figures()) {
            double[] column = new double[table.runs.size()];
            Arrays.fill(column, Double.NaN);
            columns.add(column);
            table.figures.put(figure.name(), column);
        }
        store.forEach(row -> {
            int place = row.number() - 1;
            table.status[place] = row.status();
            for (int i = 0; i < columns.size(); i++) {
                columns.get(i)[place] = row.figures()[i];
            }
            table.failures.add(row);
        });
        table.addInputs();
        table.count(store);
        return table;
    }

    /** Counts cells in a pass of its own, for a store without maps is read no more than once. */
    private void count(SweepStore store) throws IOException {
        if (RunWithoutFiles.onMap(sweep.base().plan()).isEmpty()) {
            return;
        }
        List<IOException> wrong = new ArrayList<>();
        store.forEach(row -> {
            try {
                exceedance.add(row.maps());
            } catch (IOException e) {
                wrong.add(e);
            }
        });
        if (!wrong.isEmpty()) {
            throw new IOException(store.file() + ": maps of limits cannot be read", wrong.get(0));
        }
    }

    /** How often limits on the map are crossed, cell by cell. */
    public Exceedance exceedance() {
        return exceedance;
    }

    private void addInputs() {
        for (Variable variable : sweep.variables()) {
            double[] values = new double[runs.size()];
            Arrays.fill(values, Double.NaN);
            inputs.put(variable.name(), values);
        }
        for (int place = 0; place < runs.size(); place++) {
            for (Map.Entry<Variable, Input> input : runs.get(place).entrySet()) {
                column(inputs, input.getKey().name())[place] = input.getValue().number();
            }
        }
    }

    /** The sweep. */
    public SweepDocument sweep() {
        return sweep;
    }

    /** What each run got. */
    public RunList runs() {
        return runs;
    }

    /** The number of the independent sample of each run, {@link #MIXED} where it is mixed of two. */
    public int[] samples() {
        int[] samples = new int[runs.size()];
        Arrays.setAll(samples, place -> runs.sample(place).orElse(MIXED));
        return samples;
    }

    /** A kept figure of each run. */
    public double[] figure(String name) {
        return column(figures, name);
    }

    /** The number that each run got for a variable; its place in the list where values are no numbers. */
    public double[] input(String name) {
        return column(inputs, name);
    }

    /** What a run got for a variable, in words. */
    public String inputText(Variable variable, int place) {
        return Choices.inSentence(
                variable, Objects.requireNonNull(runs.get(place).get(variable)));
    }

    /** How many runs have a figure. */
    public int finished(String figure) {
        return (int) Arrays.stream(figure(figure)).filter(Double::isFinite).count();
    }

    private static double[] column(Map<String, double[]> columns, String name) {
        double[] column = columns.get(name);
        if (column == null) {
            throw new IllegalArgumentException("nothing is called " + name);
        }
        return column;
    }

    /** Whether a run has figures. */
    public boolean isFinished(int place) {
        return status[place] == StoredRun.Status.FINISHED;
    }

    /** How many runs have figures. */
    public int finished() {
        int count = 0;
        for (int place = 0; place < status.length; place++) {
            count += isFinished(place) ? 1 : 0;
        }
        return count;
    }

    /** The failed runs with their reasons. */
    public FailedRuns failures() {
        return failures;
    }
}
