/**
 * What a report says, as plain immutable data: the question, the field at the report dates, bores and springs, series,
 * tables, limits, balance, assumptions, doubts and where all of it came from. Metres, days and m³/d throughout; a
 * number that is not known is NaN and shown as a dash. Arrays are not copied and must not change afterwards.
 */
@NullMarked
package org.headfall.scenarios.report.content;

import org.jspecify.annotations.NullMarked;
