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
 * @param ending how it ended
 * @param figures its kept figures, NaN where there is none; empty if it failed
 * @param reason why it failed; empty if it did not
 * @param way how it was answered, in a few words
 * @param seconds elapsed time (s)
 * @param host name of the computer that made it
 * @param maps where limits on the map are crossed, packed; none if there are no such limits
 */
@SuppressWarnings("ArrayRecordComponent") // handed on once, never compared
public record RunOutcome(
        int number,
        Ending ending,
        double[] figures,
        String reason,
        String way,
        double seconds,
        String host,
        byte[] maps)
        implements Serializable {

    @Serial
    private static final long serialVersionUID = 2L;

    private static final byte[] NO_MAPS = {};

    /** How a run ended. */
    public enum Ending {
        /** It has figures. */
        FINISHED,
        /** It cannot be made; the reason says why. */
        FAILED,
        /** Memory was not enough: its process is not sound any more and has to end. */
        OUT_OF_MEMORY
    }

    /** A run that was made, and has no maps. */
    public static RunOutcome finished(int number, double[] figures, String way, double seconds, String host) {
        return finished(number, figures, way, seconds, host, NO_MAPS);
    }

    /** A run that was made. */
    public static RunOutcome finished(
            int number, double[] figures, String way, double seconds, String host, byte[] maps) {
        return new RunOutcome(number, Ending.FINISHED, figures, "", way, seconds, host, maps);
    }

    /** A run that cannot be made. */
    public static RunOutcome failed(int number, String reason, double seconds, String host) {
        return new RunOutcome(number, Ending.FAILED, new double[0], reason, "", seconds, host, NO_MAPS);
    }

    /** A run for which memory was not enough. */
    public static RunOutcome outOfMemory(int number, double seconds, String host) {
        return new RunOutcome(
                number, Ending.OUT_OF_MEMORY, new double[0], "not enough memory", "", seconds, host, NO_MAPS);
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
        return ending != Ending.FINISHED;
    }

    @Override
    public String toString() {
        return "run " + number + ": " + (failed() ? reason : Arrays.toString(figures));
    }
}
