package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import quarterfold.intake.Layout.Signs;
import quarterfold.ledger.Kind;

/**
 * The text of one rule of a layout, to change what kind its rows are and whether they are asked
 * about. All else a person wrote stays as it is. What comes out is to be read again: a text written
 * in an unforeseen way may come out as it was, or unsound.
 */
final class RuleText {
    private static final Pattern ASK_LINE = Pattern.compile("\\s*ask:\\s.*");
    private static final Pattern ASK =
            Pattern.compile(
                    "ask:\\s*(\"(?:[^\"\\\\]|\\\\.)*\"|'(?:[^']|'')*'|[^,{}\\[\\]\"']+)\\s*(,\\s*|(?=}))");
    private static final Pattern ENTER = Pattern.compile("enter:");
    private static final Pattern AMOUNT = Pattern.compile("\\b(gross|vat):");

    private final List<String> above;
    private final List<String> own;
    private final List<String> below;

    /** {@code line}: where the rule stands in the text, from 1. */
    RuleText(String yaml, int line) {
        List<String> lines = yaml.lines().toList();
        int start = line - 1;
        int end = end(lines, start);
        above = lines.subList(0, start);
        own = new ArrayList<>(lines.subList(start, end));
        below = lines.subList(end, lines.size());
    }

    private static int end(List<String> lines, int start) {
        String first = lines.get(start);
        boolean dashed = first.strip().startsWith("-");
        int indent = indent(first);
        int end = start + 1;
        while (end < lines.size()) {
            String next = lines.get(end);
            boolean inside = dashed ? indent(next) > indent : indent(next) >= indent;
            if (!next.isBlank() && !inside) {
                break;
            }
            end++;
        }
        while (lines.get(end - 1).isBlank()) {
            end--;
        }
        return end;
    }

    private static int indent(String line) {
        return line.length() - line.stripLeading().length();
    }

    /** Rows of one kind are of another from now on. */
    void kind(Kind before, Kind now) {
        replace(
                Pattern.compile("kind:\\s*" + Pattern.quote(before.code()) + "(?![a-z-])"),
                "kind: " + now.code());
    }

    /** The one amount of the rule's entry is its VAT, or its gross. */
    void amount(Field field) {
        replace(AMOUNT, field.code() + ":");
    }

    private void replace(Pattern found, String by) {
        own.replaceAll(line -> found.matcher(line).replaceAll(Matcher.quoteReplacement(by)));
    }

    /** Nothing is asked of the rows any more. */
    void askNoMore() {
        own.removeIf(line -> line.strip().equals(Asked.OPEN));
        if (!own.removeIf(line -> ASK_LINE.matcher(line).matches())) {
            replace(ASK, "");
        }
    }

    void ask(String question) {
        beforeEnter("ask: " + LayoutWriter.quoted(question));
        own.stream()
                .filter(line -> ASK_LINE.matcher(line).matches())
                .findFirst()
                .ifPresent(
                        line -> own.add(own.indexOf(line), " ".repeat(indent(line)) + Asked.OPEN));
    }

    void signs(Signs signs) {
        beforeEnter("signs: " + signs.name().toLowerCase(Locale.ROOT));
    }

    private void beforeEnter(String item) {
        for (int i = 0; i < own.size(); i++) {
            String line = own.get(i);
            Matcher enter = ENTER.matcher(line);
            if (enter.find()) {
                boolean alone = line.substring(0, enter.start()).isBlank();
                if (alone) {
                    own.add(i, " ".repeat(enter.start()) + item);
                } else {
                    own.set(
                            i,
                            line.substring(0, enter.start())
                                    + item
                                    + ", "
                                    + line.substring(enter.start()));
                }
                return;
            }
        }
    }

    /** The whole text. */
    String yaml() {
        List<String> all = new ArrayList<>(above);
        all.addAll(own);
        all.addAll(below);
        return String.join("\n", all) + "\n";
    }
}
