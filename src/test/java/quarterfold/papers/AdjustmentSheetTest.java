package quarterfold.papers;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a return takes up beside its entries, in the workbook and the summary. */
class AdjustmentSheetTest {

    @TempDir Path folder;

    private XSSFWorkbook written(ListPack pack) throws IOException {
        WorkingPapers.write(pack, folder.resolve("papers"));
        try (InputStream in = Files.newInputStream(folder.resolve("papers/workbook.xlsx"))) {
            return new XSSFWorkbook(in);
        }
    }

    private static List<String> row(XSSFSheet sheet, int number) {
        DataFormatter format = new DataFormatter();
        return IntStream.range(0, sheet.getRow(number).getLastCellNum())
                .mapToObj(c -> format.formatCellValue(sheet.getRow(number).getCell(c)))
                .toList();
    }

    @Test
    void aRowForEach() throws IOException {
        try (XSSFWorkbook book = written(Samples.adjusted())) {
            XSSFSheet sheet = book.getSheet("Adjustments");
            assertThat(row(sheet, 3))
                    .containsExactly(
                            "What",
                            "About",
                            "How it was worked out",
                            "Rests on",
                            "Value",
                            "VAT",
                            "Claimed VAT",
                            "Box 1",
                            "Box 2",
                            "Box 4",
                            "Box 6",
                            "Box 7",
                            "Box 8",
                            "Box 9");
            assertThat(row(sheet, 4).subList(0, 4))
                    .containsExactly(
                            "Flat rate",
                            "2026-07-01 to 2026-09-30",
                            "Turnover with VAT 9999.99 at 7.5% is 749.9993.",
                            "VAT Regulations 1995");
            assertThat(sheet.getRow(4).getCell(7).getNumericCellValue()).isEqualTo(749.9993);
            assertThat(sheet.getRow(5).getCell(2).getStringCellValue())
                    .isEqualTo("=1+1 is the year's settlement.");
            assertThat(sheet.getRow(5).getCell(2).getCellType()).isEqualTo(CellType.STRING);
            assertThat(book.getSheet("Return").getRow(10).getCell(2).getCellFormula())
                    .isEqualTo(
                            "ROUND(SUM(Sales!R5:R6,Purchases!R5:R5,Imports!R5:R5,'Other money'!R5:R5,Adjustments!H5:H7),4)");
        }
    }

    /** A total that entries add to has its column; one that none does has not. */
    @Test
    void totalsStandBesideTheBoxes() throws IOException {
        try (XSSFWorkbook book = written(Samples.adjusted())) {
            XSSFSheet sales = book.getSheet("Sales");
            assertThat(row(sales, 3))
                    .contains("Box 9", "Turnover with VAT")
                    .doesNotContain("Relevant goods with VAT");
            int column = row(sales, 3).indexOf("Turnover with VAT");
            assertThat(sales.getRow(2).getCell(column).getNumericCellValue()).isEqualTo(9999.99);
        }
    }

    @Test
    void noneHasNoSheet() throws IOException {
        try (XSSFWorkbook book = written(Samples.small())) {
            assertThat(book.getSheet("Adjustments")).isNull();
        }
    }
}
