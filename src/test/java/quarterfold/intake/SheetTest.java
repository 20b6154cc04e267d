package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Line;
import quarterfold.ledger.StatedRate;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/** Workbooks written by POI; XLSX keeps numbers and dates as binary doubles, which Java's are. */
class SheetTest {
    private static final String[] HEADER = {
        "date", "kind", "gross", "rate", "business_use", "description", "order", "Extra"
    };

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

    private Path save(Workbook workbook, String name) throws IOException {
        Path file = desk.path(name);
        try (workbook;
                OutputStream out = Files.newOutputStream(file)) {
            workbook.write(out);
        }
        return file;
    }

    private static Row row(Sheet sheet, int row, Object... cells) {
        Row made = sheet.createRow(row);
        for (int i = 0; i < cells.length; i++) {
            if (cells[i] instanceof Double number) {
                made.createCell(i).setCellValue(number);
            } else if (cells[i] instanceof LocalDate day) {
                made.createCell(i).setCellValue(day);
            } else if (cells[i] instanceof LocalDateTime time) {
                made.createCell(i).setCellValue(time);
            } else if (!cells[i].equals("")) {
                made.createCell(i).setCellValue(cells[i].toString());
            }
        }
        return made;
    }

    private static void style(Workbook workbook, Row row, int column, String format) {
        CellStyle style = workbook.createCellStyle();
        style.setDataFormat(workbook.createDataFormat().getFormat(format));
        row.getCell(column).setCellStyle(style);
    }

    private static void fill(Workbook workbook) {
        row(workbook.createSheet("About"), 0, "Made for", "the accountant");
        Sheet sheet = workbook.createSheet("Sales");
        row(sheet, 0, (Object[]) HEADER);
        Row first =
                row(
                        sheet,
                        1,
                        LocalDate.of(2026, 9, 30),
                        "sale",
                        120.1,
                        0.2,
                        0.6,
                        "=1+1",
                        1001.0,
                        "x");
        style(workbook, first, 0, "dd mmm yyyy");
        style(workbook, first, 3, "0%");
        style(workbook, first, 4, "0.00%");
        style(workbook, first, 2, "#,##0");
        Row second =
                row(
                        sheet,
                        3,
                        LocalDateTime.of(2026, 9, 30, 23, 30, 5),
                        "sale",
                        0.1 + 0.2,
                        20.0,
                        "60",
                        "",
                        "O-2",
                        "");
        style(workbook, second, 0, "yyyy-mm-dd hh:mm");
        Row third = row(sheet, 4, "2026-10-01", "sale", 0.0, "", "", "", "", "");
        third.getCell(2).setCellFormula("1.5*2");
        workbook.getCreationHelper().createFormulaEvaluator().evaluateFormulaCell(third.getCell(2));
    }

    private static final String SAME =
            """
            date,kind,gross,rate,business_use,description,order,Extra
            2026-09-30,sale,120.1,20%,60%,=1+1,1001,x

            2026-09-30,sale,0.3,20,60,,O-2,
            2026-10-01,sale,3,,,,,
            """;

    @Test
    void aWorkbookSaysWhatTheSameTextSays() throws IOException {
        Workbook workbook = new XSSFWorkbook();
        fill(workbook);
        ImportResult.Entered sheet =
                (ImportResult.Entered) desk.enter(save(workbook, "sales.xlsx"));
        List<Line> fromSheet = desk.lines();
        ImportResult.Entered text = (ImportResult.Entered) desk.enter("sales.csv", SAME);
        List<Line> both = desk.lines();

        assertThat(fromSheet).hasSize(3);
        assertThat(both.subList(3, 6)).isEqualTo(fromSheet);
        assertThat(fromSheet.get(0).profile().rate()).isEqualTo(new StatedRate("20"));
        assertThat(fromSheet.get(0).profile().businessUse()).isEqualTo(Percent.of("60"));
        assertThat(fromSheet.get(1).amounts().money())
                .as("0.1 + 0.2 is 0.30000000000000004 as a double; 15 digits are sure")
                .isEqualTo(Amount.of("0.3"));
        assertThat(sheet.source().moneyIn()).isEqualTo(text.source().moneyIn());
        assertThat(sheet.layout()).isEqualTo("plain-sheet");
    }

    @Test
    void textsMayStandInTheCellsThemselves() throws IOException {
        SXSSFWorkbook workbook = new SXSSFWorkbook(null, 100, false, false);
        Sheet sheet = workbook.createSheet("S");
        row(sheet, 0, "date", "kind", "gross");
        row(sheet, 1, "2026-09-30", "sale", "12.50");
        desk.enter(save(workbook, "inline.xlsx"));

        assertThat(desk.lines())
                .singleElement()
                .extracting(l -> l.amounts().money())
                .isEqualTo(Amount.of("12.5"));
    }

    @Test
    void aProblemNamesSheetAndCell() throws IOException {
        Workbook workbook = new XSSFWorkbook();
        Sheet sheet = workbook.createSheet("My sales");
        row(sheet, 0, "kind", "date", "gross");
        row(sheet, 13, "sale", "2026-02-30", 1.00001);
        row(sheet, 14, "sale", 1.0E300, "");
        Row percent = row(sheet, 15, "sale", "2026-09-30", 1.5);
        style(workbook, percent, 2, "0%");
        row(sheet, 16, "sale", "2026-09-30", 1.0, "astray");

        assertThat(desk.problems(save(workbook, "file.xlsx")))
                .containsExactly(
                        "file.xlsx:My sales!B14 [date]: found '2026-02-30'; expected a date on the calendar written yyyy-MM-dd, such as 2026-09-30",
                        "file.xlsx:My sales!C14 [gross]: found '1.00001'; expected an amount with at most 4 decimals, such as 1234.50",
                        "file.xlsx:My sales!B15 [date]: found '1.0E300'; expected a date on the calendar written yyyy-MM-dd, such as 2026-09-30",
                        "file.xlsx:My sales!15 [gross]: found no amount; expected gross, or net with vat or rate, or vat alone for import VAT, such as 120.00; on a document without VAT enter vat 0",
                        "file.xlsx:My sales!C16 [gross]: found '150%'; expected an amount with at most 4 decimals, such as 1234.50",
                        "file.xlsx:My sales!17: found 4 cells; expected the 3 of the header; is a text that holds the delimiter without its quotes, such as \"blue, 12 cm\"?");
    }

    @Test
    void datesBeforeMarch1900AndFrom1904() throws IOException {
        SheetFormats from1900 = new SheetFormats(new XSSFWorkbook().getStylesSource(), false);
        SheetFormats from1904 = new SheetFormats(new XSSFWorkbook().getStylesSource(), true);

        assertThat(from1900.text("1", SheetFormats.Form.DATE)).isEqualTo("1900-01-01");
        assertThat(from1900.text("59", SheetFormats.Form.DATE)).isEqualTo("1900-02-28");
        assertThat(from1900.text("60", SheetFormats.Form.DATE)).as("never was").isEqualTo("60");
        assertThat(from1900.text("61", SheetFormats.Form.DATE)).isEqualTo("1900-03-01");
        assertThat(from1900.text("46295.5", SheetFormats.Form.DATE))
                .isEqualTo("2026-09-30T12:00:00");
        assertThat(from1904.text("0", SheetFormats.Form.DATE)).isEqualTo("1904-01-01");
        assertThat(from1904.text("44833", SheetFormats.Form.DATE)).isEqualTo("2026-09-30");
        assertThat(from1900.text("1E999999999", SheetFormats.Form.NUMBER)).isEqualTo("1E999999999");
        assertThat(from1900.text("1.2E2", SheetFormats.Form.NUMBER)).isEqualTo("120");
    }

    @Test
    void aDecimalCommaIsForTextsNotForStoredNumbers() throws IOException {
        desk.layout(
                "comma",
                """
                layout: comma
                dates: {pattern: "dd/MM/yyyy"}
                numbers: {decimal: ",", thousands: "."}
                signs: document
                fields: {date: Day}
                rows:
                  - when: {}
                    enter: [{kind: sale, gross: Sum}]
                amounts: [Sum]
                """);
        Workbook workbook = new XSSFWorkbook();
        Sheet sheet = workbook.createSheet("S");
        row(sheet, 0, "Day", "Sum");
        Row dated = row(sheet, 1, LocalDate.of(2026, 9, 30), 1.234);
        style(workbook, dated, 0, "dd/mm/yyyy");
        row(sheet, 2, "30/09/2026", "1.234,50");
        desk.enter(save(workbook, "comma.xlsx"));

        assertThat(desk.lines())
                .extracting(l -> l.amounts().money())
                .containsExactly(Amount.of("1.234"), Amount.of("1234.5"));
        assertThat(desk.lines()).allMatch(l -> l.taxPoint().equals(LocalDate.of(2026, 9, 30)));
    }

    @Test
    void aSheetThatBreaksOff() throws IOException {
        Workbook workbook = new XSSFWorkbook();
        fill(workbook);
        Path file = save(workbook, "cut.xlsx");
        try (FileSystem zip = FileSystems.newFileSystem(file)) {
            Path part = zip.getPath("xl/worksheets/sheet2.xml");
            String xml = Files.readString(part);
            Files.writeString(part, xml.substring(0, xml.indexOf("</sheetData>")));
        }

        assertThat(desk.problems(file))
                .containsExactly(
                        "cut.xlsx:Sales!5: found a sheet that cannot be read on from here; expected a sound XLSX workbook, such as the sheet saved again");
    }

    @Test
    void entitiesAreRefused() throws IOException {
        Workbook workbook = new XSSFWorkbook();
        fill(workbook);
        Path file = save(workbook, "entity.xlsx");
        Path secret = Files.writeString(desk.path("secret.txt"), "secret");
        try (FileSystem zip = FileSystems.newFileSystem(file)) {
            Path part = zip.getPath("xl/worksheets/sheet2.xml");
            String xml = Files.readString(part, StandardCharsets.UTF_8);
            String type = "<!DOCTYPE worksheet [<!ENTITY e SYSTEM \"" + secret.toUri() + "\">]>";
            Files.writeString(
                    part,
                    xml.replace("<worksheet", type + "<worksheet")
                            .replace("<v>120.1</v>", "<v>&e;</v>"));
        }

        assertThat(desk.problems(file))
                .isNotEmpty()
                .noneMatch(problem -> problem.contains("secret'"));
    }
}
