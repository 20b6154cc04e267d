package quarterfold.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import quarterfold.intake.Layout.Balance;
import quarterfold.intake.Layout.Mark;
import quarterfold.intake.Layout.OtherRow;
import quarterfold.intake.Layout.WorkedOut;

/** Reads the parts of a layout that only unusual reports need. */
final class LayoutExtras {
    private LayoutExtras() {}

    /** 0 where no row names the columns. */
    static int headerRow(YamlMap file) {
        String row = file.text("header_row").orElse("1");
        if (row.equals("none")) {
            return 0;
        }
        if (!row.matches("[1-9]\\d{0,3}")) {
            file.wrong("header_row", row, "a row from 1 to 9999, or none, such as 1");
            return 1;
        }
        return Integer.parseInt(row);
    }

    static int columns(YamlMap file, int headerRow) {
        if (headerRow > 0) {
            if (file.has("columns")) {
                file.problem(
                        "columns",
                        "found a number of columns beside a row that names them; expected it only with header_row: none");
            }
            return 0;
        }
        String columns = file.required("columns", "9");
        if (!columns.matches("[1-9]\\d{0,3}")) {
            file.wrong("columns", columns, "how many columns there are, such as 9");
            return 1;
        }
        return Integer.parseInt(columns);
    }

    static char quote(YamlMap file) {
        String quote = file.text("quote").orElse("\"");
        if (quote.equals("none")) {
            return 0;
        }
        if (!quote.equals("\"") && !quote.equals("'")) {
            file.wrong("quote", quote, "a double or a single quote, or none, such as none");
            return '"';
        }
        return quote.charAt(0);
    }

    static boolean twice(YamlMap file) {
        String encoded = file.text("encoded").orElse("once");
        if (!encoded.equals("once") && !encoded.equals("twice")) {
            file.wrong("encoded", encoded, "once or twice, such as twice");
        }
        boolean twice = encoded.equals("twice");
        if (twice && !file.text("encoding").orElse("UTF-8").equalsIgnoreCase("UTF-8")) {
            file.problem(
                    "encoded",
                    "found twice beside another encoding; expected encoding: UTF-8 with it");
        }
        return twice;
    }

    static Locale language(YamlMap dates) {
        String language = dates.text("language").orElse("en");
        if (!language.matches("[a-z]{2}")) {
            dates.wrong("language", language, "a language of ISO 639, such as de");
            return Locale.ENGLISH;
        }
        return Locale.forLanguageTag(language);
    }

    static int minor(YamlMap numbers) {
        String minor = numbers.text("minor").orElse("0");
        if (!minor.matches("[0-4]")) {
            numbers.wrong("minor", minor, "how many digits are decimals, 0 to 4, such as 2");
            return 0;
        }
        return Integer.parseInt(minor);
    }

    /** Whether a file must have every table that the layout has below the first. */
    static boolean tablesNeeded(YamlMap yaml) {
        String tables = yaml.text("tables_below").orElse("needed");
        if (!tables.equals("needed") && !tables.equals("optional")) {
            yaml.wrong("tables_below", tables, "needed or optional, such as optional");
        }
        return tables.equals("needed");
    }

    static Optional<Mark> mark(YamlMap yaml) {
        if (!yaml.has("sign")) {
            return Optional.empty();
        }
        YamlMap sign = yaml.map("sign");
        sign.known("column", "negative");
        String column = sign.required("column", "Debit or credit");
        List<String> negative = sign.texts("negative");
        if (negative.isEmpty()) {
            sign.problem("negative", "found nothing; expected texts, such as negative: [D]");
        }
        return Optional.of(new Mark(column.strip(), Set.copyOf(new HashSet<>(negative))));
    }

    static WorkedOut sum(YamlMap sum) {
        sum.known("add");
        List<String> columns = sum.texts("add");
        if (columns.isEmpty()) {
            sum.problem("add", "found nothing; expected columns, such as add: [Credit, Debit]");
        }
        return new WorkedOut(false, List.copyOf(columns));
    }

    static Optional<Balance> balance(YamlMap yaml) {
        if (!yaml.has("balance")) {
            return Optional.empty();
        }
        YamlMap balance = yaml.map("balance");
        balance.known("column", "newest_first");
        return Optional.of(
                new Balance(
                        balance.required("column", "Balance").strip(),
                        balance.has("newest_first")
                                ? Optional.of(isYes(balance, "newest_first"))
                                : Optional.empty()));
    }

    static List<OtherRow> otherRows(YamlMap yaml) {
        List<OtherRow> others = new ArrayList<>();
        for (YamlMap row : yaml.maps("other_rows")) {
            row.known("is", "starts", "blank", "when", "sums", "count", "rest", "states", "why");
            if (!row.has("is") && !row.has("starts") && !row.has("blank") && !row.has("when")) {
                row.problem(
                        "starts",
                        "found no condition; expected is, starts, blank or when, such as starts: Total");
            }
            others.add(
                    new OtherRow(
                            row.text("is").orElse("").strip(),
                            row.text("starts").orElse("").strip(),
                            List.copyOf(row.texts("blank")),
                            RuleReader.conditions(row.map("when")),
                            List.copyOf(row.texts("sums")),
                            isYes(row, "count"),
                            isYes(row, "rest"),
                            states(row.map("states")),
                            row.text("why").orElse("no row of the table")));
        }
        return List.copyOf(others);
    }

    private static Map<String, FileTotal> states(YamlMap yaml) {
        Map<String, FileTotal> states = new LinkedHashMap<>();
        for (String column : yaml.keys()) {
            String code = yaml.required(column, "money");
            FileTotal.of(code)
                    .ifPresentOrElse(
                            total -> states.put(column.strip(), total),
                            () ->
                                    yaml.wrong(
                                            column,
                                            code,
                                            "money, payout, rows or records, such as money"));
        }
        return states;
    }

    static boolean isYes(YamlMap map, String key) {
        String text = map.text(key).orElse("no");
        if (!text.equals("yes") && !text.equals("no")) {
            map.wrong(key, text, "yes or no, such as yes");
        }
        return text.equals("yes");
    }
}
