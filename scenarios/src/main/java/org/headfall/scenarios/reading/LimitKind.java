package org.headfall.scenarios.reading;

import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The quantities that can be limited, with what a limit of each may say. */
enum LimitKind {
    DRAWDOWN("drawdown", Where.ANYWHERE, Effect.NEEDED),
    FLOOR_LEVEL("floor level", Where.ANYWHERE, Effect.NONE),
    PRESSURE("pressure", Where.BORES, Effect.NONE),
    DECLINE_RATE("decline rate", Where.STATIONS, Effect.OF_A_CAUSE),
    SHARE_OF_AVAILABLE_HEAD("share of available head", Where.ANYWHERE, Effect.ALLOWED),
    FLOW("flow", Where.BORES, Effect.NONE),
    SPRING_DISCHARGE("spring discharge", Where.SPRINGS, Effect.ALLOWED),
    VOLUME("volume", Where.BORES, Effect.NONE),
    DISTANCE("distance", Where.ANYWHERE, Effect.CAUSE_ALONE);

    static final Map<String, LimitKind> BY_WORDS = Arrays.stream(values())
            .collect(Collectors.toMap(LimitKind::words, kind -> kind, (a, b) -> a, TreeMap::new));

    /** Places that a quantity has a value at. */
    enum Where {
        ANYWHERE,
        STATIONS,
        BORES,
        SPRINGS
    }

    /** Whether a limit says whose effect counts and what it is measured from. */
    enum Effect {
        /** Neither: the value itself is limited. */
        NONE,
        /** Both may be said. */
        ALLOWED,
        /** The cause must be said. */
        NEEDED,
        /** A cause may be said, compared with the run without it. */
        OF_A_CAUSE,
        /** The cause must be said, and there is nothing to compare with. */
        CAUSE_ALONE
    }

    private final String words;
    private final Where where;
    private final Effect effect;

    LimitKind(String words, Where where, Effect effect) {
        this.words = words;
        this.where = where;
        this.effect = effect;
    }

    String words() {
        return words;
    }

    Where where() {
        return where;
    }

    Effect effect() {
        return effect;
    }

    /** Whether something of it goes on when taking has stopped. */
    boolean goesOnAfterTaking() {
        return this != FLOW && this != VOLUME && this != DISTANCE;
    }
}
