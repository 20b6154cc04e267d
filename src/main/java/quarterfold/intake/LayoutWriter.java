package quarterfold.intake;

import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import quarterfold.intake.Layout.Enter;
import quarterfold.intake.Layout.Numbers;
import quarterfold.intake.Layout.OtherRow;
import quarterfold.intake.Layout.Rule;
import quarterfold.intake.Layout.Shape;

/** Writes a layout as the YAML that is read as the same layout, with comments for a person. */
final class LayoutWriter {
    private static final Set<String> WORDS =
            Set.of("yes", "no", "true", "false", "null", "on", "off", "none", "y", "n");

    private final StringBuilder yaml = new StringBuilder();

    private LayoutWriter() {}

    /** {@code comments}: lines to stand above all, without their marks. */
    static String write(Layout layout, String title, List<String> comments) {
        LayoutWriter writer = new LayoutWriter();
        comments.forEach(c -> writer.line("# " + c));
        writer.layout(layout, title);
        return writer.yaml.toString();
    }

    private void line(String text) {
        yaml.append(text.replaceAll("[\\p{Cc}\\p{Zl}\\p{Zp}]", " ")).append('\n');
    }

    private void layout(Layout layout, String title) {
        line("layout: " + layout.name());
        line("title: " + text(title));
        line("");
        file(layout.shape());
        line("");
        dates(layout.dates());
        line("");
        numbers(layout.numbers());
        line("");
        if (!layout.when().isEmpty()) {
            line("# The rows that are read as said here; rows of other shapes are below.");
            line("when: " + when(layout.when()));
        }
        signs(layout);
        layout.currency().ifPresent(c -> line("currency: " + quoted(c)));
        if (!LayoutNotes.statesCurrency(layout)) {
            line("# The file states no currency: amounts are in the book's. Else: currency: EUR");
        }
        line("");
        if (!layout.above().isEmpty()) {
            line("# Lines above the column names: what they say under a name holds for every row.");
            line("above:");
            layout.above().forEach(l -> line("  - " + quoted(l.toString())));
            line("");
        }
        line("# entry field: column of the report");
        entries(layout);
        layout.repeats().line().ifPresent(this::line);
        if (!layout.shapes().isEmpty()) {
            line("");
            line(
                    "# Rows of other shapes in the same file. Signs, dates and numbers are as above where");
            line("# a shape does not say.");
            line("shapes:");
            layout.shapes().forEach(shape -> shape(shape, layout));
        }
    }

    /** A further shape: what is as in the whole layout is not said again. */
    private void shape(Layout shape, Layout whole) {
        LayoutWriter part = new LayoutWriter();
        if (!shape.when().isEmpty()) {
            part.line("when: " + when(shape.when()));
            part.line("columns: " + shape.shape().columns());
        }
        if (!shape.dates().equals(whole.dates())) {
            part.dates(shape.dates());
        }
        if (!shape.numbers().equals(whole.numbers())) {
            part.numbers(shape.numbers());
        }
        if (shape.signs() != whole.signs()
                || !shape.outgoing().isEmpty()
                || shape.mark().isPresent()) {
            part.signs(shape);
        }
        shape.currency()
                .filter(c -> !c.equals(whole.currency().orElse("")))
                .ifPresent(c -> part.line("currency: " + quoted(c)));
        part.entries(shape);
        line(
                shape.when().isEmpty()
                        ? "  # The rows below a row that names the columns "
                                + String.join(", ", shape.columns())
                                + "."
                        : "  # The rows with these texts.");
        boolean first = true;
        for (String line : part.yaml.toString().stripTrailing().split("\n", -1)) {
            boolean key = first && !line.startsWith("#");
            line(((key ? "  - " : "    ") + line).stripTrailing());
            first &= !key;
        }
    }

    private void dates(Layout.Dates dates) {
        line("dates:");
        line("  pattern: " + quoted(dates.pattern()));
        dates.zone().ifPresent(z -> line("  zone: " + z.getId()));
        if (!dates.language().equals(Locale.ENGLISH)) {
            line("  language: " + dates.language().getLanguage());
        }
    }

    private void signs(Layout layout) {
        line(
                switch (layout.signs()) {
                    case OWNER ->
                            "# Amounts are read as the owner sees them: + comes in, - goes out.";
                    case DOCUMENT ->
                            "# Amounts are positive as printed; the kind says which way the money goes.";
                    case TURNED -> "# + goes out, - comes in.";
                });
        line("signs: " + layout.signs().name().toLowerCase(Locale.ROOT));
        if (!layout.outgoing().isEmpty()) {
            line("# Printed positive, though the money goes out.");
            line("outgoing: " + list(layout.outgoing().stream().sorted().toList()));
        }
        layout.mark()
                .ifPresent(
                        m ->
                                line(
                                        "sign: {column: %s, negative: %s}"
                                                .formatted(
                                                        text(m.column()),
                                                        list(
                                                                m.negative().stream()
                                                                        .sorted()
                                                                        .toList()))));
    }

    private void entries(Layout layout) {
        map("fields", layout.fields(), LayoutWriter::text);
        if (!layout.constants().isEmpty()) {
            map("constants", layout.constants(), LayoutWriter::text);
        }
        if (!layout.workedOut().isEmpty()) {
            line("worked_out:");
            layout.workedOut()
                    .forEach(
                            (name, w) ->
                                    line(
                                            "  %s: %s"
                                                    .formatted(
                                                            text(name),
                                                            w.product()
                                                                    ? list(w.columns())
                                                                    : "{add: "
                                                                            + list(w.columns())
                                                                            + "}")));
        }
        line("");
        line("# The first rule that fits a row decides it.");
        line("rows:");
        layout.rules().forEach(rule -> rule(rule, layout.when()));
        otherRows(layout.otherRows());
        line("");
        ties(layout);
    }

    private void file(Shape shape) {
        line("file:");
        line(
                "  delimiter: "
                        + (shape.delimiter() == '\t'
                                ? "\"\\t\""
                                : quoted(String.valueOf(shape.delimiter()))));
        if (shape.quote() != '"') {
            line(
                    "  quote: "
                            + (shape.quote() == 0
                                    ? "none"
                                    : quoted(String.valueOf(shape.quote()))));
        }
        boolean any = shape.encoding().equals(EncodingFinder.ANY);
        line("  encoding: " + (any ? "any" : shape.encoding().name()));
        if (shape.twice()) {
            line("  encoded: twice           # as UTF-8, and that again");
        }
        line("  header_row: " + (shape.headerRow() == 0 ? "none" : shape.headerRow()));
        if (shape.headerRow() == 0) {
            line("  columns: " + shape.columns() + "               # named #1 and on");
        }
        if (!shape.blanks().isEmpty()) {
            line("  blank: " + list(shape.blanks().stream().sorted().toList()));
        }
    }

    private void numbers(Numbers numbers) {
        line("numbers:");
        line("  decimal: " + quoted(String.valueOf(numbers.decimal())));
        if (numbers.thousands() != 0) {
            line("  thousands: " + quoted(String.valueOf(numbers.thousands())));
        }
        if (numbers.trailingMinus() || numbers.brackets() || numbers.plus() || numbers.letters()) {
            line(
                    "  negative: [minus%s%s%s%s]"
                            .formatted(
                                    numbers.trailingMinus() ? ", trailing-minus" : "",
                                    numbers.brackets() ? ", brackets" : "",
                                    numbers.plus() ? ", plus" : "",
                                    numbers.letters() ? ", dr" : ""));
        }
        if (numbers.minor() > 0) {
            line("  minor: " + numbers.minor() + "                 # 1234 is 12.34");
        }
        if (!numbers.units().isEmpty()) {
            line("  units: " + list(numbers.units()));
        }
    }

    /** {@code shape}: what stands on every row of the shape is not said again. */
    private void rule(Rule rule, Map<String, List<String>> shape) {
        Map<String, List<String>> own = new LinkedHashMap<>(rule.when());
        own.entrySet()
                .removeIf(
                        e ->
                                Set.copyOf(e.getValue())
                                        .equals(
                                                Set.copyOf(
                                                        shape.getOrDefault(
                                                                e.getKey(), List.of()))));
        line("  - when: " + when(own));
        if (!rule.ask().isEmpty()) {
            line("    " + Asked.OPEN);
            line("    ask: " + quoted(rule.ask()));
        }
        if (!rule.setAside().isEmpty()) {
            line("    set_aside: " + quoted(rule.setAside()));
            return;
        }
        rule.own().ifPresent(s -> line("    signs: " + s.name().toLowerCase(Locale.ROOT)));
        line("    enter:");
        for (Enter enter : rule.enter()) {
            StringBuilder entry = new StringBuilder("      - {kind: " + enter.kind().code());
            enter.amounts()
                    .forEach(
                            (f, column) ->
                                    entry.append(", ")
                                            .append(f.code())
                                            .append(": ")
                                            .append(text(column)));
            if (!enter.set().isEmpty()) {
                entry.append(
                        enter.set().entrySet().stream()
                                .map(e -> e.getKey().code() + ": " + text(e.getValue()))
                                .collect(Collectors.joining(", ", ", set: {", "}")));
            }
            line(entry + "}");
        }
    }

    private void otherRows(List<OtherRow> others) {
        if (others.isEmpty()) {
            return;
        }
        line("");
        line(
                "# Rows of the file that are no rows of the table; sums and counts they state must tie.");
        line("other_rows:");
        others.forEach(other -> line("  - " + OtherRowText.of(other)));
    }

    private void ties(Layout layout) {
        layout.tax()
                .ifPresent(
                        t ->
                                line(
                                        "tax: {column: %s%s}"
                                                .formatted(
                                                        text(t.column()),
                                                        t.withheld()
                                                                .map(w -> ", withheld: " + text(w))
                                                                .orElse(""))));
        if (!layout.checks().isEmpty()) {
            line("# Each row must add up by itself.");
            line("check:");
            layout.checks()
                    .forEach(
                            c ->
                                    line(
                                            "  - {sum: %s, equals: %s}"
                                                    .formatted(list(c.sum()), text(c.equals()))));
        }
        line("# The columns whose money must all be accounted for.");
        line("amounts: " + list(layout.amounts()));
        layout.expected().lines().forEach(this::line);
        if (!layout.optional().isEmpty()) {
            line("# A file may be without these columns; it is read as if none were named so.");
            line("optional: " + list(layout.optional().stream().sorted().toList()));
        }
        if (layout.payoutColumn().isPresent()) {
            line(
                    "# The payout, as its rows or a line above them state it: the other rows must sum to it.");
            line("payout: {column: %s}".formatted(text(layout.payoutColumn().get())));
        }
        layout.balance()
                .ifPresent(
                        b ->
                                line(
                                        "balance: {column: %s%s}"
                                                .formatted(
                                                        text(b.column()),
                                                        b.newestFirst()
                                                                .map(
                                                                        n ->
                                                                                ", newest_first: "
                                                                                        + (n
                                                                                                ? "yes"
                                                                                                : "no"))
                                                                .orElse(""))));
    }

    private void map(String key, Map<Field, String> map, UnaryOperator<String> value) {
        line(key + ":");
        map.forEach((field, text) -> line("  " + field.code() + ": " + value.apply(text)));
    }

    static String when(Map<String, List<String>> when) {
        return when.entrySet().stream()
                .map(e -> text(e.getKey()) + ": " + oneOrList(e.getValue()))
                .collect(Collectors.joining(", ", "{", "}"));
    }

    private static String oneOrList(List<String> texts) {
        return texts.size() == 1 ? text(texts.get(0)) : list(texts);
    }

    static String list(Collection<String> texts) {
        return texts.stream().map(LayoutWriter::text).collect(Collectors.joining(", ", "[", "]"));
    }

    /** Plain where that is safe, else quoted. */
    static String text(String text) {
        boolean plain =
                text.matches("\\p{L}[\\p{L}\\p{N}_/ -]*")
                        && text.equals(text.strip())
                        && !WORDS.contains(text.toLowerCase(Locale.ROOT));
        return plain ? text : quoted(text);
    }

    static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '"' || c == '\\') {
                quoted.append('\\').append(c);
            } else if (c < 0x20
                    || (c >= 0x7f && c <= 0xa0)
                    || c == 0x2028
                    || c == 0x2029
                    || c == 0xfeff) {
                quoted.append("\\u%04x".formatted((int) c));
            } else {
                quoted.append(c);
            }
        }
        return quoted.append('"').toString();
    }

    /** The bytes of a layout file. */
    static byte[] bytes(String yaml) {
        return yaml.getBytes(StandardCharsets.UTF_8);
    }
}
