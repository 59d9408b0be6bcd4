package org.headfall.scenarios.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.headfall.scenarios.reference.ReferenceDefinitions.Entry;
import org.junit.jupiter.api.Test;

class ReferenceDefinitionsTest {
    private final ReferenceDefinitions definitions = new ReferenceDefinitions("""
            # first
            <10> +proj=longlat +ellps=GRS80 +no_defs  <>
            # Unable to translate EPSG:11.
            # second
            <100> +proj=utm +zone=1  <>
            <101> +proj=utm +zone=2
            <102> +proj=longlat +datum=WGS84  <>""");

    @Test
    void anEntryHasTheNearestNameAboveIt() {
        assertEquals(
                Optional.of(new Entry("first", "10", "+proj=longlat +ellps=GRS80 +no_defs")), definitions.ofCode("10"));
        assertEquals(Optional.of(new Entry("second", "100", "+proj=utm +zone=1")), definitions.ofCode("100"));
        assertEquals(Optional.of(new Entry("second", "102", "+proj=longlat +datum=WGS84")), definitions.ofCode("102"));
    }

    @Test
    void partsOfACodeAndLinesWithoutAnEndAreNoEntries() {
        assertEquals(Optional.empty(), definitions.ofCode("1"));
        assertEquals(Optional.empty(), definitions.ofCode("101"));
    }

    @Test
    void theFirstOfSeveralIsFound() {
        assertEquals(
                Optional.of("10"),
                definitions
                        .first(entry -> entry.parameters().contains("longlat"))
                        .map(Entry::code));
        assertEquals(
                Optional.of("102"),
                definitions
                        .first(entry -> entry.ellipsoid().equals("+datum=WGS84"))
                        .map(Entry::code));
    }
}
