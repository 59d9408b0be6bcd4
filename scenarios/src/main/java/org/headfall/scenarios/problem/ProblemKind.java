package org.headfall.scenarios.problem;

/** The kinds of problem, each with the few words that open its message. */
public enum ProblemKind {
    /** The text does not follow the rules of its format. */
    SYNTAX("cannot be read as written"),
    /** The bytes are not UTF-8 text. */
    ENCODING("is not UTF-8 text"),
    /** Lists and sections are nested deeper than is allowed. */
    TOO_DEEP("is nested too deeply"),
    /** A feature of the format that is not used here, such as YAML aliases. */
    NOT_SUPPORTED("is not used here"),
    /** A key that is not known in its section. */
    UNKNOWN_KEY("is not a known key"),
    /** A key that must be there is not. */
    MISSING_KEY("is missing"),
    /** A key is given twice in one section. */
    DUPLICATE_KEY("is given twice"),
    /** Keys that may not be given together, or that need each other. */
    CONFLICTING_KEYS("does not go together"),
    /** A list where a value is expected and the like. */
    WRONG_TYPE("has the wrong form"),
    /** Nothing where a value is expected. */
    EMPTY_VALUE("is empty"),
    /** A number that cannot be read. */
    NOT_A_NUMBER("is not a number"),
    /** A number with a decimal comma. */
    DECIMAL_COMMA("has a decimal comma"),
    /** A number without its unit. */
    MISSING_UNIT("has no unit"),
    /** A unit that is not in the table of units. */
    UNKNOWN_UNIT("has an unknown unit"),
    /** A unit of the wrong kind, such as an area for a length. */
    WRONG_UNIT("has a unit of the wrong kind"),
    /** A value outside its allowed range. */
    OUT_OF_RANGE("is out of range"),
    /** A word that is not among the allowed ones. */
    NOT_A_CHOICE("is not one of the choices"),
    /** A date that cannot be read. */
    NOT_A_DATE("is not a date"),
    /** Dates that do not follow each other. */
    DATE_ORDER("is out of order"),
    /** One name for two things. */
    DUPLICATE_NAME("is used twice"),
    /** A name that nothing has. */
    UNKNOWN_NAME("is not a known name"),
    /** A point or an area beyond the grid. */
    OUTSIDE_GRID("is outside the grid"),
    /** A place of the grid that does not belong to the aquifer. */
    OUTSIDE_AQUIFER("is outside the aquifer"),
    /** A coordinate reference system that is not known or does not fit. */
    COORDINATE_SYSTEM("does not fit the coordinate reference system"),
    /** A file that is not there. */
    FILE_MISSING("does not exist"),
    /** A file beyond the folder of the scenario document. */
    FILE_OUTSIDE_FOLDER("is outside the folder of the scenario document"),
    /** A file that cannot be read. */
    FILE_UNREADABLE("cannot be read"),
    /** A file larger than is allowed. */
    FILE_TOO_LARGE("is too large"),
    /** A table without a column it needs. */
    MISSING_COLUMN("has a column missing"),
    /** A table with a column that is not known. */
    UNKNOWN_COLUMN("is not a known column"),
    /** A table with two columns of one name. */
    DUPLICATE_COLUMN("is the name of two columns"),
    /** A row with more or fewer values than the header has columns. */
    RAGGED_ROW("has the wrong number of values"),
    /** A table whose values are not separated by commas. */
    WRONG_DELIMITER("is not separated by commas"),
    /** A table with more rows than are allowed. */
    TOO_MANY_ROWS("has too many rows"),
    /** A table or list with nothing in it. */
    NO_ROWS("has no entries"),
    /** A table or list with fewer entries than are needed. */
    TOO_FEW_ROWS("has too few entries"),
    /** A raster that does not cover the grid, or has holes. */
    RASTER_COVER("does not cover the grid"),
    /** A polygon that crosses itself or is otherwise not a proper shape. */
    GEOMETRY("is not a proper shape"),
    /** Two points in one place. */
    SAME_PLACE("is given twice in one place"),
    /** A part of the aquifer whose steady heads nothing decides. */
    NOTHING_HOLDS_HEADS("has no steady heads"),
    /** More problems of the same kind in the same file than are listed. */
    MORE_OF_THE_SAME("has more problems of this kind");

    private final String summary;

    ProblemKind(String summary) {
        this.summary = summary;
    }

    /** The few words that follow the name of the thing concerned, such as "is out of range". */
    public String summary() {
        return summary;
    }
}
