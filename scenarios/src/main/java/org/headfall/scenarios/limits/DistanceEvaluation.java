package org.headfall.scenarios.limits;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;

/** Judges limits of distance, which are known without a run. */
final class DistanceEvaluation {

    private final RunDescription description;
    private final MapPlaces places;

    DistanceEvaluation(RunDescription description, MapPlaces places) {
        this.description = description;
        this.places = places;
    }

    Outcome outcome(Limit limit, LimitedQuantity.Distance distance) {
        List<Station> bores = description.stations().stream()
                .filter(station -> distance.bores().contains(station.name()))
                .filter(station -> !station.name().equals(limit.station()))
                .toList();
        if (bores.isEmpty()) {
            return new Outcome.NotEvaluated("There are no other bores from which the distance could be taken.");
        }
        ToDoubleFunction<Station> toPlace;
        if (limit.place() instanceof LimitPlace.OnMap map) {
            MapPlaces.Part part = places.parts().get(map.words());
            if (part == null) {
                return new Outcome.NotEvaluated("The shapes of " + map.words() + " are not known any more.");
            }
            toPlace = bore -> part.distance(bore.x(), bore.y());
        } else {
            int station = description.stationIndex(limit.station());
            if (station < 0) {
                return new Outcome.NotEvaluated(LimitEvaluation.unknown(limit));
            }
            Station place = description.stations().get(station);
            toPlace = bore -> Math.hypot(bore.x() - place.x(), bore.y() - place.y());
        }
        Station nearest = bores.get(0);
        for (Station bore : bores) {
            nearest = toPlace.applyAsDouble(bore) < toPlace.applyAsDouble(nearest) ? bore : nearest;
        }
        double value = toPlace.applyAsDouble(nearest);
        double margin = distance.margin(value);
        Outcome.Worst worst = new Outcome.Worst(0, value, margin, 0, "From " + nearest.name() + ".");
        return margin < 0
                ? Judgement.of(limit, description.endDay(), OptionalDouble.of(0), worst)
                : new Outcome.Holds(worst);
    }
}
