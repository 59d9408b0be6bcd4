package org.headfall.scenarios.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.picture.ReportPictures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;

class ReportPicturesTest {

    private static final long SEED = 20_260_703;
    private static final String HOSTILE = "</text><script>alert(1)</script> \u0000\u0007\u202e \ud800 &amp;";

    @TempDir
    Path folder;

    @Test
    void everyPictureIsWrittenAsSvgAndPngOfTheSameShape() throws Exception {
        ReportContent content = InventedField.content(SEED, 60, 40);
        List<String> names = ReportPictures.write(content, folder);
        assertEquals(3 + content.hydrographs().size(), names.size());
        for (String name : names) {
            Document svg = parsed(name);
            BufferedImage png = ImageIO.read(folder.resolve(name + ".png").toFile());
            assertEquals(
                    png.getWidth(),
                    2 * Integer.parseInt(svg.getDocumentElement().getAttribute("width")));
            assertEquals(
                    png.getHeight(),
                    2 * Integer.parseInt(svg.getDocumentElement().getAttribute("height")));
            assertTrue(colours(png) > 3, () -> name + " is empty");
        }
        assertTrue(texts(parsed("map-drawdown")).contains("Town bore 1"), "names on the map");
        assertTrue(texts(parsed("interference")).contains("Station bore A"), "names in the matrix");
        try (var files = Files.list(folder)) {
            assertEquals(2L * names.size(), files.count());
        }
    }

    @Test
    void textOfTheUserStaysText() throws Exception {
        for (String name : ReportPictures.write(InventedField.content(SEED, 30, 20, HOSTILE), folder)) {
            assertEquals(0, parsed(name).getElementsByTagName("script").getLength(), name);
        }
    }

    private Document parsed(String name) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        return factory.newDocumentBuilder().parse(folder.resolve(name + ".svg").toFile());
    }

    private static Set<String> texts(Document svg) {
        NodeList found = svg.getElementsByTagName("text");
        Set<String> texts = new HashSet<>();
        for (int i = 0; i < found.getLength(); i++) {
            texts.add(found.item(i).getTextContent());
        }
        return texts;
    }

    private static long colours(BufferedImage image) {
        Set<Integer> colours = new HashSet<>();
        for (int x = 0; x < image.getWidth(); x += 3) {
            for (int y = 0; y < image.getHeight(); y += 3) {
                colours.add(image.getRGB(x, y));
            }
        }
        return colours.size();
    }
}
