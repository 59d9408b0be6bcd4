package org.headfall.scenarios.sweep.store;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * A row of the store.
 *
 * @param number number of the run
 * @param status what became of it
 * @param inputs value of each variable, as a JSON object of texts
 * @param hash SHA-256 of everything that decides its figures
 * @param figures its kept figures in the order of the columns, NaN where there is none
 * @param reason why it failed; empty if it did not
 * @param way how it was answered
 * @param seconds elapsed time (s), NaN while it is planned
 * @param finished when it was recorded (ISO 8601); empty while it is planned
 * @param host computer that ran it
 * @param program program and version that ran it
 * @param maps where limits on the map are crossed, packed; none if there are no such limits
 */
@SuppressWarnings("ArrayRecordComponent") // read once, never compared
public record StoredRun(
        int number,
        Status status,
        String inputs,
        String hash,
        double[] figures,
        String reason,
        String way,
        double seconds,
        String finished,
        String host,
        String program,
        byte[] maps) {

    /** What can become of a run. */
    public enum Status {
        /** Not run yet. */
        PLANNED,
        /** Its figures are there. */
        FINISHED,
        /** It could not be run; the reason is there. */
        FAILED;

        /** The word in the store. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        /** The status with a word, if it is one. */
        static Optional<Status> of(String word) {
            return Arrays.stream(values())
                    .filter(status -> status.word().equals(word))
                    .findFirst();
        }
    }
}
