package quarterfold.intake;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A number as a report writes it: its digits with their marks, and what stands round them. */
final class NumberText {
    private static final String MARKS = ".,'\u2019 \u00a0\u202f";
    private static final Set<String> NOTHING =
            Set.of("-", "\u2013", "\u2014", "n/a", "N/A", "null", "NULL", "--");

    private final Pattern pattern;
    private final Map<String, String> signs;

    NumberText(Map<String, String> signs) {
        this.signs = signs;
        String unit =
                signs.keySet().stream().map(Pattern::quote).collect(Collectors.joining("|"))
                        + "|[A-Z]{3}";
        String sign = "[-\u2212+(]?";
        String space = "[ \u00a0\u202f]*";
        pattern =
                Pattern.compile(
                        "(?<a>"
                                + sign
                                + ")"
                                + space
                                + "(?<u>"
                                + unit
                                + ")?"
                                + space
                                + "(?<b>"
                                + sign
                                + ")"
                                + space
                                + "(?<d>\\d[\\d"
                                + MARKS
                                + "]*?|[.,]\\d+)"
                                + space
                                + "(?<c>[-)]?)"
                                + space
                                + "(?<v>"
                                + unit
                                + ")?"
                                + space
                                + "(?<e>[-)]?)"
                                + space
                                + "(?<s>(?i:[cd]r))?");
    }

    /** What stands round the digits. */
    record Dress(
            String digits,
            String unit,
            boolean trailing,
            boolean brackets,
            boolean plus,
            boolean letters) {}

    /** Whether the text means that there is no number. */
    static boolean isNothing(String text) {
        return NOTHING.contains(text);
    }

    Optional<Dress> of(String text) {
        if (text.isEmpty() || text.length() > 40) {
            return Optional.empty();
        }
        Matcher m = pattern.matcher(text);
        if (!m.matches()) {
            return Optional.empty();
        }
        String unit = m.group("u") != null ? m.group("u") : m.group("v");
        if (unit != null && !signs.containsKey(unit) && !Words.isCurrency(unit)) {
            return Optional.empty();
        }
        String before = m.group("a") + m.group("b");
        String behind = m.group("c") + m.group("e");
        boolean brackets = before.contains("(") && behind.contains(")");
        boolean signed = !before.isEmpty() || !behind.isEmpty();
        if (before.contains("(") != behind.contains(")")
                || before.length() > 1
                || (signed && m.group("s") != null)) {
            return Optional.empty();
        }
        return Optional.of(
                new Dress(
                        m.group("d").strip(),
                        unit == null ? "" : unit,
                        behind.contains("-"),
                        brackets,
                        before.contains("+"),
                        m.group("s") != null));
    }

    boolean isNumber(String text) {
        return of(text).isPresent();
    }

    /** The currency codes that units stand for; an empty one where a sign has several. */
    Set<String> codes(Iterable<String> units) {
        Set<String> codes = new LinkedHashSet<>();
        for (String unit : units) {
            codes.add(signs.getOrDefault(unit, unit));
        }
        return codes;
    }
}
