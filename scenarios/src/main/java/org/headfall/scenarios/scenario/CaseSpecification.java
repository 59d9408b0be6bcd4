package org.headfall.scenarios.scenario;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.scenario.BoreSpecification.Group;
import org.headfall.scenarios.scenario.BoreSpecification.Phase;

/**
 * One of several cases of taking that a document is run for. All start from the same heads.
 *
 * @param taking what is taken in it
 * @param stops first day without any taking, in the case in which taking stops
 * @param place where the document gives it
 */
public record CaseSpecification(Taking taking, Optional<LocalDate> stops, Place place) {

    /** What is taken in a case. */
    public enum Taking {
        /** Nothing, from the start of the period on. */
        NONE("without any taking"),
        /** What the existing bores take; the proposed ones are off. */
        EXISTING_AS_USED("existing as used"),
        /** What the existing bores may take; the proposed ones are off. */
        EXISTING_AT_FULL_ENTITLEMENT("existing at full entitlement"),
        /** What the document says: the existing bores as used, and the proposed ones. */
        WITH_THE_PROPOSAL("with the proposal"),
        /** What the existing bores may take, and the proposed ones. */
        FULL_ENTITLEMENT_AND_PROPOSAL("full entitlement and the proposal"),
        /** What the document says up to a date, and nothing from there on. */
        STOPPING("after taking stops");

        private final String words;

        Taking(String words) {
            this.words = words;
        }

        /** The name of the case. */
        public String words() {
            return words;
        }

        /** Whether it makes sense only with proposed bores. */
        public boolean needsProposal() {
            return this == WITH_THE_PROPOSAL || this == FULL_ENTITLEMENT_AND_PROPOSAL;
        }

        /** Whether it makes sense only with entitlements of existing bores. */
        public boolean needsEntitlements() {
            return this == EXISTING_AT_FULL_ENTITLEMENT || this == FULL_ENTITLEMENT_AND_PROPOSAL;
        }
    }

    /** Its name, by which limits refer to it. */
    public String name() {
        return taking.words();
    }

    /**
     * What is assumed in this case, as a sentence or two.
     *
     * @param bores all bores of the scenario
     */
    public String assumption(List<BoreSpecification> bores) {
        String same = "Case '" + name() + "': heads at the start are those of the document as it is.";
        if (!taking.needsEntitlements()) {
            return same;
        }
        String asUsed = bores.stream()
                .filter(bore -> bore.group() == Group.EXISTING
                        && bore.licence().entitlement().isEmpty())
                .map(BoreSpecification::name)
                .collect(Collectors.joining(", "));
        return same + " Entitlements of existing bores are pumped evenly through the year."
                + (asUsed.isEmpty() ? "" : " Without an entitlement, so as used: " + asUsed + ".");
    }

    /** What a bore does in this case. */
    public BoreSpecification applyTo(BoreSpecification bore) {
        boolean proposed = bore.group() == Group.PROPOSED;
        return switch (taking) {
            case NONE -> bore.withPhases(List.of());
            case EXISTING_AS_USED -> proposed ? bore.withPhases(List.of()) : bore;
            case EXISTING_AT_FULL_ENTITLEMENT -> proposed ? bore.withPhases(List.of()) : atEntitlement(bore);
            case WITH_THE_PROPOSAL -> bore;
            case FULL_ENTITLEMENT_AND_PROPOSAL -> proposed ? bore : atEntitlement(bore);
            case STOPPING -> bore.withPhases(until(bore.phases(), stops.orElseThrow()));
        };
    }

    /** Pumps what may be taken evenly through the years; a bore without an entitlement goes on as it is used. */
    private static BoreSpecification atEntitlement(BoreSpecification bore) {
        if (bore.licence().entitlement().isEmpty()) {
            return bore;
        }
        double rate = bore.licence().entitlement().getAsDouble();
        return bore.withPhases(
                List.of(new Phase(Optional.empty(), new BoreOperation.Pumped(new TimeCourse.Steady(rate)))));
    }

    private static List<Phase> until(List<Phase> phases, LocalDate stop) {
        List<Phase> kept = new ArrayList<>();
        for (Phase phase : phases) {
            if (phase.from().isEmpty() || phase.from().get().isBefore(stop)) {
                kept.add(phase);
            }
        }
        kept.add(new Phase(Optional.of(stop), new BoreOperation.Off()));
        return kept;
    }
}
