package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.RaisedQuery;

/** What a report states of its payout and currency, learned once and held against later files. */
class StatedLearnedTest {
    private static final String ON_ROWS =
            """
            Settlement,Date,Order,Type,Amount,Payout total
            S1,2026-07-13,A1,Sale,10.00,25.00
            S1,2026-07-14,A2,Sale,20.00,25.00
            S1,2026-07-15,A2,Fee,-5.00,25.00
            """;
    private static final String ABOVE =
            """
            Payout: 25.00

            Settlement,Date,Order,Type,Amount
            S1,2026-07-13,A1,Sale,10.00
            S1,2026-07-14,A2,Sale,20.00
            S1,2026-07-15,A2,Fee,-5.00
            """;
    private static final String NO_CURRENCY =
            "the file states no currency: amounts are taken to be in the book's, GBP; if they are not, add to the layout, such as currency: EUR";
    private static final String NO_CHANNEL =
            "the file does not name the channel that takes its fees, by which the channel's invoices are known: --answer channel=NAME writes it into the layout";

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

    private Learned learn(String text, Map<String, String> answers) throws IOException {
        Path file = Files.writeString(folder.resolve("learned.csv"), text);
        return new Learner(Desk.settings()).learn(file, "report", answers);
    }

    private Learned learn(String text) throws IOException {
        return learn(text, Map.of());
    }

    /** Learns a report that is proved, and gives the book its layout. */
    private String layout(String text) throws IOException {
        Learned learned = learn(text);
        assertThat(learned.isProved()).isTrue();
        desk.layout("report", learned.yaml().orElseThrow());
        return learned.yaml().orElseThrow();
    }

    private List<String> questions() {
        return desk.raised().stream().map(RaisedQuery::question).toList();
    }

    @Test
    void aPayoutRepeatedOnTheRowsIsHeldAgainstThem() throws IOException {
        assertThat(learn(ON_ROWS).proofs())
                .contains("rows sum to the stated payout in 1 of the settlements, 25.00 in all");
        assertThat(layout(ON_ROWS)).contains("\npayout: {column: Payout total}\n");

        desk.enter(
                "august.csv",
                """
                Settlement,Date,Order,Type,Amount,Payout total
                S2,2026-08-13,A1,Sale,10.00,10.00
                S3,2026-08-14,A2,Sale,20.00,31.50
                S4,2026-08-15,A3,Sale,5.00,5.00
                """);

        assertThat(questions())
                .containsExactly(
                        "settlement S3 states a payout of GBP 31.50; its other rows, 1 of them, sum to 20.00; the difference is 11.50: which rows are missing, or which are not of this settlement?");
    }

    @Test
    void aPayoutOnTheRowsThatDoesNotTieIsTold() throws IOException {
        Learned learned = learn(ON_ROWS.replace("25.00\n", "99.00\n"));

        assertThat(learned.isProved()).isFalse();
        assertThat(learned.faults())
                .containsExactly(
                        "settlement S1 states a payout of GBP 99.00; its other rows, 3 of them, sum to 25.00; the difference is 74.00: which rows are missing, or which are not of this settlement?");
    }

    @Test
    void aColumnOfPayoutsThatRepeatsNone() throws IOException {
        Learned each =
                learn(
                        """
                        Settlement,Date,Order,Type,Amount,Payout total
                        S1,2026-07-13,A1,Sale,10.00,10.00
                        S1,2026-07-14,A2,Sale,20.00,30.00
                        S1,2026-07-15,A2,Fee,-5.00,25.00
                        """);
        assertThat(each.isProved()).isTrue();
        assertThat(each.notes())
                .containsExactly(
                        "'Payout total' is not the same on the rows of a settlement: it is kept as a note, and nothing is held against it",
                        NO_CURRENCY,
                        NO_CHANNEL);
        assertThat(each.yaml().orElseThrow()).doesNotContain("payout:");

        Learned turned = learn(ON_ROWS.replace(",25.00\n", ",-25.00\n"));
        assertThat(turned.isProved()).isTrue();
        assertThat(turned.notes())
                .contains(
                        "'Payout total' states each payout with the sign turned (-25.00): it is kept as a note, and nothing is held against it");
    }

    @Test
    void aPayoutAboveTheRowsIsHeldAgainstThoseOfEveryFile() throws IOException {
        assertThat(layout(ABOVE)).contains("\npayout: {column: Payout above}\n");
        assertThat(learn(ABOVE).notes())
                .contains(
                        "row 1 ('Payout: 25.00') states the payout: import holds it against the rows of every file");

        assertThat(desk.enter("july.csv", ABOVE).problems()).isEmpty();
        assertThat(questions()).isEmpty();
        desk.enter(
                "august.csv",
                ABOVE.replace("Payout: 25.00", "\"Payout: 1,099.00\"")
                        .replace("S1,2026-07", "S2,2026-08"));

        assertThat(questions())
                .containsExactly(
                        "a line above the rows states a payout of 1099.00; the rows but payouts, 3 of them, sum to 25.00; the difference is 1074.00: which rows are missing, or which are not of this payout?");
        assertThat(desk.differences()).isEmpty();
    }

    @Test
    void theSameRowsUnderAnotherPayoutAreTheSame() throws IOException {
        layout(ABOVE);
        desk.enter("july.csv", ABOVE);

        desk.enter("longer.csv", ABOVE.replace("25.00", "31.00") + "S1,2026-07-16,A3,Sale,6.00\n");

        assertThat(desk.lines()).hasSize(4);
        assertThat(questions()).isEmpty();
    }

    @Test
    void whatIsProvedAboveAndNotReadLaterIsTold() throws IOException {
        Learned learned =
                learn(
                        ABOVE.replace("Payout: 25.00", "Total sales: 30.00")
                                .replace(
                                        "Settlement,Date,Order,Type,Amount",
                                        "Settlement,Date,Order,Type,Price,Fee,Net")
                                .replace("Sale,10.00", "Sale,10.00,-1.00,9.00")
                                .replace("Sale,20.00", "Sale,20.00,-2.00,18.00")
                                .replace(
                                        "S1,2026-07-15,A2,Fee,-5.00",
                                        "S1,2026-07-15,A3,Sale,0.00,-1.00,-1.00"));

        assertThat(learned.isProved()).isTrue();
        assertThat(learned.notes())
                .contains(
                        "row 1 ('Total sales: 30.00') ties here, but import does not hold it against the rows of other files");
    }

    @Test
    void theCurrencyAboveIsThatOfEachFile() throws IOException {
        String july = ABOVE.replace("Payout: 25.00", "Currency: EUR");
        assertThat(layout(july))
                .contains("  currency: Currency above\n")
                .doesNotContain("\ncurrency:");

        desk.enter("july.csv", july);
        desk.enter("august.csv", july.replace("EUR", "USD").replace("2026-07", "2026-08"));

        assertThat(desk.lines())
                .extracting(l -> l.taxPoint().getMonthValue() + " " + l.profile().currency())
                .containsExactly("7 EUR", "7 EUR", "7 EUR", "8 USD", "8 USD", "8 USD");
        assertThat(desk.enter("none.csv", july.replace("Currency: EUR", "Stall")).problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "none.csv:3: found no line above the column names that reads 'Currency: {Currency above: [A-Z]{3}}'; expected one, for layout report: where the report now words it otherwise, put the line under above right");
    }

    @Test
    void aSignAboveIsNotReadLaterAndIsTold() throws IOException {
        assertThat(learn(ABOVE.replace("Payout: 25.00", "All amounts in €")).notes())
                .containsExactly(
                        "'All amounts in €' says that amounts are in EUR: import takes them so in every file, whatever it says there",
                        NO_CHANNEL);
    }

    @Test
    void noCurrencyAtAllIsToldAndWritten() throws IOException {
        Learned learned = learn(ON_ROWS);

        assertThat(learned.notes()).containsExactly(NO_CURRENCY, NO_CHANNEL);
        assertThat(learned.yaml().orElseThrow())
                .contains("\n# Note: " + NO_CURRENCY + "\n")
                .contains(
                        "\n# The file states no currency: amounts are in the book's. Else: currency: EUR\n");
        assertThat(learn(ON_ROWS.replace("Amount", "Amount (EUR)")).notes())
                .containsExactly(NO_CHANNEL);
    }

    @Test
    void amountsWithTheSignsOfSeveralCurrencies() throws IOException {
        String text =
                "Date;Order;Type;Amount\n13/07/2026;A1;Sale;£10.00\n14/07/2026;A2;Sale;€20.00\n15/07/2026;A3;Sale;$30.00\n";

        Learned learned = learn(text, Map.of("currency", "EUR"));

        assertThat(learned.yaml()).isEmpty();
        assertThat(learned.faults())
                .containsExactly(
                        "amounts have the signs of several currencies, such as '£10.00' in row 2 and '€20.00' in row 3 and '$30.00' in row 4; expected amounts without signs beside a column that states each row's currency, such as Currency, or a file for each currency");
        assertThat(learn(text.replace("€", "£").replace("$", "£")).isProved()).isTrue();
    }

    @Test
    void sumsOfSeveralCurrenciesAreSaidOneByOne() throws IOException {
        assertThat(
                        learn(
                                        "Date,Order,Type,Amount,Currency\n2026-07-13,A1,Sale,10.00,GBP\n2026-07-14,A2,Sale,20.00,EUR\n2026-07-15,A3,Sale,30.00,EUR\n")
                                .proofs())
                .containsExactly(
                        "all 3 rows read: 3 entries, 0 rows set aside, money EUR 50.00, GBP 10.00");
    }

    @Test
    void aChannelThatIsAnswered() throws IOException {
        Learned learned = learn(ON_ROWS, Map.of("channel", "Quaylark"));

        assertThat(learned.notes()).containsExactly(NO_CURRENCY);
        assertThat(learned.yaml().orElseThrow()).contains("constants:\n  channel: Quaylark\n");
        desk.layout("report", learned.yaml().orElseThrow());
        desk.enter("july.csv", ON_ROWS);
        assertThat(desk.lines()).extracting(l -> l.profile().channel()).containsOnly("Quaylark");
    }

    @Test
    void aPayoutBelowAnotherColumnIsHeldAgainstTheRows() throws IOException {
        String text =
                """
                Date,Order,Type,Price,Delivery,Total
                2026-07-13,A1,Sale,10.00,2.00,12.00
                2026-07-14,A2,Sale,20.00,2.00,22.00
                2026-07-15,A3,Sale,5.00,0.00,5.00
                Total,,,35.00,4.00,39.00
                Paid to your bank,,,39.00
                """;

        Learned learned = learn(text);

        assertThat(learned.proofs())
                .contains(
                        "row 6 states what the rows come to, 39.00: it ties",
                        "row 5 states the sum of 'Price', 'Delivery', 'Total': it ties");
        assertThat(layout(text))
                .contains(
                        "\n  - {starts: \"Paid to your bank\", states: {Price: money}, why: \"total of the file\"}\n");
        assertThat(desk.enter("july.csv", text).problems()).isEmpty();
        assertThat(
                        desk.enter(
                                        "august.csv",
                                        text.replace("-07-", "-08-")
                                                .replace("bank,,,39", "bank,,,40"))
                                .problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "august.csv:6 [Price]: found '40.00'; expected what the 3 rows of the file come to, 39.00; are rows missing, or is one there twice?");
    }

    @Test
    void amountsWithLettersForTheirSigns() throws IOException {
        String text =
                "Date;Order;Type;Amount\n13/07/2026;N0;Sale;1,234.56 CR\n14/07/2026;N1;Fee;2.00 DR\n15/07/2026;N2;Payout;1,232.56 DR\n";
        assertThat(layout(text))
                .contains("  negative: [minus, trailing-minus, brackets, plus, dr]\n");
        assertThat(desk.enter("july.csv", text).problems()).isEmpty();
        assertThat(desk.lines())
                .extracting(l -> l.profile().kind().code() + " " + l.amounts().money())
                .containsExactly("sale 1234.56", "fee 2.00", "payout 1232.56");
        assertThat(
                        desk.enter(
                                        "august.csv",
                                        text.replace("/07/", "/08/").replace("2.00 DR", "2.00"))
                                .problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "august.csv:3 [Amount]: found '2.00'; expected an amount with at most 4 decimals and with CR or DR behind it, such as 1,234.50 CR");
    }

    @Test
    void datesWithTheLettersOfSummerTime() throws IOException {
        String text =
                """
                Date,Order,Type,Amount
                "Jul 3, 2026, 11:04 PM BST",N1,Sale,10.00
                "Jul 5, 2026, 1:04 AM BST",N2,Sale,20.00
                "Jul 19, 2026, 11:04 AM BST",N3,Sale,5.00
                """;
        assertThat(layout(text))
                .contains(
                        "pattern: \"MMM d, yyyy, h:mm a ['BST']['GMT']\"\n  zone: Europe/London\n");

        desk.enter("july.csv", text);
        desk.enter("january.csv", text.replace("Jul ", "Jan ").replace("BST", "GMT"));

        assertThat(desk.lines())
                .extracting(l -> l.taxPoint().toString())
                .containsExactly(
                        "2026-07-03",
                        "2026-07-05",
                        "2026-07-19",
                        "2026-01-03",
                        "2026-01-05",
                        "2026-01-19");
        assertThat(desk.enter("other.csv", text.replace("BST", "EST")).problems())
                .first()
                .hasToString(
                        "other.csv:2 [Date]: found 'Jul 3, 2026, 11:04 PM EST'; expected a date on the calendar written MMM d, yyyy, h:mm a ['BST']['GMT'], such as Sep 30, 2026, 1:45 PM BST");
    }
}
