package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.FileNotFoundException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SideTasksTest {

    @Test
    void withOneThreadTheCallingOneDoesAll() {
        try (SideTasks tasks = new SideTasks(1)) {
            Future<Thread> worker = tasks.add(Thread::currentThread);
            tasks.help();
            assertSame(Thread.currentThread(), SideTasks.result(worker));
        }
    }

    @Test
    void everyTaskIsDoneOnce() {
        try (SideTasks tasks = new SideTasks(3)) {
            AtomicIntegerArray done = new AtomicIntegerArray(20);
            List<Future<Integer>> results = IntStream.range(0, done.length())
                    .mapToObj(i -> tasks.add(() -> done.incrementAndGet(i)))
                    .toList();
            tasks.help();
            results.forEach(result -> assertEquals(1, SideTasks.result(result)));
            for (int i = 0; i < done.length(); i++) {
                assertEquals(1, done.get(i));
            }
        }
    }

    @Test
    void whatATaskThrowsIsThrownToTheCaller() {
        try (SideTasks tasks = new SideTasks(2)) {
            FileNotFoundException missing = new FileNotFoundException("no such folder");
            Callable<Integer> writes = () -> {
                throw missing;
            };
            Future<Integer> failing = tasks.add(writes);
            Callable<Integer> counts = () -> {
                throw new IllegalArgumentException("odd");
            };
            Future<Integer> odd = tasks.add(counts);
            tasks.help();
            UncheckedIOException told = assertThrows(UncheckedIOException.class, () -> SideTasks.result(failing));
            assertSame(missing, told.getCause());
            assertThrows(IllegalArgumentException.class, () -> SideTasks.result(odd));
        }
    }

    /** A caller that fails gives up the lock of its folder next: nobody may write there after that. */
    @Test
    void aCallerThatFailsLeavesNobodyWriting(@TempDir Path folder) {
        CountDownLatch writing = new CountDownLatch(1);
        AtomicBoolean ended = new AtomicBoolean();
        IllegalStateException failure = assertThrows(IllegalStateException.class, () -> {
            try (SideTasks tasks = new SideTasks(2)) {
                Future<Path> writer = tasks.add(() -> {
                    writing.countDown();
                    for (int line = 0; line < 200; line++) {
                        LockSupport.parkNanos(1_000_000);
                        // Interrupts end a pause at once; what goes on for long all the same does not look at them.
                        Thread.interrupted();
                        Files.writeString(folder.resolve(line + ".csv"), "0.5");
                    }
                    ended.set(true);
                    return folder;
                });
                writing.await();
                assertFalse(writer.isDone());
                throw new IllegalStateException("the caller fails");
            }
        });
        assertEquals("the caller fails", failure.getMessage());
        assertTrue(ended.get(), "close() waits for the writer");
    }

    @Test
    void anInterruptOfTheCallerIsKeptUntilAllHasEnded() {
        AtomicBoolean ended = new AtomicBoolean();
        CountDownLatch begun = new CountDownLatch(1);
        SideTasks tasks = new SideTasks(2);
        Future<Boolean> slow = tasks.add(() -> {
            begun.countDown();
            for (int pause = 0; pause < 50; pause++) {
                LockSupport.parkNanos(1_000_000);
                Thread.interrupted();
            }
            ended.set(true);
            return true;
        });
        assertDoesNotThrow(() -> begun.await());
        Thread.currentThread().interrupt();
        tasks.close();
        assertTrue(Thread.interrupted());
        assertTrue(ended.get());
        assertTrue(slow.isDone());
    }
}
