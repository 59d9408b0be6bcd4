package org.headfall.scenarios.raster;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Scale, offset and unit of the bands, which GDAL keeps as XML in TIFF tag 42112.
 *
 * <p>A stored value v means {@code v * scale + offset}. Ignoring them would give wrong numbers without a word.
 */
final class GdalMetadata {
    private final Map<Integer, Double> scales = new HashMap<>();
    private final Map<Integer, Double> offsets = new HashMap<>();
    private Optional<String> unit = Optional.empty();

    private GdalMetadata() {}

    /** Reads the content of the tag; empty text means none. */
    static GdalMetadata of(Path file, String xml) {
        GdalMetadata metadata = new GdalMetadata();
        if (!xml.isBlank()) {
            try {
                NodeList items =
                        builder().parse(new InputSource(new StringReader(xml))).getElementsByTagName("Item");
                for (int i = 0; i < items.getLength(); i++) {
                    metadata.add((Element) items.item(i));
                }
            } catch (ParserConfigurationException | SAXException | IOException | NumberFormatException e) {
                throw SpatialFormatException.of(
                                file, "TIFF tag 42112 with unreadable metadata", "XML as GDAL writes it")
                        .causedBy(e);
            }
        }
        return metadata;
    }

    Optional<String> unit() {
        return unit;
    }

    double value(int band, double stored) {
        return stored * scales.getOrDefault(band, 1.0) + offsets.getOrDefault(band, 0.0);
    }

    private void add(Element item) {
        String text = item.getTextContent().trim();
        String sample = item.getAttribute("sample");
        int band = sample.isEmpty() ? 0 : Integer.parseInt(sample);
        switch (item.getAttribute("role")) {
            case "scale" -> scales.put(band, Double.parseDouble(text));
            case "offset" -> offsets.put(band, Double.parseDouble(text));
            case "unittype" -> unit = Optional.of(text);
            default -> {
                // Names, statistics and the like do not change what a value means.
            }
        }
    }

    private static DocumentBuilder builder() throws ParserConfigurationException {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        DocumentBuilder builder = factory.newDocumentBuilder();
        // Without a handler of ours the parser prints to the console.
        builder.setErrorHandler(new DefaultHandler());
        return builder;
    }
}
