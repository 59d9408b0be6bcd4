package org.headfall.scenarios.reading;

import java.util.Set;

/**
 * The names that limits may mention.
 *
 * @param names names of bores, springs and protected points
 * @param springs names of springs
 * @param points names of protected points
 * @param bores what is known of the bores
 * @param cases names of the cases of the document
 * @param seeksBores whether the document asks for proposed bores to be found
 */
record KnownPlaces(
        Set<String> names,
        Set<String> springs,
        Set<String> points,
        KnownBores bores,
        Set<String> cases,
        boolean seeksBores) {

    boolean isBore(String name) {
        return names.contains(name) && !springs.contains(name) && !points.contains(name);
    }
}
