package org.headfall.scenarios.document;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.problem.Problems;

/**
 * A document as it stands in its file, before anyone has looked whether it is one of a scenario or of something else.
 *
 * @param file the document
 * @param node its content; nothing if it cannot be read as a whole
 * @param problems what is wrong with it so far; whoever reads on adds to them, so that it is read once
 */
public record ParsedDocument(Path file, Optional<DocumentNode> node, Problems problems) {

    /**
     * Parses a document. Nothing is thrown if that cannot be done: it is one of its problems.
     *
     * @param file the document
     * @return its content and problems
     */
    public static ParsedDocument of(Path file) {
        Problems problems = new Problems();
        String name = String.valueOf(file.toAbsolutePath().normalize().getFileName());
        return new ParsedDocument(file, Optional.ofNullable(new DocumentParser(name, problems).parse(file)), problems);
    }

    /** Its keys, in the order of the document; none if it holds anything else. */
    public List<String> keys() {
        return node.filter(DocumentNode.Mapping.class::isInstance)
                .map(DocumentNode.Mapping.class::cast)
                .map(mapping ->
                        mapping.entries().stream().map(DocumentNode.Entry::key).toList())
                .orElse(List.of());
    }
}
