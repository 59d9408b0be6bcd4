package org.headfall.scenarios.limits;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;

/** When a limit counts. Days since the start of the run. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "is")
@JsonSubTypes({
    @JsonSubTypes.Type(value = LimitPeriod.Within.class, name = "within"),
    @JsonSubTypes.Type(value = LimitPeriod.After.class, name = "after"),
    @JsonSubTypes.Type(value = LimitPeriod.Ever.class, name = "ever")
})
public sealed interface LimitPeriod {

    /** Words for tables. */
    String words();

    /**
     * From the start to a day.
     *
     * @param lastDay last day that counts (d)
     * @param words such as "within 5 years"
     */
    record Within(double lastDay, String words) implements LimitPeriod {}

    /**
     * From a day to the end of the run.
     *
     * @param firstDay first day that counts (d)
     * @param words such as "after 10 years"
     */
    record After(double firstDay, String words) implements LimitPeriod {}

    /** At any time in the run. */
    record Ever() implements LimitPeriod {
        @Override
        public String words() {
            return "at any time in the run";
        }
    }
}
