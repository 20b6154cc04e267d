package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
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
import quarterfold.ledger.Customer;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Item;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;
import quarterfold.ledger.Profile;
import quarterfold.ledger.StatedRate;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

class PlainSheetTest {
    private static final String EVERYTHING =
            """
            date,kind,document,party,party_country,party_vat,description,product,category,currency,net,vat,gross,rate,from,to,customer,customer_vat,channel,channel_collects,settlement,order,evidence,paid,business_use,Shelf
            2026-09-30,sale,INV-7,Nell Quist,XI,XI123456789,"Bowl, blue",SKU-1,,EUR,100.00,20.00,120.00,20,GB,FR,business,FR12345678901,Quaylark,yes,S-1,O-1,export,2026-10-02,60,B4
            """;

    @TempDir Path folder;
    private Desk desk;

    @BeforeEach
    void open() {
        desk = new Desk(folder);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private static final Line EVERYTHING_LINE =
            new Line(
                    2,
                    LocalDate.of(2026, 9, 30),
                    new Profile(
                            Kind.SALE,
                            "EUR",
                            new StatedRate("20"),
                            "Nell Quist",
                            "XI",
                            "XI123456789",
                            "",
                            "GB",
                            "FR",
                            Customer.BUSINESS,
                            "FR12345678901",
                            "Quaylark",
                            ChannelCollects.YES,
                            "S-1",
                            Evidence.EXPORT,
                            Percent.of("60")),
                    new Item("SKU-1", "Bowl, blue"),
                    "INV-7",
                    "O-1",
                    new Amounts(
                            Optional.of(Amount.of("100")),
                            Optional.of(Amount.of("20")),
                            Optional.of(Amount.of("120"))),
                    Optional.of(LocalDate.of(2026, 10, 2)),
                    "",
                    "Shelf: B4");

    @Test
    void readsEveryColumn() throws IOException {
        ImportResult result = desk.enter("all.csv", EVERYTHING);

        assertThat(result).isInstanceOf(ImportResult.Entered.class);
        assertThat(result.layout()).isEqualTo("plain-sheet");
        assertThat(result.rowsRead()).isEqualTo(1);
        assertThat(result.entries()).isEqualTo(1);
        assertThat(result.setAside()).isZero();
        assertThat(desk.lines()).containsExactly(EVERYTHING_LINE);
    }

    @Test
    void readsTabsToo() throws IOException {
        desk.enter(
                "all.tsv",
                EVERYTHING
                        .replace("\"Bowl, blue\"", "Bowl; blue")
                        .replace(',', '\t')
                        .replace(';', ','));

        assertThat(desk.lines()).containsExactly(EVERYTHING_LINE);
    }

    @Test
    void columnsComeInAnyOrderAndWhatIsNotSaidHasItsDefault() throws IOException {
        desk.enter(
                "few.csv",
                "\uFEFFgross , kind,date\r\n-5.5,sale,2026-09-30\r\n\r\n0.0001,payout,2026-10-01\r\n");

        assertThat(desk.lines())
                .extracting(Line::row, Line::taxPoint, Line::profile, l -> l.amounts().money())
                .containsExactly(
                        tuple(
                                2L,
                                LocalDate.of(2026, 9, 30),
                                Profile.of(Kind.SALE, "GBP"),
                                Amount.of("-5.5")),
                        tuple(
                                4L,
                                LocalDate.of(2026, 10, 1),
                                Profile.of(Kind.PAYOUT, "GBP"),
                                Amount.of("0.0001")));
        assertThat(desk.entries()).extracting(e -> e.number()).containsExactly(1L, 2L);
    }

    @Test
    void saysWhatIsWrongWithACell() throws IOException {
        assertThat(
                        desk.problems(
                                "one.csv",
                                """
                                date,kind,gross,party_country,from,to,currency,rate,customer,channel_collects,evidence,paid,business_use
                                2026-02-30,sale,1.00,,,,,,,,,,
                                30/09/2026,sale,1.00,,,,,,,,,,
                                ,sale,1.00,,,,,,,,,,
                                2026-09-30,Sale,1.00,,,,,,,,,,
                                2026-09-30,,1.00,,,,,,,,,,
                                2026-09-30,sale,£5,,,,,,,,,,
                                2026-09-30,sale,1.00001,,,,,,,,,,
                                2026-09-30,sale,=1+1,,,,,,,,,,
                                2026-09-30,sale,,,,,,,,,,,
                                2026-09-30,sale,1.00,UK,,,,,,,,,
                                2026-09-30,sale,1.00,,EL,,,,,,,,
                                2026-09-30,sale,1.00,,,gb,,,,,,,
                                2026-09-30,sale,1.00,,,,EURO,,,,,,
                                2026-09-30,sale,1.00,,,,,twenty,,,,,
                                2026-09-30,sale,1.00,,,,,101,,,,,
                                2026-09-30,sale,1.00,,,,,,person,,,,
                                2026-09-30,sale,1.00,,,,,,,maybe,,,
                                2026-09-30,sale,1.00,,,,,,,,receipt,,
                                2026-09-30,sale,1.00,,,,,,,,,soon,
                                2026-09-30,sale,1.00,,,,,,,,,,101
                                2026-09-30,sale,1.00,,,,,,,,,,-1
                                """))
                .containsExactly(
                        "one.csv:2 [date]: found '2026-02-30'; expected a date on the calendar written yyyy-MM-dd, such as 2026-09-30",
                        "one.csv:3 [date]: found '30/09/2026'; expected a date on the calendar written yyyy-MM-dd, such as 2026-09-30",
                        "one.csv:4 [date]: found ''; expected a date on the calendar written yyyy-MM-dd, such as 2026-09-30",
                        "one.csv:5 [kind]: found 'Sale'; expected one of sale, sale-refund, delivery, delivery-refund, discount, discount-reversed, private-use, gift, fuel-scale, voucher, voucher-redeemed, stock-on-hand, fee, fee-refund, purchase, purchase-credit, expense, expense-credit, import-vat-paid, import-vat-postponed, import-duty, stock-moved, payout, reserve, compensation, customer-payment, supplier-payment, transfer, bank-line, other-money, such as sale",
                        "one.csv:6 [kind]: found ''; expected one of sale, sale-refund, delivery, delivery-refund, discount, discount-reversed, private-use, gift, fuel-scale, voucher, voucher-redeemed, stock-on-hand, fee, fee-refund, purchase, purchase-credit, expense, expense-credit, import-vat-paid, import-vat-postponed, import-duty, stock-moved, payout, reserve, compensation, customer-payment, supplier-payment, transfer, bank-line, other-money, such as sale",
                        "one.csv:7 [gross]: found '£5'; expected an amount with at most 4 decimals, such as 1234.50",
                        "one.csv:8 [gross]: found '1.00001'; expected an amount with at most 4 decimals, such as 1234.50",
                        "one.csv:9 [gross]: found '=1+1'; expected an amount with at most 4 decimals, such as 1234.50",
                        "one.csv:10 [gross]: found no amount; expected gross, or net with vat or rate, or vat alone for import VAT, such as 120.00; on a document without VAT enter vat 0",
                        "one.csv:11 [party_country]: found 'UK'; expected a country code of ISO 3166, or XI for Northern Ireland, such as GB",
                        "one.csv:12 [from]: found 'EL'; expected a country code of ISO 3166, or XI for Northern Ireland, such as GB",
                        "one.csv:13 [to]: found 'gb'; expected a country code of ISO 3166, or XI for Northern Ireland, such as GB",
                        "one.csv:14 [currency]: found 'EURO'; expected a currency code of ISO 4217, such as GBP",
                        "one.csv:15 [rate]: found 'twenty'; expected a percentage, exempt, outside, margin or reverse-charge, such as 20",
                        "one.csv:16 [rate]: found '101'; expected a percentage, exempt, outside, margin or reverse-charge, such as 20",
                        "one.csv:17 [customer]: found 'person'; expected one of consumer, business, such as consumer",
                        "one.csv:18 [channel_collects]: found 'maybe'; expected one of yes, no, unclear, such as yes",
                        "one.csv:19 [evidence]: found 'receipt'; expected one of invoice, simplified, none-needed, import-certificate, postponed-statement, export, self-billed, alternative, missing, unstated, such as invoice",
                        "one.csv:20 [paid]: found 'soon'; expected a date on the calendar written yyyy-MM-dd, such as 2026-09-30",
                        "one.csv:21 [business_use]: found '101'; expected a percentage from 0 to 100, such as 60",
                        "one.csv:22 [business_use]: found '-1'; expected a percentage from 0 to 100, such as 60");
    }

    @Test
    void listsEveryProblemAndEntersNothing() throws IOException {
        assertThat(
                        desk.problems(
                                "many.csv",
                                """
                                date,kind,net,vat,gross
                                2026-09-30,sale,100.00,20.00,120.00
                                2026-09-31,sal,x,20.00,120.00
                                2026-09-30,sale,100.00,19.00,120.00
                                2026-09-30,purchase,100.00,,
                                2026-09-30,purchase,,20.00,
                                2026-09-30,purchase,1,2
                                2026-09-30,purchase,1,2,3,4
                                """))
                .containsExactly(
                        "many.csv:3 [date]: found '2026-09-31'; expected a date on the calendar written yyyy-MM-dd, such as 2026-09-30",
                        "many.csv:3 [net]: found 'x'; expected an amount with at most 4 decimals, such as 1234.50",
                        "many.csv:3 [kind]: found 'sal'; " + "expected " + Field.KIND.expected(),
                        "many.csv:4 [gross]: found '120.00'; expected net 100.00 + vat 19.00 = 119.00",
                        "many.csv:5 [gross]: found net alone; expected gross, or net with vat or rate, or vat alone for import VAT, such as 120.00; on a document without VAT enter vat 0",
                        "many.csv:6 [gross]: found vat alone; expected gross, or net with vat or rate, or vat alone for import VAT, such as 120.00; on a document without VAT enter vat 0",
                        "many.csv:7: found 4 cells; expected the 5 of the header; is a text that holds the delimiter without its quotes, such as \"blue, 12 cm\"?",
                        "many.csv:8: found 6 cells; expected the 5 of the header; is a text that holds the delimiter without its quotes, such as \"blue, 12 cm\"?");
    }

    @Test
    void acceptsTheAmountsADocumentMayPrint() throws IOException {
        ImportResult result =
                desk.enter(
                        "forms.csv",
                        """
                        date,kind,net,vat,gross,rate
                        2026-09-30,purchase,100.00,20.00,,
                        2026-09-30,purchase,100.00,,,20
                        2026-09-30,purchase,,,120.00,20
                        2026-09-30,import-vat-paid,,20.00,,
                        2026-09-30,import-vat-postponed,,20.00,,
                        2026-09-30,import-vat-postponed,100.00,20.00,,
                        2026-09-30,purchase,100.00,,120.00,exempt
                        """);

        assertThat(result.problems()).isEmpty();
        assertThat(((ImportResult.Entered) result).source().moneyIn())
                .as("postponed import VAT moves no money")
                .isEqualTo(Amount.of("-480.00"));
        assertThat(desk.lines().get(1).amounts())
                .isEqualTo(
                        new Amounts(
                                Optional.of(Amount.of("100")), Optional.empty(), Optional.empty()));
    }

    @Test
    void aSheetWithoutAnAmountColumnSaysSoOnce() throws IOException {
        assertThat(desk.problems("none.csv", "date,kind\n2026-09-30,sale\n2026-09-30,sale\n"))
                .containsExactly(
                        "none.csv:1: found no column for an amount; expected gross, or net with vat or rate, such as gross");
    }

    @Test
    void aColumnMayComeOnlyOnce() throws IOException {
        assertThat(
                        desk.problems(
                                "twice.csv",
                                "date,kind,gross,note,gross,note\n2026-09-30,sale,1,a,2,b\n"))
                .containsExactly(
                        "twice.csv:1 [gross]: found the name in columns 3 and 5; expected it once, such as one of them renamed");
    }

    @Test
    void aFormulaIsText() throws IOException {
        desk.enter("text.csv", "date,kind,gross,description,x\n2026-09-30,sale,1,=1+1,@SUM(A1)\n");

        assertThat(desk.lines().get(0).item().description()).isEqualTo("=1+1");
        assertThat(desk.lines().get(0).notes()).isEqualTo("x: @SUM(A1)");
    }

    @Test
    void problemsBeyondAThousandAreCounted() throws IOException {
        String rows = "2026-09-30,sale,x\n".repeat(2_500);
        ImportResult.Refused refused =
                (ImportResult.Refused) desk.enter("wrong.csv", "date,kind,gross\n" + rows);

        assertThat(refused.rowsRead()).isEqualTo(2_500);
        assertThat(refused.problems()).hasSize(1_000);
        assertThat(refused.more()).isEqualTo(1_500);
        assertThat(refused.problems().get(999).place()).isEqualTo("wrong.csv:1001");
        assertThat(desk.lines()).isEmpty();
    }

    @Test
    void theSameFileAgainChangesNothing() throws IOException {
        ImportResult.Entered first =
                (ImportResult.Entered) desk.enter("a.csv", "date,kind,gross\n2026-09-30,sale,1\n");
        ImportResult again = desk.enter("b.csv", "date,kind,gross\n2026-09-30,sale,1\n");

        assertThat(again)
                .isEqualTo(new ImportResult.AlreadyThere("b.csv", first.source(), "sales"));
        assertThat(desk.lines()).hasSize(1);
        assertThat(desk.archive()).containsExactly("a.csv");
    }

    @Test
    void aLargeFileIsEnteredWholeAndInOrder() throws IOException {
        StringBuilder text = new StringBuilder("date,kind,gross,order\n");
        for (int i = 1; i <= 20_000; i++) {
            text.append("2026-09-30,sale,0.01,").append(i).append('\n');
        }
        ImportResult.Entered entered =
                (ImportResult.Entered) desk.enter("large.csv", text.toString());

        assertThat(entered.source().moneyIn()).isEqualTo(Amount.of("200.00"));
        assertThat(entered.source().moneyEntered()).isEqualTo(Amount.of("200.00"));
        List<Line> lines = desk.lines();
        assertThat(lines).hasSize(20_000);
        assertThat(lines).allMatch(line -> line.order().equals(Long.toString(line.row() - 1)));
    }

    @Test
    void aProblemFarDownLeavesNothingBehind() throws IOException {
        String rows = "2026-09-30,sale,1.00\n".repeat(15_000);

        assertThat(desk.problems("late.csv", "date,kind,gross\n" + rows + "2026-09-30,sale,?\n"))
                .containsExactly(
                        "late.csv:15002 [gross]: found '?'; expected an amount with at most 4 decimals, such as 1234.50");
    }

    /** One product with two descriptions, and a description that is another row's product. */
    @Test
    void productsAndDescriptionsAreNotTakenForEachOther() throws IOException {
        desk.enter(
                "items.csv",
                """
                date,kind,product,description,gross
                2026-09-01,sale,A,Bowl,1.00
                2026-09-01,sale,A,Blue bowl,1.00
                2026-09-01,sale,A,Bowl,1.00
                2026-09-01,sale,,A,1.00
                2026-09-01,sale,A,,1.00
                2026-09-01,sale,,,1.00
                2026-09-01,sale,,A,1.00
                """);
        assertThat(desk.lines())
                .extracting(Line::item)
                .containsExactly(
                        new Item("A", "Bowl"),
                        new Item("A", "Blue bowl"),
                        new Item("A", "Bowl"),
                        new Item("", "A"),
                        new Item("A", ""),
                        Item.NONE,
                        new Item("", "A"));
    }
}
