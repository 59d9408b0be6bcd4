package org.headfall.scenarios.responses;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Recharge;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.response.UnitResponses;
import org.headfall.solver.schedule.Schedule;

/**
 * What unit responses, and heads without bores and springs, depend on: one SHA-256 a part, so that a difference can be
 * named. Rates, operations, losses, limits, and the conductance and outlet of springs are no part of it.
 *
 * @param parts digest of each part
 */
public record ResponseKey(Map<KeyPart, String> parts) {

    /** Puts the parts in their order. */
    public ResponseKey {
        Map<KeyPart, String> ordered = new EnumMap<>(KeyPart.class);
        ordered.putAll(parts);
        parts = Collections.unmodifiableMap(ordered);
    }

    /**
     * Key of a run.
     *
     * @param description the run
     * @param problem its flow problem
     * @param givenHeads head of each cell at the start, if it does not start from rest
     * @return the key, with all parts
     */
    public static ResponseKey of(RunDescription description, FlowProblem problem, Optional<double[]> givenHeads) {
        // Parts are made side by side: fields of a large grid take a while.
        return new ResponseKey(Arrays.stream(KeyPart.values())
                .parallel()
                .collect(Collectors.toMap(part -> part, part -> digest(part, description, problem, givenHeads))));
    }

    private static String digest(
            KeyPart part, RunDescription description, FlowProblem problem, Optional<double[]> givenHeads) {
        Aquifer field = problem.aquifer();
        return switch (part) {
            case METHOD -> new Digest().numbers(UnitResponses.METHOD).hex();
            case GRID ->
                new Digest()
                        .numbers(field.grid().x().edges())
                        .numbers(field.grid().y().edges())
                        .flags(field.active())
                        .hex();
            case TRANSMISSIVITY -> transmissivity(field);
            case STORATIVITY -> new Digest().numbers(field.storativity()).hex();
            case SEALING_BED -> sealingBed(problem.sealingBed());
            case BOUNDARIES -> boundaries(problem.boundaries());
            case BORES -> bores(problem.bores());
            case SPRINGS -> places(description.springs());
            case POINTS -> places(description.points());
            case FIRST_DAY -> day(description.calendar().start());
            case BOUNDARY_LEVELS -> levels(problem.boundaries());
            case RECHARGE -> recharge(problem.recharges());
            case LEVEL_ABOVE_BED ->
                new Digest()
                        .numbers(problem.sealingBed().map(SealingBed::headAbove).orElse(new double[0]))
                        .hex();
            case HEADS_AT_START ->
                new Digest().numbers(givenHeads.orElse(new double[0])).hex();
        };
    }

    private static String transmissivity(Aquifer field) {
        Digest digest = new Digest().numbers(field.transmissivityX());
        // The same in both directions as a rule, and half the time of a key.
        return Arrays.equals(field.transmissivityX(), field.transmissivityY())
                ? digest.word("in both directions").hex()
                : digest.numbers(field.transmissivityY()).hex();
    }

    private static String sealingBed(Optional<SealingBed> bed) {
        Digest digest = new Digest();
        bed.ifPresent(present -> digest.numbers(present.thickness())
                .numbers(present.verticalConductivity())
                .numbers(present.specificStorage()));
        return digest.hex();
    }

    private static String boundaries(List<OuterBoundary> boundaries) {
        Digest digest = new Digest();
        for (OuterBoundary boundary : boundaries) {
            SideSegment segment = boundary.segment();
            digest.word(segment.side().name()).numbers(segment.first(), segment.last());
            if (boundary instanceof OuterBoundary.FarHead far) {
                digest.word("far head").numbers(far.distance());
            } else {
                digest.word(boundary instanceof OuterBoundary.FixedHead ? "fixed head" : "given flow");
            }
        }
        return digest.hex();
    }

    private static String levels(List<OuterBoundary> boundaries) {
        Digest digest = new Digest();
        boundaries.forEach(boundary -> digest.schedule(level(boundary)));
        return digest.hex();
    }

    private static Schedule level(OuterBoundary boundary) {
        if (boundary instanceof OuterBoundary.FixedHead fixed) {
            return fixed.head();
        }
        return boundary instanceof OuterBoundary.FarHead far
                ? far.head()
                : ((OuterBoundary.GivenFlow) boundary).inflow();
    }

    private static String recharge(List<Recharge> recharges) {
        Digest digest = new Digest();
        recharges.forEach(recharge -> digest.numbers(recharge.rate()).schedule(recharge.factor()));
        return digest.hex();
    }

    private static String bores(List<Bore> bores) {
        Digest digest = new Digest();
        bores.forEach(bore -> digest.word(bore.name()).numbers(bore.x(), bore.y(), bore.screenRadius()));
        return digest.hex();
    }

    private static String places(List<? extends Station> stations) {
        Digest digest = new Digest();
        stations.forEach(station -> digest.word(station.name()).numbers(station.x(), station.y()));
        return digest.hex();
    }

    private static String day(LocalDateTime start) {
        return new Digest().word(start.toString()).hex();
    }

    /** SHA-256 over everything that the responses depend on. */
    public String aquiferKey() {
        return over(KeyPart.Dependent.RESPONSES);
    }

    /** SHA-256 over everything that heads without bores and springs depend on besides. */
    public String undisturbedKey() {
        return over(KeyPart.Dependent.UNDISTURBED_HEADS);
    }

    private String over(KeyPart.Dependent dependent) {
        Digest digest = new Digest();
        parts.forEach((part, value) -> {
            if (part.dependent() == dependent) {
                digest.word(part.words()).word(value);
            }
        });
        return digest.hex();
    }

    /**
     * Names of the parts in which another key differs.
     *
     * @param other the other key
     * @return the names, in the order of the parts; empty if nothing differs
     */
    public List<String> differencesTo(ResponseKey other) {
        return differences(other).map(KeyPart::words).toList();
    }

    /**
     * Names of the parts that responses depend on in which another key differs.
     *
     * @param other the other key
     * @return the names, in the order of the parts; empty if nothing differs
     */
    public List<String> aquiferDifferencesTo(ResponseKey other) {
        return differences(other)
                .filter(part -> part.dependent() == KeyPart.Dependent.RESPONSES)
                .map(KeyPart::words)
                .toList();
    }

    private Stream<KeyPart> differences(ResponseKey other) {
        return parts.entrySet().stream()
                .filter(part -> !part.getValue().equals(other.parts.get(part.getKey())))
                .map(Map.Entry::getKey);
    }
}
