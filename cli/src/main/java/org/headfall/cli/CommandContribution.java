package org.headfall.cli;

/**
 * A command that another module adds to {@code headfall}. Found on the class path by {@link java.util.ServiceLoader};
 * so this module need not know the other.
 */
public interface CommandContribution {

    /**
     * The command: an object of a class with picocli's {@code @Command} annotation that gives its name, and that is a
     * {@code Callable<Integer>} answering an {@link ExitCode}.
     *
     * @return a new object
     */
    Object command();
}
