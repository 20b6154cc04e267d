package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.ChannelCollects;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.SetAside;
import quarterfold.money.Amount;

class LayoutRowsTest {
    /** One line per money component. */
    private static final String LINES =
            """
            layout: lines
            file: {blank: "-"}
            dates: {pattern: "yyyy-MM-dd'T'HH:mm:ssX"}
            signs: owner
            fields: {date: When, settlement: Statement, order: Order, currency: Currency, to: To}
            constants: {channel: Fairbank}
            rows:
              - when: {Type: Order, Part: [Item, Extra]}
                enter: [{kind: sale, gross: Amount}]
              - when: {Type: Order, Part: Money off}
                enter: [{kind: discount, gross: Amount}]
              - when: {Type: Refund}
                enter: [{kind: sale-refund, gross: Amount}]
              - when: {Type: Fee}
                enter: [{kind: fee, gross: Amount, set: {category: channel-fee}}]
              - when: {Type: Payout}
                enter: [{kind: payout, gross: Amount}]
              - when: {Type: Information}
                set_aside: "information only, no money"
            amounts: [Amount]
            """;

    private static final String LINES_HEADER =
            "When,Statement,Order,Currency,To,Type,Part,Amount,Remark\n";

    /** One row per order. */
    private static final String ORDERS =
            """
            layout: orders
            file: {delimiter: ";", encoding: windows-1252, header_row: 3}
            dates: {pattern: "dd/MM/yyyy HH:mm", zone: UTC}
            numbers: {decimal: ",", thousands: ".", negative: [trailing-minus, brackets]}
            signs: owner
            currency: EUR
            fields: {date: Date, order: Order}
            rows:
              - when: {Entry: Order}
                enter:
                  - {kind: sale, gross: Price}
                  - {kind: delivery, gross: Delivery}
                  - {kind: fee, gross: Fee, set: {category: channel-fee}}
              - when: {Entry: Refund}
                enter:
                  - {kind: sale-refund, gross: Price}
                  - {kind: delivery-refund, gross: Delivery}
            tax: {column: Tax, withheld: Kept}
            check:
              - {sum: [Price, Delivery, Tax, Kept, Fee], equals: Net}
            amounts: [Price, Delivery, Tax, Kept, Fee]
            """;

    private static final String ORDERS_HEADER =
            "Report of Fairbank\n\nDate;Order;Entry;Price;Delivery;Tax;Kept;Fee;Net\n";

    @TempDir Path folder;
    private Desk desk;

    @BeforeEach
    void open() throws IOException {
        desk = new Desk(folder);
        desk.layout("lines", LINES).layout("orders", ORDERS);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private ImportResult lines(String rows) throws IOException {
        return desk.enter("l.csv", LINES_HEADER + rows);
    }

    private List<String> lineProblems(String rows) throws IOException {
        return desk.problems("l.csv", LINES_HEADER + rows);
    }

    private ImportResult orders(String rows) throws IOException {
        return desk.enter(
                desk.file("o.csv", ORDERS_HEADER + rows, Charset.forName("windows-1252")));
    }

    private List<String> orderProblems(String rows) throws IOException {
        return desk.problems("o.csv", ORDERS_HEADER + rows);
    }

    private static Amounts gross(String gross) {
        return Amounts.ofGross(Amount.of(gross));
    }

    private static Amounts all(String net, String vat, String gross) {
        return new Amounts(
                Optional.of(Amount.of(net)),
                Optional.of(Amount.of(vat)),
                Optional.of(Amount.of(gross)));
    }

    @Test
    void entersEachComponentByItsRule() throws IOException {
        ImportResult.Entered entered =
                (ImportResult.Entered)
                        lines(
                                """
                                2026-09-30T23:30:00Z,S1,O1,GBP,FR,Order,Item,12.00,gift
                                2026-09-30T22:30:00Z,S1,O1,-,-,Order,Money off,-2.00,
                                2026-01-01T00:30:00Z,S1,O1,,,Fee,Selling,-1.50,
                                2026-01-01T00:30:00Z,S1,O1,,,Fee,Selling,0.50,
                                2026-01-01T00:30:00Z,S1,O2,,,Refund,Item,-3.00,
                                2026-01-01T00:30:00Z,S1,,,,Information,,-,hello
                                2026-01-01T00:30:00Z,S1,O3,,,Order,Item,0.00,
                                2026-01-01T00:30:00Z,S1,,,,Payout,,-6.00,
                                """);

        assertThat(desk.lines())
                .extracting(
                        Line::row,
                        Line::taxPoint,
                        l -> l.profile().kind(),
                        Line::amounts,
                        l -> l.profile().to(),
                        Line::notes)
                .as("a sale of 2026-09-30T23:30Z is of 1 October in London")
                .containsExactly(
                        tuple(
                                2L,
                                LocalDate.of(2026, 10, 1),
                                Kind.SALE,
                                gross("12"),
                                "FR",
                                "Remark: gift"),
                        tuple(3L, LocalDate.of(2026, 9, 30), Kind.DISCOUNT, gross("2"), "", ""),
                        tuple(4L, LocalDate.of(2026, 1, 1), Kind.FEE, gross("1.5"), "", ""),
                        tuple(5L, LocalDate.of(2026, 1, 1), Kind.FEE, gross("-0.5"), "", ""),
                        tuple(6L, LocalDate.of(2026, 1, 1), Kind.SALE_REFUND, gross("3"), "", ""),
                        tuple(9L, LocalDate.of(2026, 1, 1), Kind.PAYOUT, gross("6"), "", ""));
        assertThat(desk.lines()).allMatch(l -> l.profile().channel().equals("Fairbank"));
        assertThat(desk.lines()).allMatch(l -> l.original().isEmpty());
        assertThat(entered.layout()).isEqualTo("lines");
        assertThat(entered.rowsRead()).isEqualTo(8);
        assertThat(entered.setAside()).isEqualTo(2);
        assertThat(entered.source().rowsEntered()).isEqualTo(6);
        assertThat(desk.setAside(entered.source().id()))
                .containsExactly(
                        new SetAside(1, 7, "information only, no money"),
                        new SetAside(1, 8, "no amount"));
        assertThat(entered.source().moneyIn()).isEqualTo(Amount.of("0"));
        assertThat(entered.source().moneyEntered()).isEqualTo(Amount.of("0"));
        assertThat(entered.queries()).isEmpty();
    }

    @Test
    void aPayoutThatDoesNotTieIsAQuery() throws IOException {
        ImportResult.Entered entered =
                (ImportResult.Entered)
                        lines(
                                """
                                2026-09-30T10:00:00Z,S1,O1,GBP,,Order,Item,12.00,
                                2026-09-30T10:00:00Z,S2,O1,GBP,,Order,Item,5.00,
                                2026-09-30T10:00:00Z,S1,O1,GBP,,Fee,Selling,-1.50,
                                2026-09-30T10:00:00Z,S2,,GBP,,Payout,,-5.00,
                                2026-09-30T10:00:00Z,S1,,GBP,,Payout,,-11.00,
                                2026-09-30T10:00:00Z,S3,,GBP,,Fee,Selling,-1.00,
                                """);

        RaisedQuery query =
                new RaisedQuery(
                        1,
                        "payout-does-not-tie",
                        "S1",
                        "settlement S1 states a payout of GBP 11.00; its other rows, 2 of them, sum to 10.50; the difference is 0.50: which rows are missing, or which are not of this settlement?");
        assertThat(entered.queries()).containsExactly(query);
        assertThat(desk.raised()).containsExactly(query);
    }

    @Test
    void rowsThatCannotBeEntered() throws IOException {
        assertThat(
                        lineProblems(
                                """
                                2026-09-30T10:00:00Z,S1,O1,GBP,,Order,Gift wrap,12.00,
                                2026-09-30T10:00:00Z,S1,O1,GBP,,Information,,3.00,
                                2026-09-30T10:00:00Z,S1,O1,GBP,ZZ,Order,Item,-,
                                2026-09-30T10:00:00Z,S1,O1,GBP,ZZ,Order,Item,1.00,
                                30 September,S1,O1,GBP,,Order,Item,"1,000.00",
                                30 September,S1,O1,GBP,,Order,Item,1.00,
                                """))
                .containsExactly(
                        "l.csv:2 [Type, Part]: found 'Order, Gift wrap'; expected a row that a rule of layout lines fits, such as 'Order, Item'; give the layout a rule for it, or set it aside",
                        "l.csv:3 [Amount]: found '3.00'; expected no money on a row that layout lines sets aside as 'information only, no money', such as 0.00",
                        "l.csv:5 [To]: found 'ZZ'; expected a country code of ISO 3166, or XI for Northern Ireland, such as GB",
                        "l.csv:6 [Amount]: found '1,000.00'; expected an amount with at most 4 decimals, such as 1234.50",
                        "l.csv:7 [When]: found '30 September'; expected a date on the calendar written yyyy-MM-dd'T'HH:mm:ssX, such as 2026-09-30T13:45:00Z");
    }

    /** Facts, cross-border 2.3: no tax line at all; the price includes VAT (example 2-A). */
    @Test
    void aPriceWithoutTaxIncludesVat() throws IOException {
        orders("30/09/2026 23:30;O1;Order;1.060,00;;;;9,00-;1.051,00\n");

        assertThat(desk.lines())
                .extracting(
                        Line::taxPoint,
                        l -> l.profile().kind(),
                        Line::amounts,
                        l -> l.profile().channelCollects(),
                        l -> l.profile().currency(),
                        Line::original)
                .containsExactly(
                        tuple(
                                LocalDate.of(2026, 10, 1),
                                Kind.SALE,
                                gross("1060"),
                                ChannelCollects.NO,
                                "EUR",
                                "Price: 1.060,00"),
                        tuple(
                                LocalDate.of(2026, 10, 1),
                                Kind.FEE,
                                gross("9"),
                                ChannelCollects.NO,
                                "EUR",
                                "Fee: 9,00-"));
    }

    /**
     * Facts, cross-border 2.3 and example 2-B: tax 10.00, withheld -10.00: the channel accounts.
     */
    @Test
    void taxThatIsWithheldWholeIsTheChannels() throws IOException {
        ImportResult.Entered entered =
                (ImportResult.Entered)
                        orders("30/09/2026 10:00;O1;Order;45,00;5,00;10,00;(10,00);-9,00;41,00\n");

        assertThat(desk.lines())
                .extracting(
                        l -> l.profile().kind(), Line::amounts, l -> l.profile().channelCollects())
                .containsExactly(
                        tuple(Kind.SALE, gross("45"), ChannelCollects.YES),
                        tuple(Kind.DELIVERY, gross("5"), ChannelCollects.YES),
                        tuple(Kind.FEE, gross("9"), ChannelCollects.NO));
        assertThat(entered.source().moneyIn()).isEqualTo(Amount.of("41"));
    }

    /** Facts, cross-border 2.3 and example 2-C: tax without a mirror is the seller's own VAT. */
    @Test
    void taxThatIsNotWithheldIsTheSellers() throws IOException {
        ImportResult.Entered entered =
                (ImportResult.Entered)
                        orders(
                                """
                                30/09/2026 10:00;O1;Order;50,00;10,00;12,01;0,00;;72,01
                                30/09/2026 10:00;O1;Refund;-50,00;-10,00;-12,01;;;-72,01
                                """);

        assertThat(desk.lines())
                .extracting(
                        l -> l.profile().kind(),
                        Line::amounts,
                        l -> l.profile().channelCollects(),
                        Line::original)
                .as("12.01 x 50 / 60 = 10.0083; the last takes the rest")
                .containsExactly(
                        tuple(
                                Kind.SALE,
                                all("50", "10.0083", "60.0083"),
                                ChannelCollects.NO,
                                "Price: 50,00; Tax: 12,01; Kept: 0,00"),
                        tuple(
                                Kind.DELIVERY,
                                all("10", "2.0017", "12.0017"),
                                ChannelCollects.NO,
                                "Delivery: 10,00; Tax: 12,01; Kept: 0,00"),
                        tuple(
                                Kind.SALE_REFUND,
                                all("50", "10.0083", "60.0083"),
                                ChannelCollects.NO,
                                "Price: -50,00; Tax: -12,01"),
                        tuple(
                                Kind.DELIVERY_REFUND,
                                all("10", "2.0017", "12.0017"),
                                ChannelCollects.NO,
                                "Delivery: -10,00; Tax: -12,01"));
        assertThat(entered.source().moneyIn()).isEqualTo(Amount.ZERO);
    }

    /** Facts, cross-border 2.3: anything but the two is a question, and no money is lost. */
    @Test
    void taxThatIsWithheldInPartIsUnclear() throws IOException {
        ImportResult.Entered entered =
                (ImportResult.Entered)
                        orders(
                                """
                                30/09/2026 10:00;O1;Order;50,00;;10,00;-7,00;-9,00;44,00
                                30/09/2026 10:00;O2;Order;50,00;;;-7,00;;43,00
                                """);

        assertThat(desk.lines())
                .extracting(
                        l -> l.profile().kind(),
                        Line::amounts,
                        l -> l.profile().channelCollects(),
                        Line::order)
                .containsExactly(
                        tuple(Kind.SALE, gross("50"), ChannelCollects.UNCLEAR, "O1"),
                        tuple(Kind.FEE, gross("9"), ChannelCollects.NO, "O1"),
                        tuple(Kind.OTHER_MONEY, gross("3"), ChannelCollects.UNCLEAR, "O1"),
                        tuple(Kind.SALE, gross("50"), ChannelCollects.UNCLEAR, "O2"),
                        tuple(Kind.OTHER_MONEY, gross("-7"), ChannelCollects.UNCLEAR, "O2"));
        assertThat(entered.source().moneyEntered()).isEqualTo(Amount.of("87"));
        assertThat(entered.source().rowsEntered()).isEqualTo(2);
    }

    @Test
    void rowsWhoseMoneyIsNotAccountedFor() throws IOException {
        assertThat(
                        orderProblems(
                                """
                                30/09/2026 10:00;O1;Order;50,00;;;;-9,00;42,00
                                30/09/2026 10:00;O1;Refund;-50,00;;;;9,00;-41,00
                                30/09/2026 10:00;O1;Order;;;5,00;-5,00;;
                                30/09/2026 10:00;O1;Order;;;5,00;;-1,00;4,00
                                """))
                .containsExactly(
                        "o.csv:4 [Net]: found '42.00'; expected Price 50.00 + Delivery 0.00 + Tax 0.00 + Kept 0.00 + Fee -9.00 = 41.00",
                        "o.csv:5 [Fee]: found '9,00'; expected no amount in this column on a row read by line 14 of layout orders, such as 0.00; else give the rule an entry for it",
                        "o.csv:6 [Tax]: found '5,00'; expected an amount that makes an entry beside it, such as a price",
                        "o.csv:6 [Kept]: found '-5,00'; expected an amount that makes an entry beside it, such as a price",
                        "o.csv:7 [Tax]: found '5,00'; expected no tax on a row whose sales add up to nothing, such as 0.00");
    }

    private static final String LIST =
            """
            layout: list
            dates: {pattern: "yyyy-MM-dd"}
            signs: document
            fields: {date: Day, document: No, rate: Rate}
            rows:
              - when: {What: Goods}
                enter: [{kind: purchase, net: Net, vat: VAT, gross: Gross}]
              - when: {What: Both}
                enter:
                  - {kind: purchase, gross: Gross}
                  - {kind: purchase-credit, gross: Back}
            amounts: [Gross, Back]
            """;

    @Test
    void documentsKeepTheirSigns() throws IOException {
        desk.layout("list", LIST);
        ImportResult.Entered entered =
                (ImportResult.Entered)
                        desk.enter(
                                "d.csv",
                                """
                                Day,No,Rate,What,Net,VAT,Gross,Back
                                2026-09-30,1,20,Goods,100.00,20.00,120.00,
                                2026-09-30,2,20,Goods,-10.00,-2.00,-12.00,
                                2026-09-30,3,20,Both,,,50.00,5.00
                                """);

        assertThat(desk.lines())
                .extracting(l -> l.profile().kind(), Line::amounts)
                .containsExactly(
                        tuple(Kind.PURCHASE, all("100", "20", "120")),
                        tuple(Kind.PURCHASE, all("-10", "-2", "-12")),
                        tuple(Kind.PURCHASE, gross("50")),
                        tuple(Kind.PURCHASE_CREDIT, gross("5")));
        assertThat(entered.source().moneyIn()).isEqualTo(Amount.of("-153"));
    }

    @Test
    void aDocumentThatDoesNotAddUp() throws IOException {
        desk.layout("list", LIST);

        assertThat(
                        desk.problems(
                                "d.csv",
                                """
                                Day,No,Rate,What,Net,VAT,Gross,Back
                                2026-09-30,1,20,Goods,100.00,20.00,121.00,
                                2026-09-30,1,20,Goods,100.00,20.00,,
                                2026-09-30,1,20,Goods,100.00,20.00,120.00,7.00
                                """))
                .containsExactly(
                        "d.csv:2 [Gross]: found '121.00'; expected net 100.00 + vat 20.00 = 120.00",
                        "d.csv:3 [Gross, Back]: found 0.00 in the columns that count; expected the -120.00 its entries add up to; name in amounts of layout list just the columns its rules enter",
                        "d.csv:4 [Gross, Back]: found -127.00 in the columns that count; expected the -120.00 its entries add up to; name in amounts of layout list just the columns its rules enter");
    }

    @Test
    void aProductOfTwoColumns() throws IOException {
        desk.layout(
                "till",
                """
                layout: till
                dates: {pattern: "yyyy-MM-dd HH:mm:ss"}
                signs: document
                fields: {date: At, document: No}
                worked_out: {Sum: [Count, Price]}
                rows:
                  - when: {}
                    enter: [{kind: sale, gross: Sum}]
                amounts: [Sum]
                """);
        ImportResult.Entered entered =
                (ImportResult.Entered)
                        desk.enter(
                                "t.csv",
                                "At,No,Count,Price\n2026-09-30 10:00:00,1,-3,1.95\n2026-09-30 10:00:00,2,4,0\n");

        assertThat(desk.lines())
                .extracting(Line::amounts, Line::original)
                .containsExactly(tuple(gross("-5.85"), "Count: -3; Price: 1.95"));
        assertThat(entered.source().moneyIn()).isEqualTo(Amount.of("-5.85"));
        assertThat(entered.setAside()).isEqualTo(1);
    }

    @Test
    void aPayoutThatEachRowStates() throws IOException {
        desk.layout(
                "stated",
                """
                layout: stated
                dates: {pattern: "yyyy-MM-dd"}
                signs: owner
                fields: {date: Day, settlement: Statement}
                rows:
                  - when: {}
                    enter: [{kind: sale, gross: Money}]
                amounts: [Money]
                payout: {column: Paid out}
                """);
        String header = "Day,Statement,Money,Paid out\n";

        assertThat(
                        ((ImportResult.Entered)
                                        desk.enter(
                                                "s.csv",
                                                header
                                                        + "2026-09-30,S1,5.00,12.00\n2026-09-30,S1,6.00,12.00\n2026-09-30,S2,6.00,6.00\n"))
                                .queries())
                .extracting(RaisedQuery::question)
                .containsExactly(
                        "settlement S1 states a payout of GBP 12.00; its other rows, 2 of them, sum to 11.00; the difference is 1.00: which rows are missing, or which are not of this settlement? The file begins with it, so others of its rows may be in another export; set this question aside once all of them are entered and tie.");
        assertThat(
                        desk.enter(
                                        "b.csv",
                                        header
                                                + "2026-09-30,S1,5.00,12.00\n2026-09-30,S1,7.00,13.00\n")
                                .problems())
                .extracting(Problem::toString)
                .containsExactly(
                        "b.csv:3 [Paid out]: found '13.00'; expected the payout that earlier rows of settlement S1 state, 12.00");
    }

    @Test
    void aHeaderThatFitsTwoLayouts() throws IOException {
        desk.layout("more", LINES.replace("layout: lines", "layout: more"));
        Path file =
                desk.file(
                        "l.csv",
                        LINES_HEADER + "2026-09-30T10:00:00Z,S1,O1,GBP,,Order,Item,12.00,\n");

        assertThat(desk.problems(file))
                .containsExactly(
                        "l.csv: found a header that fits the layouts lines and more; expected it to fit one; say which, such as --layout lines");
        assertThat(desk.enter(file, "more").layout()).isEqualTo("more");
    }

    @Test
    void theBooksOwnLayoutWinsOverOneThatShips() throws IOException {
        desk.layout(
                "receipts-of-mine",
                """
                layout: receipts-of-mine
                dates: {pattern: "yyyy-MM-dd"}
                signs: document
                fields: {date: Date}
                rows:
                  - when: {}
                    enter: [{kind: expense, gross: Total paid}]
                amounts: [Total paid]
                """);

        assertThat(
                        desk.enter(
                                        "r.csv",
                                        """
                                Date,Receipt no,Shop or supplier,Country,VAT no,Category,What was bought,VAT rate,Receipt,Business use %,Paid on,VAT,Total paid
                                2026-09-30,1,,,,,,20,invoice,,,2.00,12.00
                                """)
                                .layout())
                .isEqualTo("receipts-of-mine");
    }

    @Test
    void aLayoutOfTheBooksThatIsWrongStopsTheImport() throws IOException {
        desk.layout("broken", "layout: broken\nrows: []\n");

        assertThat(lineProblems("2026-09-30T10:00:00Z,S1,O1,GBP,,Order,Item,12.00,\n"))
                .containsExactly(
                        "broken.yaml:1 [dates.pattern]: found nothing; expected a text, such as pattern: yyyy-MM-dd",
                        "broken.yaml:1 [signs]: found nothing; expected a text, such as signs: document",
                        "broken.yaml:1 [fields.date]: found nothing; expected a column, such as date: Date",
                        "broken.yaml:2 [rows]: found no rule; expected at least one, such as - {when: {}, enter: [{kind: sale, gross: Amount}]}",
                        "broken.yaml:1 [amounts]: found nothing; expected columns, such as amounts: [Amount]");
    }

    @Test
    void aLayoutInAnotherEncodingIsTold() throws IOException {
        desk.layout("accented", "");
        Files.write(
                desk.path("book").resolve("layouts").resolve("accented.yaml"),
                "title: Caf\u00e9".getBytes(Charset.forName("windows-1252")));

        assertThat(lineProblems("2026-09-30T10:00:00Z,S1,O1,GBP,,Order,Item,12.00,\n"))
                .startsWith(
                        "accented.yaml: found bytes that are not UTF-8; expected a text in UTF-8, such as the layout saved again in that encoding");
    }

    /** A list may state a document's total alone; what it does state must add up. */
    @Test
    void anIdentityIsOnlyAskedOfRowsThatStateItsParts() throws IOException {
        desk.layout(
                "bills",
                """
                layout: bills
                dates: {pattern: yyyy-MM-dd}
                signs: document
                fields: {date: Day}
                rows:
                  - when: {}
                    enter: [{kind: purchase, net: Net, vat: VAT, gross: Total}]
                check:
                  - {sum: [Net, VAT], equals: Total}
                amounts: [Total]
                """);
        assertThat(desk.problems("b.csv", "Day,Net,VAT,Total\n2026-09-01,100.00,,120.00\n"))
                .containsExactly(
                        "b.csv:2 [Total]: found '120.00'; expected Net 100.00 + VAT 0.00 = 100.00");
        assertThat(desk.enter("c.csv", "Day,Net,VAT,Total\n2026-09-01,,,120.00\n").entries())
                .isEqualTo(1);
    }
}
