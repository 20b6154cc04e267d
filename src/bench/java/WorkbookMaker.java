import java.io.IOException;
import java.io.OutputStream;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;

/**
 * Writes a text table as a workbook with shared texts, as spreadsheet programs do; amounts become
 * numbers. Run as {@code WorkbookMaker CSV XLSX}.
 */
public final class WorkbookMaker {

    public static void main(String[] args) throws IOException {
        try (Reader in = Files.newBufferedReader(Path.of(args[0]), StandardCharsets.UTF_8);
                CSVParser parser =
                        CSVParser.builder().setReader(in).setFormat(CSVFormat.RFC4180).get();
                SXSSFWorkbook workbook = new SXSSFWorkbook(null, 100, false, true);
                OutputStream out = Files.newOutputStream(Path.of(args[1]))) {
            Sheet sheet = workbook.createSheet("Statement");
            for (CSVRecord record : parser) {
                Row row = sheet.createRow((int) record.getRecordNumber() - 1);
                for (int i = 0; i < record.size(); i++) {
                    String text = record.get(i);
                    if (text.matches("-?[0-9]+\\.[0-9]{2}")) {
                        row.createCell(i).setCellValue(Double.parseDouble(text));
                    } else if (!text.isEmpty()) {
                        row.createCell(i).setCellValue(text);
                    }
                }
            }
            workbook.write(out);
        }
    }
}
