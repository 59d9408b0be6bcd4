package org.headfall.cli;

import static org.headfall.cli.Answer.headfall;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** What README.md shows to users is what the program does. */
class ReadmeTest {

    private static final Path README = Path.of("..", "README.md");

    @TempDir
    private Path folder;

    private static String firstYamlBlock(String text) {
        Matcher block = Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL).matcher(text);
        assertTrue(block.find(), "README.md shows no scenario");
        return block.group(1);
    }

    @Test
    void itsScenarioRunsAndWritesTheFilesThatItNames() throws IOException {
        String readme = Files.readString(README);
        Files.writeString(folder.resolve("scenario.yaml"), firstYamlBlock(readme));
        headfall("run", folder.toString()).exits(0);
        try (var files = Files.list(folder.resolve("results").resolve("scenario"))) {
            for (String name : files.map(file -> file.getFileName().toString()).toList()) {
                String named = name.replaceFirst("-\\d{4}-\\d{2}-\\d{2}\\.tif", "-DATE.tif");
                assertTrue(readme.contains("`" + named + "`"), "README.md does not say what " + name + " is");
            }
        }
    }

    @Test
    void itNamesEveryOptionAndExitCode() throws IOException {
        String readme = Files.readString(README);
        for (Object command : List.of(new CheckCommand(), new RunCommand(Terminal.NONE), new ReportCommand())) {
            new CommandLine(command)
                    .getCommandSpec().options().stream()
                            .map(option -> option.longestName())
                            .filter(name -> !List.of("--help", "--version").contains(name))
                            .forEach(name -> assertTrue(readme.contains("`" + name), name));
        }
        for (ExitCode code : ExitCode.values()) {
            assertTrue(readme.contains("\n| " + code.code() + " | "), code::name);
        }
    }
}
