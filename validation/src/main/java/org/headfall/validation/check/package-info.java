/**
 * What a check is: a case names its published source, says what it proves and what it does not, and on being run gives
 * comparisons of published numbers with ours, each with its tolerance and the reason for it.
 */
@NullMarked
package org.headfall.validation.check;

import org.jspecify.annotations.NullMarked;
