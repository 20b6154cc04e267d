package quarterfold;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** The demo's files, read without the program. */
final class DemoFiles {

    static final Path FOLDER = Path.of("fixtures", "demo");

    private DemoFiles() {}

    /** The money of a file by its own amounts, in being positive. */
    static BigDecimal money(String file) throws IOException {
        return file.startsWith("norrowby") ? netToYou(file) : sum(file);
    }

    /** The sum of a file's own amounts; a credit note and what is paid are taken away. */
    private static BigDecimal sum(String file) throws IOException {
        BigDecimal sum = BigDecimal.ZERO;
        for (CSVRecord row : rows(FOLDER.resolve(file))) {
            sum =
                    switch (file) {
                        case "supplier-invoices.csv" ->
                                row.get("What for").endsWith("credit")
                                        ? sum.add(new BigDecimal(row.get("Gross")))
                                        : sum.subtract(new BigDecimal(row.get("Gross")));
                        case "import-vat-certificates.csv" ->
                                sum.subtract(new BigDecimal(row.get("VAT paid")));
                        case "postponed-import-statements.csv" -> sum; // nothing is paid
                        case "receipts.csv" -> sum.subtract(new BigDecimal(row.get("Total paid")));
                        case "other-money.csv" -> sum.add(new BigDecimal(row.get("gross")));
                        default -> sum.add(new BigDecimal(row.get("Amount")));
                    };
        }
        return sum;
    }

    private static BigDecimal netToYou(String file) throws IOException {
        String text = Files.readString(FOLDER.resolve(file), Charset.forName("windows-1252"));
        return text.lines()
                .skip(4)
                .map(line -> line.split(";", -1)[18].replace(".", "").replace(',', '.'))
                .filter(cell -> !cell.isEmpty())
                .map(BigDecimal::new)
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    static List<CSVRecord> rows(Path file) throws IOException {
        CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
        String text = Files.readString(file, StandardCharsets.UTF_8).replaceFirst("^\uFEFF", "");
        try (CSVParser rows = CSVParser.parse(text, format)) {
            return rows.getRecords();
        }
    }
}
