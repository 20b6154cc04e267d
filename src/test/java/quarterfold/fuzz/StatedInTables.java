package quarterfold.fuzz;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * The sum of the one column of amounts of those shipped layouts that have one, in which every row
 * has the same sign.
 */
final class StatedInTables {
    private record Sum(String column, int sign) {}

    private static final Map<String, Sum> SUMS =
            Map.of(
                    "quaylark-statement", new Sum("Amount", 1),
                    "expenses", new Sum("Total paid", -1),
                    "import-vat-certificates", new Sum("VAT paid", -1));

    private StatedInTables() {}

    /** Of a text, by Commons CSV. */
    static Optional<BigDecimal> inText(byte[] input, String layout) {
        try (CSVParser parser =
                CSVParser.builder()
                        .setReader(new StringReader(text(input)))
                        .setFormat(CSVFormat.RFC4180)
                        .get()) {
            List<List<String>> rows = new ArrayList<>();
            parser.forEach(record -> rows.add(record.toList()));
            return sum(rows, layout);
        } catch (IOException | UncheckedIOException | IllegalStateException other) {
            return Optional.empty();
        }
    }

    private static String text(byte[] input) throws CharacterCodingException {
        String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(input)).toString();
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }

    /** Of the first sheet of a workbook, by POI's own model of the whole. */
    static Optional<BigDecimal> inWorkbook(byte[] input, String layout) {
        return inModel(() -> new XSSFWorkbook(Stated.in(input)), layout);
    }

    /** The same of a workbook in the old format. */
    static Optional<BigDecimal> inOldWorkbook(byte[] input, String layout) {
        return inModel(() -> new HSSFWorkbook(Stated.in(input)), layout);
    }

    /** Reads a workbook whole. */
    private interface Model {
        Workbook read() throws IOException;
    }

    private static Optional<BigDecimal> inModel(Model model, String layout) {
        try (Workbook workbook = model.read()) {
            List<List<String>> rows = new ArrayList<>();
            Sheet sheet = workbook.getSheetAt(0);
            for (Row row : sheet) {
                List<String> texts = new ArrayList<>();
                for (int i = 0; i < row.getLastCellNum(); i++) {
                    texts.add(text(row.getCell(i)));
                }
                rows.add(texts);
            }
            return sum(rows, layout);
        } catch (IOException | RuntimeException other) { // it throws both on broken ones
            return Optional.empty();
        }
    }

    private static String text(Cell cell) {
        if (cell == null) {
            return "";
        }
        return cell.getCellType() == CellType.NUMERIC
                ? BigDecimal.valueOf(cell.getNumericCellValue()).toPlainString()
                : cell.toString();
    }

    private static Optional<BigDecimal> sum(List<List<String>> rows, String layout) {
        Sum sum = SUMS.get(layout);
        if (sum == null || rows.isEmpty()) {
            return Optional.empty();
        }
        List<String> header = rows.get(0).stream().map(String::strip).toList();
        int column = header.indexOf(sum.column());
        if (column < 0 || column != header.lastIndexOf(sum.column())) {
            return Optional.empty();
        }
        BigDecimal all = BigDecimal.ZERO;
        for (List<String> row : rows.subList(1, rows.size())) {
            String cell = column < row.size() ? row.get(column).strip() : "";
            if (cell.isEmpty()) {
                continue;
            }
            if (!cell.matches("-?[0-9]{1,12}(\\.[0-9]{1,4})?")) {
                return Optional.empty();
            }
            all = all.add(new BigDecimal(cell));
        }
        return Optional.of(all.multiply(BigDecimal.valueOf(sum.sign())));
    }
}
