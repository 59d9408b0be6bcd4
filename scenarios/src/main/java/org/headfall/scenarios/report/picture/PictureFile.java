package org.headfall.scenarios.report.picture;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Document;

/** Writes a picture under a name as SVG and as PNG; each file appears when it is whole. */
final class PictureFile {

    /** Pixels of the PNG for each of the picture, so that it stays sharp on a projector. */
    private static final int SCALE = 2;

    private static final String SVG = "http://www.w3.org/2000/svg";

    private PictureFile() {}

    static void write(Picture picture, Path folder, String name) throws IOException {
        writeSvg(picture, folder, name + ".svg");
        writePng(picture, folder, name + ".png");
    }

    private static void writeSvg(Picture picture, Path folder, String name) throws IOException {
        SVGGraphics2D graphics = new SVGGraphics2D(document());
        graphics.setSVGCanvasSize(new Dimension(picture.width(), picture.height()));
        drawOnWhite(picture, graphics);
        Path part = folder.resolve(name + ".part");
        try (Writer writer = Files.newBufferedWriter(part, StandardCharsets.UTF_8)) {
            graphics.stream(writer, false);
        }
        moveIntoPlace(part, folder.resolve(name));
    }

    private static Document document() {
        try {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .getDOMImplementation()
                    .createDocument(SVG, "svg", null);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException("every Java makes XML documents", e);
        }
    }

    private static void writePng(Picture picture, Path folder, String name) throws IOException {
        BufferedImage image =
                new BufferedImage(SCALE * picture.width(), SCALE * picture.height(), BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.scale(SCALE, SCALE);
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        drawOnWhite(picture, graphics);
        graphics.dispose();
        Path part = folder.resolve(name + ".part");
        ImageIO.write(image, "png", part.toFile());
        moveIntoPlace(part, folder.resolve(name));
    }

    private static void drawOnWhite(Picture picture, Graphics2D graphics) {
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, picture.width(), picture.height());
        picture.draw(graphics);
    }

    private static void moveIntoPlace(Path part, Path file) throws IOException {
        Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    }
}
