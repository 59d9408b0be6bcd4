package org.headfall.scenarios.scenario;

import java.time.LocalDate;
import java.util.List;

/**
 * What is written, and how exactly heads are computed.
 *
 * @param grids when heads of all cells are written
 * @param bores when heads and rates of bores, springs and protected points are written
 * @param reportDates dates the report speaks of, in order, within the period
 * @param headTolerance largest error of head that one time step, or superposition, may make (m)
 * @param longestStep longest time step of a run by steps (d); infinity for no bound
 * @param solving how heads are found
 */
public record OutputSpecification(
        Times grids,
        Times bores,
        List<LocalDate> reportDates,
        double headTolerance,
        double longestStep,
        Solving solving) {
    /** Head tolerance where the document gives none (m). */
    public static final double USUAL_HEAD_TOLERANCE = 0.001;

    /** Copies the list. */
    public OutputSpecification {
        reportDates = List.copyOf(reportDates);
    }

    /** Times of output; the start and the end of the period always belong to them. */
    public sealed interface Times {}

    /** On the first of each month. */
    public record Monthly() implements Times {}

    /** On the day and month of the start of the period, each year. */
    public record Yearly() implements Times {}

    /**
     * On given dates.
     *
     * @param dates the dates, in order, within the period
     */
    public record On(List<LocalDate> dates) implements Times {
        /** Copies the list. */
        public On {
            dates = List.copyOf(dates);
        }
    }
}
