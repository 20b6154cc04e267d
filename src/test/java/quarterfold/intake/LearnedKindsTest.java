package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Line;

/** What rows are by their words, and when that is asked. */
class LearnedKindsTest {
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

    private List<String> money() {
        return lines.stream()
                .map(l -> l.taxPoint() + " " + l.profile().kind().code() + " " + l.signedMoney())
                .toList();
    }

    @Test
    void wordsOfWhichNothingIsKnownAreAsked() throws IOException {
        String text =
                """
                Date,Type,Amount
                2026-07-13,Sale,100.00
                2026-07-14,Selling fee,-4.00
                2026-07-15,Sales tax,-1.00
                2026-07-16,VAT on fees,-2.00
                """;

        assertThat(learn(text).open().stream().map(Question::text))
                .containsExactly(
                        "what is 'Type: Sales tax' (1 row, -1.00)? Some of its words are known, but not 'tax'.",
                        "what is 'Type: VAT on fees' (1 row, -2.00)? Some of its words are known, but not 'vat'.");
        assertThat(
                        learn(
                                        text,
                                        Map.of(
                                                "kind/Type: Sales tax",
                                                "expense",
                                                "kind/Type: VAT on fees",
                                                "fee"))
                                .isProved())
                .isTrue();
        assertThat(money())
                .containsExactly(
                        "2026-07-13 sale 100.00",
                        "2026-07-14 fee -4.00",
                        "2026-07-15 expense -1.00",
                        "2026-07-16 fee -2.00");
    }

    @Test
    void aKindAllOfWhoseMoneyGoesTheOtherWayIsAsked() throws IOException {
        String text =
                """
                Date,Type,Amount
                2026-07-13,Purchase,100.00
                2026-07-14,Fee,-4.00
                2026-07-15,Fee,-4.00
                2026-07-16,Fee for refund,-2.00
                2026-07-17,Fee,-4.00
                """;

        assertThat(learn(text.replace("Purchase", "Sale")).open().stream().map(Question::text))
                .containsExactly(
                        "what is 'Type: Fee for refund' (1 row, -2.00)? By its words it is fee-refund, but its money goes out.");
        Learned open = learn(text.replace("Fee for refund", "Fee"), Map.of("signs", "owner"));
        assertThat(open.open().stream().map(Question::text))
                .containsExactly(
                        "what is 'Type: Purchase' (1 row, 100.00)? By its words it is purchase, but its money comes in.");
        assertThat(open.yaml().orElseThrow())
                .contains("  - when: {Type: Purchase}\n")
                .contains("what is 'Type: Purchase'?");
        assertThat(
                        learn(
                                        text.replace("Fee for refund", "Fee"),
                                        Map.of("signs", "owner", "kind/Type: Purchase", "sale"))
                                .isProved())
                .isTrue();
        assertThat(money()).startsWith("2026-07-13 sale 100.00", "2026-07-14 fee -4.00");
    }

    /** Words of the trade, each with its money as a channel states it to the seller. */
    @ParameterizedTest
    @CsvSource(
            textBlock =
                    """
                    Return label,-3.00,fee
                    Return shipping label,-2.00,fee
                    Retourenetikett,-3.00,fee
                    Étiquette de retour,-3.00,fee
                    Chargeback fee,-15.00,fee
                    Prowizja od sprzedaży,-1.00,fee
                    Refund of fees,1.00,fee-refund
                    Zwrot prowizji,1.00,fee-refund
                    Remboursement des frais,1.00,fee-refund
                    Lost item,10.00,compensation
                    Articolo smarrito,10.00,compensation
                    Sale of voucher,10.00,voucher
                    Gift voucher sold,10.00,voucher
                    Vente de carte cadeau,10.00,voucher
                    Customer's purchase,10.00,sale
                    Achat client,10.00,sale
                    Sales return,-10.00,sale-refund
                    """)
    void wordsOfTheTrade(String words, String amount, String kind) throws IOException {
        String text =
                "Date,Type,Amount\n2026-07-13,Sale,1000.00\n2026-07-14,Fee,-1.00\n2026-07-15,%s,%s\n";

        assertThat(learn(text.formatted(words, amount)).isProved()).isTrue();
        assertThat(money()).contains("2026-07-15 %s %s".formatted(kind, amount));
    }

    @Test
    void anAnswerForRowsOfSeveralAmountsIsOfTheRows() throws IOException {
        String text =
                """
                Date,Type,Price,Fee,Net
                2026-07-13,Sale,20.00,2.00,18.00
                2026-07-14,Private sale,30.00,4.50,25.50
                2026-07-15,Sale,25.00,2.25,22.75
                """;

        assertThat(learn(text).open().stream().map(Question::text))
                .containsExactly(
                        "what is 'Type: Private sale' (1 row, 25.50)? Some of its words are known, but not 'private'.");
        assertThat(learn(text, Map.of("kind/Type: Private sale", "sale")).isProved()).isTrue();
        assertThat(money())
                .containsExactly(
                        "2026-07-13 sale 20.00",
                        "2026-07-13 fee -2.00",
                        "2026-07-14 sale 30.00",
                        "2026-07-14 fee -4.50",
                        "2026-07-15 sale 25.00",
                        "2026-07-15 fee -2.25");
    }

    private static final String SUMMED =
            """
            Date,Order,Type,Price,Fee,Net
            2026-07-13,N1,Sale,10.00,-1.00,9.00
            2026-07-13,N2,Sale,20.00,-2.00,18.00
            2026-07-13,,Subtotal,30.00,-3.00,27.00
            2026-07-14,N3,Sale,5.00,-0.50,4.50
            2026-07-14,,Subtotal,5.00,-0.50,4.50
            2026-07-31,,Total,35.00,-3.50,31.50
            """;

    @Test
    void totalsThatCarryADateAreNoRows() throws IOException {
        Learned learned = learn(SUMMED);

        assertThat(learned.isProved()).isTrue();
        assertThat(learned.proofs())
                .containsExactly(
                        "rows 4, 6 ('Type: Subtotal') each state the sum of the rows above: it ties",
                        "row 7 ('Type: Total') states the sum of the rows above: it ties",
                        "Price + Fee = Net in 3 of 3 rows",
                        "all 6 rows read: 6 entries, 3 rows set aside, money 31.50",
                        "'Net' comes to 31.50, and so do the entries");
        try (Desk desk = new Desk(folder.resolve("desk"))) {
            desk.layout("report", learned.yaml().orElseThrow());
            assertThat(
                            desk.problems(
                                    "wrong.csv",
                                    SUMMED.replace("31.50", "32.50").replace("35.00", "36.00")))
                    .containsExactly(
                            "wrong.csv:7 [Price]: found '36.00'; expected the sum of the 3 rows above, 35.00; are rows missing, or is one there twice?",
                            "wrong.csv:7 [Net]: found '32.50'; expected the sum of the 3 rows above, 31.50; are rows missing, or is one there twice?");
        }
    }

    @Test
    void rowsThatSayTotalButDoNotTieAreAsked() throws IOException {
        String text = SUMMED.replace("Total,35.00,-3.50,31.50", "Total,45.00,-4.50,40.50");

        Learned open = learn(text);

        assertThat(open.open().stream().map(Question::text))
                .containsExactly("what is 'Type: Total' (1 row, 40.50)?");
        assertThat(open.open().get(0).answers()).contains("sale", "no-row");
        Learned learned = learn(text, Map.of("kind/Type: Total", "no-row"));
        assertThat(learned.isProved()).isTrue();
        assertThat(learned.notes())
                .containsExactly(
                        "row 7 ('Type: Total'): set aside, for you say that it is no row",
                        "the file states no currency: amounts are taken to be in the book's, GBP; if they are not, add to the layout, such as currency: EUR");
        assertThat(money()).hasSize(6);
    }

    @Test
    void whatIsPaidBackMayStandOnTheRowOfTheSale() throws IOException {
        Learned learned =
                learn(
                        """
                        Date,Order,Type,Gross,Refunded,Fee,Net
                        2026-07-13,A70,Sale,10.00,0.00,1.00,9.00
                        2026-07-14,A71,Sale,20.00,20.00,2.00,-2.00
                        2026-07-15,A72,Sale,30.00,5.00,3.00,22.00
                        """,
                        Map.of("column/Refunded", "refund"));

        assertThat(learned.isProved()).isTrue();
        assertThat(money())
                .contains(
                        "2026-07-14 sale 20.00",
                        "2026-07-14 sale-refund -20.00",
                        "2026-07-15 sale-refund -5.00");
    }

    @Test
    void aDescriptionOfOneWordTellsTheKind() throws IOException {
        Learned learned =
                learn(
                        """
                        Date,Order,Description,Debit,Credit
                        2026-07-13,N0,Sale,,10.00
                        2026-07-14,N1,Commission,1.00,
                        2026-07-15,N2,Refund,5.00,
                        2026-07-16,N3,Payout,4.00,
                        """);

        assertThat(learned.isProved()).isTrue();
        assertThat(money())
                .containsExactly(
                        "2026-07-13 sale 10.00",
                        "2026-07-14 fee -1.00",
                        "2026-07-15 sale-refund -5.00",
                        "2026-07-16 payout -4.00");
        assertThat(
                        learn(
                                        "Date,Order,Description,Debit,Credit\n2026-07-13,N0,Sale of a mug,,10.00\n2026-07-14,N1,Commission,1.00,\n")
                                .open()
                                .get(0)
                                .id())
                .isEqualTo("rows");
    }

    @Test
    void aTotalInTheColumnOfDatesIsNoRow() throws IOException {
        Learned learned =
                learn(
                        """
                        Date,Order,Type,Price,Fee,Net
                        2026-07-13,N1,Sale,10.00,-1.00,9.00
                        2026-07-13,N2,Sale,20.00,-2.00,18.00
                        Subtotal 2026-07-13,,,30.00,-3.00,27.00
                        2026-07-14,N3,Sale,5.00,-0.50,4.50
                        Subtotal 2026-07-14,,,5.00,-0.50,4.50
                        Grand total,,,35.00,-3.50,31.50
                        """);

        assertThat(learned.isProved()).isTrue();
        assertThat(learned.proofs())
                .contains("row 4 states the sum of 'Price', 'Fee', 'Net': it ties");
        assertThat(money()).hasSize(6);
    }

    @Test
    void theDateThatIsWrittenOtherwiseIsShown() throws IOException {
        assertThat(
                        learn(
                                        "Date,Type,Amount\n2026-07-13,Sale,10.00\n2026-07-14,Sale,10.00\n14/07/26 or so,Sale,5.00\n")
                                .faults())
                .containsExactly(
                        "'Date': found dates written in ways that no one pattern reads, such as '2026-07-13' and '14/07/26 or so'");
    }
}
