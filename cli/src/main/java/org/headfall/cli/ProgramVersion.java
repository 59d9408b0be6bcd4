package org.headfall.cli;

import java.util.Optional;
import picocli.CommandLine.IVersionProvider;

/** Name and version of the program, from the manifest of its jar. */
public final class ProgramVersion implements IVersionProvider {

    /** Name and version, such as "Headfall 0.1.0". */
    public static String text() {
        String version = Headfall.class.getPackage().getImplementationVersion();
        return "Headfall " + Optional.ofNullable(version).orElse("(not packaged)");
    }

    @Override
    public String[] getVersion() {
        return new String[] {text(), "Java " + System.getProperty("java.version")};
    }
}
