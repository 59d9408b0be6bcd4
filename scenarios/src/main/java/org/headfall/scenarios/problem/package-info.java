/**
 * What is wrong with the user's input, said so that it can be mended.
 *
 * <p>A {@link org.headfall.scenarios.problem.Problem} has a {@link org.headfall.scenarios.problem.Place} (file, line
 * and column), a {@link org.headfall.scenarios.problem.ProblemKind}, the name of the thing concerned, what was found,
 * what is allowed and, where there is one, the nearest likely spelling. Readers never stop at the first problem: they
 * put each into {@link org.headfall.scenarios.problem.Problems} and go on, so that the user sees all of them at once.
 */
@NullMarked
package org.headfall.scenarios.problem;

import org.jspecify.annotations.NullMarked;
