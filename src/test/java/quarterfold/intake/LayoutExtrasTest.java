package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.RaisedQuery;

/** The parts of a layout that only unusual reports need. */
class LayoutExtrasTest {
    private static final String TOTALS =
            """
            layout: totals
            dates: {pattern: "yyyy-MM-dd"}
            signs: owner
            fields: {date: Date}
            rows:
              - when: {}
                enter: [{kind: sale, gross: Amount}]
            other_rows:
              - {starts: Total, sums: [Amount], why: "total"}
              - {starts: "Rows:", count: yes, why: "count"}
              - {is: Date, why: "column names again"}
              - {blank: [Date], when: {Amount: ["0.00"]}, why: "padding"}
              - {starts: "*** end", rest: yes, why: "after the end"}
            amounts: [Amount]
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
                .map(l -> l.profile().kind().code() + " " + l.signedMoney())
                .toList();
    }

    @Test
    void rowsRoundTheTableAreSetAsideAndMustTie() throws IOException {
        desk.layout("totals", TOTALS);

        ImportResult result =
                desk.enter(
                        "t.csv",
                        "Date,Amount\n2026-07-01,1.00\nDate,Amount\n2026-07-02,2.00\n,0.00\nTotal,3.00\n2026-07-03,4.00\nTotal,4.00\nRows: 3\n*** end\nanything,at,all\n");

        assertThat(result.problems()).isEmpty();
        assertThat(result.entries()).isEqualTo(3);
        assertThat(result.setAside()).isEqualTo(7);
        assertThat(desk.setAside(1).stream().map(s -> s.reason()).distinct())
                .containsExactly(
                        "column names again", "padding", "total", "count", "after the end");
    }

    @Test
    void aTotalOrCountThatDoesNotTieIsRefused() throws IOException {
        desk.layout("totals", TOTALS);

        assertThat(desk.problems("t.csv", "Date,Amount\n2026-07-01,1.00\nTotal,3.00\nRows: 2\n"))
                .containsExactly(
                        "t.csv:3 [Amount]: found '3.00'; expected the sum of the 1 rows above, 1.00; are rows missing, or is one there twice?",
                        "t.csv:4: found 'Rows: 2'; expected the number of the rows above, 1; are rows missing, or is one there twice?");
    }

    @Test
    void aPairOfColumnsWithTheirBalance() throws IOException {
        desk.layout(
                "pair",
                """
                layout: pair
                file: {delimiter: ";"}
                dates: {pattern: "d. MMMM yyyy", language: de}
                numbers: {decimal: ",", thousands: ".", units: ["€", EUR], negative: [plus]}
                signs: owner
                outgoing: [Soll]
                currency: EUR
                fields: {date: Datum}
                worked_out:
                  Geld: {add: [Haben, Soll]}
                rows:
                  - when: {Art: Verkauf}
                    enter: [{kind: sale, gross: Geld}]
                  - when: {Art: Neu}
                    ask: "what is Neu?"
                    enter: [{kind: other-money, gross: Geld}]
                amounts: [Geld]
                balance: {column: Saldo}
                """);
        String head = "Datum;Art;Soll;Haben;Saldo\n";

        assertThat(
                        desk.problems(
                                "p.csv",
                                head
                                        + "3. Juli 2026;Verkauf;;10,00;10,00\n4. Juli 2026;Neu;2,00;;9,00\n"))
                .containsExactly(
                        "p.csv:3 [Saldo]: found '9,00'; expected the balance of the row above moved by -2.00, 8.00; is a row missing?");
        ImportResult.Entered entered =
                (ImportResult.Entered)
                        desk.enter(
                                "q.csv",
                                head
                                        + "3. Juli 2026;Verkauf;;+1.010,00 €;EUR 1.010,00\n4. Juli 2026;Neu;2,00;;1.008,00\n");
        assertThat(money()).containsExactly("sale 1010.00", "other-money -2.00");
        assertThat(entered.queries())
                .extracting(RaisedQuery::code, RaisedQuery::about, RaisedQuery::question)
                .containsExactly(
                        tuple(
                                "kind-unknown",
                                "Art: Neu",
                                "what is Neu? (Art: Neu: 1 row, -2.00, entered as other-money.) Say what they are with --state and their kind, such as --state kind=fee: it holds for these rows, and in the layout for those to come. If what they are entered as is right, leave it with --set-aside"));
    }

    @Test
    void noColumnNamesSmallestUnitsAndAMark() throws IOException {
        desk.layout(
                "bare",
                """
                layout: bare
                file: {delimiter: "|", quote: none, header_row: none, columns: 5}
                dates: {pattern: "yyyyMMdd"}
                numbers: {minor: 2}
                signs: owner
                sign: {column: "#4", negative: D}
                fields: {date: "#2"}
                rows:
                  - when: {"#3": SL}
                    enter: [{kind: sale, gross: "#5"}]
                  - when: {"#3": FE}
                    enter: [{kind: fee, gross: "#5"}]
                other_rows:
                  - {is: H, why: "first record"}
                  - {is: F, count: yes, why: "last record"}
                amounts: ["#5"]
                """);

        ImportResult result =
                desk.enter(
                        "b.txt", "H|Quaylark\nT|20260701|SL|C|12345\nT|20260702|FE|D|45\nF|0002\n");

        assertThat(result.problems()).isEmpty();
        assertThat(result.layout()).isEqualTo("bare");
        assertThat(money()).containsExactly("sale 123.45", "fee -0.45");
    }

    @Test
    void columnNamesSayMoreThanWhatRowsLookLike() throws IOException {
        desk.layout(
                "bare",
                """
                layout: bare
                file: {header_row: none, columns: 3}
                dates: {pattern: "yyyy-MM-dd"}
                signs: owner
                fields: {date: "#1"}
                rows:
                  - when: {}
                    enter: [{kind: fee, gross: "#3"}]
                amounts: ["#3"]
                """);

        assertThat(desk.enter("p.csv", "date,kind,gross\n2026-07-01,sale,1.00\n").layout())
                .isEqualTo("plain-sheet");
        assertThat(desk.enter("b.csv", "2026-07-01,levy,-1.00\n").layout()).isEqualTo("bare");
    }

    @Test
    void sameNamesAreToldApartByTheirPlaces() throws IOException {
        desk.layout(
                "twins",
                """
                layout: twins
                dates: {pattern: "yyyy-MM-dd"}
                signs: document
                fields: {date: Date}
                rows:
                  - when: {}
                    enter: [{kind: sale, gross: "Amount#2"}]
                amounts: ["Amount#2"]
                """);

        desk.enter("t.csv", "Date,Amount,Amount\n2026-07-01,GBP,2.00\n");

        assertThat(money()).containsExactly("sale 2.00");
        assertThat(desk.lines().get(0).notes()).isEqualTo("Amount: GBP");
    }

    @Test
    void textEncodedTwice() throws IOException {
        desk.layout(
                "twice",
                """
                layout: twice
                file: {encoding: UTF-8, encoded: twice}
                dates: {pattern: "yyyy-MM-dd"}
                signs: document
                fields: {date: Date, description: Titel}
                rows:
                  - when: {}
                    enter: [{kind: sale, gross: Preis}]
                amounts: [Preis]
                """);
        String text = "Date,Titel,Preis\n2026-07-01,Füße – „Maß“ à 5 €,2.00\n";
        ByteArrayOutputStream twice = new ByteArrayOutputStream();
        Charset western = Charset.forName("windows-1252");
        for (byte b : text.getBytes(StandardCharsets.UTF_8)) {
            String c = new String(new byte[] {b}, western);
            twice.writeBytes(
                    (c.equals("\uFFFD") ? String.valueOf((char) (b & 0xff)) : c)
                            .getBytes(StandardCharsets.UTF_8));
        }

        desk.enter(Files.write(folder.resolve("t.csv"), twice.toByteArray()));

        assertThat(desk.lines().get(0).item().description()).isEqualTo("Füße – „Maß“ à 5 €");
        ImportResult once =
                desk.enter(desk.file("u.csv", text + "2026-07-02,Łódź,1.00\n"), "twice");
        assertThat(once.problems().stream().map(Problem::toString))
                .containsExactly(
                        "u.csv:1: found a character that was not encoded twice; expected text encoded in UTF-8 twice, such as the table saved again, or a layout without encoded: twice");
    }

    @Test
    void mistakesAreTold() {
        Problems problems = new Problems();
        LayoutReader.read(
                "x.yaml",
                """
                layout: x
                file: {header_row: none, columns: many, quote: "x", encoded: thrice}
                dates: {pattern: "yyyy-MM-dd", language: German}
                numbers: {minor: 7}
                signs: document
                outgoing: [Fee]
                fields: {date: "#1"}
                worked_out:
                  Sum: {add: []}
                rows:
                  - when: {}
                    enter: [{kind: sale, gross: "#2"}]
                other_rows:
                  - {why: "no condition"}
                  - {is: T, count: maybe}
                amounts: ["#2"]
                """,
                problems);
        assertThat(problems.kept().stream().map(Problem::toString))
                .containsExactlyInAnyOrder(
                        "x.yaml:2 [file.columns]: found 'many'; expected how many columns there are, such as 9",
                        "x.yaml:2 [file.quote]: found 'x'; expected a double or a single quote, or none, such as none",
                        "x.yaml:2 [file.encoded]: found 'thrice'; expected once or twice, such as twice",
                        "x.yaml:3 [dates.language]: found 'German'; expected a language of ISO 639, such as de",
                        "x.yaml:4 [numbers.minor]: found '7'; expected how many digits are decimals, 0 to 4, such as 2",
                        "x.yaml:9 [worked_out.Sum.add]: found nothing; expected columns, such as add: [Credit, Debit]",
                        "x.yaml:14 [other_rows.starts]: found no condition; expected is, starts, blank or when, such as starts: Total",
                        "x.yaml:15 [other_rows.count]: found 'maybe'; expected yes or no, such as yes");
    }
}
