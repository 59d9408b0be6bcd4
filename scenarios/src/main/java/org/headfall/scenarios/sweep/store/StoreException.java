package org.headfall.scenarios.sweep.store;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import org.sqlite.SQLiteErrorCode;

/** The store of a sweep cannot be used; the message names the file, what is the matter and what can be done. */
public final class StoreException extends IOException {
    private static final long serialVersionUID = 1L;

    /** Codes of one kind differ beyond their lowest byte. */
    private static final int KIND = 0xff;

    /**
     * A store that cannot be used.
     *
     * @param store the file
     * @param matter what is the matter and what can be done
     */
    public StoreException(Path store, String matter) {
        super(store + ": " + matter);
    }

    private StoreException(Path store, String matter, SQLException cause) {
        super(store + ": " + matter, cause);
    }

    /** What a failure of the database means. */
    static StoreException of(Path store, SQLException failure) {
        int kind = failure.getErrorCode() & KIND;
        if (kind == SQLiteErrorCode.SQLITE_FULL.code) {
            return new StoreException(
                    store,
                    "the disk is full; free some space and give the same command again: what was recorded is kept",
                    failure);
        }
        if (kind == SQLiteErrorCode.SQLITE_NOTADB.code || kind == SQLiteErrorCode.SQLITE_CORRUPT.code) {
            return new StoreException(store, "is no store of a sweep, or damaged; move it away to begin anew", failure);
        }
        if (kind == SQLiteErrorCode.SQLITE_CANTOPEN.code
                || kind == SQLiteErrorCode.SQLITE_READONLY.code
                || kind == SQLiteErrorCode.SQLITE_PERM.code) {
            return new StoreException(store, "cannot be written; choose a folder that you may write to", failure);
        }
        if (kind == SQLiteErrorCode.SQLITE_IOERR.code) {
            return new StoreException(
                    store,
                    "cannot be read or written (" + failure.getMessage()
                            + "); if the disk is full, free some space and give the same command again",
                    failure);
        }
        return new StoreException(store, String.valueOf(failure.getMessage()), failure);
    }
}
