package quarterfold.ledger;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Reads one product list: every row, every problem, each with its line. */
final class ProductsReader {
    private static final List<String> COLUMNS = List.of("product", "liability", "from", "to");
    private static final CSVFormat FORMAT =
            CSVFormat.DEFAULT.builder().setTrim(true).setIgnoreEmptyLines(true).get();

    private final String place;
    private final Map<String, List<Products.Dated>> products = new HashMap<>();
    private final List<String> problems = new ArrayList<>();

    ProductsReader(String place) {
        this.place = place;
    }

    Map<String, List<Products.Dated>> read(String text) {
        try (StringReader in = new StringReader(text);
                CSVParser parser = CSVParser.builder().setReader(in).setFormat(FORMAT).get()) {
            long line = 1;
            for (CSVRecord record : parser) {
                if (record.getRecordNumber() == 1) {
                    header(record);
                } else {
                    row(record, line);
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
        return products;
    }

    private static String header() {
        return String.join(",", COLUMNS);
    }

    private void header(CSVRecord record) {
        List<String> found = record.toList();
        if (!found.equals(COLUMNS)) {
            problems.add(
                    "%s:1: found the header %s; expected %s"
                            .formatted(place, String.join(",", found), header()));
        }
    }

    private void row(CSVRecord record, long line) {
        if (record.size() != COLUMNS.size()) {
            problems.add(
                    "%s:%d: found %d columns; expected %d, such as KETTLE-1,standard,2024-01-01,"
                            .formatted(place, line, record.size(), COLUMNS.size()));
            return;
        }
        String product = record.get(0);
        String liability = record.get(1);
        int before = problems.size();
        if (product.isEmpty()) {
            problem(line, "product", product, "the product's own code, such as KETTLE-1");
        }
        if (!Products.LIABILITIES.contains(liability)) {
            problem(
                    line,
                    "liability",
                    liability,
                    "one of " + String.join(", ", Products.LIABILITIES) + ", such as zero");
        }
        Optional<LocalDate> from = day(line, "from", record.get(2), LocalDate.MIN);
        Optional<LocalDate> to = day(line, "to", record.get(3), LocalDate.MAX);
        if (problems.size() == before) {
            add(line, product, new Products.Dated(liability, from.orElseThrow(), to.orElseThrow()));
        }
    }

    private void add(long line, String product, Products.Dated dated) {
        if (dated.to().isBefore(dated.from())) {
            problem(line, "to", dated.to().toString(), "a day not before " + dated.from());
            return;
        }
        List<Products.Dated> known = products.computeIfAbsent(product, p -> new ArrayList<>());
        if (known.stream().anyMatch(k -> k.covers(dated.from()) || dated.covers(k.from()))) {
            problem(
                    line,
                    "product",
                    product,
                    "days no other row of the product covers; end the earlier row first");
        }
        known.add(dated);
    }

    private Optional<LocalDate> day(long line, String column, String text, LocalDate open) {
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

    private void problem(long line, String column, String found, String expected) {
        problems.add(
                "%s:%d [%s]: found '%s'; expected %s"
                        .formatted(place, line, column, found, expected));
    }
}
