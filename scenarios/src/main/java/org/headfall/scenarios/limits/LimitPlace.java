package org.headfall.scenarios.limits;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;
import org.headfall.scenarios.scenario.BoreSelection;

/** Where a limit holds. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "is")
@JsonSubTypes({
    @JsonSubTypes.Type(value = LimitPlace.AtStation.class, name = "station"),
    @JsonSubTypes.Type(value = LimitPlace.Together.class, name = "bores together"),
    @JsonSubTypes.Type(value = LimitPlace.OnMap.class, name = "part of the map")
})
public sealed interface LimitPlace {

    /** The place in words, for tables. */
    String words();

    /**
     * One bore, spring or protected point.
     *
     * @param name its name
     */
    record AtStation(String name) implements LimitPlace {
        @Override
        public String words() {
            return name;
        }
    }

    /**
     * Some bores, whose taking is added up.
     *
     * @param selection what they have in common
     * @param bores their names
     */
    record Together(BoreSelection selection, List<String> bores) implements LimitPlace {
        /** Copies the list. */
        public Together {
            bores = List.copyOf(bores);
        }

        @Override
        public String words() {
            return selection.words();
        }
    }

    /**
     * A part of the map; which cells it has, a {@link MapPlaces} knows.
     *
     * @param words the part in words
     */
    record OnMap(String words) implements LimitPlace {}
}
