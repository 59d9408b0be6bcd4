package org.headfall.scenarios.reading;

import java.util.List;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.table.TableColumn;
import org.headfall.scenarios.table.TableFormat;

/** The columns of the tables of bores. */
final class BoreColumns {
    /** Ten times the bores of a large basin: more are a slip of file. Common practice, no source. */
    private static final long MOST_BORES = 10_000;

    private static final long MOST_CHANGES = 100 * MOST_BORES;

    /** What a bore does, at first or from a date on. */
    private static final List<TableColumn> OPERATION = List.of(
            TableColumn.quantity("rate", Dimension.RATE, ValueRanges.RATE).orNone(),
            TableColumn.text("schedule").orNone(),
            TableColumn.word("between_dates", TimeCourseReader.SHAPES.keySet()).orNone(),
            TableColumn.word("operation", BoreWords.OPERATIONS.keySet()).orNone(),
            TableColumn.text("pump_curve").orNone(),
            TableColumn.quantity("delivery_level", Dimension.LEVEL, ValueRanges.LEVEL)
                    .orNone(),
            TableColumn.quantity("delivery_head", Dimension.LENGTH, ValueRanges.PUMP_HEAD)
                    .orNone(),
            TableColumn.quantity("riser_diameter", Dimension.LENGTH, ValueRanges.PIPE_DIAMETER)
                    .orNone(),
            TableColumn.quantity("riser_length", Dimension.LENGTH, ValueRanges.PIPE_LENGTH)
                    .orNone(),
            TableColumn.quantity("riser_roughness", Dimension.LENGTH, AllowedRange.NOT_NEGATIVE)
                    .orNone(),
            TableColumn.text("season_from").orNone(),
            TableColumn.text("season_to").orNone());

    /** A table of bores, one a row. */
    static final TableFormat BORES = TableFormat.of(
                    TableColumn.text("name"),
                    TableColumn.quantity("x", Dimension.LENGTH, ValueRanges.POSITION),
                    TableColumn.quantity("y", Dimension.LENGTH, ValueRanges.POSITION),
                    TableColumn.text("holder").orNone(),
                    TableColumn.text("class").orNone(),
                    TableColumn.text("zone").orNone(),
                    TableColumn.quantity("entitlement", Dimension.RATE, ValueRanges.ENTITLEMENT)
                            .orNone(),
                    TableColumn.word("group", BoreWords.GROUPS.keySet()),
                    TableColumn.quantity("screen_radius", Dimension.LENGTH, ValueRanges.SCREEN_RADIUS),
                    TableColumn.quantity("ground_level", Dimension.LEVEL, ValueRanges.LEVEL)
                            .orNone(),
                    TableColumn.quantity("outlet_level", Dimension.LEVEL, ValueRanges.LEVEL)
                            .orNone(),
                    TableColumn.quantity("pump_intake_level", Dimension.LEVEL, ValueRanges.LEVEL)
                            .orNone(),
                    TableColumn.quantity("lowest_level", Dimension.LEVEL, ValueRanges.LEVEL)
                            .orNone(),
                    TableColumn.quantity("linear_well_loss", Dimension.LINEAR_WELL_LOSS, AllowedRange.NOT_NEGATIVE)
                            .orNone(),
                    TableColumn.quantity(
                                    "quadratic_well_loss", Dimension.QUADRATIC_WELL_LOSS, AllowedRange.NOT_NEGATIVE)
                            .orNone(),
                    TableColumn.quantity("turbulent_loss", Dimension.LENGTH, AllowedRange.NOT_NEGATIVE)
                            .orNone(),
                    TableColumn.quantity("turbulent_loss_rate", Dimension.RATE, AllowedRange.POSITIVE)
                            .orNone(),
                    TableColumn.quantity("well_loss_exponent", Dimension.NUMBER, ValueRanges.WELL_LOSS_EXPONENT)
                            .orNone(),
                    TableColumn.quantity("skin", Dimension.NUMBER, ValueRanges.SKIN)
                            .orNone(),
                    TableColumn.quantity("screen_top", Dimension.LEVEL, ValueRanges.LEVEL)
                            .orNone(),
                    TableColumn.quantity("screen_bottom", Dimension.LEVEL, ValueRanges.LEVEL)
                            .orNone(),
                    TableColumn.quantity("vertical_over_horizontal", Dimension.NUMBER, ValueRanges.RATIO)
                            .orNone(),
                    TableColumn.quantity("casing_diameter", Dimension.LENGTH, ValueRanges.PIPE_DIAMETER)
                            .orNone(),
                    TableColumn.quantity("casing_length", Dimension.LENGTH, ValueRanges.PIPE_LENGTH)
                            .orNone(),
                    TableColumn.quantity("casing_roughness", Dimension.LENGTH, AllowedRange.NOT_NEGATIVE)
                            .orNone(),
                    TableColumn.quantity("water_temperature", Dimension.TEMPERATURE, ValueRanges.TEMPERATURE)
                            .orNone())
            .with(OPERATION)
            .with(List.of(
                    TableColumn.date("from").orNone(),
                    TableColumn.date("until").orNone(),
                    TableColumn.text("remark").orNone()))
            .withMostRows(MOST_BORES);
    /** A table of dated changes of what bores do. */
    static final TableFormat CHANGES = TableFormat.of(TableColumn.text("name"), TableColumn.date("from"))
            .with(OPERATION)
            .with(List.of(TableColumn.text("remark").orNone()))
            .withMostRows(MOST_CHANGES);

    private BoreColumns() {}
}
