package quarterfold.papers;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quarterfold.law.Law;
import quarterfold.law.LawWords;
import quarterfold.law.TableRows;

/**
 * What of the law is shown, and the words it is shown in.
 *
 * @param day the day whose law is shown; empty for the law of all days
 * @param tables treatments, boxes and form first, then the others in the law's order, each with the
 *     rows shown
 */
record LawView(Law law, LawWords words, Optional<LocalDate> day, List<TableRows> tables) {

    static final String TREATMENTS = "treatments.csv";
    static final String BOXES = "boxes.csv";
    static final String TOTALS = "totals.csv";
    static final String FORM = "form.csv";
    static final String CHOICES = "choices.csv";
    static final String QUERIES = "queries.csv";

    private static final List<String> FIRST = List.of(TREATMENTS, BOXES, FORM);

    static LawView of(Law law, LawWords words, Optional<LocalDate> day) {
        List<TableRows> tables = law.files().stream().map(f -> TableRows.of(f).on(day)).toList();
        List<TableRows> ordered = new ArrayList<>();
        FIRST.forEach(
                name -> tables.stream().filter(t -> t.name().equals(name)).forEach(ordered::add));
        tables.stream().filter(t -> !FIRST.contains(t.name())).forEach(ordered::add);
        return new LawView(law, words, day, List.copyOf(ordered));
    }

    Optional<TableRows> table(String name) {
        return tables.stream().filter(t -> t.name().equals(name)).findFirst();
    }

    /** The rows shown of a table the law cannot be without. */
    List<TableRows.Row> rows(String name) {
        return table(name).map(TableRows::rows).orElse(List.of());
    }

    /** A table's heading. */
    String title(String table) {
        return words.find("table", table)
                .orElseGet(() -> Words.plain(table.replaceFirst("\\.csv$", "")));
    }

    /** When a row holds, in words. */
    static String inForce(TableRows.Row row) {
        return row.to().equals(LocalDate.MAX)
                ? "from " + Words.day(row.from())
                : Words.day(row.from()) + " to " + Words.day(row.to());
    }
}
