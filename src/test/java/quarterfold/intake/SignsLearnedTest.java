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
import quarterfold.ledger.Line;
import quarterfold.ledger.RaisedQuery;

/** What + and - mean is found from what rows are, and no sign is turned twice. */
class SignsLearnedTest {
    private static final String NET_AND_VAT = "Date,Order,Type,Net,VAT,Gross\n";

    @TempDir private Path folder;
    private final List<Line> lines = new ArrayList<>();

    private Learned learn(String text, Map<String, String> answers) throws IOException {
        Path file = Files.writeString(folder.resolve("m1.csv"), text);
        lines.clear();
        return new Learner(Desk.settings()).learn(file, "report", answers, lines::add);
    }

    private Learned learn(String text) throws IOException {
        return learn(text, Map.of());
    }

    private List<String> money() {
        return lines.stream().map(l -> l.profile().kind().code() + " " + l.signedMoney()).toList();
    }

    private List<String> imported(Learned learned, String month) throws IOException {
        Path file = Files.writeString(folder.resolve("m2.csv"), month);
        try (Desk desk = new Desk(folder.resolve("desk"))) {
            desk.layout("report", learned.yaml().orElseThrow());
            desk.enter(file);
            return desk.raised().stream().map(RaisedQuery::question).toList();
        }
    }

    @Test
    void refundsWithAMinusBesideNetAndVat() throws IOException {
        Learned learned =
                learn(
                        NET_AND_VAT
                                + "2026-07-13,A,Sale,10.00,2.00,12.00\n"
                                + "2026-07-14,B,Sale,20.00,4.00,24.00\n"
                                + "2026-07-15,B,Refund,-20.00,-4.00,-24.00\n");

        assertThat(learned.isProved()).isTrue();
        assertThat(money()).containsExactly("sale 12.00", "sale 24.00", "sale-refund -24.00");
        assertThat(learned.proofs())
                .containsExactly(
                        "Net + VAT = Gross in 3 of 3 rows",
                        "all 3 rows read: 3 entries, 0 rows set aside, money 12.00",
                        "'Gross' comes to 12.00, and so do the entries");
    }

    @Test
    void refundsWithoutAMinusBesideNetAndVat() throws IOException {
        Learned learned =
                learn(
                        NET_AND_VAT
                                + "2026-07-13,A,Sale,10.00,2.00,12.00\n"
                                + "2026-07-14,B,Sale,20.00,4.00,24.00\n"
                                + "2026-07-15,B,Refund,20.00,4.00,24.00\n");

        assertThat(learned.isProved()).isTrue();
        assertThat(money()).containsExactly("sale 12.00", "sale 24.00", "sale-refund -24.00");
        assertThat(learned.notes())
                .containsExactly(
                        "'Gross' comes to 60.00 as printed, the entries to 12.00: amounts of kinds that take money away are printed without a minus",
                        "the file states no currency: amounts are taken to be in the book's, GBP; if they are not, add to the layout, such as currency: EUR");
        assertThat(
                        imported(
                                learned,
                                NET_AND_VAT
                                        + "2026-08-13,A,Sale,10.00,2.00,12.00\n"
                                        + "2026-08-14,B,Refund,-20.00,-4.00,-24.00\n"))
                .containsExactly(
                        "1 row of 'Type: Refund', the first in row 3, is entered as sale-refund, which takes money away, but by their sign they bring 24.00. If the file prints signs in another way than layout report says, correct signs there, for the rule alone if need be; else set this aside: they are reversals");
    }

    /** A row of several amounts that turns its signs from one month to the next. */
    @Test
    void refundsOfSeveralAmountsThatBringMoneyLater() throws IOException {
        String names = "Date,Order,Type,Price,Fee,Net\n";
        Learned learned =
                learn(
                        names
                                + "2026-07-13,A,Sale,10.00,-1.00,9.00\n"
                                + "2026-07-14,B,Sale,20.00,-2.00,18.00\n"
                                + "2026-07-15,B,Refund,-20.00,2.00,-18.00\n");
        assertThat(learned.isProved()).isTrue();

        assertThat(
                        imported(
                                learned,
                                names
                                        + "2026-08-13,A,Sale,10.00,-1.00,9.00\n"
                                        + "2026-08-14,A,Refund,10.00,-1.00,9.00\n"))
                .containsExactly(
                        "1 row of 'Type: Refund', the first in row 3, is entered as sale-refund, which takes money away, but by their sign they bring 10.00. If the file prints signs in another way than layout report says, correct signs there, for the rule alone if need be; else set this aside: they are reversals");
    }

    @Test
    void refundsOfUnitsOrOfPrice() throws IOException {
        String names = "Date,Order,Type,Qty,Unit price\n";
        String sales = "2026-07-13,A,Sale,2,5.00\n2026-07-14,B,Sale,1,20.00\n";

        learn(names + sales + "2026-07-15,B,Refund,-1,20.00\n");
        assertThat(money()).containsExactly("sale 10.00", "sale 20.00", "sale-refund -20.00");
        learn(names + sales + "2026-07-15,B,Refund,1,-20.00\n");
        assertThat(money()).containsExactly("sale 10.00", "sale 20.00", "sale-refund -20.00");
        learn(names + sales + "2026-07-15,B,Refund,1,20.00\n");
        assertThat(money()).containsExactly("sale 10.00", "sale 20.00", "sale-refund -20.00");
    }

    /** A list of bills prints what goes out without a minus and what comes back with one. */
    @Test
    void creditNotesWithAMinusBesideBills() throws IOException {
        Learned learned =
                learn(
                        """
                        Invoice date,Supplier,Invoice no,Type,Net,VAT,Gross
                        2026-07-13,Hollin Ceramics,HC-1,Invoice,100.00,20.00,120.00
                        2026-07-14,Hollin Ceramics,HC-2,Invoice,200.00,40.00,240.00
                        2026-07-15,Hollin Ceramics,HC-3,Credit note,-50.00,-10.00,-60.00
                        """,
                        Map.of(
                                "kind/Type: Invoice",
                                "purchase",
                                "kind/Type: Credit note",
                                "purchase-credit"));

        assertThat(learned.isProved()).isTrue();
        assertThat(money())
                .containsExactly("purchase -120.00", "purchase -240.00", "purchase-credit 60.00");
        assertThat(learned.yaml().orElseThrow())
                .contains("# + goes out, - comes in.\nsigns: turned\n");
    }

    @Test
    void aFeeWithoutAMinusBesideARefundWithOne() throws IOException {
        String text =
                """
                Date,Order,Type,Amount
                2026-07-13,A1,Sale,10.00
                2026-07-14,A2,Sale,20.00
                2026-07-15,A2,Fee,5.00
                2026-07-15,A2,Refund,-5.00
                """;

        assertThat(learn(text).open())
                .containsExactly(
                        new Question(
                                "signs",
                                "of the rows that should take money away 1 have a minus and 1 have none; are amounts printed with the owner's + and - (owner), all as on a document (document), or does each go as its kind says, with or without a minus (kinds)?",
                                List.of("owner", "document", "kinds"),
                                true));
        assertThat(learn(text, Map.of("signs", "kinds")).isProved()).isTrue();
        assertThat(money())
                .containsExactly("sale 10.00", "sale 20.00", "fee -5.00", "sale-refund -5.00");
    }

    @Test
    void salesWithAMinus() throws IOException {
        String text =
                "Date,Order,Type,Amount\n2026-07-13,A1,Sale,-10.00\n2026-07-14,A2,Sale,-20.00\n2026-07-15,A3,Sale,-5.00\n";

        assertThat(learn(text).open())
                .containsExactly(
                        new Question(
                                "signs-turned",
                                "sales come to -35.00, less than nothing; does + mean money out here?",
                                List.of("yes", "no"),
                                true));
        learn(text, Map.of("signs-turned", "yes"));
        assertThat(money()).containsExactly("sale 10.00", "sale 20.00", "sale 5.00");
        learn(text, Map.of("signs-turned", "no"));
        assertThat(money()).containsExactly("sale -10.00", "sale -20.00", "sale -5.00");
    }

    @Test
    void feesThatAllComeInAreAsked() throws IOException {
        Learned learned =
                learn(
                        "Date,Order,Type,Amount\n2026-07-13,A,Sale,10.00\n2026-07-14,A,Fee,3.00\n2026-07-15,A,Sale,5.00\n");

        assertThat(
                        imported(
                                learned,
                                "Date,Order,Type,Amount\n2026-08-13,A,Sale,10.00\n2026-08-14,A,Fee,-3.00\n2026-08-15,A,Fee,1.00\n2026-08-15,A,Fee,-1.00\n"))
                .containsExactly(
                        "2 rows of 'Type: Fee', the first in row 3, are entered as fee, which takes money away, but by their sign they bring 4.00. If the file prints signs in another way than layout report says, correct signs there, for the rule alone if need be; else set this aside: they are reversals");
    }
}
