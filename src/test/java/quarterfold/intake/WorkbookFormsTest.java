package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.poi.hssf.record.crypto.Biff8EncryptionKey;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.RichTextString;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.ledger.Line;
import quarterfold.money.Amount;

/** Workbooks of both formats, and what of them a person who looks at them would not see. */
class WorkbookFormsTest {
    private static final Object[] HEADER = {"date", "kind", "gross", "rate", "description"};

    @TempDir Path folder;
    private Desk desk;

    @BeforeEach
    void open() {
        desk = new Desk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private static Workbook workbook(String name) {
        return name.endsWith(".xls") ? new HSSFWorkbook() : new XSSFWorkbook();
    }

    private static void row(Sheet sheet, int number, Object... cells) {
        Row row = sheet.createRow(number - 1);
        for (int i = 0; i < cells.length; i++) {
            Cell cell = row.createCell(i);
            if (cells[i] instanceof Double number1) {
                cell.setCellValue(number1);
            } else if (cells[i] instanceof Boolean flag) {
                cell.setCellValue(flag);
            } else if (cells[i] instanceof LocalDate day) {
                cell.setCellValue(day);
                style(cell, "dd/mm/yyyy");
            } else if (cells[i] instanceof LocalDateTime time) {
                cell.setCellValue(time);
                style(cell, "dd/mm/yyyy hh:mm");
            } else if (cells[i] instanceof RichTextString rich) {
                cell.setCellValue(rich);
            } else {
                cell.setCellValue(cells[i].toString());
            }
        }
    }

    private static void style(Cell cell, String format) {
        Workbook workbook = cell.getSheet().getWorkbook();
        CellStyle style = workbook.createCellStyle();
        style.setDataFormat(workbook.createDataFormat().getFormat(format));
        cell.setCellStyle(style);
    }

    private Path save(Workbook workbook, String name) throws IOException {
        Path file = desk.path(name);
        try (workbook;
                OutputStream out = Files.newOutputStream(file)) {
            workbook.write(out);
        }
        return file;
    }

    /** A sheet of two sales, of 1.00 and 2.00. */
    private static Sheet sales(Workbook workbook, String name) {
        Sheet sheet = workbook.createSheet(name);
        row(sheet, 1, HEADER);
        row(sheet, 2, LocalDate.of(2026, 9, 29), "sale", 1.0, "20", "one");
        row(sheet, 3, LocalDate.of(2026, 9, 30), "sale", 2.0, "20", "two");
        return sheet;
    }

    private List<String> raised(Path file) {
        ImportResult result = desk.enter(file);
        assertThat(result.problems()).isEmpty();
        return ((ImportResult.Entered) result)
                .queries().stream().map(q -> q.code() + " | " + q.question()).toList();
    }

    /** Whatever a cell is, both formats say what the same text says. */
    @ParameterizedTest
    @ValueSource(strings = {"cells.xls", "cells.xlsx"})
    void everyFormOfCell(String name) throws IOException {
        Workbook workbook = workbook(name);
        Sheet sheet = workbook.createSheet("Sales");
        row(sheet, 1, "date", "kind", "gross", "rate", "description", "Flag", "Spaced ");
        Font bold = workbook.createFont();
        bold.setBold(true);
        RichTextString rich = workbook.getCreationHelper().createRichTextString("half bold");
        rich.applyFont(0, 4, bold);
        row(sheet, 2, LocalDate.of(2026, 9, 30), "sale", 120.1, 0.2, rich, true, "  x ");
        style(sheet.getRow(1).getCell(3), "0%");
        row(
                sheet,
                3,
                LocalDateTime.of(2026, 9, 30, 12, 30),
                " sale ",
                "7.50",
                "20",
                "text",
                false,
                "");
        row(sheet, 4, "2026-10-01", "sale", 0.0, 20.0, "formula", "", "");
        sheet.getRow(3).getCell(2).setCellFormula("1.5*2");
        workbook.getCreationHelper()
                .createFormulaEvaluator()
                .evaluateFormulaCell(sheet.getRow(3).getCell(2));
        desk.enter(save(workbook, name));
        List<Line> sheetLines = desk.lines();
        desk.enter(
                "same.csv",
                """
                date,kind,gross,rate,description,Flag,Spaced
                2026-09-30,sale,120.1,20%,half bold,true,x
                2026-09-30,sale,7.50,20,text,false,
                2026-10-01,sale,3,20,formula,,
                """);

        assertThat(sheetLines).hasSize(3);
        assertThat(desk.lines().subList(3, 6)).isEqualTo(sheetLines);
    }

    /** ECMA-376 part 1, 18.17.4.1: the 1904 system begins 1,462 days later than the other. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void bothDateSystems(boolean old) throws IOException {
        Workbook workbook = old ? new HSSFWorkbook() : new XSSFWorkbook();
        Sheet sheet = workbook.createSheet("S");
        row(sheet, 1, HEADER);
        row(sheet, 2, 46_295.0 - 1_462, "sale", 1.0, "20", "");
        style(sheet.getRow(1).getCell(0), "yyyy-mm-dd");
        if (workbook instanceof XSSFWorkbook xlsx) {
            xlsx.getCTWorkbook().getWorkbookPr().setDate1904(true);
        } else {
            var records = ((HSSFWorkbook) workbook).getInternalWorkbook().getRecords();
            records.stream()
                    .filter(r -> r instanceof org.apache.poi.hssf.record.DateWindow1904Record)
                    .forEach(
                            r ->
                                    ((org.apache.poi.hssf.record.DateWindow1904Record) r)
                                            .setWindowing((short) 1));
        }
        desk.enter(save(workbook, "from1904." + (old ? "xls" : "xlsx")));

        assertThat(desk.lines())
                .extracting(Line::taxPoint)
                .containsExactly(LocalDate.of(2026, 9, 30));
    }

    @Test
    void learningTellsOfASecondSheetThatFits() throws IOException {
        Workbook workbook = workbook("months.xlsx");
        for (String month : new String[] {"July", "August"}) {
            Sheet sheet = workbook.createSheet(month);
            String[][] rows = {
                {"Date", "Order", "Type", "Amount (GBP)"},
                {"2026-07-13", "A1", "Sale", "10.00"},
                {"2026-07-14", "A2", "Sale", "20.00"}
            };
            for (int i = 0; i < rows.length; i++) {
                Row row = sheet.createRow(i);
                for (int j = 0; j < rows[i].length; j++) {
                    row.createCell(j).setCellValue(rows[i][j]);
                }
            }
        }

        Learned learned =
                new Learner(Desk.settings())
                        .learn(save(workbook, "months.xlsx"), "months", Map.of());

        assertThat(learned.isProved()).isTrue();
        assertThat(learned.notes())
                .containsExactly(
                        "the sheets 'July', 'August' have the same columns, and only one was looked at: import takes one from a file, such as a copy of the workbook for each of them, without the others");
    }

    @ParameterizedTest
    @ValueSource(strings = {"two.xls", "two.xlsx"})
    void twoSheetsThatFit(String name) throws IOException {
        Workbook workbook = workbook(name);
        sales(workbook, "July");
        sales(workbook, "August");
        workbook.createSheet("About").createRow(0).createCell(0).setCellValue("x");
        workbook.setSheetVisibility(1, SheetVisibility.VERY_HIDDEN);

        assertThat(desk.problems(save(workbook, name)))
                .containsExactly(
                        name
                                + ": found 2 sheets that fit the layout plain-sheet: 'July', 'August' (hidden); expected one in a file, such as a copy of the workbook for each of them, without the others");
        assertThat(desk.enter(desk.path(name), "plain-sheet").problems())
                .extracting(Problem::toString)
                .containsExactly(
                        name
                                + ": found 2 sheets that fit the layout plain-sheet: 'July', 'August' (hidden); expected one in a file, such as a copy of the workbook for each of them, without the others");
    }

    @ParameterizedTest
    @ValueSource(strings = {"hidden.xls", "hidden.xlsx"})
    void whatIsHiddenIsReadAndAsked(String name) throws IOException {
        Workbook workbook = workbook(name);
        Sheet sheet = sales(workbook, "Sales");
        for (int i = 4; i < 30; i++) {
            row(sheet, i, "2026-09-30", "sale", 1.0, "20", "");
        }
        sheet.getRow(2).setZeroHeight(true);
        sheet.getRow(3).setZeroHeight(true);
        sheet.getRow(7).setZeroHeight(true);
        sheet.getRow(0).setZeroHeight(true);
        sheet.setColumnHidden(4, true);
        sheet.setColumnHidden(9, true);
        workbook.createSheet("First");
        workbook.setActiveSheet(1);
        workbook.setSheetHidden(0, true);

        assertThat(raised(save(workbook, name)))
                .containsExactly(
                        "hidden-in-sheet | sheet 'Sales' is hidden, and was read: is it the one that is meant?",
                        "hidden-in-sheet | sheet 'Sales' hides rows 3 to 4 and 8, column E, which were read like the others: is their money meant?");
        assertThat(desk.lines()).hasSize(28);
    }

    @Test
    void manyRunsOfHiddenRowsAreNotAllNamed() {
        SheetLook look = new SheetLook();
        for (int i = 1; i <= 30; i++) {
            look.row(i, i % 2 == 0, 3);
        }

        assertThat(look.hidden(3))
                .contains(
                        "rows 4 and 6 and 8 and 10 and 12 and 14 and 16 and 18 and 20 and 22 and 4 more");
        assertThat(new SheetLook().hidden(1)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"others.xls", "others.xlsx"})
    void aSheetOfMoneyThatIsNotRead(String name) throws IOException {
        Workbook workbook = workbook(name);
        sales(workbook, "Sales");
        Sheet other = workbook.createSheet("Refunds");
        row(other, 1, "Day", "Sum");
        row(other, 2, LocalDate.of(2026, 9, 30), 12.0);
        row(workbook.createSheet("About"), 1, "Made for the accountant", 7.0);

        assertThat(raised(save(workbook, name)))
                .containsExactly(
                        "sheet-not-read | sheet 'Refunds' has dated amounts and was not read, sheet 'Sales' was: is its money in there already, or is it to be entered too?");
    }

    @ParameterizedTest
    @ValueSource(strings = {"merged.xls", "merged.xlsx"})
    void rowsMergedIntoOne(String name) throws IOException {
        Workbook workbook = workbook(name);
        Sheet sheet = sales(workbook, "Sales");
        sheet.addMergedRegion(new CellRangeAddress(1, 2, 4, 4));

        assertThat(desk.problems(save(workbook, name)))
                .containsExactly(
                        name
                                + ":Sales!E2:E3: found cells merged over several rows, of which only the first has the value; expected each row with its own, such as the merge undone and the value copied down");
    }

    /** A merge within a row, above the table or below it, hides nothing of any row. */
    @ParameterizedTest
    @ValueSource(strings = {"merged.xls", "merged.xlsx"})
    void mergesThatDoNoHarm(String name) throws IOException {
        Workbook workbook = workbook(name);
        Sheet sheet = sales(workbook, "Sales");
        sheet.addMergedRegion(new CellRangeAddress(1, 1, 4, 6));
        sheet.addMergedRegion(new CellRangeAddress(4, 9, 0, 4));
        sheet.addMergedRegion(new CellRangeAddress(2, 3, 4, 4));

        assertThat(raised(save(workbook, name))).isEmpty();
        assertThat(desk.lines()).hasSize(2);
        SheetLook look = new SheetLook();
        look.row(1, false, 1);
        look.row(2, false, 1);
        look.row(3, false, 1);
        look.merged(new CellRangeAddress(0, 1, 0, 0));
        assertThat(look.mergedRows(2)).as("a header of two rows").isEmpty();
        assertThat(look.mergedRows(1)).isEqualTo(Optional.of("A1:A2"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"wide.xls", "wide.xlsx"})
    void theWidestSheetThereMayBe(String name) throws IOException {
        Workbook workbook = workbook(name);
        Sheet sheet = sales(workbook, "Sales");
        int last = workbook instanceof HSSFWorkbook ? 255 : 16_383;
        sheet.getRow(0).createCell(last).setCellValue("Far");
        sheet.getRow(1).createCell(last).setCellValue("away");
        desk.enter(save(workbook, name));

        assertThat(desk.lines()).extracting(Line::notes).containsExactly("Far: away", "");
    }

    @ParameterizedTest
    @ValueSource(strings = {"error.xls", "error.xlsx"})
    void aProblemNamesSheetAndCell(String name) throws IOException {
        Workbook workbook = workbook(name);
        Sheet sheet = sales(workbook, "Sales");
        sheet.getRow(2).getCell(2).setCellValue("two");

        assertThat(desk.problems(save(workbook, name)))
                .containsExactly(
                        name
                                + ":Sales!C3 [gross]: found 'two'; expected an amount with at most 4 decimals, such as 1234.50");
    }

    @Test
    void anOldWorkbookWithAPassword() throws IOException {
        HSSFWorkbook workbook = new HSSFWorkbook();
        sales(workbook, "Sales");
        Path file;
        Biff8EncryptionKey.setCurrentUserPassword("secret");
        try {
            file = save(workbook, "locked.xls");
        } finally {
            Biff8EncryptionKey.setCurrentUserPassword(null);
        }

        assertThat(desk.problems(file))
                .containsExactly(
                        "locked.xls: found a workbook that is locked with a password; expected one that opens without, such as the same workbook saved without its password");
    }

    @Test
    void anOldOfficeFileThatIsNoWorkbook() throws IOException {
        Path file = desk.path("letter.xls");
        try (POIFSFileSystem container = new POIFSFileSystem();
                OutputStream out = Files.newOutputStream(file)) {
            container.createDocument(
                    new java.io.ByteArrayInputStream(new byte[] {1}), "WordDocument");
            container.writeFilesystem(out);
        }

        assertThat(desk.problems(file))
                .containsExactly(
                        "letter.xls: found an old office file that is not a sound workbook; expected a text table or a workbook, such as the same sheet saved as .xlsx or .csv");
    }

    @Test
    void anOldWorkbookCutOff() throws IOException {
        HSSFWorkbook workbook = new HSSFWorkbook();
        sales(workbook, "Sales");
        Path file = save(workbook, "cut.xls");
        byte[] bytes = Files.readAllBytes(file);

        assertThat(
                        desk.problems(
                                Files.write(
                                        file, java.util.Arrays.copyOf(bytes, bytes.length / 2))))
                .containsExactly(
                        "cut.xls: found an old office file that is not a sound workbook; expected a text table or a workbook, such as the same sheet saved as .xlsx or .csv");
    }

    /** Numbers and money of both formats, all there may be of some kinds, add up alike. */
    @Test
    void amountsOfBothFormatsAreTheSame() throws IOException {
        Map<String, Amount> sums = new java.util.TreeMap<>();
        for (String name : List.of("many.xls", "many.xlsx")) {
            Workbook workbook = workbook(name);
            Sheet sheet = workbook.createSheet("S");
            row(sheet, 1, HEADER);
            for (int i = 0; i < 1_000; i++) {
                row(sheet, i + 2, "2026-09-30", "sale", i / 100.0, "20", name + i);
            }
            ImportResult.Entered entered = (ImportResult.Entered) desk.enter(save(workbook, name));
            sums.put(name, entered.source().moneyEntered());
        }

        assertThat(sums.values()).containsOnly(Amount.of("4995.00"));
    }
}
