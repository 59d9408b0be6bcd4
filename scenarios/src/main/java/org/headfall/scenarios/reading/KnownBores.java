package org.headfall.scenarios.reading;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.NearestSpelling;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.scenario.BoreSpecification.Group;
import org.headfall.scenarios.scenario.LimitSpecification.OwnLevel;
import org.jspecify.annotations.Nullable;

/**
 * What other parts of a document may say of bores. Bores with problems of their own count too, so that one slip does not
 * make every mention of the bore a problem.
 */
final class KnownBores {
    private final Set<String> holders = new LinkedHashSet<>();
    private final Set<String> classes = new LinkedHashSet<>();
    private final Map<OwnLevel, Set<String>> withLevel = new EnumMap<>(OwnLevel.class);
    private boolean proposal;
    private boolean existing;
    private boolean entitlements;
    private boolean complete = true;

    void addHolder(String holder) {
        if (!holder.isEmpty()) {
            holders.add(holder);
        }
    }

    /** Holders of bores, in the order of the document. */
    Set<String> holders() {
        return holders;
    }

    /**
     * What is wrong with a holder of whom no bore is known.
     *
     * @param holder the name that was found
     * @param otherwise what else is allowed, as the end of a sentence; may be empty
     */
    Finding unknownHolder(String holder, String otherwise) {
        String allowed = holders.isEmpty()
                ? "a holder of bores, of whom the document names none"
                : "a holder of bores: " + String.join(", ", holders);
        return new Finding(ProblemKind.UNKNOWN_NAME, holder, allowed + otherwise, NearestSpelling.of(holder, holders));
    }

    void addClass(String userClass) {
        if (!userClass.isEmpty()) {
            classes.add(userClass);
        }
    }

    /** Classes of users of bores, in the order of the document. */
    Set<String> classes() {
        return classes;
    }

    /** Takes note of the group of a bore, null if it could not be read, and of whether an entitlement is given. */
    void addGroup(@Nullable Group group, boolean entitled) {
        proposal |= group != Group.EXISTING;
        existing |= group != Group.PROPOSED;
        entitlements |= entitled && group != Group.PROPOSED;
    }

    /** Takes note of the levels of a bore, readable or not, by whether their keys or columns are given. */
    void addLevels(String bore, Predicate<String> isGiven) {
        BoreWords.LEVELS.forEach((level, key) -> {
            if (isGiven.test(key)) {
                withLevel.computeIfAbsent(level, none -> new HashSet<>()).add(bore);
            }
        });
    }

    /** Whether a bore has, or may be meant to have, a level. */
    boolean hasLevel(OwnLevel level, String bore) {
        return !complete || withLevel.getOrDefault(level, Set.of()).contains(bore);
    }

    /** Whether any bore has, or may be meant to have, a level. */
    boolean anyHasLevel(OwnLevel level) {
        return !complete || withLevel.containsKey(level);
    }

    /** Whether a bore is, or may be meant to be, part of a proposal. */
    boolean hasProposal() {
        return proposal || !complete;
    }

    /** Whether a bore is, or may be meant to be, an existing one. */
    boolean hasExisting() {
        return existing || !complete;
    }

    /** Whether an existing bore has, or is meant to have, an entitlement. */
    boolean hasEntitlements() {
        return entitlements || !complete;
    }

    /** Says that there are bores whose names could not be read. */
    void miss() {
        complete = false;
    }

    /** Whether the names of all bores could be read. */
    boolean complete() {
        return complete;
    }
}
