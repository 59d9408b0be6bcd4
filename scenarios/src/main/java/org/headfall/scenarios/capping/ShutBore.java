package org.headfall.scenarios.capping;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A bore that flows by itself, and what shutting it on the first day gives.
 *
 * @param name name of the bore
 * @param holder who holds it; empty if nobody is named
 * @param saved mean discharge of the bore over the run, which is what shutting it saves (m³/d)
 * @param water where that water is at the end
 * @param gains gains of all other places, by place, then by day
 */
public record ShutBore(String name, String holder, double saved, SavedWater water, List<Gain> gains) {

    /** Copies the list. */
    public ShutBore {
        gains = List.copyOf(gains);
    }

    /**
     * Mean rise of head at springs on the last day for each discharge saved.
     *
     * @return metres per m³/d; absent if there is no spring or nothing to save
     */
    public OptionalDouble gainAtSprings() {
        return meanGain(true);
    }

    /**
     * Mean rise of head at all other places on the last day for each discharge saved.
     *
     * @return metres per m³/d; absent if there is no other place or nothing to save
     */
    public OptionalDouble gainElsewhere() {
        return meanGain(false);
    }

    /** What bores are ordered by: the gain at springs, without springs that at all other places, or nothing. */
    public double gain() {
        return gainAtSprings().orElse(gainElsewhere().orElse(0));
    }

    private OptionalDouble meanGain(boolean springs) {
        double last = gains.stream().mapToDouble(Gain::day).max().orElse(0);
        OptionalDouble mean = gains.stream()
                .filter(gain -> gain.day() == last && gain.kind().equals("spring") == springs)
                .mapToDouble(Gain::head)
                .average();
        return mean.isPresent() && saved > 0 ? OptionalDouble.of(mean.getAsDouble() / saved) : OptionalDouble.empty();
    }

    /** Names of the places at which water flows by itself again on the last day. */
    public List<String> flowAgain() {
        double last = gains.stream().mapToDouble(Gain::day).max().orElse(0);
        return gains.stream()
                .filter(gain -> gain.day() == last && gain.flowsAgain())
                .map(Gain::station)
                .toList();
    }
}
