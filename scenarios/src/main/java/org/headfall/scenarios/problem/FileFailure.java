package org.headfall.scenarios.problem;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;

/** Why a file system refuses, in the user's words: its exceptions say it by their class alone. */
public final class FileFailure {

    private FileFailure() {}

    /**
     * The reason of a failure.
     *
     * @param failure what went wrong while reading or writing
     * @return the reason without names of classes and, where the file system gives one, without the place
     */
    public static String reason(IOException failure) {
        if (failure instanceof AccessDeniedException) {
            return "permission is denied";
        }
        if (failure instanceof NoSuchFileException) {
            return "no such file or folder";
        }
        if (failure instanceof FileAlreadyExistsException taken && taken.getReason() == null) {
            return "something of that name stands there already";
        }
        if (failure instanceof NotDirectoryException) {
            return "a file, not a folder, stands there";
        }
        if (failure instanceof DirectoryNotEmptyException) {
            return "the folder is not empty";
        }
        String told = failure instanceof FileSystemException refused ? refused.getReason() : failure.getMessage();
        return told == null ? "the file system refuses" : told;
    }
}
