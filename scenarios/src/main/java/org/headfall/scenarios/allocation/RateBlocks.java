package org.headfall.scenarios.allocation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.scenario.AllocationSpecification;
import org.headfall.scenarios.scenario.Season;

/**
 * Stretches of time with one rate a bore; those of one group, such as all summers of ten years, have the same.
 *
 * @param blocks the stretches, in order of time, not overlapping
 * @param seasons season of each group, in order of time within each season
 */
public record RateBlocks(List<Block> blocks, List<Integer> seasons) {

    /** Copies the lists. */
    public RateBlocks {
        blocks = List.copyOf(blocks);
        seasons = List.copyOf(seasons);
    }

    /** Number of groups. */
    public int groups() {
        return seasons.size();
    }

    /**
     * A stretch of time.
     *
     * @param start its first moment (d)
     * @param end its end (d)
     * @param group its group
     */
    public record Block(double start, double end, int group) {
        double days() {
            return end - start;
        }
    }

    static RateBlocks of(AllocationSpecification wanted, RunCalendar calendar) {
        double endDay = wanted.days();
        List<Block> blocks = new ArrayList<>();
        int years = (int) Math.ceil(endDay / RunCalendar.DAYS_PER_YEAR) + 1;
        LocalDate from = calendar.start().toLocalDate();
        int alike = wanted.yearsAlike() == 0 ? years : wanted.yearsAlike();
        int seasons = Math.max(1, wanted.seasons().size());
        if (wanted.seasons().isEmpty()) {
            for (int first = 0; first < years; first += alike) {
                add(
                        blocks,
                        day(calendar, from.plusYears(first)),
                        day(calendar, from.plusYears(first + alike)),
                        endDay,
                        first / alike);
            }
        }
        for (int s = 0; s < wanted.seasons().size(); s++) {
            Season season = wanted.seasons().get(s);
            for (int year = -1; year < years; year++) {
                double start = day(calendar, season.begins(from.getYear() + year));
                int yearOfRun = Math.max(0, (int) Math.floor((start + 1) / RunCalendar.DAYS_PER_YEAR));
                int group = yearOfRun / alike * seasons + s;
                add(blocks, start, day(calendar, season.ends(from.getYear() + year)), endDay, group);
            }
        }
        blocks.sort(Comparator.comparingDouble(Block::start));
        return numbered(blocks, seasons);
    }

    private static double day(RunCalendar calendar, LocalDate date) {
        return calendar.day(date.atStartOfDay());
    }

    private static void add(List<Block> blocks, double start, double end, double endDay, int group) {
        double first = Math.max(0, start);
        double last = Math.min(endDay, end);
        if (last - first >= 1) {
            blocks.add(new Block(first, last, group));
        }
    }

    /** Groups that are there, numbered without gaps; a block that begins before the one before it ends is cut. */
    private static RateBlocks numbered(List<Block> blocks, int seasons) {
        List<Integer> used =
                List.copyOf(new TreeSet<>(blocks.stream().map(Block::group).toList()));
        List<Block> numbered = new ArrayList<>();
        double before = 0;
        for (Block block : blocks) {
            double start = Math.max(before, block.start());
            if (block.end() > start) {
                numbered.add(new Block(start, block.end(), used.indexOf(block.group())));
                before = block.end();
            }
        }
        return new RateBlocks(
                numbered, used.stream().map(group -> group % seasons).toList());
    }

    /** First moment of a group (d). */
    double startOf(int group) {
        return blocks.stream()
                .filter(block -> block.group() == group)
                .mapToDouble(Block::start)
                .min()
                .orElseThrow();
    }

    /** Days of a group in all. */
    double days(int group) {
        return blocks.stream()
                .filter(block -> block.group() == group)
                .mapToDouble(Block::days)
                .sum();
    }

    /** The start, and all days on which a block begins or ends, increasing (d). */
    double[] changeDays() {
        return DoubleStream.concat(
                        DoubleStream.of(0),
                        blocks.stream().flatMapToDouble(block -> DoubleStream.of(block.start(), block.end())))
                .sorted()
                .distinct()
                .toArray();
    }

    /** The block that goes on from a day, absent between blocks. */
    Optional<Block> from(double day) {
        return blocks.stream()
                .filter(block -> block.start() <= day && day < block.end())
                .findFirst();
    }

    /** The block in which a moment falls, or null between blocks. */
    @org.jspecify.annotations.Nullable
    Block at(double day) {
        for (Block block : blocks) {
            if (block.start() < day && day <= block.end()) {
                return block;
            }
        }
        return null;
    }
}
