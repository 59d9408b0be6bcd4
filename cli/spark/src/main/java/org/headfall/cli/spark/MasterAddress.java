package org.headfall.cli.spark;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.UnknownHostException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.sweep.work.EngineException;

/**
 * The address of a cluster's master. A wrong one is told in seconds; left to itself the cluster's library tries for minutes
 * and then says little.
 */
final class MasterAddress {

    private static final Pattern STANDALONE = Pattern.compile("spark://(.+)");
    private static final Pattern HOST_AND_PORT = Pattern.compile("(.+):(\\d{1,5})");
    private static final int MILLISECONDS = 10_000;

    private final String address;

    /**
     * An address.
     *
     * @param address what was given to {@code --master}
     */
    MasterAddress(String address) {
        this.address = address;
    }

    /**
     * Requires somebody to answer there. Only addresses of the cluster's own kind can be tried; others are left to it.
     *
     * @throws EngineException if nobody does; the message names the address and what can be done
     */
    void requireAnswer() throws EngineException {
        if (address.isEmpty()) {
            throw new EngineException(
                    "no cluster named: give spark-submit the option --master, such as spark://host:7077");
        }
        Matcher standalone = STANDALONE.matcher(address);
        if (!standalone.matches()) {
            return;
        }
        List<String> failures = new ArrayList<>();
        for (String master : standalone.group(1).split(",", -1)) {
            try {
                connect(master);
                return;
            } catch (IOException failure) {
                failures.add(master + ": " + words(failure));
            }
        }
        throw unreachable(String.join("; ", failures));
    }

    private static void connect(String master) throws IOException {
        Matcher parts = HOST_AND_PORT.matcher(master);
        if (!parts.matches()) {
            throw new IOException("no host and port, as in spark://host:7077");
        }
        try (Socket socket = new Socket()) {
            socket.connect(new InetSocketAddress(parts.group(1), Integer.parseInt(parts.group(2))), MILLISECONDS);
        } catch (IllegalArgumentException noPort) {
            throw new IOException("no port from 0 to 65535", noPort);
        }
    }

    private static String words(IOException failure) {
        return failure instanceof UnknownHostException ? "no such host" : String.valueOf(failure.getMessage());
    }

    /** What to throw when the cluster cannot be reached. */
    EngineException unreachable(String why) {
        return new EngineException("no cluster answers at " + address + " (" + why
                + "). Is the address right, and does its master run? What has been recorded is kept.");
    }
}
