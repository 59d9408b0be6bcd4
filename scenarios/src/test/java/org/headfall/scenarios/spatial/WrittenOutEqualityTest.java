package org.headfall.scenarios.spatial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Map;
import org.headfall.scenarios.quantity.Exponents;
import org.headfall.scenarios.scenario.LimitSpecification.NamedPlace;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Records whose equality is written out have to look at each of their components, also at one that is added later. */
class WrittenOutEqualityTest {

    /** Two values that differ of each type of component. */
    private static final Map<Class<?>, Object[]> VALUES = Map.of(
            int.class, new Object[] {3, 4},
            double.class, new Object[] {0.0, -0.0},
            String.class, new Object[] {"Town", "town"});

    @ParameterizedTest
    @ValueSource(classes = {Exponents.class, Position.class, NamedPlace.class})
    void looksAtEveryComponent(Class<? extends Record> type) throws ReflectiveOperationException {
        RecordComponent[] components = type.getRecordComponents();
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        Constructor<? extends Record> made = type.getDeclaredConstructor(types);
        Object[] values = Arrays.stream(types).map(one -> VALUES.get(one)[0]).toArray();
        Record one = made.newInstance(values);
        assertEquals(one, made.newInstance(values));
        assertEquals(one.hashCode(), made.newInstance(values).hashCode());
        assertNotEquals(one, "something else");
        for (int i = 0; i < components.length; i++) {
            Object[] changed = values.clone();
            changed[i] = VALUES.get(types[i])[1];
            Record other = made.newInstance(changed);
            assertNotEquals(one, other, components[i].getName());
            assertNotEquals(one.hashCode(), other.hashCode(), components[i].getName());
        }
    }
}
