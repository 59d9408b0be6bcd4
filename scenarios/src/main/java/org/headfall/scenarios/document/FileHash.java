package org.headfall.scenarios.document;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Tells the bytes of files and texts from any others by SHA-256 (FIPS 180-4). */
public final class FileHash {

    private FileHash() {}

    /**
     * Hash of a file, which may be larger than memory.
     *
     * @param path the file
     * @return 64 lower-case hexadecimal digits
     * @throws IOException if it cannot be read
     */
    public static String of(Path path) throws IOException {
        MessageDigest digest = digest();
        try (InputStream file = new DigestInputStream(Files.newInputStream(path), digest)) {
            file.transferTo(OutputStream.nullOutputStream());
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    /**
     * Hash of bytes.
     *
     * @param bytes the bytes
     * @return 64 lower-case hexadecimal digits
     */
    public static String of(byte[] bytes) {
        return HexFormat.of().formatHex(digest().digest(bytes));
    }

    /**
     * Hash of some texts, which tells them from the same letters divided otherwise.
     *
     * @param texts the texts, in this order
     * @return 64 lower-case hexadecimal digits
     */
    public static String ofTexts(Iterable<String> texts) {
        MessageDigest digest = digest();
        for (String text : texts) {
            byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
            digest.update((bytes.length + ":").getBytes(StandardCharsets.UTF_8));
            digest.update(bytes);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new AssertionError("every Java platform has SHA-256", impossible);
        }
    }
}
