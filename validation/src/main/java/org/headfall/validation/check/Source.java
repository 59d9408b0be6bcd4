package org.headfall.validation.check;

/**
 * A published source.
 *
 * @param authors who wrote it
 * @param year year of publication, 0 where there is none
 * @param title title or journal, volume and first page
 * @param place table, equation, example or page within it
 * @param standing how its numbers came into this project
 */
public record Source(String authors, int year, String title, String place, Standing standing) {

    /** Authors and year, "Theis (1935)". */
    public String brief() {
        return year == 0 ? authors : authors + " (" + year + ")";
    }
}
