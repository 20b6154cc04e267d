package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import quarterfold.intake.Print.FactLine;
import quarterfold.intake.Print.Of;
import quarterfold.intake.Print.TotalLine;

/** Reads the {@code text} of a layout: the lines of a printed report. */
final class PrintReader {
    private static final String LINE = "line";

    private PrintReader() {}

    static Optional<Print> print(YamlMap yaml) {
        if (!yaml.has("text")) {
            return Optional.empty();
        }
        YamlMap text = yaml.map("text");
        text.known("known_by", "facts", "page", "rows", "continues", "totals", "other");
        return Optional.of(
                new Print(
                        lines(text, "known_by", "Import VAT certificate", true),
                        facts(text),
                        page(text),
                        lines(text, "rows", "{Entry} {Date} {VAT}", false),
                        continues(text),
                        totals(text),
                        text.has("other") ? lines(text, "other", "Notes", true) : List.of()));
    }

    /** Lines above the column names of a table. */
    static List<LinePattern> above(YamlMap yaml) {
        if (!yaml.has("above")) {
            return List.of();
        }
        List<LinePattern> lines = lines(yaml, "above", "\"Issued: {Issued}\"", false);
        for (LinePattern line : lines) {
            if (line.names().isEmpty() || line.fitsAnything()) {
                yaml.wrong(
                        "above",
                        line.toString(),
                        "a line with a name in braces and words of its own, such as \"Issued: {Issued}\"");
            }
        }
        return lines;
    }

    private static List<LinePattern> lines(YamlMap text, String key, String example, boolean own) {
        List<LinePattern> lines = new ArrayList<>();
        for (String each : text.texts(key)) {
            pattern(text, key, each, own).ifPresent(lines::add);
        }
        if (text.texts(key).isEmpty()) {
            text.problem(
                    key, "found nothing; expected lines, such as %s: [%s]".formatted(key, example));
        }
        return List.copyOf(lines);
    }

    /**
     * @param own whether it must have words of its own, so that it does not swallow other lines
     */
    private static Optional<LinePattern> pattern(YamlMap at, String key, String text, boolean own) {
        try {
            LinePattern pattern = LinePattern.of(text);
            if (own && !pattern.hasWords()) {
                at.wrong(key, text, "a line with words of its own, such as Port {Port}");
            }
            return Optional.of(pattern);
        } catch (IllegalArgumentException e) {
            at.problem(key, String.valueOf(e.getMessage()));
            return Optional.empty();
        }
    }

    /** Lines that any text would fit would swallow rows that are printed in another way. */
    private static List<LinePattern> continues(YamlMap text) {
        if (!text.has("continues")) {
            return List.of();
        }
        List<LinePattern> lines = lines(text, "continues", "{What: [^0-9]+}", false);
        for (LinePattern line : lines) {
            if (line.fitsAnything()) {
                text.wrong(
                        "continues",
                        line.toString(),
                        "a line with words of its own, or that says what a name may be, such as {What: [^0-9]+}");
            }
        }
        return lines;
    }

    private static List<LinePattern> page(YamlMap text) {
        if (!text.has("page")) {
            return List.of();
        }
        String line = text.required("page", "Page {page} of {pages}");
        Optional<LinePattern> page = pattern(text, "page", line, true);
        if (page.filter(p -> !p.names().contains(Print.PAGE)).isPresent()) {
            text.wrong("page", line, "a line with {page} in it, such as Page {page} of {pages}");
        }
        return page.stream().toList();
    }

    private static List<FactLine> facts(YamlMap text) {
        List<FactLine> facts = new ArrayList<>();
        for (YamlMap fact : text.maps("facts", LINE)) {
            fact.known(LINE, "set", "optional");
            Map<String, String> set = new LinkedHashMap<>();
            YamlMap values = fact.map("set");
            values.keys()
                    .forEach(column -> set.put(column, values.text(column).orElse("").strip()));
            pattern(fact, LINE, fact.required(LINE, "EORI {EORI}"), true)
                    .map(p -> new FactLine(p, set, LayoutExtras.isYes(fact, "optional")))
                    .ifPresent(facts::add);
        }
        return List.copyOf(facts);
    }

    private static List<TotalLine> totals(YamlMap text) {
        List<TotalLine> totals = new ArrayList<>();
        for (YamlMap total : text.maps("totals", LINE)) {
            total.known(LINE, "sums", "of", "same", "optional");
            Optional<LinePattern> line =
                    pattern(total, LINE, total.required(LINE, "Total {VAT paid}"), false);
            List<String> sums = total.texts("sums");
            if (sums.isEmpty()) {
                total.problem("sums", "found nothing; expected columns, such as sums: [VAT paid]");
            }
            List<String> same = total.texts("same");
            for (String column : List.of(sums, same).stream().flatMap(List::stream).toList()) {
                if (line.filter(l -> !l.names().contains(column)).isPresent()) {
                    total.wrong(
                            sums.contains(column) ? "sums" : "same",
                            column,
                            "a name in braces of the line, such as {%s}".formatted(column));
                }
            }
            Of of = of(total);
            line.map(
                            l ->
                                    new TotalLine(
                                            l,
                                            List.copyOf(sums),
                                            of,
                                            List.copyOf(same),
                                            LayoutExtras.isYes(total, "optional")))
                    .ifPresent(totals::add);
        }
        return List.copyOf(totals);
    }

    private static Of of(YamlMap total) {
        String of = total.text("of").orElse("file");
        for (Of each : Of.values()) {
            if (each.name().toLowerCase(Locale.ROOT).equals(of)) {
                return each;
            }
        }
        total.wrong("of", of, "file, page or above, such as page");
        return Of.FILE;
    }
}
