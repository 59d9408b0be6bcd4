package org.headfall.scenarios.document;

/** Which files a scenario document may name. */
public enum FileReach {
    /** Only files in the folder of the document and the folders within it, symbolic links followed. */
    FOLDER_OF_DOCUMENT,
    /** Any file, because the user has said so. */
    ANYWHERE
}
