package org.headfall.scenarios.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileChannel.MapMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.headfall.solver.flow.SolutionMemory;
import org.jspecify.annotations.Nullable;

/**
 * Keeps solutions on the heap up to a share of it, and those beyond in a temporary file, which is read where it is mapped
 * into memory: the operating system keeps of it what it has room for. The file goes when this is closed, or the program ends.
 * Several threads may use it.
 */
public final class SolutionsBeside implements SolutionMemory, AutoCloseable {

    /** Part of the largest heap that solutions may take: the solver needs most of it. */
    private static final int SHARE_OF_HEAP = 4;

    private final Path folder;
    private long bytesLeft;
    private @Nullable FileChannel file;
    private long end;

    /**
     * Memory for solutions.
     *
     * @param folder where the file is made if it is needed
     */
    public SolutionsBeside(Path folder) {
        this(folder, Runtime.getRuntime().maxMemory() / SHARE_OF_HEAP);
    }

    /** Memory for solutions of which the first so many bytes stay on the heap. */
    SolutionsBeside(Path folder, long bytes) {
        this.folder = folder;
        bytesLeft = bytes;
    }

    /**
     * Keeps numbers.
     *
     * @throws UncheckedIOException if they cannot be written
     */
    @Override
    public synchronized FloatBuffer keep(float[] values) {
        long size = (long) Float.BYTES * values.length;
        if (size <= bytesLeft) {
            bytesLeft -= size;
            return FloatBuffer.wrap(values);
        }
        try {
            return written(values);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private FloatBuffer written(float[] values) throws IOException {
        FileChannel channel = file == null ? open() : file;
        ByteBuffer bytes = ByteBuffer.allocate(Float.BYTES * values.length).order(ByteOrder.nativeOrder());
        bytes.asFloatBuffer().put(values);
        long begin = end;
        while (bytes.hasRemaining()) {
            end += channel.write(bytes, end);
        }
        return channel.map(MapMode.READ_ONLY, begin, end - begin)
                .order(ByteOrder.nativeOrder())
                .asFloatBuffer();
    }

    private FileChannel open() throws IOException {
        Path path = Files.createTempFile(folder, "solutions", ".tmp");
        FileChannel channel = FileChannel.open(
                path, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
        file = channel;
        return channel;
    }

    @Override
    public synchronized void close() throws IOException {
        if (file != null) {
            file.close();
        }
    }
}
