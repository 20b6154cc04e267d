package quarterfold.papers;

import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Texts as Markdown that also reads well where nothing renders it. Lines end in one line feed. */
final class Markdown {

    private static final int WIDTH = 110;

    /** What would be read as a mark, and the bar that would end a table's cell. */
    private static final Pattern MARKS = Pattern.compile("[\\\\|*<>`\\[\\]]");

    /** A word that would begin a list, a heading or a quotation if it began a line. */
    private static final Pattern BEGINNING = Pattern.compile("[-+#>=].*|[0-9]+[.)]");

    private Markdown() {}

    /** The text with every mark in it shown as itself. */
    static String plain(String text) {
        return MARKS.matcher(text).replaceAll("\\\\$0");
    }

    static String paragraph(String text) {
        return wrapped("", "", text) + "\n";
    }

    static String item(String text) {
        return wrapped("- ", "  ", text);
    }

    /** A line of a list with what it is about in bold. */
    static String item(String about, String text) {
        return item("**" + about + ":** " + text);
    }

    static String heading(int level, String text) {
        return "#".repeat(level) + " " + text + "\n\n";
    }

    /** A link to a heading of the same page, as GitHub names it. */
    static String link(String heading) {
        String place =
                heading.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9 _-]", "").replace(' ', '-');
        return "[%s](#%s)".formatted(heading, place);
    }

    static String table(List<String> headings, List<List<String>> rows) {
        StringBuilder text = new StringBuilder(row(headings));
        text.append(row(Collections.nCopies(headings.size(), "---")));
        rows.forEach(r -> text.append(row(r)));
        return text.append('\n').toString();
    }

    private static String row(List<String> cells) {
        return cells.stream().collect(Collectors.joining(" | ", "| ", " |\n"));
    }

    private static String wrapped(String first, String others, String text) {
        StringBuilder all = new StringBuilder();
        StringBuilder line = new StringBuilder(first);
        boolean empty = true;
        for (String word : text.split(" ", -1)) {
            boolean fits = line.length() + 1 + word.length() <= WIDTH;
            if (!empty && !fits && !BEGINNING.matcher(word).matches()) {
                all.append(line).append('\n');
                line.setLength(0);
                line.append(others);
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        return all.append(line).append('\n').toString();
    }
}
