package org.headfall.cli;

import java.io.PrintWriter;
import java.util.Collection;
import org.headfall.cli.answer.RunAnswer;
import org.headfall.cli.answer.TextBlock;
import org.headfall.cli.answer.Verdict;

/** What {@code --fail-on-limit} makes of answers. */
final class LimitFailure {

    private LimitFailure() {}

    /**
     * The exit code: 3 if a limit is crossed, otherwise 0. Where none is crossed but not all are known to be kept, it says so,
     * since 0 alone could be taken for it.
     *
     * @param answers the answers
     * @param err where that is said
     * @return the exit code
     */
    static ExitCode of(Collection<RunAnswer> answers, PrintWriter err) {
        if (answers.stream().anyMatch(answer -> answer.verdict() == Verdict.CROSSED)) {
            return ExitCode.LIMIT_CROSSED;
        }
        if (answers.stream().anyMatch(answer -> answer.verdict() == Verdict.UNDECIDED)) {
            new TextBlock(err)
                    .message(
                            "headfall: --fail-on-limit: no limit is known to be crossed, but some are undecided or were not"
                                    + " judged; the exit code does not count them.");
        }
        return ExitCode.DONE;
    }
}
