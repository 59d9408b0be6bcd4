package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.io.Serial;

/** What makes the runs of a sweep cannot begin or go on; the message says what is the matter and what can be done. */
public final class EngineException extends IOException {
    @Serial
    private static final long serialVersionUID = 1L;

    /**
     * An engine that cannot go on.
     *
     * @param message what is the matter and what can be done
     */
    public EngineException(String message) {
        super(message);
    }
}
