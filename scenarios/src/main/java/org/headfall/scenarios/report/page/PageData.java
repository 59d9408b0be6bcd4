package org.headfall.scenarios.report.page;

import java.util.List;
import org.headfall.scenarios.report.content.DatedField;
import org.headfall.scenarios.report.content.FieldMap;
import org.headfall.scenarios.report.content.Hydrograph;
import org.headfall.scenarios.report.content.ReferenceLevel;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.content.SectionLine;
import org.headfall.scenarios.report.content.Site;
import org.headfall.scenarios.report.content.SiteState;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The figures' data as JSON for the scripts of the page. */
final class PageData {

    /** What heads and levels are rounded to (m). */
    static final double HEAD_QUANTUM = 0.005;

    private static final double SURFACE_QUANTUM = 0.1;
    private static final double FLOW_QUANTUM = 0.5;
    private static final double CENTIMETRES = 100;
    private static final JsonMapper MAPPER = new JsonMapper();

    private PageData() {}

    /** JSON without any {@code <}, so that no text in it can end the script element it stands in. */
    static String of(ReportContent content) {
        ObjectNode root = MAPPER.createObjectNode();
        root.put("start", content.heading().start().toString());
        root.put("datum", content.heading().datum());
        putMap(root.putObject("map"), ScreenGrid.thin(content.map()));
        ArrayNode sites = root.putArray("sites");
        content.sites().forEach(site -> putSite(sites.addObject(), site));
        ArrayNode hydrographs = root.putArray("hydrographs");
        content.hydrographs().forEach(hydrograph -> putHydrograph(hydrographs.addObject(), hydrograph));
        ArrayNode sections = root.putArray("sections");
        content.sections().forEach(line -> putSection(sections.addObject(), line));
        return MAPPER.writeValueAsString(root).replace("<", "\\u003c");
    }

    private static void putMap(ObjectNode node, FieldMap map) {
        int rowLength = map.x().length;
        putAll(node.putArray("x"), map.x());
        putAll(node.putArray("y"), map.y());
        node.put("drawdownMeaning", map.drawdownMeaning());
        node.put("headQuantum", HEAD_QUANTUM);
        node.put("surfaceQuantum", SURFACE_QUANTUM);
        putPacked(node, "ground", map.ground(), new PackedField(SURFACE_QUANTUM, rowLength));
        putPacked(node, "top", map.aquiferTop(), new PackedField(SURFACE_QUANTUM, rowLength));
        putPacked(node, "bottom", map.aquiferBottom(), new PackedField(SURFACE_QUANTUM, rowLength));
        ArrayNode dates = node.putArray("dates");
        map.heads().forEach(head -> dates.add(head.date().toString()));
        putSequence(node.putArray("heads"), map.heads(), rowLength);
        putSequence(node.putArray("drawdowns"), map.drawdowns(), rowLength);
    }

    private static void putSequence(ArrayNode node, List<DatedField> fields, int rowLength) {
        PackedField packed = new PackedField(HEAD_QUANTUM, rowLength);
        fields.forEach(field -> node.add(packed.next(field.values())));
    }

    private static void putPacked(ObjectNode node, String name, float[] values, PackedField packed) {
        if (values.length > 0) {
            node.put(name, packed.next(values));
        }
    }

    private static void putSite(ObjectNode node, Site site) {
        node.put("name", site.name());
        node.put("kind", site.kind().name());
        node.put("kindWords", site.kind().words());
        node.put("holder", site.holder());
        putLength(node, "x", site.x());
        putLength(node, "y", site.y());
        putLength(node, "ground", site.ground());
        putLength(node, "outlet", site.outlet());
        putLength(node, "top", site.aquiferTop());
        putLength(node, "intake", site.intake());
        ArrayNode states = node.putArray("states");
        for (SiteState state : site.states()) {
            states.addArray().add(state.name()).add(state.words());
        }
    }

    private static void putHydrograph(ObjectNode node, Hydrograph hydrograph) {
        int length = Math.max(1, hydrograph.days().length);
        node.put("site", hydrograph.site());
        node.put("quantum", HEAD_QUANTUM);
        node.put("flowQuantum", FLOW_QUANTUM);
        putAll(node.putArray("days"), hydrograph.days());
        putPacked(node, "aquiferHead", hydrograph.aquiferHead(), new PackedField(HEAD_QUANTUM, length));
        putPacked(node, "waterLevel", hydrograph.waterLevel(), new PackedField(HEAD_QUANTUM, length));
        putPacked(node, "flow", hydrograph.flow(), new PackedField(FLOW_QUANTUM, length));
        ArrayNode references = node.putArray("references");
        for (ReferenceLevel reference : hydrograph.references()) {
            putLength(references.addObject().put("label", reference.label()), "level", reference.level());
        }
    }

    private static void putSection(ObjectNode node, SectionLine line) {
        node.put("name", line.name());
        putLength(node, "fromX", line.fromX());
        putLength(node, "fromY", line.fromY());
        putLength(node, "toX", line.toX());
        putLength(node, "toY", line.toY());
    }

    private static void putAll(ArrayNode node, double[] values) {
        for (double value : values) {
            node.add(Math.round(value * CENTIMETRES) / CENTIMETRES);
        }
    }

    private static void putLength(ObjectNode node, String name, double value) {
        if (Double.isFinite(value)) {
            node.put(name, Math.round(value * CENTIMETRES) / CENTIMETRES);
        } else {
            node.putNull(name);
        }
    }
}
