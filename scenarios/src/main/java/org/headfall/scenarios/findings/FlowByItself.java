package org.headfall.scenarios.findings;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.OptionalDouble;

/**
 * Whether and until when water rises to the outlet of a place by itself: head (at the bore wall, own drawdown
 * included) compared with the outlet level. A capped bore with head above its outlet counts as able to flow.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "is")
@JsonSubTypes({
    @JsonSubTypes.Type(value = FlowByItself.NoOutlet.class, name = "no outlet given"),
    @JsonSubTypes.Type(value = FlowByItself.NotAtStart.class, name = "not flowing at the start"),
    @JsonSubTypes.Type(value = FlowByItself.Throughout.class, name = "flows throughout"),
    @JsonSubTypes.Type(value = FlowByItself.Stops.class, name = "stops")
})
public sealed interface FlowByItself {

    /** No outlet level is known. */
    record NoOutlet() implements FlowByItself {}

    /**
     * Head lies below the outlet when the run starts.
     *
     * @param startsDay first day with head above the outlet (d), if that happens
     */
    record NotAtStart(OptionalDouble startsDay) implements FlowByItself {}

    /** Head stays at or above the outlet at every recorded day. */
    record Throughout() implements FlowByItself {}

    /**
     * Head falls below the outlet.
     *
     * @param day first crossing, on the straight line between the records around it (d)
     * @param resumesDay first day after it on which head stands above the outlet again (d), if that happens
     * @param flowsAtEnd whether head stands above the outlet at the end of the run
     */
    record Stops(double day, OptionalDouble resumesDay, boolean flowsAtEnd) implements FlowByItself {}
}
