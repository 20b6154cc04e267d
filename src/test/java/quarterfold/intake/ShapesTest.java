package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files with rows of several shapes, read by layouts that say so. */
class ShapesTest {
    private static final String RECORDS =
            """
            layout: records
            file: {delimiter: "|", header_row: none, columns: 5}
            dates: {pattern: "yyyyMMdd"}
            signs: owner
            when: {"#1": [T, R]}
            fields: {date: "#2", order: "#3"}
            rows:
              - when: {"#1": T, "#4": Sale}
                enter: [{kind: sale, gross: "#5"}]
              - when: {"#1": T, "#4": Payout}
                enter: [{kind: payout, gross: "#5"}]
              - when: {"#1": R}
                enter: [{kind: sale-refund, gross: "#5"}]
            other_rows:
              - {is: H, why: first record}
              - {is: Z, states: {"#2": rows, "#3": records, "#4": money, "#5": payout}, why: last record}
            amounts: ["#5"]
            shapes:
              - when: {"#1": F}
                columns: 4
                fields: {date: "#3", description: "#2"}
                rows:
                  - when: {"#2": Levy}
                    enter: [{kind: fee, gross: "#4"}]
                amounts: ["#4"]
            """;
    private static final String RECORD_FILE =
            """
            H|Quaylark|20260731|01
            T|20260703|N-1|Sale|30.00
            F|Levy|20260703|-4.00
            R|20260705|N-1|Back|-10.00
            F|Levy|20260705|1.00
            T|20260731||Payout|-17.00
            Z|5|7|0.00|17.00
            """;

    private static final String STACKED =
            """
            layout: stacked
            file: {header_row: 2}
            dates: {pattern: "yyyy-MM-dd"}
            signs: owner
            fields: {date: Date, order: Order}
            constants: {channel: Quaylark}
            rows:
              - when: {Type: Sale}
                enter: [{kind: sale, gross: Amount}]
            other_rows:
              - {starts: Total, sums: [Amount], why: total}
              - {is: Fees, why: title}
            amounts: [Amount]
            shapes:
              - signs: document
                fields: {date: Day}
                rows:
                  - when: {Fee type: [Levy, Plan]}
                    enter: [{kind: fee, gross: Fee, set: {category: channel-fee}}]
                other_rows:
                  - {starts: Total, sums: [Fee], why: total}
                  - {starts: Paid out, states: {Fee: money}, why: payout}
                amounts: [Fee]
            """;
    private static final String STACKED_FILE =
            """
            Quaylark July 2026
            Date,Order,Type,Amount
            2026-07-03,N-1,Sale,30.00
            2026-07-04,N-2,Sale,20.00
            Total,,,50.00

            Fees
            Day,Fee type,Fee
            2026-07-03,Levy,4.00
            2026-07-31,Plan,6.00
            Total,,10.00
            Paid out,,40.00
            """;

    @TempDir private Path folder;
    private Desk desk;

    @BeforeEach
    void open() {
        desk = new Desk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private List<String> money() {
        return desk.lines().stream()
                .map(
                        l ->
                                l.row()
                                        + " "
                                        + l.taxPoint()
                                        + " "
                                        + l.profile().kind().code()
                                        + " "
                                        + l.signedMoney())
                .toList();
    }

    @Test
    void lettersSayWhichShapeARowHas() throws IOException {
        desk.layout("records", RECORDS);

        ImportResult result = desk.enter("r.txt", RECORD_FILE);

        assertThat(result.problems()).isEmpty();
        assertThat(result.layout()).isEqualTo("records");
        assertThat(money())
                .containsExactly(
                        "2 2026-07-03 sale 30.00",
                        "3 2026-07-03 fee -4.00",
                        "4 2026-07-05 sale-refund -10.00",
                        "5 2026-07-05 fee 1.00",
                        "6 2026-07-31 payout -17.00");
        assertThat(desk.lines().get(1).item().description()).isEqualTo("Levy");
        assertThat(desk.lines().get(2).order()).isEqualTo("N-1");
        assertThat(desk.raised()).isEmpty();
        assertThat(desk.reread()).isEmpty();
    }

    @Test
    void aLetterNoShapeHas() throws IOException {
        desk.layout("records", RECORDS);

        assertThat(desk.problems("r.txt", RECORD_FILE.replace("R|", "X|")))
                .containsExactly(
                        "r.txt:4 [#1]: found 'X'; expected a row of a shape that layout records knows, such as 'T' or 'F'; give the layout a shape for it, or set it aside");
    }

    @Test
    void aRowOfAnotherLettersShape() throws IOException {
        desk.layout("records", RECORDS);

        assertThat(
                        desk.problems(
                                "r.txt",
                                RECORD_FILE
                                        .replace(
                                                "F|Levy|20260703|-4.00", "F|20260703|N-1|Sale|4.00")
                                        .replace("F|Levy|20260705|1.00", "F|Levy|20260705|N-1")))
                .containsExactly(
                        "r.txt:3: found 5 cells; expected the 4 of the header; is a text that holds the delimiter without its quotes, such as \"blue, 12 cm\"?",
                        "r.txt:5 [#4]: found 'N-1'; expected an amount with at most 4 decimals, such as 1234.50");
    }

    @Test
    void whatTheLastRecordStatesMustBeSo() throws IOException {
        desk.layout("records", RECORDS);

        assertThat(desk.problems("r.txt", RECORD_FILE.replace("Z|5|7|0.00|17.00", "Z|6|8|1.00|")))
                .containsExactly(
                        "r.txt:7 [#2]: found '6'; expected the number of the rows of the file, 5; are rows missing, or is one there twice?",
                        "r.txt:7 [#3]: found '8'; expected the number of all rows of the file up to this one, 7; are rows missing, or is one there twice?",
                        "r.txt:7 [#4]: found '1.00'; expected what the 5 rows of the file come to, 0.00; are rows missing, or is one there twice?",
                        "r.txt:7 [#5]: found ''; expected what the 5 rows of the file come to without payouts, 17.00; are rows missing, or is one there twice?");
    }

    @Test
    void rowsOfAnEarlierFileAreMetInEachShape() throws IOException {
        desk.layout("records", RECORDS);
        desk.enter("r.txt", RECORD_FILE);

        ImportResult result =
                desk.enter(
                        "s.txt",
                        "T|20260703|N-1|Sale|30.00\nF|Levy|20260703|-4.00\nF|Levy|20260703|-4.50\nT|20260801|N-9|Sale|8.00\nZ|4|5|29.50|29.50\n");

        assertThat(result.problems()).isEmpty();
        assertThat(money().subList(5, 7))
                .containsExactly("3 2026-07-03 fee -4.50", "4 2026-08-01 sale 8.00");
        assertThat(money()).hasSize(7);
    }

    @Test
    void aTableBelowAnotherHasItsOwnColumns() throws IOException {
        desk.layout("stacked", STACKED);

        ImportResult result = desk.enter("s.csv", STACKED_FILE);

        assertThat(result.problems()).isEmpty();
        assertThat(result.layout()).isEqualTo("stacked");
        assertThat(money())
                .containsExactly(
                        "3 2026-07-03 sale 30.00",
                        "4 2026-07-04 sale 20.00",
                        "9 2026-07-03 fee -4.00",
                        "10 2026-07-31 fee -6.00");
        assertThat(desk.lines().get(3).profile().channel()).isEqualTo("Quaylark");
        assertThat(desk.setAside(1).stream().map(s -> s.row() + " " + s.reason()))
                .containsExactly("5 total", "7 title", "8 column names", "11 total", "12 payout");
        assertThat(desk.reread()).isEmpty();
    }

    @Test
    void tablesInOneSheet() throws IOException {
        desk.layout("stacked", STACKED);

        ImportResult result = desk.enter(workbook(folder.resolve("s.xlsx"), STACKED_FILE));

        assertThat(result.problems()).isEmpty();
        assertThat(money())
                .containsExactly(
                        "3 2026-07-03 sale 30.00",
                        "4 2026-07-04 sale 20.00",
                        "9 2026-07-03 fee -4.00",
                        "10 2026-07-31 fee -6.00");
        assertThat(
                        desk
                                .enter(
                                        workbook(
                                                folder.resolve("t.xlsx"),
                                                STACKED_FILE.replace("Levy,4.00", "Levy,4.01")))
                                .problems()
                                .stream()
                                .map(Problem::toString))
                .containsExactly(
                        "t.xlsx:Table!C11 [Fee]: found '10'; expected the sum of the 2 rows above, 10.01; are rows missing, or is one there twice?",
                        "t.xlsx:Table!C12 [Fee]: found '40'; expected what the 4 rows of the file come to, 39.99; are rows missing, or is one there twice?");
    }

    static Path workbook(Path file, String text) throws IOException {
        try (XSSFWorkbook book = new XSSFWorkbook();
                OutputStream out = Files.newOutputStream(file)) {
            var sheet = book.createSheet("Table");
            int at = 0;
            for (String line : text.lines().toList()) {
                var row = sheet.createRow(at++);
                int cell = 0;
                for (String each : line.split(",", -1)) {
                    if (each.matches("-?\\d+\\.\\d\\d")) {
                        row.createCell(cell++).setCellValue(Double.parseDouble(each));
                    } else {
                        row.createCell(cell++).setCellValue(each);
                    }
                }
            }
            book.write(out);
        }
        return file;
    }

    @Test
    void columnsOfBothTablesMayStandInAnotherOrder() throws IOException {
        desk.layout("stacked", STACKED);

        desk.enter(
                "s.csv",
                "Quaylark\nType,Amount,Date,Order,New\nSale,30.00,2026-07-03,N-1,x\nFees\n,Fee,Day,Fee type\n,4.00,2026-07-03,Levy\n");

        assertThat(money()).containsExactly("3 2026-07-03 sale 30.00", "6 2026-07-03 fee -4.00");
    }

    @Test
    void aRowOfTheFirstTableBelowTheSecond() throws IOException {
        desk.layout("stacked", STACKED);

        assertThat(
                        desk.problems(
                                "s.csv",
                                STACKED_FILE.replace(
                                        "2026-07-31,Plan,6.00\n",
                                        "2026-07-31,Plan,6.00\n2026-07-05,N-3,Sale,5.00\n2026-07-06,Sale,7.00\n")))
                .containsExactly(
                        "s.csv:11: found 4 cells; expected the 3 of the header; is a text that holds the delimiter without its quotes, such as \"blue, 12 cm\"?",
                        "s.csv:12 [Fee type]: found 'Sale'; expected a row that a rule of layout stacked fits, such as 'Levy'; give the layout a rule for it, or set it aside");
    }

    @Test
    void theTotalOfTheSecondTableIsWrong() throws IOException {
        desk.layout("stacked", STACKED);

        assertThat(
                        desk.problems(
                                "s.csv",
                                STACKED_FILE
                                        .replace("Total,,10.00", "Total,,11.00")
                                        .replace("Paid out,,40.00", "Paid out,,41.00")))
                .containsExactly(
                        "s.csv:11 [Fee]: found '11.00'; expected the sum of the 2 rows above, 10.00; are rows missing, or is one there twice?",
                        "s.csv:12 [Fee]: found '41.00'; expected what the 4 rows of the file come to, 40.00; are rows missing, or is one there twice?");
    }

    @Test
    void aFileWithoutTheSecondTable() throws IOException {
        desk.layout("stacked", STACKED);
        String text = "Quaylark\nDate,Order,Type,Amount\n2026-07-03,N-1,Sale,30.00\n";

        assertThat(desk.problems("s.csv", text))
                .containsExactly(
                        "s.csv: found no row with the column names 'Day', 'Fee type', 'Fee' below the table; expected one, for layout stacked; where the export may leave that table out, add to the layout: tables_below: optional");
        assertThat(
                        desk.enter(desk.file("s.csv", text), "stacked").problems().stream()
                                .map(Problem::toString))
                .containsExactly(
                        "s.csv: found no row with the column names 'Day', 'Fee type', 'Fee' below the table; expected one, for layout stacked; where the export may leave that table out, add to the layout: tables_below: optional");
        assertThat(desk.problems(workbook(folder.resolve("s.xlsx"), text)))
                .containsExactly(
                        "s.xlsx:Table: found no row with the column names 'Day', 'Fee type', 'Fee' below the table; expected one, for layout stacked; where the export may leave that table out, add to the layout: tables_below: optional");
        assertThat(desk.enter("whole.csv", STACKED_FILE).problems()).isEmpty();
    }

    @Test
    void aTableBelowThatAFileMayBeWithout() throws IOException {
        desk.layout("stacked", STACKED + "tables_below: optional\n");
        String sales = "Quaylark\nDate,Order,Type,Amount\n2026-08-03,N-7,Sale,30.00\n";

        assertThat(desk.problems("t.csv", sales + "2026-08-05,Levy,4.00\n"))
                .containsExactly(
                        "t.csv:4: found 3 cells; expected the 4 of the header; is a text that holds the delimiter without its quotes, such as \"blue, 12 cm\"?");
        assertThat(desk.enter("s.csv", sales).problems()).isEmpty();
        assertThat(desk.enter("whole.csv", STACKED_FILE).problems()).isEmpty();
        assertThat(money())
                .containsExactly(
                        "3 2026-08-03 sale 30.00",
                        "3 2026-07-03 sale 30.00",
                        "4 2026-07-04 sale 20.00",
                        "9 2026-07-03 fee -4.00",
                        "10 2026-07-31 fee -6.00");
    }

    @Test
    void aFileWithoutATableIsOfTheLayoutThatWantsNone() throws IOException {
        desk.layout("stacked", STACKED + "tables_below: optional\n");
        desk.layout(
                "sales",
                """
                layout: sales
                file: {header_row: 2}
                dates: {pattern: "yyyy-MM-dd"}
                signs: owner
                fields: {date: Date, order: Order, description: Type}
                rows:
                  - when: {}
                    enter: [{kind: sale, gross: Amount}]
                amounts: [Amount]
                """);

        assertThat(desk.enter("s.csv", STACKED_FILE).layout()).isEqualTo("stacked");
        assertThat(
                        desk.enter(
                                        "t.csv",
                                        "Quaylark\nDate,Order,Type,Amount\n2026-08-03,N-1,Sale,30.00\n")
                                .layout())
                .isEqualTo("sales");
    }

    @Test
    void tablesBelowThatAreNot() {
        assertThat(problems(STACKED + "tables_below: no\n"))
                .containsExactly(
                        "stacked.yaml:24 [tables_below]: found 'no'; expected needed or optional, such as optional");
        assertThat(problems(RECORDS + "tables_below: optional\n"))
                .containsExactly(
                        "records.yaml:26 [tables_below]: found it in a layout without a table below the first; expected a shape without when beside it, such as shapes: [{fields: {date: Day}, …}]");
    }

    @Test
    void aFileOfTwoTablesIsOfTheLayoutThatKnowsBoth() throws IOException {
        desk.layout("stacked", STACKED);
        desk.layout(
                "sales",
                """
                layout: sales
                file: {header_row: 2}
                dates: {pattern: "yyyy-MM-dd"}
                signs: owner
                fields: {date: Date, order: Order}
                rows:
                  - when: {}
                    enter: [{kind: sale, gross: Amount}]
                amounts: [Amount]
                """);

        assertThat(desk.enter("s.csv", STACKED_FILE).layout()).isEqualTo("stacked");
        assertThat(
                        desk.enter("t.csv", "Quaylark\nDate,Order,Amount\n2026-08-03,N-1,30.00\n")
                                .layout())
                .isEqualTo("sales");
    }

    @Test
    void namesThatStandTwiceInTheSecondTable() throws IOException {
        desk.layout("stacked", STACKED);

        assertThat(
                        desk.problems(
                                "s.csv",
                                STACKED_FILE.replace("Day,Fee type,Fee", "Day,Fee type,Fee,Fee")))
                .contains(
                        "s.csv:8 [Fee]: found the name in columns 3 and 4; expected it once, such as one of them renamed");
    }

    private static final String ALIKE =
            """
            layout: alike
            dates: {pattern: "yyyy-MM-dd"}
            signs: owner
            fields: {date: Date, order: Order, description: Item}
            rows:
              - when: {}
                enter: [{kind: sale, gross: Amount}]
            amounts: [Amount]
            shapes:
              - fields: {date: Date}
                rows:
                  - when: {Fee type: [Levy]}
                    enter: [{kind: fee, gross: Amount}]
                amounts: [Amount]
            """;

    @Test
    void namesThatTwoTablesFit() throws IOException {
        String file =
                "Date,Order,Item,Amount\n2026-07-03,N-1,Bowl,30.00\nDate,Order,Item,Fee type,Amount\n2026-07-03,N-1,Bowl,Levy,-4.00\n";
        desk.layout("alike", ALIKE);

        assertThat(desk.problems("s.csv", file))
                .containsExactly(
                        "s.csv:3: found column names that the tables 'Date, Fee type, Amount' and 'Date, Item, Order, Amount' of layout alike both fit; expected names that fit one of them alone; give the shape that is meant the columns of the other too, such as fields: {description: Item}, or save each table as a file of its own");

        desk.layout(
                "alike",
                ALIKE.replace("{date: Date}", "{date: Date, order: Order, description: Item}"));
        assertThat(desk.enter("s.csv", file).problems()).isEmpty();
        assertThat(money()).containsExactly("2 2026-07-03 sale 30.00", "4 2026-07-03 fee -4.00");
    }

    @Test
    void aFailedFormulaRightOfTheFirstTable() throws IOException {
        desk.layout("stacked", STACKED);
        Path file =
                workbook(
                        folder.resolve("s.xlsx"),
                        "Quaylark\nDate,Order,Type,Amount\n2026-07-03,N-1,Sale,30.00\nDay,Fee type,A,B,C,Fee\n2026-07-03,Levy,x,y,z,4.00\n");
        try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(file));
                OutputStream out = Files.newOutputStream(file)) {
            book.getSheet("Table")
                    .getRow(4)
                    .getCell(5)
                    .setCellErrorValue(FormulaError.NA.getCode());
            book.write(out);
        }

        assertThat(desk.problems(file))
                .containsExactly(
                        "s.xlsx:Table!F5 [Fee]: found '#N/A'; expected a value, such as 12.50: put the cell's formula right");
    }

    @Test
    void aTotalRightOfTheFirstShape() throws IOException {
        desk.layout("records", RECORDS.replace("\"#5\": payout", "\"#7\": payout"));

        assertThat(desk.problems("r.txt", RECORD_FILE.replace("|0.00|17.00", "|0.00||17.01")))
                .containsExactly(
                        "r.txt:7 [#7]: found ''; expected what the 5 rows of the file come to without payouts, 17.00; are rows missing, or is one there twice?");
        assertThat(desk.problems("r.txt", RECORD_FILE.replace("|0.00|17.00", "|0.00|||17.01")))
                .containsExactly(
                        "r.txt:7 [#7]: found '17.01'; expected what the 5 rows of the file come to without payouts, 17.00; are rows missing, or is one there twice?");
        assertThat(
                        desk.enter("r.txt", RECORD_FILE.replace("|0.00|17.00", "|0.00|||17.00"))
                                .problems())
                .isEmpty();
    }

    @Test
    void mistakesAreTold() {
        assertThat(problems(RECORDS.replace("\"#5\": payout", "Paid: payout")))
                .containsExactly(
                        "records.yaml:16 [other_rows.states.Paid]: found 'Paid'; expected the number of a column, in a layout without column names, such as #6");
        assertThat(problems(STACKED.replace("{Fee: money}", "{Fee: all}")))
                .containsExactly(
                        "stacked.yaml:22 [shapes.other_rows.states.Fee]: found 'all'; expected money, payout, rows or records, such as money");
        assertThat(problems(STACKED.replace("  - signs: document", "  - columns: 3")))
                .containsExactly(
                        "stacked.yaml:15 [shapes.columns]: found a number of columns beside a row that names them; expected it only with header_row: none");
        assertThat(problems(STACKED.replace("{date: Day}", "{date: Day, file: Scan}")))
                .containsExactly(
                        "stacked.yaml:14 [shapes]: found other shapes of rows beside a column of documents; expected one shape, such as the layout without file under fields");
        assertThat(
                        problems(
                                STACKED.replace("Day", "Date")
                                        .replace("Fee type", "Type")
                                        .replace(
                                                "  - {starts: Paid out, states: {Fee: money}",
                                                "  - {starts: Paid out, states: {Order: money}")
                                        .replace("gross: Fee", "gross: Amount")
                                        .replace("[Fee]", "[Amount]")))
                .containsExactly(
                        "stacked.yaml:16 [shapes.fields]: found the very columns that another table of the layout reads; expected one of its own at least, such as Fee type");
        assertThat(
                        problems(
                                RECORDS.replace(
                                        "  - when: {\"#1\": F}\n    columns: 4", "  - columns: 4")))
                .containsExactly(
                        "records.yaml:19 [shapes.when]: found nothing, in a layout without column names; expected the texts by which such rows are known, such as when: {\"#1\": F}");
    }

    private static List<String> problems(String yaml) {
        Problems problems = new Problems();
        LayoutReader.read(yaml.substring(8, yaml.indexOf('\n')) + ".yaml", yaml, problems);
        return problems.kept().stream().map(Problem::toString).toList();
    }

    @Test
    void whatIsWrittenIsReadAsTheSame() {
        for (String yaml : List.of(RECORDS, STACKED)) {
            String file = yaml.substring(8, yaml.indexOf('\n')) + ".yaml";
            Layout layout = LayoutReader.read(file, yaml, new Problems());
            String written = LayoutWriter.write(layout, "A file", List.of());
            Problems problems = new Problems();
            Layout again = LayoutReader.read(file, written, problems);

            assertThat(problems.kept()).isEmpty();
            assertThat(LayoutWriter.write(again, "A file", List.of())).isEqualTo(written);
            assertThat(again.shapes()).hasSize(1);
            assertThat(again.shapes().get(0).when()).isEqualTo(layout.shapes().get(0).when());
            assertThat(again.otherRows()).isEqualTo(layout.otherRows());
        }
    }
}
