package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;

/** What learning finds in files with rows of several shapes; the whole layouts it writes. */
class ShapesLearnedTest {
    @TempDir private Path folder;
    private final List<Line> lines = new ArrayList<>();

    private Learned learn(Path file, Map<String, String> answers) throws IOException {
        lines.clear();
        return new Learner(Desk.settings()).learn(file, "report", answers, lines::add);
    }

    private Learned learn(String text) throws IOException {
        return learn(Files.writeString(folder.resolve("report.txt"), text), Map.of());
    }

    static final String RECORDS =
            """
            H|Quaylark|20260731|0001
            T|20260703|N-1|Sale|30.00
            F|20260703|Commission|-4.00
            T|20260704|N-2|Sale|20.00
            R|20260705|N-1|-10.00
            F|20260731|Advertising|-6.00
            T|20260731||Payout|-30.00
            Z|6|8|0.00|30.00
            """;

    static final String STACKED =
            """
            Quaylark July 2026
            Payout,,,40.00
            Date,Order,Type,Amount
            2026-07-03,N-1,Sale,30.00
            2026-07-04,N-2,Sale,20.00
            Total,,,50.00

            Fees
            Date,Fee type,Charge
            2026-07-03,Commission,-4.00
            2026-07-31,Advertising,-6.00
            Total,,-10.00
            Paid out,,40.00
            """;

    private List<String> money() {
        return lines.stream()
                .map(l -> l.taxPoint() + " " + l.profile().kind().code() + " " + l.signedMoney())
                .toList();
    }

    private static final List<String> RECORD_MONEY =
            List.of(
                    "2026-07-03 sale 30.00",
                    "2026-07-03 fee -4.00",
                    "2026-07-04 sale 20.00",
                    "2026-07-05 sale-refund -10.00",
                    "2026-07-31 fee -6.00",
                    "2026-07-31 payout -30.00");

    private static final List<String> STACKED_MONEY =
            List.of(
                    "2026-07-03 sale 30.00",
                    "2026-07-04 sale 20.00",
                    "2026-07-03 fee -4.00",
                    "2026-07-31 fee -6.00");

    /** What an import with the learned layout enters, or why it refuses. */
    private List<String> imported(Learned learned, Path file) throws IOException {
        try (Desk desk = new Desk(folder.resolve("desk" + ++desks))) {
            desk.layout("report", learned.yaml().orElseThrow());
            List<String> problems =
                    desk.enter(file).problems().stream().map(Problem::toString).toList();
            lines.clear();
            lines.addAll(desk.lines());
            assertThat(desk.reread()).isEmpty();
            return problems.isEmpty() ? money() : problems;
        }
    }

    private List<String> imported(Learned learned, String text) throws IOException {
        return imported(learned, Files.writeString(folder.resolve("other.txt"), text));
    }

    private int desks;

    @Test
    void recordsThatLettersMark() throws IOException {
        Learned open = learn(RECORDS);
        assertThat(open.open())
                .containsExactly(
                        new Question(
                                "kind/#1: R",
                                "records R: what is '#1: R' (1 row, -10.00)?",
                                Stream.of(Kind.values()).map(Kind::code).toList(),
                                false));

        Learned learned = learn(RECORDS, Map.of("kind/#1: R", "sale-refund"));

        assertThat(learned.isProved()).isTrue();
        assertThat(money()).isEqualTo(RECORD_MONEY);
        assertThat(learned.proofs())
                .containsExactly(
                        "row 8 states 6 rows of all shapes: there are",
                        "row 8 states 8 rows with itself: there are",
                        "row 8 states what the rows of all shapes come to, 0.00: it ties",
                        "row 8 states what the rows of all shapes but payouts come to, 30.00: it ties",
                        "rows sum to the stated payout in 1 of the settlements, 30.00 in all",
                        "all 8 rows read: 6 entries, 2 rows set aside, money 0.00");
        assertThat(learned.yaml().orElseThrow())
                .endsWith(
                        """
                        layout: report
                        title: "Learned from report.txt"

                        file:
                          delimiter: "|"
                          encoding: any
                          header_row: none
                          columns: 5               # named #1 and on

                        dates:
                          pattern: "yyyyMMdd"

                        numbers:
                          decimal: "."
                          thousands: ","
                          negative: [minus, trailing-minus, brackets, plus]
                          units: ["£", GBP]

                        # The rows that are read as said here; rows of other shapes are below.
                        when: {"#1": T}
                        # Amounts are read as the owner sees them: + comes in, - goes out.
                        signs: owner
                        # The file states no currency: amounts are in the book's. Else: currency: EUR

                        # entry field: column of the report
                        fields:
                          date: "#2"

                        # The first rule that fits a row decides it.
                        rows:
                          - when: {"#4": Sale}
                            enter:
                              - {kind: sale, gross: "#5"}
                          - when: {"#4": Payout}
                            enter:
                              - {kind: payout, gross: "#5"}

                        # Rows of the file that are no rows of the table; sums and counts they state must tie.
                        other_rows:
                          - {is: "H", why: "no row of a shape"}
                          - {is: "Z", states: {"#2": rows, "#3": records, "#4": money, "#5": payout}, why: "no row of a shape"}

                        # The columns whose money must all be accounted for.
                        amounts: ["#5"]
                        # Amounts in a column that is not named, here or above, are refused.
                        unread: []

                        # Rows of other shapes in the same file. Signs, dates and numbers are as above where
                        # a shape does not say.
                        shapes:
                          # The rows with these texts.
                          - when: {"#1": F}
                            columns: 4
                            fields:
                              date: "#2"

                            # The first rule that fits a row decides it.
                            rows:
                              - when: {"#3": Commission}
                                enter:
                                  - {kind: fee, gross: "#4", set: {category: channel-fee}}
                              - when: {"#3": Advertising}
                                enter:
                                  - {kind: fee, gross: "#4", set: {category: advertising}}

                            # The columns whose money must all be accounted for.
                            amounts: ["#4"]
                            # Amounts in a column that is not named, here or above, are refused.
                            unread: []
                          # The rows with these texts.
                          - when: {"#1": R}
                            columns: 4
                            fields:
                              date: "#2"

                            # The first rule that fits a row decides it.
                            rows:
                              - when: {}
                                enter:
                                  - {kind: sale-refund, gross: "#4"}

                            # The columns whose money must all be accounted for.
                            amounts: ["#4"]
                            # Amounts in a column that is not named, here or above, are refused.
                            unread: []
                        """);
        assertThat(imported(learned, RECORDS)).isEqualTo(RECORD_MONEY);
        assertThat(imported(learned, RECORDS.replace("R|", "S|")))
                .containsExactly(
                        "other.txt:5 [#1]: found 'S'; expected a row of a shape that layout report knows, such as 'T' or 'F' or 'R'; give the layout a shape for it, or set it aside");
        assertThat(imported(learned, RECORDS.replace("F|20260731|Advertising|-6.00\n", "")))
                .containsExactly(
                        "other.txt:7 [#2]: found '6'; expected the number of the rows of the file, 5; are rows missing, or is one there twice?",
                        "other.txt:7 [#3]: found '8'; expected the number of all rows of the file up to this one, 7; are rows missing, or is one there twice?",
                        "other.txt:7 [#4]: found '0.00'; expected what the 5 rows of the file come to, 6.00; are rows missing, or is one there twice?",
                        "other.txt:7 [#5]: found '30.00'; expected what the 5 rows of the file come to without payouts, 36.00; are rows missing, or is one there twice?");
    }

    private Learned learn(String text, Map<String, String> answers) throws IOException {
        return learn(Files.writeString(folder.resolve("report.txt"), text), answers);
    }

    @Test
    void theLastRecordIsWiderThanTheFirstShape() throws IOException {
        String text =
                """
                T|2026-08-05|A1|Sale|300.60
                F|2026-08-07|Commission|-5.00
                T|2026-08-06|A2|Sale|50.00
                Z|2026-08-01|2026-08-31|GBP|3|345.60
                """;

        Learned learned = learn(text);

        assertThat(learned.isProved()).isTrue();
        assertThat(learned.yaml().orElseThrow()).contains("\"#6\": money");
        assertThat(imported(learned, text))
                .containsExactly(
                        "2026-08-05 sale 300.60", "2026-08-07 fee -5.00", "2026-08-06 sale 50.00");
        assertThat(imported(learned, text.replace("345.60", "345.61")))
                .containsExactly(
                        "other.txt:4 [#6]: found '345.61'; expected what the 3 rows of the file come to, 345.60; are rows missing, or is one there twice?");
    }

    @Test
    void whatTheLastRecordStatesDoesNotTie() throws IOException {
        Map<String, String> answers = Map.of("kind/#1: R", "sale-refund");

        assertThat(learn(RECORDS.replace("Z|6|8|0.00|30.00", "Z|6|31.00"), answers).faults())
                .containsExactly(
                        "records 'Z' (1, the first in row 8) have no date and amount in columns of their own, and may hold money: save the file without them");
        assertThat(learn(RECORDS.replace("Z|6|8|0.00|30.00", "Z|7"), answers).faults())
                .containsExactly(
                        "row 8 ('Z 7') ends the file and states no number that it has: there are 6 rows of shapes, which come to 0.00");
        assertThat(learn(RECORDS.replace("F|20260703|", "F||"), answers).faults())
                .contains(
                        "records 'F' (2, the first in row 3) have no date and amount in columns of their own, and may hold money: save the file without them");
    }

    @Test
    void aLastRecordMayCountItselfOrARowIsMissing() throws IOException {
        String text =
                """
                T|20260703|N-1|Sale|30.00
                F|20260703|Commission|-4.00
                T|20260704|N-2|Sale|20.00
                Z|4
                """;

        assertThat(learn(text).open())
                .containsExactly(
                        new Question(
                                "counts-itself",
                                "row 4 states 4, and there are 3 rows of shapes: does it count itself? else a row is missing",
                                List.of("yes"),
                                true));
        Learned learned = learn(text, Map.of("counts-itself", "yes"));
        assertThat(learned.isProved()).isTrue();
        assertThat(learned.yaml().orElseThrow()).contains("states: {\"#2\": records}");
        assertThat(learn(text.replace("Z|4", "Z|3")).isProved()).isTrue();
    }

    @Test
    void recordsWithColumnNamesOfTheirOwn() throws IOException {
        String text =
                """
                T;Date;Order;Type;Goods;Shipping;Fee;Net
                F;Fee type;Date;Amount
                T;03.07.2026;N-1;Sale;30,00;5,00;-4,00;31,00
                F;Plan;31.07.2026;-6,00
                T;04.07.2026;N-2;Refund;-20,00;0,00;2,00;-18,00
                F;Advertising;30.07.2026;-1,00
                T;05.07.2026;N-3;Sale;10,00;0,00;-1,00;9,00
                """;

        Learned open = learn(text);
        assertThat(open.open().stream().map(Question::id)).containsExactly("kind/#1: F; #2: Plan");
        Learned learned = learn(text, Map.of("kind/#1: F; #2: Plan", "fee"));

        assertThat(learned.isProved()).isTrue();
        assertThat(learned.proofs()).contains("records T: #5 + #6 + #7 = #8 in 3 of 3 rows");
        assertThat(learned.yaml().orElseThrow())
                .contains("  - {when: {\"#2\": Date}, why: \"column names\"}\n")
                .contains("      - {when: {\"#2\": Fee type}, why: \"column names\"}\n")
                .contains("  order: \"#3\"\n");
        assertThat(imported(learned, text))
                .isEqualTo(
                        List.of(
                                "2026-07-03 sale 30.00",
                                "2026-07-03 delivery 5.00",
                                "2026-07-03 fee -4.00",
                                "2026-07-31 fee -6.00",
                                "2026-07-04 sale-refund -20.00",
                                "2026-07-04 fee-refund 2.00",
                                "2026-07-30 fee -1.00",
                                "2026-07-05 sale 10.00",
                                "2026-07-05 fee -1.00"));
    }

    @Test
    void aTableOfFeesBelowTheTableOfSales() throws IOException {
        Learned learned = learn(STACKED);

        assertThat(learned.isProved()).isTrue();
        assertThat(money()).isEqualTo(STACKED_MONEY);
        assertThat(learned.proofs())
                .containsExactly(
                        "the rows of all shapes come to 40.00: row 2 states 40.00 too",
                        "table 1: row 6 states the sum of 'Amount': it ties",
                        "row 13 states what the rows of all shapes come to, 40.00: it ties",
                        "table 2: row 12 states the sum of 'Charge': it ties",
                        "all 9 rows read: 4 entries, 5 rows set aside, money 40.00");
        assertThat(learned.yaml().orElseThrow())
                .endsWith(
                        """
                        layout: report
                        title: "Learned from report.txt"

                        file:
                          delimiter: ","
                          encoding: any
                          header_row: 3

                        dates:
                          pattern: "yyyy-MM-dd"

                        numbers:
                          decimal: "."
                          thousands: ","
                          negative: [minus, trailing-minus, brackets, plus]
                          units: ["£", GBP]

                        # Amounts are read as the owner sees them: + comes in, - goes out.
                        signs: owner
                        # The file states no currency: amounts are in the book's. Else: currency: EUR

                        # Lines above the column names: what they say under a name holds for every row.
                        above:
                          - "Payout {Payout above: [-+(]?[0-9][0-9.,'’ ]*[)]?-?}"

                        # entry field: column of the report
                        fields:
                          date: Date
                          order: Order

                        # The first rule that fits a row decides it.
                        rows:
                          - when: {Type: Sale}
                            enter:
                              - {kind: sale, gross: Amount}

                        # Rows of the file that are no rows of the table; sums and counts they state must tie.
                        other_rows:
                          - {starts: "Total", sums: [Amount], why: "total"}
                          - {starts: "Fees", why: "no row of the table"}

                        # The columns whose money must all be accounted for.
                        amounts: [Amount]
                        # Amounts in a column that is not named, here or above, are refused.
                        unread: []
                        # The payout, as its rows or a line above them state it: the other rows must sum to it.
                        payout: {column: Payout above}

                        # Rows of other shapes in the same file. Signs, dates and numbers are as above where
                        # a shape does not say.
                        shapes:
                          # The rows below a row that names the columns Date, Fee type, Charge.
                          - fields:
                              date: Date

                            # The first rule that fits a row decides it.
                            rows:
                              - when: {Fee type: Commission}
                                enter:
                                  - {kind: fee, gross: Charge, set: {category: channel-fee}}
                              - when: {Fee type: Advertising}
                                enter:
                                  - {kind: fee, gross: Charge, set: {category: advertising}}

                            # Rows of the file that are no rows of the table; sums and counts they state must tie.
                            other_rows:
                              - {starts: "Paid out", states: {Charge: money}, why: "total of the file"}
                              - {starts: "Total", sums: [Charge], why: "total"}

                            # The columns whose money must all be accounted for.
                            amounts: [Charge]
                            # Amounts in a column that is not named, here or above, are refused.
                            unread: []
                        """);
        assertThat(imported(learned, STACKED)).isEqualTo(STACKED_MONEY);
        assertThat(
                        imported(
                                learned,
                                STACKED.replace(
                                        "2026-07-31,Adv",
                                        "2026-07-05,N-3,Sale,5.00\n2026-07-31,Adv")))
                .containsExactly(
                        "other.txt:11: found 4 cells; expected the 3 of the header; is a text that holds the delimiter without its quotes, such as \"blue, 12 cm\"?");
    }

    @Test
    void whatStandsRoundStackedTablesDoesNotTie() throws IOException {
        assertThat(learn(STACKED.replace("Total,,-10.00", "Total,,-11.00")).faults())
                .contains(
                        "table 2: row 12 ('Total'): found -11.00 in 'Charge'; the rows above come to -10.00; the difference is -1.00");
        assertThat(learn(STACKED.replace("Payout,,,40.00", "Payout,,,41.00")).faults())
                .containsExactly(
                        "row 2 ('Payout   41.00') states 41.00; the rows of all shapes come to 40.00");
        assertThat(learn(STACKED.replace("Paid out,,40.00", "Paid out,,41.00")).faults())
                .contains(
                        "table 2: row 13 ('Paid out'): found 41.00 in 'Charge'; the rows above come to -10.00; the difference is 51.00");
        assertThat(learn(STACKED.replace("2026-07-31,Advertising", ",Advertising")).isProved())
                .isFalse();
    }

    @Test
    void stackedTablesInASheet() throws IOException {
        String text = STACKED.replaceAll("([345]0)[.]00", "$1.50");
        Path file = ShapesTest.workbook(folder.resolve("report.xlsx"), text);
        List<String> money = new ArrayList<>(STACKED_MONEY);
        money.set(0, "2026-07-03 sale 30.50");

        Learned learned = learn(file, Map.of());

        assertThat(learned.isProved()).isTrue();
        assertThat(money()).isEqualTo(money);
        assertThat(imported(learned, file)).isEqualTo(money);
    }

    @Test
    void aTitleSaysWhatTheRowsBelowItAre() throws IOException {
        String text =
                """
                Date,Order,Type,Amount
                2026-07-03,N-1,Sale,30.00
                2026-07-04,N-2,Sale,20.00
                Refunds
                Day,Order,Amount
                2026-07-06,N-1,30.00
                2026-07-07,N-2,1.00
                """
                        .replace("Day,", "Order date,");

        Learned learned = learn(text);

        assertThat(learned.isProved()).isTrue();
        assertThat(money())
                .containsExactly(
                        "2026-07-03 sale 30.00",
                        "2026-07-04 sale 20.00",
                        "2026-07-06 sale-refund -30.00",
                        "2026-07-07 sale-refund -1.00");
        assertThat(imported(learned, text)).isEqualTo(money());
        assertThat(learn(text.replace("Refunds\n", "\n")).open().stream().map(Question::id))
                .containsExactly("2/rows");
    }

    @Test
    void datesOfOneShapeDecideThoseOfTheOther() throws IOException {
        String text =
                """
                Date,Order,Type,Amount
                03/07/2026,N-1,Sale,30.00
                04/07/2026,N-2,Sale,20.00
                Fee type,Date,Charge
                Commission,31/07/2026,-4.00
                Commission,05/07/2026,-2.00
                """;

        assertThat(learn(text).isProved()).isTrue();
        assertThat(money())
                .containsExactly(
                        "2026-07-03 sale 30.00",
                        "2026-07-04 sale 20.00",
                        "2026-07-31 fee -4.00",
                        "2026-07-05 fee -2.00");
        assertThat(learn(text.replace("31/07", "06/07")).open().stream().map(Question::id))
                .containsExactly("dates");
    }

    @Test
    void theCurrencyOfOneShapeIsThatOfTheOther() throws IOException {
        String text =
                """
                Date,Order,Type,Currency,Amount
                2026-07-03,N-1,Sale,EUR,30.00
                2026-07-04,N-2,Sale,EUR,20.00
                Fee type,Date,Charge
                Commission,2026-07-31,-4.00
                Commission,2026-07-05,-2.00
                """;

        assertThat(learn(text).isProved()).isTrue();
        assertThat(lines.stream().map(l -> l.profile().currency()).distinct())
                .containsExactly("EUR");
        Learned open = learn(text.replace("N-2,Sale,EUR", "N-2,Sale,USD"));
        assertThat(open.open().stream().map(q -> q.id() + ": " + q.text()))
                .containsExactly(
                        "2/currency-of-these: table 2: other rows of the file are in EUR and USD; which one currency are these in?");
    }

    @Test
    void aTableThatSaysTheSameAgainHoldsNoMoney() throws IOException {
        String text =
                """
                Date,Order,Type,Amount
                2026-07-03,N-1,Sale,30.00
                2026-07-04,N-2,Sale,20.00

                Day,Paid to bank,Reference
                2026-07-31,50.00,B-1
                """
                        .replace("Day,", "Transaction date,");

        assertThat(learn(text).isProved()).isTrue();
        assertThat(money()).containsExactly("2026-07-03 sale 30.00", "2026-07-04 sale 20.00");
    }

    @Test
    void rowsAboveTheNamesAreNoRowsThatAreLost() throws IOException {
        assertThat(
                        learn(
                                        "2026-07-03,N-1,30.00\n2026-07-04,N-2,20.00\nFee type,Date,Amount\nLevy,2026-07-31,-4.00\nFee,2026-07-30,-4.00\nFee,2026-07-31,-3.00\n")
                                .faults())
                .contains(
                        "rows above the column names have dates and amounts too (2, the first in row 1); expected all of them below names of their own, or a file of their own");
    }
}
