package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;
import quarterfold.ledger.Particular;

/** Statements of bank accounts as tables, of an invented bank. */
class BankCsvTest {
    private static final String LAYOUT =
            """
            layout: harbour-bank
            dates: {pattern: "dd/MM/yyyy"}
            numbers: {thousands: ","}
            signs: owner
            currency: GBP
            fields:
              date: Booked
              paid: Value date
              party: Payer or payee
              description: Details
              document: Reference
            constants:
              account: GB24QFLD00000012345678
            outgoing: [Paid out]
            worked_out:
              Money: {add: [Paid in, Paid out]}
            rows:
              - when: {}
                enter: [{kind: bank-line, gross: Money}]
            amounts: [Money]
            balance: {column: Balance}
            """;
    private static final List<String> ROWS =
            List.of(
                    "28/09/2026,28/09/2026,,Balance brought forward,,,,400.00",
                    "28/09/2026,29/09/2026,Harbour Boxes,\"Tape, wide\",HX-2210,240.00,,160.00",
                    "29/09/2026,29/09/2026,,Monthly charge,,6.50,,",
                    "30/09/2026,30/09/2026,Quaylark Payments,Payout,QL-0418,,\"18,600.00\",\"18,753.50\"");
    private static final String NAMES =
            "Booked,Value date,Payer or payee,Details,Reference,Paid out,Paid in,Balance";

    @TempDir private Path folder;
    private Desk desk;

    @BeforeEach
    void open() throws IOException {
        desk = new Desk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private static String file(List<String> rows) {
        return NAMES + "\n" + String.join("\n", rows) + "\n";
    }

    private static List<String> newestFirst() {
        return List.of(
                ROWS.get(3),
                ROWS.get(2).replace("6.50,,", "6.50,,153.50"),
                ROWS.get(1),
                ROWS.get(0));
    }

    @Test
    void aLayoutReadsAStatementAndItsBalanceProvesIt() throws IOException {
        desk.layout("harbour-bank", LAYOUT);
        ImportResult result = desk.enter("september.csv", file(ROWS));

        assertThat(result.layout()).isEqualTo("harbour-bank");
        assertThat(desk.lines())
                .extracting(
                        l -> l.profile().kind(),
                        Line::taxPoint,
                        l -> l.paid().orElseThrow(),
                        l -> l.signedMoney().toString(),
                        l -> l.profile().party(),
                        l -> l.item().description(),
                        Line::document,
                        l -> l.particulars().word(Particular.ACCOUNT).orElseThrow())
                .containsExactly(
                        tuple(
                                Kind.BANK_LINE,
                                LocalDate.of(2026, 9, 28),
                                LocalDate.of(2026, 9, 29),
                                "-240.00",
                                "Harbour Boxes",
                                "Tape, wide",
                                "HX-2210",
                                MadeStatement.ACCOUNT),
                        tuple(
                                Kind.BANK_LINE,
                                LocalDate.of(2026, 9, 29),
                                LocalDate.of(2026, 9, 29),
                                "-6.50",
                                "",
                                "Monthly charge",
                                "",
                                MadeStatement.ACCOUNT),
                        tuple(
                                Kind.BANK_LINE,
                                LocalDate.of(2026, 9, 30),
                                LocalDate.of(2026, 9, 30),
                                "18600.00",
                                "Quaylark Payments",
                                "Payout",
                                "QL-0418",
                                MadeStatement.ACCOUNT));
        assertThat(desk.setAside(1)).singleElement().extracting("reason").isEqualTo("no amount");
        assertThat(desk.raised()).isEmpty();
    }

    /** A bank lets its customer choose which way the rows stand; one layout reads both. */
    @Test
    void theSameLayoutReadsTheNewestRowFirst() throws IOException {
        desk.layout("harbour-bank", LAYOUT);
        assertThat(desk.enter("september.csv", file(newestFirst())))
                .isInstanceOf(ImportResult.Entered.class);
        assertThat(desk.lines().stream().map(l -> l.signedMoney().toString()))
                .containsExactly("18600.00", "-6.50", "-240.00");
    }

    @Test
    void aMissingRowIsTold() throws IOException {
        desk.layout("harbour-bank", LAYOUT);
        assertThat(desk.problems("a.csv", file(List.of(ROWS.get(0), ROWS.get(1), ROWS.get(3)))))
                .containsExactly(
                        "a.csv:4 [Balance]: found '18,753.50'; expected the balance of the row above moved by 18600.00, 18760.00; is a row missing?");
        List<String> down = newestFirst();
        assertThat(desk.problems("b.csv", file(List.of(down.get(0), down.get(1), down.get(3)))))
                .containsExactly(
                        "b.csv:4 [Balance]: found '400.00'; expected the balance of the row above moved by 6.50, 160.00; is a row missing?");
        desk.layout("harbour-bank", LAYOUT.replace("Balance}", "Balance, newest_first: no}"));
        assertThat(desk.problems("c.csv", file(down)).get(0))
                .isEqualTo(
                        "c.csv:3 [Balance]: found '153.50'; expected the balance of the row above moved by -6.50, 18747.00; is a row missing?");
    }

    /** A row that cannot be read is told alone, not again by the balance below it. */
    @Test
    void aBadRowIsNoMissingRow() throws IOException {
        desk.layout("harbour-bank", LAYOUT);
        List<String> bad =
                List.of(ROWS.get(0), ROWS.get(1).replace("240.00", "240,0"), ROWS.get(3));
        assertThat(desk.problems("a.csv", file(bad).replace("240,0", "\"240,0\"")))
                .containsExactly(
                        "a.csv:3 [Paid out]: found '240,0'; expected an amount with at most 4 decimals, such as 1,234.50");
    }

    private Learned learn(String name, String text, Map<String, String> answers)
            throws IOException {
        return new Learner(Desk.settings()).learn(desk.file(name, text), "mine", answers, l -> {});
    }

    /** Its name says what it is, and the balance proves it; the bank's own types are only noted. */
    @Test
    void aStatementIsLearned() throws IOException {
        String text =
                """
                Date,Type,Narrative,Account number,Money out,Money in,Balance
                28/09/2026,Card,Harbour Boxes HX-2210,12345678,240.00,,160.00
                28/09/2026,Direct debit,Ferry Lane storage,12345678,12.00,,148.00
                29/09/2026,Charge,Monthly,12345678,6.50,,141.50
                30/09/2026,Bank transfer,QUAYLARK QL-0418,12345678,,18600.00,18741.50
                """;
        Learned learned = learn("Bank statement September.csv", text, Map.of());

        assertThat(learned.isProved()).isTrue();
        assertThat(learned.proofs()).contains("'Balance' moves by the money of each row in 3 of 3");
        desk.layout("mine", learned.yaml().orElseThrow());
        assertThat(desk.enter("October.csv", text).layout()).isEqualTo("mine");
        assertThat(desk.lines())
                .extracting(
                        l -> l.profile().kind(),
                        l -> l.signedMoney().toString(),
                        l -> l.particulars().word(Particular.ACCOUNT),
                        l -> l.item().description(),
                        Line::notes)
                .containsExactly(
                        tuple(
                                Kind.BANK_LINE,
                                "-240.00",
                                Optional.of("12345678"),
                                "Harbour Boxes HX-2210",
                                "Type: Card"),
                        tuple(
                                Kind.BANK_LINE,
                                "-12.00",
                                Optional.of("12345678"),
                                "Ferry Lane storage",
                                "Type: Direct debit"),
                        tuple(
                                Kind.BANK_LINE,
                                "-6.50",
                                Optional.of("12345678"),
                                "Monthly",
                                "Type: Charge"),
                        tuple(
                                Kind.BANK_LINE,
                                "18600.00",
                                Optional.of("12345678"),
                                "QUAYLARK QL-0418",
                                "Type: Bank transfer"));
    }

    /** A bank's types name no kinds; what would settle them all at once is said. */
    @Test
    void openTypesOverABalanceAreExplained() throws IOException {
        String text =
                """
                Date,Type,Details,Amount,Balance
                28/09/2026,FPO,Harbour Boxes,-240.00,160.00
                29/09/2026,BGC,Quaylark,18600.00,18760.00
                30/09/2026,BGC,Norrowby,90.00,18850.00
                """;
        Learned open = learn("export.csv", text, Map.of());
        assertThat(open.open())
                .extracting(Question::id)
                .containsExactly("kind/Type: FPO", "kind/Type: BGC");
        assertThat(open.notes())
                .contains(
                        "'Balance' moves by the rows: if this is the statement of a bank account, answer rows=bank-line");
        assertThat(learn("export.csv", text, Map.of("rows", "bank-line")).isProved()).isTrue();
    }

    /** Without such a name a person says what the rows are. */
    @Test
    void otherwiseItIsAsked() throws IOException {
        String text =
                """
                Buchungstag;Wertstellung;Verwendungszweck;Betrag;Saldo
                30.09.2026;01.10.2026;Quaylark QL-0418;18.600,00;19.000,00
                29.09.2026;29.09.2026;Porto;-6,50;400,00
                28.09.2026;28.09.2026;Kartons;-240,00;406,50
                """;
        assertThat(learn("export.csv", text, Map.of()).open())
                .extracting(Question::id)
                .containsExactly("rows");

        Learned learned = learn("export.csv", text, Map.of("rows", "bank-line"));
        assertThat(learned.isProved()).isTrue();
        desk.layout("mine", learned.yaml().orElseThrow());
        desk.enter("export.csv", text);
        assertThat(desk.lines())
                .extracting(
                        l -> l.profile().kind(),
                        l -> l.signedMoney().toString(),
                        l -> l.paid().orElseThrow().toString())
                .containsExactly(
                        tuple(Kind.BANK_LINE, "18600.00", "2026-10-01"),
                        tuple(Kind.BANK_LINE, "-6.50", "2026-09-29"),
                        tuple(Kind.BANK_LINE, "-240.00", "2026-09-28"));
    }
}
