package org.headfall.cli;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The standard output, which keeps why it could not be written: writers above it only say that something went wrong. */
final class StandardOutput extends FilterOutputStream {

    private @Nullable IOException failure;

    /**
     * Watches over a stream.
     *
     * @param out the standard output of the process
     */
    StandardOutput(OutputStream out) {
        super(out);
    }

    @Override
    public void write(int octet) throws IOException {
        write(new byte[] {(byte) octet}, 0, 1);
    }

    @Override
    public void write(byte[] octets, int from, int count) throws IOException {
        try {
            out.write(octets, from, count);
        } catch (IOException e) {
            failure = failure == null ? e : failure;
            throw e;
        }
    }

    /**
     * Whether part of the answer is lost. Not if its reader has closed the pipe, as {@code head} does when it has read enough:
     * Java tells that by the message of the operating system alone, "Broken pipe" or, on Windows, "The pipe is being closed".
     */
    boolean isIncomplete() {
        return failure != null
                && !String.valueOf(failure.getMessage())
                        .toLowerCase(Locale.ROOT)
                        .contains("pipe");
    }
}
