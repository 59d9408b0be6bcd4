/**
 * The page of a report: sentences, tables and packed figures made from the content, the scripts and styles that go
 * into the file, and the policy that lets nothing else run. Text of the user reaches the page only through the
 * escaping template or as JSON.
 */
@NullMarked
package org.headfall.scenarios.report.page;

import org.jspecify.annotations.NullMarked;
