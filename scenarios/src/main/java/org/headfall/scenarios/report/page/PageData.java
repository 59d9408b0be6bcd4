package org.headfall.scenarios.report.page;

import java.util.List;
import org.headfall.scenarios.findings.HeadPressure;
import org.headfall.scenarios.report.content.DatedField;
import org.headfall.scenarios.report.content.FieldMap;
import org.headfall.scenarios.report.content.Hydrograph;
import org.headfall.scenarios.report.content.LimitOutcome;
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

    /** What heads on the map are rounded to (m). */
    static final double HEAD_QUANTUM = 0.005;

    /** What heads over time are rounded to (m): limits are judged by them again, and by their slopes. */
    private static final double SERIES_QUANTUM = 5e-4;

    private static final double SURFACE_QUANTUM = 0.1;
    private static final double FLOW_QUANTUM = 0.02;
    private static final double CENTIMETRES = 100;
    private static final JsonMapper MAPPER = new JsonMapper();

    private PageData() {}

    /** JSON without any {@code <}, so that no text in it can end the script element it stands in. */
    static String of(ReportContent content) {
        ObjectNode root = MAPPER.createObjectNode();
        root.put("start", content.heading().start().toString());
        root.put("datum", content.heading().datum());
        root.put("kilopascalsPerMetre", HeadPressure.atGround(1).orElseThrow());
        putMap(root.putObject("map"), ScreenGrid.thin(content.map()));
        ArrayNode sites = root.putArray("sites");
        content.sites().forEach(site -> putSite(sites.addObject(), site));
        ArrayNode hydrographs = root.putArray("hydrographs");
        content.hydrographs().forEach(hydrograph -> putHydrograph(hydrographs.addObject(), hydrograph));
        ArrayNode sections = root.putArray("sections");
        content.sections().forEach(line -> putSection(sections.addObject(), line));
        content.whatIf().ifPresent(whatIf -> WhatIfData.put(root.putObject("whatIf"), whatIf));
        if (!content.attribution().isEmpty()) {
            AttributionData.put(root.putObject("attribution"), content.attribution());
        }
        BalanceData.put(root.putObject("balance"), content.balance());
        ArrayNode limits = root.putArray("limits");
        content.limits().forEach(limit -> putLimit(limits.addObject(), limit));
        return MAPPER.writeValueAsString(root).replace("<", "\\u003c");
    }

    private static void putMap(ObjectNode node, FieldMap map) {
        int rowLength = map.x().length;
        putAll(node.putArray("x"), map.x());
        putAll(node.putArray("y"), map.y());
        node.put("drawdownMeaning", map.drawdownMeaning());
        node.put("headQuantum", HEAD_QUANTUM);
        node.put("surfaceQuantum", SURFACE_QUANTUM);
        putPacked(node, "ground", map.ground(), SURFACE_QUANTUM, rowLength);
        putPacked(node, "top", map.aquiferTop(), SURFACE_QUANTUM, rowLength);
        putPacked(node, "bottom", map.aquiferBottom(), SURFACE_QUANTUM, rowLength);
        ArrayNode dates = node.putArray("dates");
        map.heads().forEach(head -> dates.add(head.date().toString()));
        putSequence(node, "heads", map.heads(), rowLength);
        putSequence(node, "drawdowns", map.drawdowns(), rowLength);
    }

    private static void putSequence(ObjectNode node, String name, List<DatedField> fields, int rowLength) {
        if (!fields.isEmpty()) {
            PackedNumbers packed = new PackedNumbers(HEAD_QUANTUM, rowLength);
            fields.forEach(field -> packed.add(field.values()));
            node.put(name, packed.text());
        }
    }

    private static void putPacked(ObjectNode node, String name, float[] values, double quantum, int rowLength) {
        if (values.length > 0) {
            node.put(name, new PackedNumbers(quantum, rowLength).add(values).text());
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
        putLength(node, "lowestLevel", site.lowestLevel());
        node.put("proposed", site.proposed());
        node.put("operation", site.operation());
        ArrayNode states = node.putArray("states");
        for (SiteState state : site.states()) {
            states.addArray().add(state.name()).add(state.words());
        }
    }

    private static void putHydrograph(ObjectNode node, Hydrograph hydrograph) {
        int length = Math.max(1, hydrograph.days().length);
        node.put("site", hydrograph.site());
        node.put("quantum", SERIES_QUANTUM);
        node.put("flowQuantum", FLOW_QUANTUM);
        putAll(node.putArray("days"), hydrograph.days());
        putPacked(node, "aquiferHead", hydrograph.aquiferHead(), SERIES_QUANTUM, length);
        putPacked(node, "waterLevel", hydrograph.waterLevel(), SERIES_QUANTUM, length);
        putPacked(node, "flow", hydrograph.flow(), FLOW_QUANTUM, length);
        ArrayNode references = node.putArray("references");
        for (ReferenceLevel reference : hydrograph.references()) {
            ObjectNode level = references.addObject();
            level.put("kind", reference.kind().name()).put("label", reference.label());
            putLength(level, "level", reference.level());
        }
        ArrayNode measured = node.putArray("measured");
        for (Hydrograph.Measurement measurement : hydrograph.measured()) {
            measured.addArray().add(measurement.day()).add(measurement.level());
        }
    }

    private static void putSection(ObjectNode node, SectionLine line) {
        node.put("name", line.name());
        putLength(node, "fromX", line.fromX());
        putLength(node, "fromY", line.fromY());
        putLength(node, "toX", line.toX());
        putLength(node, "toY", line.toY());
    }

    private static void putLimit(ObjectNode node, LimitOutcome limit) {
        node.put("name", limit.name());
        node.put("site", limit.site());
        node.put("quantity", limit.quantity());
        node.put("conditions", limit.conditions());
        node.put("unit", limit.unit());
        node.put("verdict", limit.verdict().name());
        node.put("words", limit.verdict().words());
        putNumber(node, "allowed", limit.allowed());
        putNumber(node, "reached", limit.reached());
        putNumber(node, "error", limit.error());
        putLength(node, "x", limit.x());
        putLength(node, "y", limit.y());
        node.put(
                "reachedOn",
                limit.reachedOn() == null ? null : limit.reachedOn().toString());
        node.put(
                "crossedOn",
                limit.crossedOn() == null ? null : limit.crossedOn().toString());
    }

    /** A number to its last bit, or null if it is not known. */
    static void putNumber(ObjectNode node, String name, double value) {
        if (Double.isFinite(value)) {
            node.put(name, value);
        } else {
            node.putNull(name);
        }
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
