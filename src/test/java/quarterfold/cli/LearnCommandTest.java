package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Learning a report from the command line, where there is no terminal to ask on. */
class LearnCommandTest {
    private static final String HEAD =
            "Norrowby Lane;stall report\nOrder;Sold on;Gross;Commission;Postage label;Net\n";
    private static final String ROWS =
            """
            N-1;03.07.2026;60,00;9,00;2,85;48,15
            N-2;14.07.2026;1.120,50;168,08;0,00;952,42
            N-3;21.07.2026;-60,00;-9,00;0,00;-51,00
            N-4;30.07.2026;10,00;1,50;2,85;5,65
            """;

    @TempDir private Path folder;
    private Path book;

    @BeforeEach
    void newBook() {
        book = SmallBook.empty(folder);
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    @Test
    void aProvedLayoutIsWrittenAndImportReadsWithIt() throws IOException {
        Path file = file("stall-2026-07.csv", HEAD + ROWS + "Total;;1.130,50;169,58;5,70;955,22\n");

        Run learned = Run.of("--book", book, "learn", file);

        assertThat(learned.err()).isEmpty();
        assertThat(learned.out())
                .isEqualTo(
                        """
                        Found
                          Column names in row 2; 4 rows below.
                          Column Order: order (such as 'N-1')
                          Column Sold on: date (such as '03.07.2026')
                          Column Gross: total (such as '60,00')
                          Column Commission: fee (such as '9,00')
                          Column Postage label: fee (such as '2,85')
                          Column Net: net (such as '48,15')

                        Proved
                          Gross - Commission - Postage label = Net in 4 of 4 rows
                          row 7 states the sum of 'Gross', 'Commission', 'Postage label', 'Net': it ties
                          all 5 rows read: 10 entries, 1 row set aside, money 955.22
                          'Net' comes to 955.22, and so do the entries

                        To know
                          the file states no currency: amounts are taken to be in the book's, GBP; if they are not, add to the layout, such as currency: EUR

                        Written: layouts/stall.yaml. Read it; import reads with it from now on.
                        """);
        assertThat(learned.code()).isZero();
        Run entered = Run.of("--book", book, "import", file);
        assertThat(entered.out()).contains("stall").contains("955.22  ties");
    }

    @Test
    void whatIsOpenIsSaidAndNothingIsWritten() throws IOException {
        Path file =
                file(
                        "till.csv",
                        "Date,Type,Amount\n2026-07-13,Sale,10.00\n2026-07-14,Wibble,-2.00\n2026-07-15,Sale,5.00\n");

        Run open = Run.of("--book", book, "learn", file, "--json");

        assertThat(open.code()).isEqualTo(1);
        assertThat(open.out())
                .contains("\"result\":\"open\",\"written\":false")
                .contains(
                        "\"id\":\"kind/Type: Wibble\",\"question\":\"what is 'Type: Wibble' (1 row, -2.00)?\"");
        assertThat(book.resolve("layouts").resolve("till.yaml")).doesNotExist();

        Run accepted = Run.of("--book", book, "learn", file, "--accept");
        assertThat(accepted.code()).isZero();
        Run entered = Run.of("--book", book, "import", file);
        assertThat(entered.code()).isZero();
        assertThat(entered.err()).contains("till.csv: query: what is 'Type: Wibble'?");

        Run answered = Run.of("--book", book, "learn", file, "--answer", "kind/Type: Wibble=fee");
        assertThat(answered.code()).isEqualTo(1);
        assertThat(answered.out())
                .endsWith(
                        "Not written: layouts/till.yaml is there and says something else; --accept replaces it, --name gives another.\n");
        Run kept =
                Run.of(
                        "--book",
                        book,
                        "learn",
                        file,
                        "--answer",
                        "kind/Type: Wibble=fee",
                        "--accept");
        assertThat(kept.code()).isZero();
        assertThat(Files.readString(book.resolve("layouts").resolve("till.yaml")))
                .contains(
                        "- when: {Type: Wibble}\n    enter:\n      - {kind: fee, gross: Amount, set: {category: channel-fee}}")
                .doesNotContain("ask:");
    }

    @Test
    void whatDoesNotTieIsToldRowByRow() throws IOException {
        Path file =
                file(
                        "stall.csv",
                        HEAD
                                + ROWS.replace("952,42", "925,42")
                                + "Total;;1.130,50;169,58;5,70;955,22\n");

        Run told = Run.of("--book", book, "learn", file);

        assertThat(told.code()).isEqualTo(1);
        assertThat(told.out())
                .contains(
                        """
                        Does not tie
                          Gross - Commission - Postage label = Net in 3 of 4 rows
                          row 4: found '925.42' in 'Net'; expected 952.42, as the other columns make it
                          row 7 ('Total'): found 955.22 in 'Net'; the rows above come to 928.22; the difference is 27.00
                        """)
                .endsWith("Nothing was written. --accept writes the layout as it is.\n");
    }

    @Test
    void aFileWithoutATable() throws IOException {
        Run none = Run.of("--book", book, "learn", file("letter.txt", "Dear Sir,\nthank you.\n"));

        assertThat(none.code()).isEqualTo(65);
        assertThat(none.out())
                .isEqualTo(
                        """
                        Does not tie
                          letter.txt: found no row with a date and a number; expected a table of dated amounts, such as 2026-09-30,sale,120.00

                        Nothing was written.
                        """);
    }

    @Test
    void wrongNamesAndAnswers() throws IOException {
        Path file = file("till.csv", "Date,Type,Amount\n");
        assertThat(Run.of("--book", book, "learn", file, "--name", "../x").err())
                .startsWith(
                        "--name: found '../x'; expected small letters, digits and hyphens, and not plain-sheet, such as corner-stall\n");
        assertThat(Run.of("--book", book, "learn", file, "--answer", "dates").err())
                .startsWith(
                        "--answer: found 'dates'; expected a question's id and its answer, such as dates=dd/MM/yyyy\n");
    }

    private static final String SALES =
            "Date,Order,Type,Amount\n2026-07-13,A1,Sale,10.00\n2026-07-14,A2,Sale,20.00\n2026-07-15,A2,Wibble,-5.00\n";

    private Run learn(String name, String text, Object... more) throws IOException {
        Object[] args = new Object[more.length + 4];
        args[0] = "--book";
        args[1] = book;
        args[2] = "learn";
        args[3] = file(name, text);
        System.arraycopy(more, 0, args, 4, more.length);
        return Run.of(args);
    }

    @Test
    void answersThatAnswerNothingAreRefused() throws IOException {
        Run kind = learn("till.csv", SALES, "--answer", "kind/Type: Wibble=feee");
        assertThat(kind.code()).isEqualTo(2);
        assertThat(kind.err())
                .startsWith(
                        "--answer: found 'kind/Type: Wibble=feee'; expected one of sale, sale-refund, ")
                .contains(", such as kind/Type: Wibble=sale");
        Run slip = learn("till.csv", SALES, "--answer", "kind/type: Wible=fee");
        assertThat(slip.code()).isEqualTo(2);
        assertThat(slip.err())
                .startsWith(
                        "--answer: found 'kind/type: Wible=fee'; expected the id of a question, such as kind/Type: Wibble");
        Run none = learn("till.csv", SALES, "--answer", "stall=fee");
        assertThat(none.code()).isEqualTo(2);
        assertThat(none.err())
                .startsWith(
                        "--answer: found 'stall=fee', which answers no question about this file; expected the id of one that is open, such as kind/Type: Wibble");
        Run column = learn("till.csv", SALES, "--answer", "column/Order=ordre");
        assertThat(column.code()).isEqualTo(2);
        assertThat(book.resolve("layouts/till.yaml")).doesNotExist();
        assertThat(learn("till.csv", SALES, "--answer", "kind/Type: Wibble=fee").code()).isZero();
    }

    @Test
    void anAnswerToWhatIsNotAskedSoFarIsTold() throws IOException {
        String text =
                "Date,Order,Type,Amount\n03/07/2026,A1,Sale,10.00\n04/07/2026,A2,Wibble,-5.00\n";

        Run open = learn("till.csv", text, "--answer", "signs=owner");

        assertThat(open.code()).isEqualTo(1);
        assertThat(open.out()).endsWith("Not asked so far: --answer \"signs=owner\".\n");
        assertThat(
                        learn(
                                        "till.csv",
                                        text,
                                        "--answer",
                                        "kind/Type: Wibble=fee",
                                        "--answer",
                                        "dates=dd/MM/yyyy")
                                .code())
                .isZero();
    }

    @Test
    void filesNamedByTheirMonthHaveOneLayout() throws IOException {
        String sales = SALES.replace("Wibble", "Fee");
        assertThat(learn("report-july.csv", sales).out()).contains("Written: layouts/report.yaml.");

        String august = sales + "2026-08-30,,Storage,-4.00\n";
        assertThat(learn("report-sierpień.csv", august).out())
                .endsWith(
                        "Not written: layouts/report.yaml is there and says something else; --accept replaces it, --name gives another.\n");
        Run other = learn("stall.csv", august);
        assertThat(other.code()).isEqualTo(1);
        assertThat(other.out())
                .endsWith(
                        "Not written: the file fits the layout report already, and import would not know which is meant. --name report --accept learns it into that one.\n");
        Run both = learn("stall.csv", august, "--accept");
        assertThat(both.out())
                .endsWith(
                        "The file fits the layout report too, and import refuses it until one of them is removed.\n");
    }

    @Test
    void theLayoutThatReadsMoreOfTheColumnsWins() throws IOException {
        String less = SALES.replace("Wibble", "Fee");
        String more =
                "Date,Order,Type,Amount,Settlement\n2026-08-13,A1,Sale,10.00,S1\n2026-08-14,A2,Sale,20.00,S1\n2026-08-15,A2,Fee,-5.00,S1\n";
        assertThat(learn("less.csv", less).code()).isZero();
        assertThat(learn("more.csv", more).code()).isZero();

        assertThat(Run.of("--book", book, "import", folder.resolve("more.csv")).out())
                .contains("more.csv  settlement  more ");
        assertThat(Run.of("--book", book, "import", folder.resolve("less.csv")).out())
                .contains("less ");
    }

    /** What an import's message advises: learning again takes the new state in, and says so. */
    @Test
    void aStateThatALaterMonthBrings() throws IOException {
        String names = "Date,Order,Type,Status,Amount\n";
        Path july =
                file(
                        "stall-2026-07.csv",
                        names + "2026-07-03,A-1,Sale,Sent,10.00\n2026-07-04,A-2,Sale,Sent,9.00\n");
        Path august =
                file(
                        "august.csv",
                        names + "2026-08-03,B-1,Sale,Sent,10.00\n2026-08-04,B-2,Sale,Done,9.00\n");
        assertThat(Run.of("--book", book, "learn", july).code()).isZero();
        assertThat(Run.of("--book", book, "import", august).code()).isEqualTo(65);

        Run again = Run.of("--book", book, "learn", august, "--name", "stall", "--accept");

        assertThat(again.code()).isZero();
        assertThat(again.out())
                .endsWith(
                        """
                          'Status' says 'Done' too, where the layout knew 'Sent': such rows count as the others do; where they do not, add to the layout: other_rows: [{when: {Status: Done}, why: of no account}]

                        Written: layouts/stall.yaml. Read it; import reads with it from now on.
                        """);
        assertThat(Run.of("--book", book, "import", july, august).code()).isZero();
    }
}
