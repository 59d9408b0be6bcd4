/** What a validation leaves behind: one page for people, which needs no network and prints, and one table for machines. */
@NullMarked
package org.headfall.validation.report;

import org.jspecify.annotations.NullMarked;
