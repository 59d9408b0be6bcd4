package org.headfall.cli.answer;

import java.io.PrintWriter;
import java.util.function.UnaryOperator;

/** Lines of at most 80 columns. Control characters of names and titles are shown as question marks. */
public final class TextBlock {

    private static final int WIDEST = 80;
    private static final int LABEL = 26;

    private final PrintWriter out;

    /**
     * A block of lines.
     *
     * @param out where they go
     */
    public TextBlock(PrintWriter out) {
        this.out = out;
    }

    /** An empty line. */
    public void blank() {
        out.println();
    }

    /** A sentence, broken between words. */
    public void sentence(String text) {
        wrapped("", text, "");
    }

    /** A sentence, broken between words, of which each line is styled when it is complete. */
    public void styled(String text, UnaryOperator<String> style) {
        wrapped("", text, "", style);
    }

    /** A sentence below another one, set in. */
    public void item(String text) {
        wrapped("  ", text, "    ");
    }

    /** A message whose further lines are set in, so that the next one is told from it. */
    public void message(String text) {
        wrapped("", text, "    ");
    }

    /** A label and what it says. */
    public void labelled(String label, String text) {
        wrapped(label + " ".repeat(LABEL - label.length()), text, " ".repeat(LABEL));
    }

    private void wrapped(String first, String text, String following) {
        wrapped(first, text, following, line -> line);
    }

    private void wrapped(String first, String text, String following, UnaryOperator<String> style) {
        StringBuilder line = new StringBuilder(first);
        int start = first.length();
        for (String word : printable(text).split(" ", -1)) {
            if (line.length() > start && line.length() + 1 + word.length() > WIDEST) {
                out.println(style.apply(line.toString()));
                line.setLength(0);
                line.append(following);
                start = following.length();
            }
            if (line.length() > start) {
                line.append(' ');
            }
            line.append(word);
        }
        out.println(style.apply(line.toString()));
    }

    /** A text with control characters shown as question marks. */
    public static String printable(String text) {
        return text.replaceAll("[\\p{Cc}\\p{Cf}]", "?");
    }
}
