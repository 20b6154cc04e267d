package quarterfold.intake;

import com.google.re2j.Matcher;
import com.google.re2j.Pattern;
import com.google.re2j.PatternSyntaxException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a whole line of printed text looks like: its words, and in braces the names of what varies.
 *
 * <p>{@code Total {VAT paid}} takes any text for {@code VAT paid}; {@code {VAT paid: [0-9,.]+}}
 * takes what the regular expression fits, in the syntax of RE2; {@code {}} is any text, and none,
 * that is not kept. A space is one space or more, and words are in capitals or not. Matching takes
 * time in proportion to the line, whatever the expression.
 */
final class LinePattern {
    private static final String ANY = "\\S.*?";
    private static final String ANYTHING = ".*?";

    private final String text;
    private final Pattern pattern;
    private final List<String> names;
    private final List<Integer> groups;
    private final boolean hasWords;

    private LinePattern(
            String text,
            Pattern pattern,
            List<String> names,
            List<Integer> groups,
            boolean hasWords) {
        this.text = text;
        this.pattern = pattern;
        this.names = names;
        this.groups = groups;
        this.hasWords = hasWords;
    }

    /**
     * The pattern of a text.
     *
     * @throws IllegalArgumentException with what was found and expected, if it is none
     */
    static LinePattern of(String text) {
        Maker maker = new Maker(text.strip());
        maker.make();
        try {
            return new LinePattern(
                    text.strip(),
                    Pattern.compile(maker.regex.toString()),
                    List.copyOf(maker.names),
                    List.copyOf(maker.groups),
                    maker.hasWords);
        } catch (PatternSyntaxException e) {
            throw new IllegalArgumentException(Maker.notAnExpression(text.strip(), e), e);
        }
    }

    /** The names in braces, in their order. */
    List<String> names() {
        return names;
    }

    /** Whether it has a letter or digit of its own, so that not every line fits. */
    boolean hasWords() {
        return hasWords;
    }

    /** Whether every line with text fits. */
    boolean fitsAnything() {
        return pattern.matches("1 a-") && pattern.matches("~");
    }

    /** What the line has for each name, trimmed; nothing where the line does not fit. */
    Optional<Map<String, String>> match(String line) {
        Matcher matcher = pattern.matcher(line);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        Map<String, String> texts = new LinkedHashMap<>();
        for (int i = 0; i < names.size(); i++) {
            String found = matcher.group(groups.get(i));
            texts.put(names.get(i), found == null ? "" : found.strip());
        }
        return Optional.of(texts);
    }

    @Override
    public String toString() {
        return text;
    }

    /** Puts the expression together. */
    private static final class Maker {
        private final String text;
        private final StringBuilder regex = new StringBuilder();
        private final List<String> names = new ArrayList<>();
        private final List<Integer> groups = new ArrayList<>();
        private int group = 1;
        private boolean hasWords;

        Maker(String text) {
            this.text = text;
        }

        void make() {
            if (text.isEmpty()) {
                throw new IllegalArgumentException(
                        "found nothing; expected a line, such as Total {VAT paid}");
            }
            int i = 0;
            while (i < text.length()) {
                char c = text.charAt(i);
                if (c == '{') {
                    int end = closing(i);
                    name(text.substring(i + 1, end));
                    i = end;
                } else if (c == '}') {
                    throw unbalanced();
                } else if (Character.isWhitespace(c)) {
                    spaces(i);
                } else {
                    hasWords |= Character.isLetterOrDigit(c);
                    regex.append("(?i:").append(Pattern.quote(String.valueOf(c))).append(')');
                }
                i++;
            }
        }

        private void spaces(int at) {
            if (!Character.isWhitespace(text.charAt(at - 1))) {
                regex.append(" +");
            }
        }

        /** An expression may hold braces of its own, such as {@code [0-9]{9}}. */
        private int closing(int open) {
            int depth = 0;
            for (int i = open; i < text.length(); i++) {
                depth += text.charAt(i) == '{' ? 1 : text.charAt(i) == '}' ? -1 : 0;
                if (depth == 0) {
                    return i;
                }
            }
            throw unbalanced();
        }

        private IllegalArgumentException unbalanced() {
            return new IllegalArgumentException(
                    "found %s with a brace too many or too few; expected a name in braces, such as Total {VAT paid}"
                            .formatted(Problem.quoted(text)));
        }

        private void name(String inside) {
            int colon = inside.indexOf(':');
            String name = (colon < 0 ? inside : inside.substring(0, colon)).strip();
            String expression = colon < 0 ? "" : inside.substring(colon + 1).strip();
            if (name.isEmpty()) {
                unnamed(expression);
                return;
            }
            if (names.contains(name)) {
                throw new IllegalArgumentException(
                        "found the name %s twice in %s; expected it once, such as Total {VAT paid}"
                                .formatted(Problem.quoted(name), Problem.quoted(text)));
            }
            names.add(name);
            groups.add(group);
            group++;
            if (expression.isEmpty()) {
                regex.append('(').append(ANY).append(')');
                return;
            }
            regex.append('(').append(sound(expression)).append(')');
        }

        private void unnamed(String expression) {
            regex.append(expression.isEmpty() ? ANYTHING : sound(expression));
        }

        /** The expression, its own groups counted. */
        private String sound(String expression) {
            try {
                group += Pattern.compile(expression).groupCount();
            } catch (PatternSyntaxException e) {
                throw new IllegalArgumentException(notAnExpression(expression, e), e);
            }
            return "(?:" + expression + ")";
        }

        static String notAnExpression(String found, PatternSyntaxException fault) {
            return "found %s, which is no regular expression (%s); expected one in the syntax of RE2, such as [0-9,.]+"
                    .formatted(Problem.quoted(found), fault.getDescription());
        }
    }
}
