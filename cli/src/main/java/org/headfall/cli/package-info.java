/**
 * The commands, their progress and exit codes.
 */
@NullMarked
package org.headfall.cli;

import org.jspecify.annotations.NullMarked;
