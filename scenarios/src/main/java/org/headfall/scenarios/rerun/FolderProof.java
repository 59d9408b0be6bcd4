package org.headfall.scenarios.rerun;

import java.nio.file.Path;
import java.util.List;

/**
 * A folder of results beside the same run made again.
 *
 * @param folder the folder
 * @param files its files beside those of the new run
 * @param otherWay that heads were found in another way than now, in words; empty if they were not
 */
public record FolderProof(Path folder, List<FileComparison> files, String otherWay) {

    /** Copies the list. */
    public FolderProof {
        files = List.copyOf(files);
    }

    /** How many values were compared. */
    public long values() {
        return files.stream().mapToLong(FileComparison::values).sum();
    }

    /** How many numbers differ by rounding alone. */
    public long rounded() {
        return files.stream().mapToLong(FileComparison::rounded).sum();
    }

    /** Files that are not the same. */
    public List<FileComparison> different() {
        return files.stream().filter(file -> !file.same()).toList();
    }
}
