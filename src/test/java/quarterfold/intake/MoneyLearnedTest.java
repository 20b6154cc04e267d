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
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Line;

/** Which columns of a report are its money, where names alone would mislead. */
class MoneyLearnedTest {
    @TempDir private Path folder;
    private final List<Line> lines = new ArrayList<>();

    private Learned learn(String text, Map<String, String> answers) throws IOException {
        Path file = Files.writeString(folder.resolve("m1.csv"), text);
        lines.clear();
        return new Learner(Desk.settings()).learn(file, "report", answers, lines::add);
    }

    /** Rows of the cells, each before a day of July, an order and the word Sale. */
    private static String sales(String names, String... cells) {
        StringBuilder text = new StringBuilder("Date,Order,Type," + names + "\n");
        for (int i = 0; i < cells.length; i++) {
            String type = cells[i].startsWith("-") ? "Refund" : "Sale";
            text.append("2026-07-1%d,A%d,%s,%s\n".formatted(3 + i, i, type, cells[i]));
        }
        return text.toString();
    }

    private List<String> money() {
        return lines.stream().map(l -> l.profile().kind().code() + " " + l.signedMoney()).toList();
    }

    private List<String> amounts() {
        return lines.stream()
                .map(
                        l -> {
                            Amounts a = l.amounts();
                            return "%s %s %s %s"
                                    .formatted(
                                            l.profile().kind().code(),
                                            a.net().map(Object::toString).orElse("-"),
                                            a.vat().map(Object::toString).orElse("-"),
                                            a.gross().map(Object::toString).orElse("-"));
                        })
                .toList();
    }

    /** VAT stated within the price is entered as stated, whatever the rate would give. */
    @Test
    void vatWithinThePriceIsEntered() throws IOException {
        Learned learned =
                learn(
                        sales(
                                "Price,VAT included,Fee,Net",
                                "12.00,2.00,-1.20,10.80",
                                "20.00,0.00,-2.10,17.90",
                                "21.00,1.00,-2.00,19.00"),
                        Map.of());

        assertThat(learned.isProved()).isTrue();
        assertThat(amounts())
                .containsExactly(
                        "sale - 2.00 12.00",
                        "fee - - 1.20",
                        "sale - 0.00 20.00",
                        "fee - - 2.10",
                        "sale - 1.00 21.00",
                        "fee - - 2.00");
    }

    /** A price less than nothing taken off is a fee that no column shows. */
    @Test
    void aPayoutOfLessThanThePriceIsTold() throws IOException {
        Learned learned =
                learn(sales("Price,Payout", "10.00,9.00", "20.00,18.00", "5.00,4.50"), Map.of());

        assertThat(learned.isProved()).isFalse();
        assertThat(learned.faults())
                .containsExactly(
                        "'Payout' is not what a row comes to, nor the same on all rows: is money taken off that no column shows?");
    }

    /** The net with its VAT is the total, whatever the column of the net is called. */
    @ParameterizedTest
    @CsvSource({"Amount", "Value", "Net"})
    void netAndVatMakeTheTotal(String net) throws IOException {
        Learned learned =
                learn(
                        sales(
                                net + ",VAT,Total",
                                "10.00,2.00,12.00",
                                "20.00,4.00,24.00",
                                "5.00,0.00,5.00"),
                        Map.of());

        assertThat(learned.isProved()).isTrue();
        assertThat(learned.proofs()).contains(net + " + VAT = Total in 3 of 3 rows");
        assertThat(amounts())
                .containsExactly(
                        "sale 10.00 2.00 12.00", "sale 20.00 4.00 24.00", "sale 5.00 0.00 5.00");
    }

    @Test
    void deliveryIsAddedAndDiscountTakenOff() throws IOException {
        Learned delivery =
                learn(
                        sales(
                                "Amount,Shipping,Total",
                                "10.00,2.00,12.00",
                                "20.00,2.00,22.00",
                                "5.00,0.00,5.00"),
                        Map.of());
        assertThat(delivery.proofs()).contains("Amount + Shipping = Total in 3 of 3 rows");
        assertThat(money())
                .containsExactly(
                        "sale 10.00", "delivery 2.00", "sale 20.00", "delivery 2.00", "sale 5.00");

        Learned discount =
                learn(
                        sales(
                                "Amount,Discount,Total",
                                "10.00,2.00,8.00",
                                "20.00,2.00,18.00",
                                "5.00,0.00,5.00"),
                        Map.of());
        assertThat(discount.proofs()).contains("Amount - Discount = Total in 3 of 3 rows");
        assertThat(money())
                .containsExactly(
                        "sale 10.00",
                        "discount -2.00",
                        "sale 20.00",
                        "discount -2.00",
                        "sale 5.00");
    }

    /** VAT of nought on every row is stated all the same. */
    @Test
    void aStatedVatOfNoughtIsKept() throws IOException {
        Learned learned =
                learn(
                        sales(
                                "Net,VAT,Gross",
                                "10.00,0.00,10.00",
                                "20.00,0.00,20.00",
                                "5.00,0.00,5.00"),
                        Map.of());

        assertThat(learned.isProved()).isTrue();
        assertThat(amounts())
                .containsExactly(
                        "sale 10.00 0.00 10.00", "sale 20.00 0.00 20.00", "sale 5.00 0.00 5.00");
    }

    @Test
    void vatOnDeliveryIsNoDelivery() throws IOException {
        Learned learned =
                learn(
                        sales(
                                "Amount,VAT,Shipping,Shipping VAT,Fee,Net payout",
                                "10.00,2.00,5.00,1.00,-1.80,16.20",
                                "20.00,4.00,5.00,1.00,-3.00,27.00",
                                "-20.00,-4.00,-5.00,-1.00,3.00,-27.00"),
                        Map.of());

        assertThat(learned.isProved()).isTrue();
        assertThat(amounts())
                .containsExactly(
                        "sale 10.00 2.00 12.00",
                        "delivery 5.00 1.00 6.00",
                        "fee - - 1.80",
                        "sale 20.00 4.00 24.00",
                        "delivery 5.00 1.00 6.00",
                        "fee - - 3.00",
                        "sale-refund 20.00 4.00 24.00",
                        "delivery-refund 5.00 1.00 6.00",
                        "fee-refund - - 3.00");
    }

    /** Every row's payout is its sum, so the commission is no money of no account. */
    @Test
    void aPayoutOnEachRowIsItsSum() throws IOException {
        Learned learned =
                learn(
                        sales(
                                "Net,VAT,Gross,Commission,Payout",
                                "10.00,2.00,12.00,1.10,10.90",
                                "20.00,4.00,24.00,2.30,21.70",
                                "-20.00,-4.00,-24.00,-2.30,-21.70"),
                        Map.of());

        assertThat(learned.isProved()).isTrue();
        assertThat(learned.proofs()).contains("Net + VAT - Commission = Payout in 3 of 3 rows");
        assertThat(learned.notes())
                .containsExactly(
                        "'Gross' is not entered: Commission + Payout = Gross",
                        "the file states no currency: amounts are taken to be in the book's, GBP; if they are not, add to the layout, such as currency: EUR");
        assertThat(amounts())
                .containsExactly(
                        "sale 10.00 2.00 12.00",
                        "fee - - 1.10",
                        "sale 20.00 4.00 24.00",
                        "fee - - 2.30",
                        "sale-refund 20.00 4.00 24.00",
                        "fee-refund - - 2.30");
    }

    @Test
    void unitsTimesPriceAndDeliveryMakeTheTotal() throws IOException {
        Learned learned =
                learn(
                        sales(
                                "Qty,Unit price,Delivery,Total",
                                "2,5.00,3.00,13.00",
                                "1,20.00,3.00,23.00",
                                "3,7.00,0.00,21.00"),
                        Map.of());

        assertThat(learned.isProved()).isTrue();
        assertThat(learned.proofs()).contains("Delivery + Qty x Unit price = Total in 3 of 3 rows");
        assertThat(money())
                .containsExactlyInAnyOrder(
                        "sale 10.00", "delivery 3.00", "sale 20.00", "delivery 3.00", "sale 21.00");
    }

    @Test
    void unitsTimesPriceBesideOtherMoneyIsAsked() throws IOException {
        String text =
                sales("Qty,Unit price,Delivery", "2,5.00,3.00", "1,20.00,3.00", "3,7.00,0.00");

        assertThat(learn(text, Map.of()).open())
                .containsExactly(
                        new Question(
                                "sum",
                                "no column says what a row comes to; is it 'Qty x Unit price' + 'Delivery' (sum), or 'Qty x Unit price' alone (alone)?",
                                List.of("sum", "alone"),
                                true));
        assertThat(learn(text, Map.of("sum", "sum")).isProved()).isTrue();
        assertThat(money())
                .containsExactlyInAnyOrder(
                        "sale 10.00", "delivery 3.00", "sale 20.00", "delivery 3.00", "sale 21.00");
        assertThat(learn(text, Map.of("sum", "alone")).notes())
                .containsExactly(
                        "'Delivery' is not entered, as answered",
                        "the file states no currency: amounts are taken to be in the book's, GBP; if they are not, add to the layout, such as currency: EUR");
        assertThat(money()).containsExactly("sale 10.00", "sale 20.00", "sale 21.00");
    }

    @Test
    void postageIsAFeeOrWhatBuyersPay() throws IOException {
        String text = sales("Qty,Unit price,Postage", "2,5.00,3.00", "1,20.00,3.00", "3,7.00,0.00");

        assertThat(learn(text, Map.of()).open())
                .containsExactly(
                        new Question(
                                "column/Postage",
                                "is 'Postage' what buyers pay for delivery, or a fee?",
                                List.of("delivery", "fee"),
                                true));
        assertThat(
                        learn(
                                        sales(
                                                "Price,Postage,Total",
                                                "10.00,3.00,13.00",
                                                "20.00,3.50,23.50",
                                                "7.00,0.00,7.00"),
                                        Map.of())
                                .isProved())
                .isTrue();
        assertThat(money())
                .containsExactly(
                        "sale 10.00", "delivery 3.00", "sale 20.00", "delivery 3.50", "sale 7.00");
        learn(
                sales(
                        "Price,Postage,Total",
                        "10.00,3.00,7.00",
                        "20.00,3.50,16.50",
                        "7.00,0.00,7.00"),
                Map.of());
        assertThat(money())
                .containsExactly("sale 10.00", "fee -3.00", "sale 20.00", "fee -3.50", "sale 7.00");
    }

    /** A price beside units is of one or of all, even where each row has one. */
    @ParameterizedTest
    @CsvSource({"2,10.00", "1,5.00"})
    void aPriceBesideUnitsIsAsked(String units, String product) throws IOException {
        String text = sales("Qty,Price", units + ",5.00", "1,20.00");

        assertThat(learn(text, Map.of()).open())
                .containsExactly(
                        new Question(
                                "price",
                                "no column says what a row comes to; is 'Price' the price of one unit or of all that 'Qty' counts?",
                                List.of("one", "all"),
                                true));
        learn(text, Map.of("price", "one"));
        assertThat(money()).containsExactly("sale " + product, "sale 20.00");
        learn(text, Map.of("price", "all"));
        assertThat(money()).containsExactly("sale 5.00", "sale 20.00");
    }

    @Test
    void aLineTotalIsUnitsTimesPrice() throws IOException {
        Learned learned =
                learn(
                        sales(
                                "Qty,Price,Line total",
                                "2,5.00,10.00",
                                "1,20.00,20.00",
                                "3,7.00,21.00"),
                        Map.of());

        assertThat(learned.isProved()).isTrue();
        assertThat(learned.proofs()).contains("Qty x Price = Line total in 3 of 3 rows");
        assertThat(money()).containsExactly("sale 10.00", "sale 20.00", "sale 21.00");
    }

    @Test
    void aPriceAndItsFeesWithoutASumAreAsked() throws IOException {
        String text =
                sales(
                        "Price,Delivery,Commission",
                        "12.50,3.00,-1.55",
                        "20.00,3.00,-2.10",
                        "-20.00,-3.00,2.10");

        assertThat(learn(text, Map.of("sum", "sum")).isProved()).isTrue();
        assertThat(money())
                .containsExactly(
                        "sale 12.50",
                        "delivery 3.00",
                        "fee -1.55",
                        "sale 20.00",
                        "delivery 3.00",
                        "fee -2.10",
                        "sale-refund -20.00",
                        "delivery-refund -3.00",
                        "fee-refund 2.10");
    }

    @Test
    void columnsThatAddUpWithoutNamesAreAsked() throws IOException {
        String text =
                "2026-07-13,A1,Sale,10.00,-1.00,9.00\n2026-07-14,A2,Sale,20.00,-2.00,18.00\n2026-07-15,A2,Refund,-20.00,2.00,-18.00\n";

        assertThat(learn(text, Map.of()).open())
                .containsExactly(
                        new Question(
                                "sum-column",
                                "#4 + #5 = #6 on every row; which of them is what the row comes to?",
                                List.of("#4", "#5", "#6"),
                                true));
        assertThat(
                        learn(
                                        text,
                                        Map.of(
                                                "sum-column",
                                                "#6",
                                                "column/#4",
                                                "goods",
                                                "column/#5",
                                                "fee"))
                                .isProved())
                .isTrue();
    }

    @Test
    void refundsWithoutAMinusBesideTheirFees() throws IOException {
        String text =
                "Date,Order,Type,Price,Fee,Net\n2026-07-13,A1,Sale,10.00,1.00,9.00\n2026-07-14,A2,Sale,20.00,2.00,18.00\n2026-07-15,A2,Refund,20.00,2.00,18.00\n";

        assertThat(learn(text, Map.of()).open())
                .containsExactly(
                        new Question(
                                "signs/Type: Refund",
                                "rows of 'Type: Refund' give money back, and yet 'Price' comes to 20.00 on them; are all their amounts printed without a minus?",
                                List.of("yes", "no"),
                                true));
        assertThat(learn(text, Map.of("signs/Type: Refund", "yes")).isProved()).isTrue();
        assertThat(money())
                .containsExactly(
                        "sale 10.00",
                        "fee -1.00",
                        "sale 20.00",
                        "fee -2.00",
                        "sale-refund -20.00",
                        "fee-refund 2.00");
        assertThat(learn(text, Map.of("signs/Type: Refund", "no")).faults())
                .containsExactly(
                        "'Price' comes to 20.00 in; a column of that name should not; do the names stand over other columns' cells?");
    }

    /** The rate, in percent, is no tax. */
    @Test
    void aRateInPercentIsNoTax() throws IOException {
        Learned learned =
                learn(
                        sales(
                                "VAT %,Net,VAT,Gross",
                                "20,10.00,2.00,12.00", "0,20.00,0.00,20.00", "5,20.00,1.00,21.00"),
                        Map.of());

        assertThat(learned.isProved()).isTrue();
        assertThat(lines.stream().map(l -> l.profile().rate().code()).toList())
                .containsExactly("20", "0", "5");
    }

    @Test
    void moneyThatNothingExplainsIsNotOfNoAccount() throws IOException {
        String text =
                "Date,Order,Type,Debit,Credit,Fee\n2026-07-13,N0,Sale,,10.00,1.00\n2026-07-14,N1,Sale,,20.00,2.00\n2026-07-15,N2,Refund,5.00,,0.50\n";

        assertThat(learn(text, Map.of()).open())
                .containsExactly(
                        new Question(
                                "column/Fee",
                                "'Fee' holds 3.50 that no sum of the row explains; money beside the other columns needs a layout written by hand: do they have it already?",
                                List.of("ignored"),
                                true));
    }

    /** A tax that is taken off a price is not the seller's own beside it. */
    @Test
    void aTaxTakenOffIsAsked() throws IOException {
        assertThat(
                        learn(
                                        sales(
                                                "Price,Tax,Fee,Net",
                                                "12.00,2.00,1.10,8.90",
                                                "24.00,4.00,2.30,17.70",
                                                "6.00,1.00,0.55,4.45"),
                                        Map.of())
                                .open())
                .containsExactly(
                        new Question(
                                "column/Tax",
                                "'Tax' takes 7.00 off the prices; is it tax the channel withholds, or a fee?",
                                List.of("withheld", "fee"),
                                true));
    }
}
