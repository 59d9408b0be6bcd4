/**
 * What a run comes to, for people and for programs: {@link org.headfall.cli.answer.RunAnswer} picks the figures that are
 * wanted first out of a finished run, {@link org.headfall.cli.answer.AnswerText} sets them within 80 columns, {@link
 * org.headfall.cli.answer.AnswerJson} as one JSON object.
 */
@NullMarked
package org.headfall.cli.answer;

import org.jspecify.annotations.NullMarked;
