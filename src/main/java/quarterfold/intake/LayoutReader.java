package quarterfold.intake;

import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import quarterfold.intake.Layout.Dates;
import quarterfold.intake.Layout.Numbers;
import quarterfold.intake.Layout.Shape;
import quarterfold.intake.Layout.Signs;
import quarterfold.intake.Layout.Tax;
import quarterfold.intake.Layout.WorkedOut;
import quarterfold.ledger.Coded;

/** Reads a layout's YAML; every mistake becomes a problem with its line and key. */
final class LayoutReader {
    private final YamlMap yaml;

    /** {@code yaml}: of a layout, or of one of its shapes. */
    LayoutReader(YamlMap yaml) {
        this.yaml = yaml;
    }

    /**
     * The layout, which is sound only if no problem was added.
     *
     * @param file the layout file's name, {@code <layout>.yaml}
     */
    static Layout read(String file, String text, Problems problems) {
        Problems found = new Problems();
        YamlMap yaml = YamlMap.of(file, text, found);
        Layout layout = new LayoutReader(yaml).layout(file, found);
        if (found.none()) {
            LayoutCheck.check(layout, yaml);
            ShapesCheck.check(layout, yaml);
        }
        problems.addAll(found);
        return layout;
    }

    private Layout layout(String file, Problems found) {
        if (yaml.keys().isEmpty() && !found.none()) {
            return empty(file);
        }
        yaml.known(
                "layout",
                "title",
                "file",
                "dates",
                "numbers",
                "signs",
                "currency",
                "fields",
                "constants",
                "worked_out",
                "rows",
                "tax",
                "check",
                "amounts",
                "payout",
                "outgoing",
                "sign",
                "other_rows",
                "balance",
                "repeats",
                "optional",
                "text",
                "when",
                "shapes",
                "above",
                "tables_below",
                "unread",
                "expect");
        Map<String, List<String>> when = RuleReader.conditions(yaml.map("when"));
        Layout layout =
                new Layout(
                        name(file),
                        shape(yaml.map("file")),
                        dates(yaml.map("dates")),
                        numbers(yaml.map("numbers")),
                        signs(),
                        currency(),
                        fields(),
                        values(yaml.map("constants")),
                        workedOut(yaml.map("worked_out")),
                        RuleReader.rules(yaml, when),
                        tax(),
                        yaml.maps("check").stream().map(LayoutReader::check).toList(),
                        required("amounts", "amounts: [Amount]"),
                        payout(),
                        Set.copyOf(yaml.texts("outgoing")),
                        LayoutExtras.mark(yaml),
                        LayoutExtras.otherRows(yaml),
                        LayoutExtras.balance(yaml),
                        RepeatsReader.read(yaml),
                        Set.copyOf(yaml.texts("optional")),
                        PrintReader.print(yaml),
                        when,
                        List.of(),
                        PrintReader.above(yaml),
                        LayoutExtras.tablesNeeded(yaml),
                        Expected.read(yaml));
        return layout.with(layout.shape().blanks(), ShapesReader.read(layout, yaml));
    }

    private static Layout empty(String file) {
        return new Layout(
                file,
                Shape.COMMA,
                Dates.ISO,
                Numbers.PLAIN,
                Signs.DOCUMENT,
                Optional.empty(),
                Map.of(),
                Map.of(),
                Map.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(),
                Optional.empty(),
                Set.of(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                RepeatRule.EACH,
                Set.of(),
                Optional.empty(),
                Map.of(),
                List.of(),
                List.of(),
                true,
                Expected.NOTHING);
    }

    private String name(String file) {
        String expected = file.replaceAll("\\.ya?ml$", "");
        String name = yaml.required("layout", expected);
        if (!name.equals(expected) || name.equals(PlainSheet.NAME)) {
            yaml.wrong(
                    "layout",
                    name,
                    "the file's own name without .yaml, and not %s, such as %s"
                            .formatted(PlainSheet.NAME, expected));
        }
        return name;
    }

    private static Shape shape(YamlMap file) {
        file.known("delimiter", "quote", "encoding", "encoded", "header_row", "columns", "blank");
        String delimiter = file.text("delimiter").orElse(",");
        if (delimiter.length() != 1 || "\"\r\n\0".contains(delimiter)) {
            file.wrong("delimiter", delimiter, "one character, such as \",\" or \"\\t\"");
            delimiter = ",";
        }
        int headerRow = LayoutExtras.headerRow(file);
        return new Shape(
                delimiter.charAt(0),
                LayoutExtras.quote(file),
                encoding(file),
                LayoutExtras.twice(file),
                headerRow,
                LayoutExtras.columns(file, headerRow),
                Set.copyOf(file.texts("blank")));
    }

    private static Charset encoding(YamlMap file) {
        String name = file.text("encoding").orElse("UTF-8");
        try {
            return name.equals("any") ? EncodingFinder.ANY : Charset.forName(name);
        } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
            file.wrong("encoding", name, "the name of a character encoding, such as UTF-8");
            return StandardCharsets.UTF_8;
        }
    }

    static Dates dates(YamlMap dates) {
        dates.known("pattern", "zone", "language");
        String pattern = dates.required("pattern", "yyyy-MM-dd");
        Optional<ZoneId> zone = Optional.empty();
        if (dates.has("zone")) {
            String name = dates.required("zone", "Europe/London");
            try {
                zone = Optional.of(ZoneId.of(name));
            } catch (DateTimeException e) {
                dates.wrong("zone", name, "the name of a time zone, such as Europe/London");
            }
        }
        Dates read = new Dates(pattern, zone, LayoutExtras.language(dates));
        try {
            DateTimeFormatter formatter = read.formatter();
            LocalDate.parse(read.example(), formatter);
            return read;
        } catch (DateTimeException
                | IllegalArgumentException
                | IndexOutOfBoundsException e) { // of eleven letters in a row and more
            dates.wrong(
                    "pattern",
                    pattern,
                    "a date pattern with a year, a month and a day, such as dd/MM/yyyy");
            return Dates.ISO;
        }
    }

    static Numbers numbers(YamlMap numbers) {
        numbers.known("decimal", "thousands", "negative", "minor", "units");
        String decimal = numbers.text("decimal").orElse(".");
        if (!decimal.equals(".") && !decimal.equals(",")) {
            numbers.wrong("decimal", decimal, "a point or a comma, such as \".\"");
            decimal = ".";
        }
        String thousands = numbers.text("thousands").orElse("");
        if (thousands.length() > 1
                || (!thousands.isEmpty() && !".,' \u00a0\u202f\u2019".contains(thousands))
                || thousands.equals(decimal)) {
            numbers.wrong(
                    "thousands",
                    thousands,
                    "a point, comma, apostrophe or space that is not the decimal mark, such as"
                            + " \",\"");
            thousands = "";
        }
        List<String> negative = numbers.texts("negative");
        for (String form : negative) {
            if (!Set.of("minus", "trailing-minus", "brackets", "plus", "dr").contains(form)) {
                numbers.wrong(
                        "negative",
                        form,
                        "minus, trailing-minus, brackets, plus or dr, such as [minus, brackets]");
            }
        }
        return new Numbers(
                decimal.charAt(0),
                thousands.isEmpty() ? 0 : thousands.charAt(0),
                negative.contains("trailing-minus"),
                negative.contains("brackets"),
                negative.contains("plus"),
                negative.contains("dr"),
                LayoutExtras.minor(numbers),
                numbers.texts("units").stream().filter(u -> !u.isBlank()).toList());
    }

    Signs signs() {
        return RuleReader.signs(yaml);
    }

    Optional<String> currency() {
        Optional<String> currency = yaml.text("currency");
        if (currency.filter(code -> !Field.CURRENCY.accepts(code)).isPresent()) {
            yaml.wrong("currency", currency.get(), Field.CURRENCY.expected());
        }
        return currency;
    }

    Map<Field, String> fields() {
        YamlMap yamlFields = yaml.map("fields");
        Map<Field, String> fields = new EnumMap<>(Field.class);
        for (String key : yamlFields.keys()) {
            Optional<Field> field = Coded.find(Field.class, key).filter(Field::isGiven);
            if (field.isEmpty()) {
                yamlFields.problem(key, RuleReader.noField());
            } else {
                fields.put(field.get(), yamlFields.required(key, "Column").strip());
            }
        }
        if (!yamlFields.has("date")) {
            yamlFields.problem("date", "found nothing; expected a column, such as date: Date");
        }
        return fields;
    }

    /** Fixed values of fields, each of its vocabulary. */
    static Map<Field, String> values(YamlMap yaml) {
        Map<Field, String> values = new EnumMap<>(Field.class);
        for (String key : yaml.keys()) {
            Optional<Field> field =
                    Coded.find(Field.class, key)
                            .filter(f -> f.isGiven() && !f.isDate() && f != Field.FILE);
            String value = yaml.text(key).orElse("").strip();
            if (field.isEmpty()) {
                yaml.problem(key, RuleReader.noField());
            } else if (!value.isEmpty() && !field.get().accepts(value)) {
                yaml.wrong(key, value, field.get().expected());
            } else {
                values.put(field.get(), value);
            }
        }
        return values;
    }

    static Map<String, WorkedOut> workedOut(YamlMap yaml) {
        Map<String, WorkedOut> workedOut = new LinkedHashMap<>();
        for (String key : yaml.keys()) {
            if (yaml.isMap(key)) {
                workedOut.put(key, LayoutExtras.sum(yaml.map(key)));
                continue;
            }
            List<String> factors = yaml.texts(key);
            if (factors.size() == 2) {
                workedOut.put(key, new WorkedOut(true, List.copyOf(factors)));
            } else {
                yaml.problem(
                        key,
                        "found %d columns; expected the two to multiply, such as [Quantity, Price]"
                                .formatted(factors.size()));
            }
        }
        return workedOut;
    }

    Optional<Tax> tax() {
        if (!yaml.has("tax")) {
            return Optional.empty();
        }
        YamlMap tax = yaml.map("tax");
        tax.known("column", "withheld");
        return Optional.of(new Tax(tax.required("column", "Tax"), tax.text("withheld")));
    }

    static Layout.Check check(YamlMap check) {
        check.known("sum", "equals");
        List<String> sum = check.texts("sum");
        if (sum.isEmpty()) {
            check.problem("sum", "found nothing; expected columns, such as sum: [Net, VAT]");
        }
        return new Layout.Check(List.copyOf(sum), check.required("equals", "Gross"));
    }

    List<String> required(String key, String example) {
        List<String> texts = yaml.texts(key);
        if (texts.isEmpty()) {
            yaml.problem(key, "found nothing; expected columns, such as " + example);
        }
        return List.copyOf(texts);
    }

    Optional<String> payout() {
        if (!yaml.has("payout")) {
            return Optional.empty();
        }
        YamlMap payout = yaml.map("payout");
        payout.known("column");
        return Optional.of(payout.required("column", "Statement total"));
    }
}
