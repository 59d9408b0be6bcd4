package org.headfall.scenarios.responses;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
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
 * @param aquifer parts that the responses depend on, by what they are called in messages
 * @param undisturbed further parts that heads without bores and springs depend on
 */
public record ResponseKey(Map<String, String> aquifer, Map<String, String> undisturbed) {

    /** Keeps the order of the parts. */
    public ResponseKey {
        aquifer = new LinkedHashMap<>(aquifer);
        undisturbed = new LinkedHashMap<>(undisturbed);
    }

    /**
     * Key of a run.
     *
     * @param description the run
     * @param problem its flow problem
     * @param givenHeads head of each cell at the start, if it does not start from rest
     * @return the key
     */
    public static ResponseKey of(RunDescription description, FlowProblem problem, Optional<double[]> givenHeads) {
        Aquifer field = problem.aquifer();
        Map<String, Supplier<String>> aquifer = new LinkedHashMap<>();
        aquifer.put("method", () -> new Digest().numbers(UnitResponses.METHOD).hex());
        aquifer.put(
                "grid",
                () -> new Digest()
                        .numbers(field.grid().x().edges())
                        .numbers(field.grid().y().edges())
                        .flags(field.active())
                        .hex());
        aquifer.put("transmissivity", () -> transmissivity(field));
        aquifer.put(
                "storativity", () -> new Digest().numbers(field.storativity()).hex());
        aquifer.put("sealing bed", () -> sealingBed(problem.sealingBed()));
        aquifer.put("kinds and places of the boundaries", () -> boundaries(problem.boundaries()));
        aquifer.put("names, places and radii of the bores", () -> bores(problem.bores()));
        aquifer.put("names and places of the springs", () -> places(description.springs()));
        aquifer.put("names and places of the protected points", () -> places(description.points()));
        Map<String, Supplier<String>> undisturbed = new LinkedHashMap<>();
        undisturbed.put("first day", () -> day(description.calendar().start()));
        undisturbed.put("heads and flows of the boundaries", () -> levels(problem.boundaries()));
        undisturbed.put("recharge", () -> recharge(problem.recharges()));
        undisturbed.put(
                "level above the sealing bed",
                () -> new Digest()
                        .numbers(problem.sealingBed().map(SealingBed::headAbove).orElse(new double[0]))
                        .hex());
        undisturbed.put(
                "heads at the start",
                () -> new Digest().numbers(givenHeads.orElse(new double[0])).hex());
        return new ResponseKey(made(aquifer), made(undisturbed));
    }

    /** Parts are made side by side: fields of a large grid take a while. */
    private static Map<String, String> made(Map<String, Supplier<String>> parts) {
        List<String> names = List.copyOf(parts.keySet());
        List<String> digests =
                List.copyOf(parts.values()).parallelStream().map(Supplier::get).toList();
        Map<String, String> made = new LinkedHashMap<>();
        for (int i = 0; i < digests.size(); i++) {
            made.put(names.get(i), digests.get(i));
        }
        return made;
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
        return over(aquifer);
    }

    /** SHA-256 over everything that heads without bores and springs depend on besides. */
    public String undisturbedKey() {
        return over(undisturbed);
    }

    private static String over(Map<String, String> parts) {
        Digest digest = new Digest();
        parts.forEach((name, part) -> digest.word(name).word(part));
        return digest.hex();
    }

    /**
     * Names of the parts in which another key differs.
     *
     * @param other the other key
     * @return the names, in the order of this key; empty if nothing differs
     */
    public List<String> differencesTo(ResponseKey other) {
        List<String> names = aquiferDifferencesTo(other);
        undisturbed.forEach((name, part) -> addIfOther(names, name, part, other.undisturbed));
        return names;
    }

    /**
     * Names of the parts that responses depend on in which another key differs.
     *
     * @param other the other key
     * @return the names, in the order of this key; empty if nothing differs
     */
    public List<String> aquiferDifferencesTo(ResponseKey other) {
        List<String> names = new ArrayList<>();
        aquifer.forEach((name, part) -> addIfOther(names, name, part, other.aquifer));
        return names;
    }

    private static void addIfOther(List<String> names, String name, String part, Map<String, String> others) {
        if (!part.equals(others.get(name))) {
            names.add(name);
        }
    }
}
