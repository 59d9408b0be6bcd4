/**
 * Properties that follow from the equations whatever the field: checked on random fields, each from a seed that is
 * printed and can be set.
 */
@NullMarked
package org.headfall.validation.property;

import org.jspecify.annotations.NullMarked;
