package org.headfall.scenarios.reading;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.reading.TimeCourseReader.Shape;
import org.headfall.scenarios.scenario.BoreLicence;
import org.headfall.scenarios.scenario.BoreOperation;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.BoreSpecification.Group;
import org.headfall.scenarios.scenario.BoreSpecification.Levels;
import org.headfall.scenarios.scenario.BoreSpecification.Phase;
import org.headfall.scenarios.scenario.Season;
import org.headfall.scenarios.scenario.TimeCourse;
import org.headfall.scenarios.spatial.Position;
import org.headfall.scenarios.table.TableReader;
import org.headfall.scenarios.table.TableRow;
import org.jspecify.annotations.Nullable;

/**
 * Reads bores, and dated changes of what they do, from tables. What a bore does stands in one of the columns
 * {@code rate}, {@code schedule} (a table of dates and rates; {@code between_dates} says whether each holds or straight
 * lines join them), {@code operation} and {@code pump_curve} (a table of flows and heads, against
 * {@code delivery_level}); {@code until} shuts it.
 */
final class BoreTableReader {
    private final Inputs inputs;
    private final PositionReader positions;
    private final NameRegister names;
    private final TimeCourseReader courses;
    private final KnownBores known;
    private final Set<String> namesInTable = new LinkedHashSet<>();
    private final CompletionColumns completions;
    private final PumpReader pumps;

    /** Schedules that have been read, by how values between dates are meant and by file. */
    private final Map<Shape, Map<Path, TimeCourse>> schedules = new EnumMap<>(Shape.class);

    BoreTableReader(Inputs inputs, PositionReader positions, NameRegister names, KnownBores known) {
        this.inputs = inputs;
        this.positions = positions;
        this.names = names;
        this.courses = new TimeCourseReader(inputs);
        this.known = known;
        this.completions = new CompletionColumns(inputs.problems());
        this.pumps = new PumpReader(inputs);
    }

    List<BoreDraft> bores(Inputs.TableFile file) {
        List<BoreDraft> drafts = new ArrayList<>();
        boolean columnsFound = new TableReader(BoreColumns.BORES, inputs.problems())
                .read(file.path(), file.name(), row -> drafts.add(bore(row)), this::know);
        if (!columnsFound) {
            known.miss();
        }
        return drafts;
    }

    /** Takes note of a bore, even if its row has problems. */
    private void know(TableRow row) {
        if (row.has("name") && !row.isGarbled("name")) {
            names.add(row.text("name"), row.place("name"), "name");
            namesInTable.add(row.text("name"));
            known.addLevels(row.text("name"), row::has);
        } else {
            known.miss();
        }
        for (String column : List.of("name", "holder", "class")) {
            if (row.has(column) && !row.isGarbled(column)) {
                GroupWords.requireOther(row.text(column), row.place(column), column, inputs.problems());
            }
        }
        known.addHolder(textOf(row, "holder"));
        known.addClass(textOf(row, "class"));
        known.addGroup(BoreWords.GROUPS.get(textOf(row, "group")), row.has("entitlement"));
    }

    private static String textOf(TableRow row, String column) {
        return row.has(column) ? row.text(column) : "";
    }

    private BoreDraft bore(TableRow row) {
        know(row);
        Position position = new Position(row.value("x"), row.value("y"));
        positions.check(position, row.place("x"), "bore " + row.text("name"));
        Group group = row.text("group").equals("existing") ? Group.EXISTING : Group.PROPOSED;
        BoreSpecification bore = new BoreSpecification(
                row.text("name"),
                position,
                textOf(row, "holder"),
                new BoreLicence(textOf(row, "class"), textOf(row, "zone"), valueOf(row, "entitlement")),
                group,
                row.value("screen_radius"),
                new Levels(
                        valueOf(row, "ground_level"),
                        valueOf(row, "outlet_level"),
                        valueOf(row, "pump_intake_level"),
                        valueOf(row, "lowest_level")),
                completions.wellLoss(row),
                completions.completion(row),
                List.of(),
                row.place("name"));
        BoreDraft draft = new BoreDraft(bore, levelPlace(row));
        Optional<LocalDate> from = row.has("from") ? Optional.of(row.date("from")) : Optional.empty();
        addPhase(draft, row, from);
        if (row.has("until")) {
            Phase shut = new Phase(Optional.of(row.date("until")), new BoreOperation.Off());
            draft.add(shut, row.place("until"), inputs.problems());
        }
        return draft;
    }

    private static Place levelPlace(TableRow row) {
        for (String column : List.of("pump_intake_level", "lowest_level", "operation")) {
            if (row.has(column)) {
                return row.place(column);
            }
        }
        return row.place("name");
    }

    private static OptionalDouble valueOf(TableRow row, String column) {
        return row.has(column) ? OptionalDouble.of(row.value(column)) : OptionalDouble.empty();
    }

    /** Adds the changes of a table to the bores they name. */
    void changes(Inputs.TableFile file, List<BoreDraft> drafts) {
        Map<String, BoreDraft> byName = new LinkedHashMap<>();
        drafts.forEach(draft -> byName.putIfAbsent(draft.name(), draft));
        new TableReader(BoreColumns.CHANGES, inputs.problems()).read(file.path(), file.name(), row -> {
            String name = row.text("name");
            @Nullable BoreDraft draft = byName.get(name);
            if (draft == null) {
                requireKnown(name, row.place("name"));
            } else {
                addPhase(draft, row, Optional.of(row.date("from")));
            }
        });
    }

    private void requireKnown(String name, Place place) {
        if (known.complete() && !namesInTable.contains(name)) {
            @Nullable String near = NearestSpelling.of(name, namesInTable);
            Finding finding = new Finding(ProblemKind.UNKNOWN_NAME, name, "the name of a bore of the table", near);
            inputs.problems().add(place, "name", finding);
        }
    }

    private void addPhase(BoreDraft draft, TableRow row, Optional<LocalDate> from) {
        @Nullable BoreOperation operation = operation(row);
        if (operation != null) {
            draft.add(new Phase(from, operation, season(row)), row.place("from"), inputs.problems());
        }
    }

    private Optional<Season> season(TableRow row) {
        if (row.has("season_from") != row.has("season_to")) {
            String filled = row.has("season_from") ? "season_from" : "season_to";
            String found = "only " + filled;
            inputs.problems()
                    .add(
                            row.place(filled),
                            "bore " + row.text("name"),
                            Finding.of(ProblemKind.CONFLICTING_KEYS, found, "both season_from and season_to"));
            return Optional.empty();
        }
        return SeasonWords.of(seasonDay(row, "season_from"), seasonDay(row, "season_to"));
    }

    private Optional<MonthDay> seasonDay(TableRow row, String column) {
        return row.has(column)
                ? SeasonWords.day(row.text(column), row.place(column), column, inputs.problems())
                : Optional.empty();
    }

    private @Nullable BoreOperation operation(TableRow row) {
        List<String> filled = new ArrayList<>(List.of("rate", "schedule", "operation", "pump_curve"));
        filled.removeIf(column -> !row.has(column));
        if (filled.size() != 1) {
            ProblemKind kind = filled.isEmpty() ? ProblemKind.MISSING_KEY : ProblemKind.CONFLICTING_KEYS;
            String found = filled.isEmpty() ? "none of them" : String.join(" and ", filled);
            String column = filled.isEmpty() ? "name" : filled.get(1);
            inputs.problems()
                    .add(
                            row.place(column),
                            "bore " + row.text("name"),
                            Finding.of(
                                    kind,
                                    found,
                                    "a value in one of the columns rate, schedule, operation, pump_curve"));
            return null;
        }
        requirePump(row);
        return switch (filled.get(0)) {
            case "pump_curve" -> pumps.read(row, completions.pipe(row, "riser"));
            case "rate" -> new BoreOperation.Pumped(new TimeCourse.Steady(row.value("rate")));
            case "schedule" -> scheduled(row);
            default -> BoreWords.OPERATIONS.get(row.text("operation"));
        };
    }

    /** Where water is delivered says nothing of a bore without a pump curve: it may be a slip of column. */
    private void requirePump(TableRow row) {
        List<String> ofPump = new ArrayList<>(List.of("delivery_level", "delivery_head"));
        ofPump.addAll(CompletionColumns.pipeColumns("riser"));
        for (String column : ofPump) {
            if (row.has(column) && !row.has("pump_curve")) {
                String found = column + " without pump_curve";
                inputs.problems()
                        .add(
                                row.place(column),
                                "bore " + row.text("name"),
                                Finding.of(ProblemKind.MISSING_KEY, found, "a file in the column pump_curve"));
            }
        }
    }

    private @Nullable BoreOperation scheduled(TableRow row) {
        Inputs.@Nullable TableFile file = inputs.table(row.text("schedule"), row.place("schedule"), "schedule");
        Shape shape = row.has("between_dates")
                ? TimeCourseReader.SHAPES.getOrDefault(row.text("between_dates"), Shape.STEPS)
                : Shape.STEPS;
        @Nullable TimeCourse rate = file == null ? null : rates(file, shape);
        return rate == null ? null : new BoreOperation.Pumped(rate);
    }

    /** Bores often share a file, which is read once if nothing is wrong with it. */
    private @Nullable TimeCourse rates(Inputs.TableFile file, Shape shape) {
        Map<Path, TimeCourse> read = schedules.computeIfAbsent(shape, any -> new HashMap<>());
        @Nullable TimeCourse rates = read.get(file.path());
        if (rates == null) {
            rates = courses.read(file, "rate", Dimension.RATE, ValueRanges.RATE, shape);
            if (rates != null) {
                read.put(file.path(), rates);
            }
        }
        return rates;
    }
}
