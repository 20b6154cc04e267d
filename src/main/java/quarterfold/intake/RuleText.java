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
    private static final Pattern KIND = Pattern.compile("\\bkind:\\s*[\"']?([a-z-]+)");
    private static final Pattern SIGNS = Pattern.compile("\\bsigns:\\s*[a-z]+");
    private static final Pattern AMOUNT = Pattern.compile("\\b(gross|vat):");

    private final List<String> above;
    private final List<String> own;
    private final List<String> below;
    private final String lineEnd;
    private final boolean ended;

    /** {@code line}: where the rule stands in the text, from 1. */
    RuleText(String yaml, int line) {
        List<String> lines = yaml.lines().toList();
        lineEnd = yaml.contains("\r\n") ? "\r\n" : "\n";
        ended = yaml.endsWith("\n");
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
        for (int i = end; i < lines.size(); i++) {
            String next = lines.get(i);
            boolean inside = dashed ? indent(next) > indent : indent(next) >= indent;
            if (!next.isBlank() && !isComment(next)) {
                if (!inside) {
                    break;
                }
                end = i + 1;
            }
        }
        return end;
    }

    private static boolean isComment(String line) {
        return line.strip().startsWith("#");
    }

    private static int indent(String line) {
        return line.length() - line.stripLeading().length();
    }

    /** One of the rule's entries is of another kind; they are counted from 0. */
    void kind(int entry, Kind now) {
        int before = 0;
        boolean entered = false;
        for (int i = 0; i < own.size(); i++) {
            String line = own.get(i);
            Matcher enter = ENTER.matcher(line);
            int from = entered || !enter.find() ? 0 : enter.end();
            entered |= from > 0;
            Matcher kind = KIND.matcher(line);
            while (entered && !isComment(line) && kind.find(from)) {
                if (before == entry) {
                    own.set(
                            i,
                            line.substring(0, kind.start(1))
                                    + now.code()
                                    + line.substring(kind.end(1)));
                    return;
                }
                before++;
                from = kind.end();
            }
        }
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
        String item = "signs: " + signs.name().toLowerCase(Locale.ROOT);
        if (own.stream().anyMatch(line -> SIGNS.matcher(line).find())) {
            replace(SIGNS, item);
        } else {
            beforeEnter(item);
        }
    }

    private void beforeEnter(String item) {
        for (int i = 0; i < own.size(); i++) {
            String line = own.get(i);
            Matcher enter = ENTER.matcher(line);
            if (enter.find()) {
                String before = line.substring(0, enter.start());
                String indent = " ".repeat(enter.start());
                if (before.isBlank()) {
                    own.add(i, indent + item);
                } else if (before.strip().equals("-")) {
                    own.set(i, indent + line.substring(enter.start()));
                    own.add(i, before + item);
                } else {
                    own.set(i, before + item + ", " + line.substring(enter.start()));
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
        return String.join(lineEnd, all) + (ended ? lineEnd : "");
    }
}
