/** Worked examples and field data of the literature, answered with the closed forms of the solver. */
@NullMarked
package org.headfall.validation.example;

import org.jspecify.annotations.NullMarked;
