package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.FileNotFoundException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

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
}
