package org.headfall.scenarios.sweep.document;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.document.DocumentNode;
import org.snakeyaml.engine.v2.api.Dump;
import org.snakeyaml.engine.v2.api.DumpSettings;
import org.snakeyaml.engine.v2.common.FlowStyle;

/** Writes a tree of nodes as the text of a YAML document that reads as the same tree, but for comments and layout. */
public final class DocumentText {

    private static final int WIDTH = 120;

    private DocumentText() {}

    /**
     * The text of a document.
     *
     * @param document the document
     * @return YAML
     */
    public static String of(DocumentNode document) {
        return dumped(document, FlowStyle.BLOCK, WIDTH);
    }

    /**
     * A value in one line, for tables.
     *
     * @param value the value
     * @return its text, or its parts in braces or brackets
     */
    public static String line(DocumentNode value) {
        return value instanceof DocumentNode.Scalar scalar
                ? scalar.text().strip()
                : dumped(value, FlowStyle.FLOW, Integer.MAX_VALUE).strip();
    }

    private static String dumped(DocumentNode node, FlowStyle style, int width) {
        DumpSettings settings = DumpSettings.builder()
                .setDefaultFlowStyle(style)
                .setWidth(width)
                .build();
        return new Dump(settings).dumpToString(plain(node));
    }

    /** Numbers stay the texts that they were; an empty value stays empty. */
    private static Object plain(DocumentNode node) {
        if (node instanceof DocumentNode.Mapping mapping) {
            Map<String, Object> entries = new LinkedHashMap<>();
            mapping.entries().forEach(entry -> entries.put(entry.key(), plain(entry.value())));
            return entries;
        }
        if (node instanceof DocumentNode.Listing listing) {
            List<Object> entries = new ArrayList<>();
            listing.entries().forEach(entry -> entries.add(plain(entry)));
            return entries;
        }
        return ((DocumentNode.Scalar) node).text();
    }
}
