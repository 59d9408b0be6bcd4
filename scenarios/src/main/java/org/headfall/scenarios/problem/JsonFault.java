package org.headfall.scenarios.problem;

import java.util.regex.Pattern;
import tools.jackson.core.JacksonException;

/** What a parser of JSON found, for people who do not know it: its sentences name its source and options as programmers see them. */
public final class JsonFault {
    /** Such as "(start marker at [Source: ...])", which tells of no line. */
    private static final Pattern SOURCE = Pattern.compile(" \\([a-zA-Z ]* ?\\[Source: [^\\]]*\\]\\)");

    private JsonFault() {}

    /**
     * Its sentence without any place; where the fault lies is told beside it.
     *
     * @param broken the fault
     */
    public static String found(JacksonException broken) {
        return SOURCE.matcher(String.valueOf(broken.getOriginalMessage())).replaceAll("");
    }
}
