package quarterfold.papers;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.law.Box;
import quarterfold.law.TableFile;
import quarterfold.ledger.Kind;
import quarterfold.period.BoxFigure;
import quarterfold.period.VatReturn;

class WorkbookTest {

    @TempDir Path folder;

    @Test
    void everyCellOfASmallQuarter() throws IOException {
        try (XSSFWorkbook book = written(Samples.small(), Sheets.ROW_LIMIT)) {
            Golden.check("small-workbook.txt", withoutTheLawsOwnTexts(dump(book)));
        }
    }

    @Test
    void textsThatLookLikeFormulasStayTexts() throws IOException {
        try (XSSFWorkbook book = written(Samples.small(), Sheets.ROW_LIMIT)) {
            XSSFSheet sales = book.getSheet("Sales");
            List<XSSFCell> hostile =
                    Stream.of(3, 4, 5).map(c -> sales.getRow(5).getCell(c)).toList();

            assertThat(hostile)
                    .extracting(XSSFCell::getStringCellValue)
                    .containsExactly(
                            "+1 / @x",
                            "=HYPERLINK(\"http://invalid.example\",\"pay here\")",
                            "-2+3");
            assertThat(hostile).extracting(XSSFCell::getCellType).containsOnly(CellType.STRING);
            assertThat(hostile).allMatch(c -> c.getCellStyle().getQuotePrefixed());
            for (String name : List.of("Sales", "Purchases", "Imports", "Other money")) {
                assertThat(rowsWithFormulas(book.getSheet(name))).containsExactly(2);
            }
        }
    }

    @Test
    void charactersXmlCannotHoldAreShownAsReplaced() throws IOException {
        try (XSSFWorkbook book = written(Samples.small(), Sheets.ROW_LIMIT)) {
            assertThat(book.getSheet("Sales").getRow(6).getCell(5).getStringCellValue())
                    .isEqualTo("茶壺 teapot _x0041_ \uFFFD\uFFFD end");
        }
    }

    @Test
    void moreEntriesThanASheetHoldsGoOnAndTheFormulasFollow() throws IOException {
        try (XSSFWorkbook book = written(Samples.busy(100), 50)) {
            assertThat(names(book))
                    .containsExactly(
                            "Return",
                            "Sales",
                            "Sales 2",
                            "Sales 3",
                            "Purchases",
                            "Imports",
                            "Other money",
                            "VAT account",
                            "Queries",
                            "Sources",
                            "Set aside",
                            "Law used");
            assertThat(book.getSheet("Sales").getLastRowNum()).isEqualTo(49);
            assertThat(book.getSheet("Sales 2").getRow(4).getCell(0).getNumericCellValue())
                    .isEqualTo(47);
            assertThat(book.getSheet("Sales 3").getLastRowNum()).isEqualTo(3 + 8);
            assertThat(book.getSheet("Return").getRow(10).getCell(2).getCellFormula())
                    .isEqualTo(
                            "ROUND(SUM(Sales!R5:R50,'Sales 2'!R5:R50,'Sales 3'!R5:R12,"
                                    + "Purchases!R5:R30,Imports!R5:R7,'Other money'!R5:R10),4)");
            assertThat(book.getSheet("Sales 2").getRow(2).getCell(17).getCellFormula())
                    .isEqualTo("SUBTOTAL(109,R5:R50)");
        }
    }

    @Test
    void exactlyFullSheetNeedsNoSecond() throws IOException {
        try (XSSFWorkbook book = written(Samples.busy(46), 50)) {
            assertThat(names(book)).contains("Sales").doesNotContain("Sales 2");
        }
    }

    @Test
    void quarterWithoutEntriesSaysSo() throws IOException {
        ListPack pack = new Samples.Quarter().pack("Nothing Yet", VatReturn.Status.DRAFT);
        try (XSSFWorkbook book = written(pack, Sheets.ROW_LIMIT)) {
            assertThat(book.getSheet("Return").getRow(0).getCell(0).getStringCellValue())
                    .isEqualTo("VAT return, draft");
            assertThat(book.getSheet("Return").getRow(7).getCell(0).getStringCellValue())
                    .isEqualTo("Nothing to pay or reclaim; the return is due by 7 November 2026");
            assertThat(book.getSheet("Sales").getRow(4).getCell(0).getStringCellValue())
                    .isEqualTo("No entries of this kind in the period.");
        }
    }

    @Test
    void longestTextIsCutAndSaysSo() throws IOException {
        String words = "x".repeat(40_000);
        ListPack pack =
                new Samples.Quarter()
                        .source("sales.csv", "plain-sheet", 1, 1, "1.00")
                        .with("", "", "", words)
                        .sale(Kind.SALE, "1.00", "20")
                        .pack("Long Words", VatReturn.Status.DRAFT);
        try (XSSFWorkbook book = written(pack, Sheets.ROW_LIMIT)) {
            assertThat(book.getSheet("Sales").getRow(4).getCell(5).getStringCellValue())
                    .hasSize(CellText.LONGEST)
                    .endsWith("xxx … (cut here; the source file has the whole text)");
        }
    }

    private XSSFWorkbook written(ListPack pack, int rowLimit) throws IOException {
        Path papers = folder.resolve("papers");
        WorkingPapers.write(pack, papers, rowLimit);
        try (InputStream in = Files.newInputStream(papers.resolve("workbook.xlsx"))) {
            return new XSSFWorkbook(in);
        }
    }

    private static List<String> names(XSSFWorkbook book) {
        List<String> names = new ArrayList<>();
        book.forEach(sheet -> names.add(sheet.getSheetName()));
        return names;
    }

    private static List<Integer> rowsWithFormulas(Sheet sheet) {
        List<Integer> rows = new ArrayList<>();
        for (Row row : sheet) {
            for (Cell cell : row) {
                if (cell.getCellType() == CellType.FORMULA && !rows.contains(row.getRowNum())) {
                    rows.add(row.getRowNum());
                }
            }
        }
        return rows;
    }

    /** The tables' digests and citations change with the tables; which of them it is must not. */
    private static String withoutTheLawsOwnTexts(String dump) {
        ListPack pack = Samples.small();
        String text = dump;
        for (TableFile file : pack.law().files()) {
            text = text.replace(file.sha256(), "(digest of " + file.name() + ")");
        }
        for (BoxFigure figure : pack.vatReturn().boxes()) {
            Box box = figure.box();
            text =
                    text.replaceFirst(
                            Pattern.quote("'" + box.source()), "'(source of box " + box.id() + ")");
        }
        return text;
    }

    /** Every cell that holds something, as a person reviews it: place, formula, value. */
    private static String dump(XSSFWorkbook book) {
        StringBuilder text = new StringBuilder();
        for (Sheet sheet : book) {
            text.append("== ").append(sheet.getSheetName()).append('\n');
            for (Row row : sheet) {
                for (Cell cell : row) {
                    if (cell.getCellType() != CellType.BLANK) {
                        text.append(cell.getAddress()).append(' ').append(shown(cell)).append('\n');
                    }
                }
            }
        }
        return text.toString();
    }

    private static String shown(Cell cell) {
        if (cell.getCellType() == CellType.FORMULA) {
            return "=" + cell.getCellFormula() + " -> " + ((XSSFCell) cell).getRawValue();
        }
        return cell.getCellType() == CellType.STRING
                ? "'" + cell.getStringCellValue()
                : ((XSSFCell) cell).getRawValue();
    }
}
