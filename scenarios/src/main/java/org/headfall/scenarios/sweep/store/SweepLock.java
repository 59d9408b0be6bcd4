package org.headfall.scenarios.sweep.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;

/** Keeps a second process off a store. The system lets go of it however the process ends; the file stays. */
final class SweepLock implements AutoCloseable {

    private final FileChannel channel;

    private SweepLock(FileChannel channel) {
        this.channel = channel;
    }

    /**
     * Takes the lock of a store.
     *
     * @param store the file of the store
     * @return the lock
     * @throws StoreException if another process has it
     * @throws IOException if the lock file cannot be written
     */
    static SweepLock of(Path store) throws IOException {
        Path file = store.resolveSibling(store.getFileName() + ".lock");
        FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        try {
            @Nullable FileLock lock = channel.tryLock();
            if (lock != null) {
                return new SweepLock(channel);
            }
        } catch (OverlappingFileLockException sameProcess) {
            // answered below like a lock of another process
        }
        channel.close();
        throw new StoreException(
                store, "another sweep is writing to it; wait for it, or choose another folder with --output");
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
