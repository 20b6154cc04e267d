package quarterfold.ledger;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** A list of goods that the owner keeps beside the book: every row, every problem with its line. */
final class GoodsList {
    private static final CSVFormat FORMAT =
            CSVFormat.DEFAULT.builder().setTrim(true).setIgnoreEmptyLines(true).get();

    private final String place;
    private final String text;
    private final List<String> columns;
    private final String example;
    private final List<String> problems = new ArrayList<>();

    /** Takes a row that has every column. */
    interface Rows {
        void row(CSVRecord record, long line);
    }

    /**
     * @param place the file's name, for messages
     * @param example a good row, as the file would have it
     */
    GoodsList(String place, String text, List<String> columns, String example) {
        this.place = place;
        this.text = text;
        this.columns = columns;
        this.example = example;
    }

    /** The text of a list. */
    static String text(Path file) throws LedgerException {
        try {
            return Files.readString(file);
        } catch (CharacterCodingException e) {
            throw new LedgerException(
                    LedgerException.Fault.BAD_INPUT,
                    file.getFileName() + ": found bytes that are not UTF-8; save the file as UTF-8",
                    e);
        } catch (IOException e) {
            throw LedgerException.file(file, "be read", e);
        }
    }

    /**
     * Reads the list through.
     *
     * @throws LedgerException listing every problem, one a line, if there is any
     */
    void read(Rows rows) {
        try (StringReader in = new StringReader(text);
                CSVParser parser = CSVParser.builder().setReader(in).setFormat(FORMAT).get()) {
            long line = 1;
            for (CSVRecord record : parser) {
                if (record.getRecordNumber() == 1) {
                    header(record);
                } else if (record.size() == columns.size()) {
                    rows.row(record, line);
                } else {
                    problems.add(
                            "%s:%d: found %d columns; expected %d, such as %s"
                                    .formatted(
                                            place, line, record.size(), columns.size(), example));
                }
                line = parser.getCurrentLineNumber() + 1;
            }
            if (parser.getRecordNumber() == 0) {
                problems.add(place + ":1: found an empty file; expected the header " + header());
            }
        } catch (CSVException | UncheckedIOException e) {
            problems.add(place + ": found text that is not CSV (" + e.getMessage() + ")");
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a text does not fail to be read
        }
        if (!problems.isEmpty()) {
            throw new LedgerException(LedgerException.Fault.BAD_INPUT, String.join("\n", problems));
        }
    }

    private String header() {
        return String.join(",", columns);
    }

    private void header(CSVRecord record) {
        List<String> found = record.toList();
        if (!found.equals(columns)) {
            problems.add(
                    "%s:1: found the header %s; expected %s"
                            .formatted(place, String.join(",", found), header()));
        }
    }

    /** How many problems there are so far. */
    int problems() {
        return problems.size();
    }

    /** A day, or the open one where the cell is empty; empty where it is no day. */
    Optional<LocalDate> day(long line, String column, String text, LocalDate open) {
        if (text.isEmpty()) {
            return Optional.of(open);
        }
        try {
            return Optional.of(LocalDate.parse(text));
        } catch (DateTimeException e) {
            problem(line, column, text, "year-month-day or nothing, such as 2024-01-01");
            return Optional.empty();
        }
    }

    void problem(long line, String column, String found, String expected) {
        problems.add(
                "%s:%d [%s]: found '%s'; expected %s"
                        .formatted(place, line, column, found, expected));
    }
}
