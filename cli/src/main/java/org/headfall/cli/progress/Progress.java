package org.headfall.cli.progress;

/** Is told how far a long piece of work has come, and shows it. */
public interface Progress extends AutoCloseable {

    /** Shows nothing. */
    Progress SILENT = (stage, fraction) -> {};

    /**
     * Work has come some way. Cheap enough to be called at every time step.
     *
     * @param stage what is being done, a few words; a new stage begins when it changes
     * @param fraction part of the stage that is done, from 0 to 1
     */
    void reached(String stage, double fraction);

    /** Leaves the screen clean for what follows. */
    @Override
    default void close() {}
}
