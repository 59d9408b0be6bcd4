package org.headfall.scenarios.sweep.store;

import java.io.Serial;
import java.io.Serializable;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;

/**
 * What came of a run. May be sent from the computer that made it to the one that records it.
 *
 * @param number its number
 * @param figures its kept figures, NaN where there is none; empty if it failed
 * @param reason why it failed; empty if it did not
 * @param way how it was answered, in a few words
 * @param seconds elapsed time (s)
 * @param host name of the computer that made it
 * @param maps where limits on the map are crossed, packed; none if there are no such limits
 */
@SuppressWarnings("ArrayRecordComponent") // handed on once, never compared
public record RunOutcome(
        int number, double[] figures, String reason, String way, double seconds, String host, byte[] maps)
        implements Serializable {

    @Serial
    private static final long serialVersionUID = 1L;

    /** An outcome without maps. */
    public RunOutcome(int number, double[] figures, String reason, String way, double seconds, String host) {
        this(number, figures, reason, way, seconds, host, new byte[0]);
    }

    /** Name of this computer; empty if it has none. */
    public static String nameOfHost() {
        try {
            return InetAddress.getLocalHost().getHostName();
        } catch (UnknownHostException nameless) {
            return "";
        }
    }

    /** Whether it failed. */
    public boolean failed() {
        return !reason.isEmpty();
    }

    @Override
    public String toString() {
        return "run " + number + ": " + (failed() ? reason : Arrays.toString(figures));
    }
}
