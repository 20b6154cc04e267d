package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;

/** Which lines are of one thing, and what its margin is: the stock book of VAT Notice 718. */
class StockBookTest {

    private static SampleLine sold(String kind, String gross) {
        return SampleLine.of(kind).rate("margin").gross(gross);
    }

    /** Before, after and cost of each entry's price; nothing where its cost is not known. */
    private static List<String> positions(SampleLine... lines) {
        List<Entry> entries = new ArrayList<>();
        for (SampleLine line : lines) {
            entries.add(line.entry(entries.size() + 1));
        }
        StockBook book = Treating.gb().context(entries).related().stock();
        return entries.stream()
                .map(e -> book.position(e).map(StockBookTest::told).orElse("-"))
                .toList();
    }

    private static String told(StockBook.Position position) {
        return "%s to %s of %s, %s"
                .formatted(
                        position.before(), position.after(), position.cost(), position.measured());
    }

    @Test
    void theMarginIsAboveTheCostOrWithinIt() {
        assertThat(
                        positions(
                                sold("sale", "100.01").particular(Particular.COST, "100"),
                                sold("sale", "100").particular(Particular.COST, "100")))
                .containsExactly(
                        "0.00 to 100.01 of 100.00, above", "0.00 to 100.00 of 100.00, within");
    }

    /** Lines that name neither product nor order are each of a thing of their own. */
    @Test
    void linesThatNameNothing() {
        assertThat(
                        positions(
                                sold("sale", "50").particular(Particular.COST, "20"),
                                sold("sale", "60").particular(Particular.COST, "30"),
                                sold("sale-refund", "50")))
                .containsExactly(
                        "0.00 to 50.00 of 20.00, above", "0.00 to 60.00 of 30.00, above", "-");
    }

    /** A product is one thing in each order, and one thing where no order is named. */
    @Test
    void linesOfOneProduct() {
        assertThat(
                        positions(
                                sold("sale", "50").product("A").particular(Particular.COST, "20"),
                                sold("sale-refund", "10").product("A"),
                                sold("sale", "50").product("B").particular(Particular.COST, "20")))
                .containsExactly(
                        "0.00 to 50.00 of 20.00, above",
                        "50.00 to 40.00 of 20.00, above",
                        "0.00 to 50.00 of 20.00, above");
        assertThat(
                        positions(
                                sold("sale", "50")
                                        .product("A")
                                        .order("1")
                                        .particular(Particular.COST, "20"),
                                sold("sale-refund", "10").product("A").order("2")))
                .containsExactly("0.00 to 50.00 of 20.00, above", "-");
    }

    /** A charge on an order belongs to the goods of that order and channel alone. */
    @Test
    void aChargeOnAnOrder() {
        SampleLine first = sold("sale", "50").product("A").order("1").channel("Quaylark", "no");
        SampleLine second = sold("sale", "70").product("B").order("2").channel("Quaylark", "no");
        SampleLine third = sold("sale", "90").product("C").order("1").channel("Other", "no");
        assertThat(
                        positions(
                                first.particular(Particular.COST, "20"),
                                second.particular(Particular.COST, "20"),
                                third.particular(Particular.COST, "20"),
                                sold("delivery", "5").order("1").channel("Quaylark", "no"),
                                sold("delivery", "6").order("2").channel("Quaylark", "no"),
                                sold("delivery", "7").order("3").channel("Quaylark", "no")))
                .containsExactly(
                        "0.00 to 50.00 of 20.00, above",
                        "0.00 to 70.00 of 20.00, above",
                        "0.00 to 90.00 of 20.00, above",
                        "50.00 to 55.00 of 20.00, above",
                        "70.00 to 76.00 of 20.00, above",
                        "-");
    }

    /** The days say what came first, of one day the rows; the first sale gives the rate's day. */
    @Test
    void linesGoByTheirDays() {
        SampleLine sale = sold("sale", "50").product("A").particular(Particular.COST, "20");
        SampleLine refund = sold("sale-refund", "10").product("A").on("2026-08-09");
        assertThat(positions(refund, sale))
                .containsExactly("50.00 to 40.00 of 20.00, above", "0.00 to 50.00 of 20.00, above");
        assertThat(positions(sale, refund.on("2026-08-01")))
                .containsExactly("0.00 to 50.00 of 20.00, above", "50.00 to 40.00 of 20.00, above");
        List<Entry> entries =
                List.of(
                        sold("delivery", "5")
                                .product("A")
                                .on("2026-07-30")
                                .particular(Particular.COST, "20")
                                .entry(1),
                        sold("sale", "50").product("A").on("2026-08-02").entry(2));
        StockBook book = Treating.gb().context(entries).related().stock();
        assertThat(book.position(entries.get(0)).orElseThrow().sold())
                .as("the day of the sale, not of what came before it")
                .isEqualTo(LocalDate.of(2026, 8, 2));
    }

    /** What came back to the supplier lowers the cost; only a purchase is one. */
    @Test
    void theCostIsOfThePurchaseLessItsCredit() {
        SampleLine bought = sold("purchase", "40").product("A");
        SampleLine credit = sold("purchase-credit", "15").product("A");
        assertThat(positions(bought, credit, sold("sale", "50").product("A")))
                .endsWith("0.00 to 50.00 of 25.00, above");
        assertThat(positions(credit, sold("sale", "50").product("A")))
                .as("a credit alone is no cost")
                .endsWith("-");
    }
}
