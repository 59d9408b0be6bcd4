package org.headfall.scenarios.scenario;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import org.headfall.scenarios.scenario.BoreSpecification.Group;

/** Some of the bores of a scenario, by what they have in common. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "is")
@JsonSubTypes({
    @JsonSubTypes.Type(value = BoreSelection.All.class, name = "all bores"),
    @JsonSubTypes.Type(value = BoreSelection.Proposed.class, name = "proposed bores"),
    @JsonSubTypes.Type(value = BoreSelection.Existing.class, name = "existing bores"),
    @JsonSubTypes.Type(value = BoreSelection.OfHolder.class, name = "bores of a holder"),
    @JsonSubTypes.Type(value = BoreSelection.OfClass.class, name = "bores of a class of users")
})
public sealed interface BoreSelection {

    /**
     * Whether a bore belongs to it.
     *
     * @param bore the bore
     */
    boolean has(BoreSpecification bore);

    /** The bores in words, such as "proposed bores". */
    String words();

    /** Every bore. */
    record All() implements BoreSelection {
        @Override
        public boolean has(BoreSpecification bore) {
            return true;
        }

        @Override
        public String words() {
            return "all bores";
        }
    }

    /** The bores of the proposal. */
    record Proposed() implements BoreSelection {
        @Override
        public boolean has(BoreSpecification bore) {
            return bore.group() == Group.PROPOSED;
        }

        @Override
        public String words() {
            return "proposed bores";
        }
    }

    /** The bores that are there already. */
    record Existing() implements BoreSelection {
        @Override
        public boolean has(BoreSpecification bore) {
            return bore.group() == Group.EXISTING;
        }

        @Override
        public String words() {
            return "existing bores";
        }
    }

    /**
     * The bores of a holder.
     *
     * @param holder the holder
     */
    record OfHolder(String holder) implements BoreSelection {
        @Override
        public boolean has(BoreSpecification bore) {
            return bore.holder().equals(holder);
        }

        @Override
        public String words() {
            return "bores of " + holder;
        }
    }

    /**
     * The bores of a class of users.
     *
     * @param userClass the class, such as "stock and domestic"
     */
    record OfClass(String userClass) implements BoreSelection {
        @Override
        public boolean has(BoreSpecification bore) {
            return bore.licence().userClass().equals(userClass);
        }

        @Override
        public String words() {
            return "bores of the class " + userClass;
        }
    }
}
