/**
 * Still pictures of a report for slides and documents: map, section, hydrographs and interference, drawn once and
 * written both as SVG (W3C Scalable Vector Graphics 1.1) and as PNG, without a browser.
 */
@NullMarked
package org.headfall.scenarios.report.picture;

import org.jspecify.annotations.NullMarked;
