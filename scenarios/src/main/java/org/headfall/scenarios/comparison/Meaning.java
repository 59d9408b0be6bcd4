package org.headfall.scenarios.comparison;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.findings.ArtesianHead;
import org.headfall.scenarios.findings.Crossing;
import org.headfall.scenarios.findings.FlowByItself;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.FinishedRun;

/**
 * What the second run means for whoever uses a place, beside the first run: when it stops flowing and when its pump falls
 * dry, how much less it gives, how much deeper water stands.
 */
final class Meaning {

    private static final double PER_CENT = 100;

    /** Discharges nearer than this to each other are called the same (L/s). */
    private static final double SAME_FLOW = 0.05;

    private final FinishedRun first;
    private final FinishedRun second;

    Meaning(FinishedRun first, FinishedRun second) {
        this.first = first;
        this.second = second;
    }

    /**
     * In words, never empty.
     *
     * @param station name of a station of both runs
     * @param date a date within both
     */
    String of(String station, LocalDate date) {
        Both both = new Both(at(first, station, date), at(second, station, date));
        Station place = second.description().stations().get(second.description().stationIndex(station));
        List<String> sentences = new ArrayList<>();
        String end = place instanceof Station.SpringSite ? "dries up" : "stops flowing by itself";
        add(sentences, end, stops(first, station), stops(second, station));
        add(sentences, "water falls to the pump intake", dry(first, station), dry(second, station));
        if (place instanceof Station.SpringSite) {
            sentences.add(gives(both));
        } else if (place instanceof Station.BoreSite bore) {
            addOfBore(sentences, bore, both);
        } else {
            sentences.add("only its head is lower: no water is taken here");
        }
        return String.join("; ", sentences);
    }

    /** A station at a date: head and water level in it (m above datum), discharge and discharge asked for (m³/d). */
    private record Moment(double head, double level, double flow, double wanted) {}

    private record Both(Moment first, Moment second) {
        double taken(Moment moment) {
            return DischargeUnit.LITRES_PER_SECOND.of(moment.flow());
        }

        /** How much more is asked for in the second run (L/s). */
        double wantedMore() {
            return DischargeUnit.LITRES_PER_SECOND.of(second.wanted() - first.wanted());
        }
    }

    private static Moment at(FinishedRun run, String station, LocalDate date) {
        StationSeries series = run.recording().series().get(run.description().stationIndex(station));
        double day = run.description().calendar().day(date.atStartOfDay());
        return new Moment(
                series.headAt(day),
                series.levelInBoreAt(day),
                series.dischargeAt(day),
                StationSeries.interpolate(series.days(), series.wantedDischarge(), day));
    }

    private static void addOfBore(List<String> sentences, Station.BoreSite bore, Both both) {
        switch (bore.use()) {
            case FREE_FLOWING ->
                sentences.add(gives(both)
                        + (both.taken(both.second()) - both.taken(both.first()) > SAME_FLOW
                                ? ", which is part of the cause"
                                : ""));
            case PUMPED -> addOfPump(sentences, bore, both);
            case IDLE ->
                sentences.add(
                        bore.outletHead().isPresent()
                                ? standsAt(
                                        "head",
                                        bore.outletHead().getAsDouble(),
                                        "its outlet",
                                        both.first().head(),
                                        both.second().head())
                                : "only its head is lower: it is not in use");
        }
    }

    private static void addOfPump(List<String> sentences, Station.BoreSite bore, Both both) {
        if (both.wantedMore() > SAME_FLOW) {
            sentences.add(String.format(
                    Locale.ROOT, "takes %.1f L/s more itself, which is part of the cause", both.wantedMore()));
        } else if (both.taken(both.first()) - both.taken(both.second()) > SAME_FLOW) {
            sentences.add(gives(both));
        }
        double level = both.second().level();
        sentences.add(
                bore.pumpIntake().isPresent()
                        ? standsAt(
                                "water",
                                bore.pumpIntake().getAsDouble(),
                                "the pump intake",
                                both.first().level(),
                                level)
                        : lifted(both.first().level() - level));
    }

    private static String lifted(double lower) {
        String stands = String.format(
                Locale.ROOT, "water stands %.1f m %s in the bore", Math.abs(lower), lower >= 0 ? "lower" : "higher");
        return stands + " and must be lifted that much " + (lower >= 0 ? "more" : "less");
    }

    /** What a spring or flowing bore gives. */
    private static String gives(Both both) {
        double before = both.taken(both.first());
        double now = both.taken(both.second());
        if (Math.abs(before - now) < SAME_FLOW) {
            return before < SAME_FLOW
                    ? "gives no water in either run"
                    : String.format(Locale.ROOT, "gives %.1f L/s as in the first run", now);
        }
        String change = before > SAME_FLOW && now < 2 * before
                ? String.format(
                        Locale.ROOT,
                        ", %.0f %% %s",
                        PER_CENT * Math.abs(now / before - 1),
                        now < before ? "less" : "more")
                : "";
        return String.format(Locale.ROOT, "gives %.1f L/s instead of %.1f%s", now, before, change);
    }

    private static String standsAt(String what, double level, String mark, double before, double now) {
        return String.format(
                Locale.ROOT,
                "%s stands %.1f m %s %s instead of %.1f m%s",
                what,
                Math.abs(now - level),
                side(now - level),
                mark,
                Math.abs(before - level),
                before >= level == now >= level ? "" : " " + side(before - level));
    }

    private static String side(double height) {
        return height >= 0 ? "above" : "below";
    }

    /** A day that both runs share is no consequence of what differs between them. */
    private void add(List<String> sentences, String event, OptionalDouble inFirst, OptionalDouble inSecond) {
        if (inSecond.isPresent()) {
            LocalDate date = date(second, inSecond.getAsDouble());
            Optional<LocalDate> other =
                    inFirst.isPresent() ? Optional.of(date(first, inFirst.getAsDouble())) : Optional.empty();
            if (!other.equals(Optional.of(date))) {
                sentences.add(event + " on " + date + ", in the first run "
                        + other.map(day -> "on " + day).orElse("not"));
            }
        }
    }

    private static LocalDate date(FinishedRun run, double day) {
        RunCalendar calendar = run.description().calendar();
        return calendar.at(day).toLocalDate();
    }

    private static OptionalDouble stops(FinishedRun run, String station) {
        return run.findings().artesianHead().stream()
                .filter(found -> found.station().equals(station))
                .map(ArtesianHead::flowByItself)
                .filter(FlowByItself.Stops.class::isInstance)
                .mapToDouble(flow -> ((FlowByItself.Stops) flow).day())
                .findFirst();
    }

    private static OptionalDouble dry(FinishedRun run, String station) {
        int index = run.description().stationIndex(station);
        if (index < 0
                || !(run.description().stations().get(index) instanceof Station.BoreSite bore)
                || bore.pumpIntake().isEmpty()) {
            return OptionalDouble.empty();
        }
        StationSeries series = run.recording().series().get(index);
        return Crossing.below(
                series.days(), series.levelInBore(), bore.pumpIntake().getAsDouble(), 0);
    }
}
