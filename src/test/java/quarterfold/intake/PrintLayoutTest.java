package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A layout of the lines of a PDF: what is wrong with it, and what its totals can be of. */
class PrintLayoutTest {
    private static final String LAYOUT =
            """
            layout: stall
            text:
              known_by: [Stall report]
              facts:
                - "Stall {Stall}"
              rows:
                - "{Date: [0-9-]+} {What} {Amount: -?[0-9.]+}"
              totals:
                - {line: "So far {Amount: -?[0-9.]+}", sums: [Amount], of: above, same: [], optional: yes}
                - {line: "Total {Amount: -?[0-9.]+}", sums: [Amount]}
              other: ["Thank you{}"]
            dates: {pattern: yyyy-MM-dd}
            numbers: {decimal: "."}
            signs: owner
            currency: GBP
            fields: {date: Date, description: What}
            rows:
              - when: {}
                enter: [{kind: sale, gross: Amount}]
            amounts: [Amount]
            """;
    private static final String REPORT =
            """
            Stall report
            Stall North gate
            2026-07-01 Bowls 12.00
            2026-07-02 Cups 8.00
            So far 20.00
            Stall South gate
            2026-07-03 Plates 5.00
            So far 5.00
            Total 25.00
            Thank you for your custom
            """;

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

    private Path pdf(String text) {
        return PrintedPdf.write(folder.resolve("stall.pdf"), text);
    }

    private List<String> problems(String layout) throws IOException {
        return desk.layout("stall", layout).problems(pdf(REPORT));
    }

    @Test
    void factsHoldUntilStatedAgain() throws IOException {
        ImportResult result = desk.layout("stall", LAYOUT).enter(pdf(REPORT));
        assertThat(result.problems()).isEmpty();
        assertThat(desk.lines())
                .extracting(l -> l.notes() + " " + l.amounts().money())
                .containsExactly(
                        "Stall: North gate 12.00",
                        "Stall: North gate 8.00",
                        "Stall: South gate 5.00");
        assertThat(desk.differences()).isEmpty();
    }

    private static final String CONTINUED =
            LAYOUT.replace(
                    "  totals:",
                    "  continues: [\"{What: [^0-9]+}\", \"({What} pieces)\"]\n  totals:");

    /** What is printed below a row goes on with it; lines of a kind of their own do not. */
    @Test
    void aTextThatGoesOnOverLines() throws IOException {
        String report =
                REPORT.replace("Cups 8.00", "Cups 8.00\nwith saucers,\nblue\n(6 pieces)")
                        .replace("Plates 5.00", "Plates 5.00\nThank you for the loan");
        assertThat(desk.layout("stall", CONTINUED).enter(pdf(report)).problems()).isEmpty();
        assertThat(desk.lines())
                .extracting(l -> l.item().description() + " " + l.amounts().money() + " " + l.row())
                .containsExactly(
                        "Bowls 12.00 1003",
                        "Cups with saucers, blue 6 8.00 1004",
                        "Plates 5.00 1010");
        assertThat(desk.differences()).isEmpty();
    }

    @Test
    void whatGoesOnWithNoRow() throws IOException {
        String unknown =
                "; expected a line that layout stall knows, such as the row '{Date: [0-9-]+} {What} {Amount: -?[0-9.]+}'; give the layout a line for it under rows, totals, facts or other";
        desk.layout("stall", CONTINUED);
        assertThat(desk.problems(pdf(REPORT.replace("Stall North", "with love\nStall North"))))
                .containsExactly("stall.pdf:page 1 line 2: found 'with love'" + unknown);
        assertThat(desk.problems(pdf(REPORT.replace("Cups 8.00", "Cups 8.00\nRow 7: nothing"))))
                .containsExactly("stall.pdf:page 1 line 5: found 'Row 7: nothing'" + unknown);
        int cut = REPORT.indexOf("2026-07-02");
        assertThat(
                        desk.problems(
                                PrintedPdf.write(
                                        folder.resolve("stall.pdf"),
                                        REPORT.substring(0, cut),
                                        "and plates\n" + REPORT.substring(cut))))
                .containsExactly("stall.pdf:page 2 line 1: found 'and plates'" + unknown);
    }

    @Test
    void linesThatMayNotGoOn() throws IOException {
        assertThat(problems(CONTINUED.replace("{What: [^0-9]+}", "{What}")))
                .containsExactly(
                        "stall.yaml:8 [text.continues]: found '{What}'; expected a line with words of its own, or that says what a name may be, such as {What: [^0-9]+}");
        for (String column : List.of("Amount", "Stall", "Colour")) {
            assertThat(problems(CONTINUED.replace("{What} pieces", "{" + column + "} pieces")))
                    .containsExactly(
                            "stall.yaml:8 [text.continues]: found '%s'; expected a column that every line of rows gives and that is no amount and in no total, such as What"
                                    .formatted(column));
        }
        assertThat(problems(LAYOUT.replace("  totals:", "  continues: []\n  totals:")))
                .containsExactly(
                        "stall.yaml:8 [text.continues]: found nothing; expected lines, such as continues: [{What: [^0-9]+}]");
    }

    @Test
    void theRowsAboveSinceTheLast() throws IOException {
        desk.layout("stall", LAYOUT);
        assertThat(desk.problems(pdf(REPORT.replace("So far 5.00", "So far 25.00"))))
                .containsExactly(
                        "stall.pdf:page 1 line 8 [Amount]: found '25.00'; expected the sum of the 1 row above, 5.00; are rows missing, or is one there twice?");
        assertThat(desk.problems(pdf(REPORT.replace("So far 5.00\n", ""))))
                .containsExactly(
                        "stall.pdf [Amount]: found 1 row above and no line that states their total; expected one, such as 'So far {Amount: -?[0-9.]+}'; is a page missing?");
        assertThat(desk.problems(pdf(REPORT.replace("Total 25.00", "Total 2.5.0"))))
                .containsExactly(
                        "stall.pdf:page 1 line 9 [Amount]: found '2.5.0'; expected an amount with at most 4 decimals, such as 1234.50");
    }

    /** The same statement twice on one page, or half of one, cannot tie. */
    @Test
    void aReportTwice() throws IOException {
        desk.layout("stall", LAYOUT);
        assertThat(desk.problems(pdf(REPORT + REPORT)))
                .containsExactly(
                        "stall.pdf:page 1 line 9 [Amount]: found '25.00'; expected the sum of the 6 rows of the file, 50.00; are rows missing, or is one there twice?",
                        "stall.pdf:page 1 line 19 [Amount]: found '25.00'; expected the sum of the 6 rows of the file, 50.00; are rows missing, or is one there twice?");
    }

    @Test
    void whatIsWrongWithALayout() throws IOException {
        assertThat(problems(LAYOUT.replace("known_by: [Stall report]", "known_by: ['{}']")))
                .containsExactly(
                        "stall.yaml:3 [text.known_by]: found '{}'; expected a line with words of its own, such as Port {Port}");
        assertThat(problems(LAYOUT.replace("  rows:\n    - \"{Date", "  rows:\n    - \"{Date{")))
                .contains(
                        "stall.yaml:6 [text.rows]: found '{Date{: [0-9-]+} {What} {Amount: -?[0-9.]+}' with a brace too many or too few; expected a name in braces, such as Total {VAT paid}");
        assertThat(problems(LAYOUT.replace("date: Date", "date: Day")))
                .containsExactly(
                        "stall.yaml:6 [text.rows]: found no line with {Day} in it; expected one for each column the layout names, such as Day {Day}");
        assertThat(problems(LAYOUT.replace("sums: [Amount]}", "sums: [Sum]}")))
                .contains(
                        "stall.yaml:10 [text.totals.sums]: found 'Sum'; expected a name in braces of the line, such as {Sum}");
        assertThat(problems(LAYOUT.replace("of: above", "of: chapter")))
                .containsExactly(
                        "stall.yaml:9 [text.totals.of]: found 'chapter'; expected file, page or above, such as page");
        assertThat(
                        problems(
                                LAYOUT.replace("\"Total {", "\"Totals {")
                                        .replace(
                                                "sums: [Amount]}",
                                                "sums: [Amount], optional: yes}")))
                .containsExactly(
                        "stall.yaml:8 [text.totals]: found no line with the total of 'Amount'; expected one, so that a row that is missing is found, such as {line: \"Total {Amount}\", sums: [Amount]}");
        assertThat(problems(LAYOUT + "file: {delimiter: \",\"}\n"))
                .containsExactly(
                        "stall.yaml:21 [file]: found it beside text; expected the lines of a PDF, or a table, such as text alone");
        assertThat(problems(LAYOUT.replace("  other:", "  page: \"Page\"\n  other:")))
                .containsExactly(
                        "stall.yaml:11 [text.page]: found 'Page'; expected a line with {page} in it, such as Page {page} of {pages}");
        assertThat(problems(LAYOUT.replace("known_by: [Stall report]", "known_by: []")))
                .contains(
                        "stall.yaml:3 [text.known_by]: found nothing; expected lines, such as known_by: [Import VAT certificate]");
    }

    /** A column that may be missing can only fill a field. */
    @Test
    void optionalColumns() throws IOException {
        String table =
                LAYOUT.replaceFirst("(?s)text:.*?dates:", "dates:")
                        .replace("layout: stall", "layout: table");
        desk.layout("table", table + "optional: [What]\n");
        assertThat(desk.enter("a.csv", "Date,Amount\n2026-07-01,12.00\n").problems()).isEmpty();
        assertThat(desk.enter("b.csv", "Date,What,Amount\n2026-07-01,Cup,12.00\n").problems())
                .isEmpty();
        assertThat(desk.lines()).extracting(l -> l.item().description()).containsExactly("", "Cup");
        assertThat(desk.differences()).isEmpty();
        desk.layout("table", table + "optional: [Amount]\n");
        assertThat(desk.enter("c.csv", "Date,Amount\n2026-07-02,12.00\n").problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "table.yaml:11 [optional]: found 'Amount'; expected a column without which a row reads as before, so none of the date, of the texts that rules look at, of tax, of what is worked out, or of all the money, such as Remark");
    }

    /** Forms within forms, eight of each in the one above: 8 to the power of 12 in all. */
    @Test
    void aPdfThatAsksForTooMuchWork() throws IOException {
        assertThat(desk.problems(PrintedPdf.bomb(folder.resolve("bomb.pdf"))))
                .containsExactly(
                        "bomb.pdf:page 1: found more than 500,000 drawing steps on one page, far more than text needs; expected at most that, such as a statement as it was downloaded; or enter its rows in the plain sheet");
    }

    @Test
    void aPdfThatIsNotSound() throws IOException {
        Path broken = desk.file("broken.pdf", "%PDF-1.7\n1 0 obj << /Type /Catalog >>\n");
        assertThat(desk.problems(broken))
                .containsExactly(
                        "broken.pdf: found a PDF that is not sound; expected one that opens, such as the same report downloaded again");
    }
}
