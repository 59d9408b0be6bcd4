package org.headfall.scenarios.limits;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.headfall.scenarios.quantity.VolumeUnit;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.TakenVolumes;
import org.headfall.scenarios.recording.WaterYear;

/**
 * Volume that some bores have taken since the beginning of the water year, as water accounts count it: of each bore what its
 * meter shows where the readings reach over the year, otherwise what the run takes.
 */
final class VolumeValues {

    private final RunDescription description;
    private final TakenVolumes volumes;
    private final LimitedQuantity.Volume quantity;
    private final VolumeAccount account;

    /**
     * Volumes of a run.
     *
     * @param description the run
     * @param volumes what its bores took
     * @param place the bores, whose taking is added up
     * @param quantity the limit, with the meters
     */
    VolumeValues(RunDescription description, TakenVolumes volumes, LimitPlace place, LimitedQuantity.Volume quantity) {
        this.description = description;
        this.volumes = volumes;
        this.quantity = quantity;
        account = new VolumeAccount(description, place, quantity);
    }

    /**
     * Running account. A water year begins with nothing just after the last day of the one before. What is taken in a
     * step is known exactly from discharges; where these follow head they are as good as the steps of the run.
     *
     * @param days recorded days
     */
    LimitSeries series(double[] days) {
        TreeSet<Double> moments = new TreeSet<>();
        Arrays.stream(days).forEach(moments::add);
        account.meters().forEach(meter -> Arrays.stream(meter.days()).forEach(moments::add));
        for (WaterYear year : years()) {
            moments.add(year.toDay());
            moments.add(Math.nextUp(year.fromDay()));
        }
        double[] all = moments.stream()
                .mapToDouble(Double::doubleValue)
                .filter(day -> day >= volumes.startDay() && day <= volumes.endDay())
                .toArray();
        double[] values = Arrays.stream(all).map(this::megalitres).toArray();
        return LimitSeries.of(quantity, all, values, 0);
    }

    /**
     * The part of a running account in which a limit counts. What a water year has taken that ends at the moment at which the
     * limit begins is none of it.
     */
    LimitSeries during(LimitPeriod period, LimitSeries account) {
        LimitSeries counted = account.during(period);
        return counted.days().length > 0
                        && WaterYear.until(description.calendar(), quantity.yearBegins(), counted.days()[0])
                                        .toDay()
                                <= period.fromDay()
                ? counted.withoutFirst()
                : counted;
    }

    private List<WaterYear> years() {
        return account.years(volumes.startDay(), volumes.endDay());
    }

    private double megalitres(double day) {
        WaterYear year = WaterYear.until(description.calendar(), quantity.yearBegins(), day);
        return VolumeUnit.MEGALITRES.of(account.bores().stream()
                .mapToDouble(bore -> taken(bore, year, day))
                .sum());
    }

    private double taken(String bore, WaterYear year, double day) {
        return account.meterThatCounts(bore, year)
                .map(meter -> meter.between(year.fromDay(), day).orElseThrow())
                .orElseGet(() -> volumes.between(description.stationIndex(bore), year.fromDay(), day));
    }

    /** Whether any water year lies in the time of the limit as a whole, so that its volume is that of a year. */
    boolean countsAWholeYear(LimitPeriod period) {
        return counted(period).stream().anyMatch(year -> isWhole(year, period));
    }

    /** What is to be said of the worst volume: whence it comes, and which water years are judged by a part of them. */
    String note(LimitPeriod period, double worstDay) {
        List<String> notes = new ArrayList<>();
        WaterYear worst = WaterYear.until(description.calendar(), quantity.yearBegins(), worstDay);
        List<String> metered = account.bores().stream()
                .filter(bore -> account.meterThatCounts(bore, worst).isPresent())
                .toList();
        if (!metered.isEmpty()) {
            String others = metered.size() < account.bores().size() ? "; of the others what the run takes" : "";
            notes.add("In the water year from " + worst.begins() + " the meter counts of " + String.join(", ", metered)
                    + others + ".");
        }
        List<WaterYear> parts =
                counted(period).stream().filter(year -> !isWhole(year, period)).toList();
        if (!parts.isEmpty()) {
            notes.add("Part of the year only: water year from "
                    + parts.stream().map(year -> year.begins().toString()).collect(Collectors.joining(" and from "))
                    + ".");
        }
        return String.join(" ", notes);
    }

    private List<WaterYear> counted(LimitPeriod period) {
        return account.countedYears(period, volumes.startDay(), volumes.endDay());
    }

    /** Meters may know of a part of the year that lies before the run. */
    private boolean isWhole(WaterYear year, LimitPeriod period) {
        boolean begun = year.fromDay() >= volumes.startDay()
                || account.bores().stream()
                        .allMatch(bore -> account.meterThatCounts(bore, year).isPresent());
        return begun && year.toDay() <= VolumeAccount.lastDay(period, volumes.endDay());
    }
}
