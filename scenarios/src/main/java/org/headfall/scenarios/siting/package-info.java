/**
 * Where new bores can go. Confined flow is linear, and what a bore in one place does at another the other would do there:
 * so one backward solution a limit's place says what a bore in any cell would do to it ({@link
 * org.headfall.solver.response.EffectFields}). What the run with the bores of the document leaves of each limit ({@link
 * org.headfall.scenarios.siting.LimitHeadroom}), shared out by that effect, is the largest rate of a new bore; its own
 * level, distances and areas are further bounds ({@link org.headfall.scenarios.siting.SiteSearch}). Sites are chosen one
 * after another, each counted with those before it.
 */
@NullMarked
package org.headfall.scenarios.siting;

import org.jspecify.annotations.NullMarked;
