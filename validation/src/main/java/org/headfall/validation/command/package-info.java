/** The command {@code headfall validate}. */
@NullMarked
package org.headfall.validation.command;

import org.jspecify.annotations.NullMarked;
