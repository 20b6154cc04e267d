package quarterfold.intake;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import quarterfold.intake.Layout.Numbers;
import quarterfold.money.Amount;

/** Reads the number columns of a table: how they are written, and what they come to. */
final class NumberStudy {
    private final TableFinder.Found table;
    private final Vocabulary words;
    private final NumberText text;
    private final Findings findings;
    private final List<Column> columns;
    private final NumberFinder finder;
    private Numbers numbers = Numbers.PLAIN;
    private boolean besideMarked;

    NumberStudy(
            TableFinder.Found table,
            List<Column> columns,
            Vocabulary words,
            NumberText text,
            Findings findings) {
        this.table = table;
        this.columns = columns;
        this.words = words;
        this.text = text;
        this.findings = findings;
        finder = new NumberFinder(text);
    }

    Numbers numbers() {
        return numbers;
    }

    /** Takes the numbers of rows of another shape, which are written alike. */
    void readAlso(NumberStudy other) {
        for (Column column : other.columns) {
            if (other.isNumeric(column)) {
                for (int row = 0; row < column.texts().size(); row++) {
                    if (!other.isStored(column, row)) {
                        finder.add(column.texts().get(row));
                    }
                }
                besideMarked |= other.storesDecimals(column);
            }
        }
    }

    /** Whether the file itself stores numbers, and some of the column with decimals. */
    private boolean storesDecimals(Column column) {
        return table.grid().lines().stream().anyMatch(l -> !l.numbers().isEmpty())
                && column.texts().stream().anyMatch(t -> t.contains("."));
    }

    /** Finds the way of writing and gives each number column its values. */
    void study() {
        List<Column> numeric = columns.stream().filter(this::isNumeric).toList();
        for (Column column : numeric) {
            for (int row = 0; row < column.texts().size(); row++) {
                if (!isStored(column, row)) {
                    finder.add(column.texts().get(row));
                }
            }
        }
        for (Grid.Line line : table.others()) {
            for (Column column : numeric) {
                if (!line.numbers().get(column.index())
                        && !DateFinder.isLike(line.cell(column.index()))) {
                    finder.add(line.cell(column.index()));
                }
            }
        }
        Optional<NumberFinder.Found> found = finder.find();
        if (found.isEmpty()) {
            findings.unsound(
                    "numbers: found amounts written in more than one way; expected one decimal mark throughout, such as 1234.50");
            return;
        }
        numbers = found.get().numbers();
        found.get().other().ifPresent(other -> askMark(numeric, other));
        boolean marked =
                found.get().marked()
                        || besideMarked
                        || numeric.stream().anyMatch(this::storesDecimals);
        if (!marked) {
            askUnit(numeric);
        }
        numeric.forEach(this::read);
    }

    private boolean isStored(Column column, int row) {
        return table.body().get(row).numbers().get(column.index());
    }

    private boolean isNumeric(Column column) {
        if (column.role().isNumber()) {
            return !column.stated().isEmpty();
        }
        if (column.role() != Role.NONE || column.meant().isPresent()) {
            return false;
        }
        List<String> stated = column.stated();
        long good = stated.stream().filter(text::isNumber).count();
        boolean money =
                stated.stream()
                        .anyMatch(s -> text.of(s).filter(NumberStudy::isDressed).isPresent());
        return !stated.isEmpty() && good * 10 >= stated.size() * 8L && money;
    }

    /** Whether a number without a column's name to say so looks like money. */
    private static boolean isDressed(NumberText.Dress dress) {
        return !dress.unit().isEmpty()
                || dress.trailing()
                || dress.brackets()
                || dress.letters()
                || dress.digits().matches(".*[.,]\\d{1,2}");
    }

    private void askMark(List<Column> numeric, Numbers other) {
        String example =
                numeric.stream()
                        .flatMap(c -> c.stated().stream())
                        .filter(
                                t ->
                                        new AmountReader(numbers).read(t)
                                                != new AmountReader(other).read(t))
                        .findFirst()
                        .orElse("");
        findings.ask(
                        new Question(
                                "decimal-mark",
                                "every number can be read in two ways: is %s %s or %s? answer with the decimal mark"
                                        .formatted(
                                                Problem.quoted(example),
                                                new Amount(new AmountReader(numbers).read(example)),
                                                new Amount(new AmountReader(other).read(example))),
                                List.of(".", ","),
                                true))
                .ifPresent(
                        mark ->
                                numbers =
                                        mark.equals(String.valueOf(numbers.decimal()))
                                                ? numbers
                                                : other);
    }

    /** Numbers that show no decimals are whole pounds, or pence. */
    private void askUnit(List<Column> numeric) {
        boolean names =
                numeric.stream().anyMatch(c -> words.isLabel(c.name(), "minor"))
                        || table.preamble().stream()
                                .anyMatch(
                                        l ->
                                                l.cells().stream()
                                                        .anyMatch(c -> words.isLabel(c, "minor")));
        if (names) {
            setMinor("minor");
        } else if (finder.units().isEmpty()) {
            findings.ask(
                            new Question(
                                    "unit",
                                    "no amount shows decimals: are they in the main unit (pounds) or the smallest (pence)?",
                                    List.of("main", "minor"),
                                    true))
                    .ifPresent(this::setMinor);
        }
    }

    private void setMinor(String unit) {
        if (unit.equals("minor")) {
            numbers =
                    new Numbers(
                            numbers.decimal(),
                            numbers.thousands(),
                            numbers.trailingMinus(),
                            numbers.brackets(),
                            numbers.plus(),
                            numbers.letters(),
                            2,
                            numbers.units());
        }
    }

    private void read(Column column) {
        AmountReader reader = new AmountReader(numbers);
        long[] values = new long[column.texts().size()];
        for (int row = 0; row < values.length; row++) {
            String cell = column.texts().get(row);
            long value =
                    cell.isEmpty() || NumberText.isNothing(cell)
                            ? 0
                            : isStored(column, row) ? reader.readNumber(cell) : reader.read(cell);
            values[row] = value == AmountReader.BAD ? 0 : value;
        }
        column.setValues(values);
    }

    /** Texts in number columns that mean an empty cell. */
    Set<String> blanks() {
        Set<String> blanks = new LinkedHashSet<>();
        for (Column column : columns) {
            if (column.hasValues()) {
                column.texts().stream().filter(NumberText::isNothing).forEach(blanks::add);
            }
        }
        return blanks;
    }

    /** The currency the file states outside a column of its own; asked where it states several. */
    Optional<String> currency() {
        Set<String> codes = new LinkedHashSet<>(text.codes(finder.units()));
        List<String> places = new ArrayList<>();
        columns.stream().filter(Column::hasValues).forEach(c -> places.add(c.name()));
        table.preamble().forEach(l -> places.addAll(l.cells()));
        for (String place : places) {
            for (String word : place.split("[^\\p{L}\\p{Sc}]+", -1)) {
                if (word.matches("GBP|EUR|USD|PLN|CHF|SEK|DKK|NOK|CZK|HUF|RON|JPY|AUD|CAD")) {
                    codes.add(word);
                } else if (words.currencies().containsKey(word)) {
                    codes.add(words.currencies().getOrDefault(word, ""));
                }
            }
        }
        boolean column = columns.stream().anyMatch(c -> c.role() == Role.CURRENCY);
        boolean several = !column && CurrencySigns.tell(columns, table.body(), text, findings);
        if (column || codes.isEmpty() || several) {
            return Optional.empty();
        }
        if (codes.size() == 1 && !codes.contains("")) {
            return codes.stream().findFirst();
        }
        codes.remove("");
        return findings.ask(
                new Question(
                        "currency",
                        "the file shows %s; which one currency are its amounts in?"
                                .formatted(
                                        codes.isEmpty()
                                                ? "a sign that several currencies share"
                                                : "more than one currency"),
                        List.of(),
                        true));
    }
}
