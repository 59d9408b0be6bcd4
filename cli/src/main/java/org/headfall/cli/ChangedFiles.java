package org.headfall.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import org.headfall.cli.answer.TextBlock;
import org.headfall.scenarios.results.FileChanges;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.SummaryFile;

/** Holds the files of results that a command uses against what the run wrote. */
final class ChangedFiles {

    private ChangedFiles() {}

    /**
     * Refuses results of which a file that is read was changed, and warns of others that are not as the run left them.
     *
     * @param results folder of finished results
     * @param read names of the files that the command reads
     * @param err where the warning goes
     * @throws ResultsException if a file that is read was changed
     */
    static void check(Path results, List<String> read, PrintWriter err) throws ResultsException {
        FileChanges changes = FileChanges.in(results);
        changes.requireUnchanged(read);
        warn(changes, err);
    }

    /**
     * Warns of files that were changed, are missing or are not of the run, none of which the command reads.
     *
     * @param changes how files differ
     * @param err where the warning goes
     * @throws ResultsException if the summary itself was changed, by which all others are known
     */
    static void warn(FileChanges changes, PrintWriter err) throws ResultsException {
        changes.requireUnchanged(List.of(SummaryFile.NAME));
        if (changes.changed().isEmpty()
                && changes.missing().isEmpty()
                && changes.added().isEmpty()) {
            return;
        }
        TextBlock block = new TextBlock(err);
        block.sentence("headfall: warning: files in " + changes.folder() + " are not as the run left them:");
        list(block, changes);
        block.sentence("What follows comes from files that are unchanged.");
    }

    /** Names changed, missing and foreign files, a line each kind. */
    static void list(TextBlock block, FileChanges changes) {
        if (!changes.changed().isEmpty()) {
            block.item("changed: "
                    + String.join(", ", new TreeSet<>(changes.changed().keySet())));
        }
        if (!changes.missing().isEmpty()) {
            block.item("missing: " + String.join(", ", changes.missing()));
        }
        if (!changes.added().isEmpty()) {
            block.item("not of the run: " + String.join(", ", changes.added()));
        }
    }
}
