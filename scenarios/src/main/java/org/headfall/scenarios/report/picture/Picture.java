package org.headfall.scenarios.report.picture;

import java.awt.Graphics2D;

/** Something that can be drawn at a size, on paper that is white already. */
interface Picture {

    /** Width (px at 96 a inch). */
    int width();

    /** Height (px at 96 a inch). */
    int height();

    /** Draws it from the upper left corner. */
    void draw(Graphics2D graphics);
}
