package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Book;
import quarterfold.ledger.Line;

/** What learning finds, asks and tells, report by report. */
class LearnerTest {
    @TempDir private Path folder;
    private final List<Line> lines = new ArrayList<>();

    private Learned learn(String text, Map<String, String> answers) throws IOException {
        Path file = Files.writeString(folder.resolve("report.csv"), text);
        lines.clear();
        return new Learner(Desk.settings()).learn(file, "report", answers, lines::add);
    }

    private Learned learn(String text) throws IOException {
        return learn(text, Map.of());
    }

    private List<String> ids(Learned learned) {
        return learned.open().stream().map(Question::id).toList();
    }

    private List<String> money() {
        return lines.stream()
                .map(l -> l.taxPoint() + " " + l.profile().kind().code() + " " + l.signedMoney())
                .toList();
    }

    @Test
    void datesThatReadTwoWaysAreAsked() throws IOException {
        String text = "Date,Type,Amount\n03/07/2026,Sale,10.00\n04/07/2026,Sale,11.00\n";

        Learned open = learn(text);

        assertThat(open.yaml()).isEmpty();
        assertThat(open.open())
                .containsExactly(
                        new Question(
                                "dates",
                                "every date in 'Date' can be read in 2 ways, such as '03/07/2026', which is 2026-07-03 or 2026-03-07; which pattern is it?",
                                List.of("dd/MM/yyyy", "MM/dd/yyyy"),
                                true));
        assertThat(learn(text, Map.of("dates", "dd/MM/yyyy")).isProved()).isTrue();
        assertThat(money()).containsExactly("2026-07-03 sale 10.00", "2026-07-04 sale 11.00");
    }

    @Test
    void oneDayPastTheTwelfthDecidesTheColumn() throws IOException {
        assertThat(
                        learn("Date,Type,Amount\n03/07/2026,Sale,10.00\n13/07/2026,Sale,11.00\n")
                                .isProved())
                .isTrue();
        assertThat(money()).containsExactly("2026-07-03 sale 10.00", "2026-07-13 sale 11.00");
    }

    @Test
    void aMarkThatReadsTwoWaysIsAsked() throws IOException {
        String text = "Date;Type;Amount\n2026-07-03;Sale;1.250\n2026-07-04;Sale;2.125\n";

        assertThat(ids(learn(text))).containsExactly("decimal-mark");
        assertThat(learn(text, Map.of("decimal-mark", ",")).isProved()).isTrue();
        assertThat(money()).containsExactly("2026-07-03 sale 1250.00", "2026-07-04 sale 2125.00");
        assertThat(learn(text, Map.of("decimal-mark", ".")).isProved()).isTrue();
        assertThat(money()).containsExactly("2026-07-03 sale 1.25", "2026-07-04 sale 2.125");
    }

    @Test
    void wholeNumbersMayBePence() throws IOException {
        String text = "Date,Type,Amount\n2026-07-03,Sale,1250\n2026-07-04,Fee,-125\n";

        assertThat(ids(learn(text))).containsExactly("unit");
        assertThat(learn(text, Map.of("unit", "minor")).isProved()).isTrue();
        assertThat(money()).containsExactly("2026-07-03 sale 12.50", "2026-07-04 fee -1.25");
        assertThat(learn(text.replace("Amount", "Amount (pence)")).isProved()).isTrue();
        assertThat(money()).containsExactly("2026-07-03 sale 12.50", "2026-07-04 fee -1.25");
    }

    @Test
    void aSaleRepeatedForEachOfItsStates() throws IOException {
        String text =
                """
                Date,Order,Type,Status,Amount
                2026-07-03,N-1,Sale,Placed,10.00
                2026-07-04,N-1,Sale,Sent,10.00
                2026-07-05,N-2,Sale,Placed,12.00
                2026-07-06,N-2,Sale,Sent,12.00
                """;

        Learned open = learn(text);

        assertThat(open.open().get(0).text())
                .isEqualTo(
                        "2 sales stand there once for each 'Status', such as rows 2, 3; the rows of which 'Status' count?");
        assertThat(learn(text, Map.of("state/Status", "Sent")).isProved()).isTrue();
        assertThat(money()).containsExactly("2026-07-04 sale 10.00", "2026-07-06 sale 12.00");
    }

    @Test
    void cancelledRowsAreAsked() throws IOException {
        String text =
                "Date,Order,Type,Status,Amount\n2026-07-03,N-1,Sale,Sent,10.00\n2026-07-04,N-2,Sale,Cancelled,7.00\n";

        assertThat(ids(learn(text))).containsExactly("void/Status");
        assertThat(learn(text, Map.of("void/Status", "no")).isProved()).isTrue();
        assertThat(money()).containsExactly("2026-07-03 sale 10.00");
        assertThat(learn(text, Map.of("void/Status", "yes")).isProved()).isTrue();
        assertThat(lines).hasSize(2);
    }

    @Test
    void aSecondTableIsNotLost() throws IOException {
        String text =
                """
                Date,Order,Type,Amount
                2026-07-03,N-1,Sale,10.00
                2026-07-04,N-2,Sale,20.00

                Fee type,Amount
                Levy,-4.00
                """;

        assertThat(learn(text).faults())
                .containsExactly(
                        "a second table begins in row 5 (Fee type, Amount), whose rows could not be read: they need a date and an amount each, under names of their own; save it as a file of its own");
        Learned summary = learn(text.replace("Levy,-4.00", "Sales,30.00"));
        assertThat(summary.isProved()).isTrue();
        assertThat(summary.proofs())
                .contains("the table below, from row 5, states what the rows come to");
    }

    @Test
    void namesThatSlippedAreTold() throws IOException {
        assertThat(
                        learn(
                                        "Type,Date,Amount,Order\n2026-07-03,N-1,Sale,10.00\n2026-07-04,N-2,Sale,20.00\n")
                                .faults())
                .contains(
                        "'Date' stands above cells such as 'N-1'; expected dates; have the columns slipped? Else answer column/Date=ignored",
                        "'Amount' stands above cells such as 'Sale'; expected amounts; have the columns slipped? Else answer column/Amount=ignored");
    }

    @Test
    void aRowThatSlippedIsNamed() throws IOException {
        assertThat(
                        learn(
                                        """
                                        Date,Order,Item,Type,Price,Fee,Net
                                        2026-07-03,N1,Mug,Sale,10.00,-1.00,9.00
                                        2026-07-05,N2,Bowl, blue,Sale,20.00,-2.00,18.00
                                        2026-07-09,N2,Bowl,Refund,-20.00,2.00,-18.00
                                        2026-07-10,N4,Bowl,Sale,20.00,-2.00,18.00
                                        """)
                                .faults())
                .containsExactly(
                        "row 3: found 'Sale' in 'Price'; expected amounts; has the row slipped, as by a delimiter in a text without quotes?");
    }

    @Test
    void aNameOverOtherCellsMayBeOfNoAccount() throws IOException {
        String text =
                "Date,Time,Type,Amount\n13.07.2026,23:04,Sale,10.00\n14.07.2026,01:04,Sale,20.00\n";

        assertThat(learn(text).faults())
                .containsExactly(
                        "'Time' stands above cells such as '23:04'; expected dates; have the columns slipped? Else answer column/Time=ignored");
        assertThat(learn(text, Map.of("column/Time", "ignored")).isProved()).isTrue();
        assertThat(money()).containsExactly("2026-07-13 sale 10.00", "2026-07-14 sale 20.00");
    }

    @Test
    void recordsOfAnotherShapeAreNotLost() throws IOException {
        String text =
                """
                H|Quaylark|20260801
                T|20260703|N-1|Sale|10.00
                T|20260704|N-2|Sale|20.00
                A|20260705|Levy|-4.00
                F|2
                """;

        Learned open = learn(text);
        assertThat(ids(open)).containsExactly("kind/#1: A");
        assertThat(open.open().get(0).text())
                .isEqualTo("records A: what is '#1: A' (1 row, -4.00)?");
        assertThat(open.proofs()).contains("row 5 states 2 rows of the first shape: there are");
        assertThat(learn(text, Map.of("kind/#1: A", "fee")).isProved()).isTrue();
        assertThat(money())
                .containsExactly(
                        "2026-07-03 sale 10.00", "2026-07-04 sale 20.00", "2026-07-05 fee -4.00");
        Learned sound = learn(text.replace("A|20260705|Levy|-4.00\n", ""));
        assertThat(sound.isProved()).isTrue();
        assertThat(sound.proofs()).contains("row 4 states 2 rows: there are");
    }

    @Test
    void aStatedPayoutThatTheRowsDoNotComeTo() throws IOException {
        String text =
                "Payout;;18.00\n\nDate;Type;Amount\n2026-07-13;Sale;20.00\n2026-07-14;Fee;-2.00\n";

        assertThat(learn(text).proofs()).contains("the rows come to 18.00: row 1 states 18.00 too");
        assertThat(learn(text.replace("18.00", "19.00")).faults())
                .containsExactly("row 1 ('Payout  19.00') states 19.00; the rows come to 18.00");
    }

    @Test
    void columnsWithoutAnIdentityAreNoLayout() throws IOException {
        assertThat(
                        learn(
                                        "Date,Type,Price,Thing\n2026-07-13,Sale,20.00,2.00\n2026-07-14,Sale,30.00,4.50\n")
                                .faults())
                .containsExactly(
                        "found 'Price', 'Thing', which keep no identity from row to row, such as gross - fee = net; nothing shows which of them are the money: say what each of them is, such as --answer \"column/Thing=fee\" or \"column/Thing=ignored\"");
    }

    @Test
    void aReportInWindows1252() throws IOException {
        Path file =
                Files.write(
                        folder.resolve("w.csv"),
                        "Datum;Typ;Betrag;Bezeichnung\n03.07.2026;Gebühr;-1,50;Öl\n14.07.2026;Verkauf;1.012,00;Tür\n"
                                .getBytes(Charset.forName("windows-1252")));

        Learned learned = new Learner(Desk.settings()).learn(file, "w", Map.of(), lines::add);

        assertThat(learned.isProved()).isTrue();
        assertThat(money()).containsExactly("2026-07-03 fee -1.50", "2026-07-14 sale 1012.00");
        assertThat(lines.get(1).item().description()).isEqualTo("Tür");
    }

    @Test
    void whatAPersonWroteIntoTheLayoutStaysWhenItIsLearnedAgain() throws IOException {
        Book book = Book.create(folder.resolve("book"), Desk.settings());
        Learned learned =
                learn("No,Date,Type,Amount\n1,2026-07-03,Sale,10.00\n2,2026-07-14,Sale,2.00\n");
        Path file = Learner.write(book, learned, false).orElseThrow();
        String own =
                """
                constants:
                  channel: Quaylark    # my stall
                # numbered anew in each export
                repeats:
                  rows: once

                  ignore: [No]
                """;
        Files.writeString(file, Files.readString(file) + own);

        Learned again = again(book);
        assertThat(Learner.write(book, again, false)).isEmpty();
        assertThat(Learner.write(book, again, true)).contains(file);

        assertThat(Files.readString(file))
                .isEqualTo(
                        learned.yaml().orElseThrow()
                                + """

                                # Kept from the layout as it was.
                                constants:
                                  channel: Quaylark    # my stall

                                # Kept from the layout as it was.
                                repeats:
                                  rows: once

                                  ignore: [No]
                                """);
        Problems problems = new Problems();
        Layout layout = LayoutReader.read("report.yaml", Files.readString(file), problems);
        assertThat(problems.kept()).isEmpty();
        assertThat(layout.repeats().ignored()).containsExactly("No");
        assertThat(layout.constants()).containsEntry(Field.CHANNEL, "Quaylark");
        assertThat(again.notes())
                .containsExactly(
                        "the file states no currency: amounts are taken to be in the book's, GBP; if they are not, add to the layout, such as currency: EUR",
                        "kept from the layout as it was: constants: channel: Quaylark    # my stall",
                        "kept from the layout as it was: repeats: rows: once ignore: [No]");
        String written = Files.readString(file);
        assertThat(Learner.write(book, again(book), false)).contains(file);
        assertThat(Files.readString(file)).isEqualTo(written);
    }

    /** The last report, learned again beside the layout of the book. */
    private Learned again(Book book) throws IOException {
        lines.clear();
        return new Learner(book.settings())
                .learn(
                        folder.resolve("report.csv"),
                        "report",
                        Map.of(),
                        Learner.before(book, "report"),
                        lines::add);
    }

    @Test
    void theLayoutProvedIsTheOneWritten() throws IOException {
        Book book = Book.create(folder.resolve("book"), Desk.settings());
        String text = "Date,Type,Amount\n2026-07-03,Sale,€10.00\n2026-07-14,Sale,€2.00\n";
        Path file = Learner.write(book, learn(text), false).orElseThrow();
        assertThat(Files.readString(file)).contains("\ncurrency: \"EUR\"\n");

        learn(text.replace("€", ""));
        Learned learned = again(book);
        Learner.write(book, learned, true);

        assertThat(lines.stream().map(l -> l.profile().currency())).containsExactly("EUR", "EUR");
        assertThat(learned.isProved()).isTrue();
        assertThat(learned.notes())
                .containsExactly("kept from the layout as it was: currency: \"EUR\"");
        assertThat(Files.readString(file))
                .isEqualTo(learned.yaml().orElseThrow())
                .endsWith("\n# Kept from the layout as it was.\ncurrency: \"EUR\"\n");
    }

    @Test
    void aColumnOfPayoutsTheReportHasNoMoreMayBeMissing() throws IOException {
        Book book = Book.create(folder.resolve("book"), Desk.settings());
        Path file =
                Learner.write(book, learn("Date,Type,Amount\n2026-07-03,Sale,10.00\n"), false)
                        .orElseThrow();
        Files.writeString(file, Files.readString(file) + "payout: {column: Statement total}\n");

        Learned learned = again(book);
        Learner.write(book, learned, true);

        assertThat(learned.isProved()).isTrue();
        assertThat(learned.notes())
                .containsExactly(
                        "the file states no currency: amounts are taken to be in the book's, GBP; if they are not, add to the layout, such as currency: EUR",
                        "'Statement total' is not in this report: a file with it is read too, as before");
        assertThat(Files.readString(file))
                .endsWith(
                        """
                        # A file may be without these columns; it is read as if none were named so.
                        optional: [Statement total]
                        # The payout, as its rows or a line above them state it: the other rows must sum to it.
                        payout: {column: Statement total}
                        """);
    }

    @Test
    void whatNoLongerFitsIsLeftAsAComment() throws IOException {
        Book book = Book.create(folder.resolve("book"), Desk.settings());
        Learned learned = learn("Date,Type,Amount\n2026-07-03,Sale,10.00\n2026-07-14,Sale,2.00\n");
        Files.createDirectories(folder.resolve("book/layouts"));
        Path file =
                Files.writeString(
                        folder.resolve("book/layouts/report.yaml"),
                        "layout: report\nrepeats: {ignore: [Type]}\nrows: []\n");

        Learner.write(book, again(book), true);

        assertThat(Files.readString(file))
                .isEqualTo(
                        learned.yaml().orElseThrow()
                                + "\n# Not kept: it does not fit what was learned.\n# repeats: {ignore: [Type]}\n");
    }

    @Test
    void rulesForRowsOfOtherMonthsStayWhenItIsLearnedAgain() throws IOException {
        Book book = Book.create(folder.resolve("book"), Desk.settings());
        Learned july =
                learn(
                        """
                        Date,Type,Amount
                        2026-07-03,Sale,10.00
                        2026-07-14,Refund,-2.00
                        2026-07-15,Levy,-1.00
                        """,
                        Map.of("kind/Type: Levy", "expense"));
        Path file = Learner.write(book, july, false).orElseThrow();
        learn(
                """
                Date,Type,Amount
                2026-08-03,Sale,10.00
                2026-08-14,Storage,-4.00
                2026-08-15,Levy,-1.00
                """);

        Learned again = again(book);
        Learner.write(book, again, true);

        assertThat(again.isProved()).isTrue();
        assertThat(again.notes())
                .containsExactly(
                        "the file states no currency: amounts are taken to be in the book's, GBP; if they are not, add to the layout, such as currency: EUR",
                        "kept from the layout as it was: - when: {Type: Refund} enter: - {kind: sale-refund, gross: Amount}",
                        "kept from the layout as it was: - when: {Type: Levy} enter: - {kind: expense, gross: Amount}");
        assertThat(money())
                .containsExactly(
                        "2026-08-03 sale 10.00",
                        "2026-08-14 fee -4.00",
                        "2026-08-15 expense -1.00");
        try (Desk desk = new Desk(folder.resolve("desk"))) {
            desk.layout("report", Files.readString(file));
            desk.enter(
                    "september.csv",
                    "Date,Type,Amount\n2026-09-03,Refund,-3.00\n2026-09-04,Storage,-4.00\n2026-09-05,Levy,-1.00\n");
            assertThat(desk.lines().stream().map(l -> l.profile().kind().code()))
                    .containsExactly("sale-refund", "fee", "expense");
        }
        String written = Files.readString(file);
        assertThat(Learner.write(book, again(book), false)).contains(file);
        assertThat(Files.readString(file)).isEqualTo(written);
    }

    @Test
    void layoutsAreNamedAfterTheirFiles() {
        assertThat(Learner.nameOf(Path.of("Quaylark_Report-2026-07.csv")))
                .isEqualTo("quaylark-report");
        assertThat(Learner.nameOf(Path.of("2026.xlsx"))).isEqualTo("my-report");
    }
}
