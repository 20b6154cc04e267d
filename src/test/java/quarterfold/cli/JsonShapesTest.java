package quarterfold.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The shapes that programs rely on (docs/formats.md), byte for byte on a small book. */
class JsonShapesTest {

    private static final String DRAFT =
            """
            {"period":{"start":"2026-07-01","end":"2026-09-30","due":"2026-11-07"},"status":"draft",\
            "boxes":{"1":"24.00","2":"0.00","3":"24.00","4":"16.00","5":"8.00","6":"120","7":"100","8":"0","9":"0"},"adjustments":[],\
            "direction":"pay","queries":1}
            """;

    @TempDir private static Path folder;
    private static Path book = Path.of("");
    private static Run imported = new Run(0, "", "");

    @BeforeAll
    static void makesTheBook() throws IOException {
        book = SmallBook.empty(folder);
        imported =
                Run.of(
                        "--book",
                        book,
                        "import",
                        "--json",
                        SmallBook.file(folder, "quarter.csv", SmallBook.QUARTER));
    }

    @Test
    void imported() {
        assertThat(imported)
                .isEqualTo(
                        new Run(
                                0,
                                """
                                {"file":"quarter.csv","sha256":"%s","result":"entered","kind":"mixed","layout":"plain-sheet",\
                                "rows_read":6,"entries":6,"set_aside":0,"repeated":0,"money":"-51.00","documents":0,"problems":[]}
                                """
                                        .formatted(SmallBook.QUARTER_SHA256),
                                ""));
    }

    @Test
    void refused() throws IOException {
        Path bad =
                SmallBook.file(
                        folder,
                        "bad.csv",
                        """
                        date,kind,gross
                        2026-07-03,sale,£5
                        3 July,sail,1.00
                        """);
        assertThat(Run.of("--book", book, "import", "--json", bad))
                .isEqualTo(
                        new Run(
                                65,
                                """
                                {"file":"bad.csv","sha256":"d067d790ecb69d9efef64472e538874b52065bb77a3f833e8f508a8e3e2a3b32",\
                                "result":"refused","kind":"","layout":"plain-sheet","rows_read":2,"entries":0,"set_aside":0,"repeated":0,"problems":[\
                                "bad.csv:2 [gross]: found '£5'; expected an amount with at most 4 decimals, such as 1234.50",\
                                "bad.csv:3 [date]: found '3 July'; expected a date on the calendar written yyyy-MM-dd, such as 2026-09-30",\
                                "bad.csv:3 [kind]: found 'sail'; expected one of sale, sale-refund, delivery, delivery-refund, discount, discount-reversed, private-use, gift, fuel-scale, voucher, voucher-redeemed, stock-on-hand, fee, fee-refund, purchase, purchase-credit, expense, expense-credit, import-vat-paid, import-vat-postponed, import-duty, stock-moved, payout, reserve, compensation, customer-payment, supplier-payment, transfer, bank-line, other-money, such as sale"]}
                                """,
                                ""));
    }

    @Test
    void alreadyThereUnderAnotherName() throws IOException {
        Path copy = SmallBook.file(folder, "copy of quarter.csv", SmallBook.QUARTER);
        assertThat(Run.of("--book", book, "import", "--json", copy))
                .isEqualTo(
                        new Run(
                                0,
                                """
                                {"file":"copy of quarter.csv","sha256":"%s","result":"already-there","kind":"mixed","layout":"plain-sheet",\
                                "rows_read":6,"entries":6,"set_aside":0,"repeated":0,"money":"-51.00","problems":[]}
                                """
                                        .formatted(SmallBook.QUARTER_SHA256),
                                ""));
    }

    @Test
    void draftReturn() {
        assertThat(Run.of("--book", book, "return", "2026-09", "--json"))
                .isEqualTo(new Run(0, DRAFT, ""));
    }

    @Test
    void returnOfAnEmptyPeriod() {
        assertThat(Run.of("--book", book, "return", "2024-03", "--json").out())
                .isEqualTo(
                        """
                        {"period":{"start":"2024-01-01","end":"2024-03-31","due":"2024-05-07"},"status":"draft",\
                        "boxes":{"1":"0.00","2":"0.00","3":"0.00","4":"0.00","5":"0.00","6":"0","7":"0","8":"0","9":"0"},"adjustments":[],\
                        "direction":"nil","queries":0}
                        """);
    }

    @Test
    void closedReturnIsTheSameInEveryPlace(@TempDir Path other) throws IOException {
        Path closing = SmallBook.quarter(other);
        SmallBook.setAside(closing, "E4/evidence-missing");
        String closed = DRAFT.replace("draft", "closed").replace("\"queries\":1", "\"queries\":0");
        assertThat(Run.of("--book", closing, "close", "2026-09", "--json"))
                .isEqualTo(new Run(0, closed, ""));
        assertThat(Run.of("--book", closing, "return", "2026-09", "--json"))
                .isEqualTo(new Run(0, closed, ""));
        assertThat(closing.resolve("papers/2026-09/return.json")).hasContent(closed);
        assertThat(Files.readString(closing.resolve("papers/2026-09/return.csv")))
                .isEqualTo(
                        """
                        box,label,figure,exact,adjusted,export_name
                        1,VAT due on sales and other outputs,24.00,24.00,0.00,vatDueSales
                        2,VAT due on goods acquired in Northern Ireland from EU member states,0.00,0.00,0.00,vatDueAcquisitions
                        3,Total VAT due: box 1 plus box 2,24.00,24.00,0.00,totalVatDue
                        4,"VAT reclaimed on purchases and other inputs, goods acquired from the EU included",16.00,16.00,0.00,vatReclaimedCurrPeriod
                        5,Difference between box 3 and box 4,8.00,8.00,0.00,netVatDue
                        6,"Total value of sales and all other outputs, without VAT",120,120.00,0.00,totalValueSalesExVAT
                        7,"Total value of purchases and all other inputs, without VAT",100,100.00,0.00,totalValuePurchasesExVAT
                        8,"Value of goods dispatched from Northern Ireland to EU member states and related costs, without VAT",0,0.00,0.00,totalValueGoodsSuppliedExVAT
                        9,"Value of goods acquired in Northern Ireland from EU member states and related costs, without VAT",0,0.00,0.00,totalAcquisitionsExVAT
                        """
                                .replace("\n", "\r\n")); // RFC 4180
    }

    @Test
    void queries() {
        assertThat(Run.of("--book", book, "queries", "2026-09", "--json"))
                .isEqualTo(
                        new Run(
                                0,
                                """
                                {"id":"E4/evidence-missing","entry":4,"place":"quarter.csv row 5",\
                                "question":"No document is held for 24.00, so its VAT of 4.00 is not reclaimed. Find the invoice, or leave it out.",\
                                "money":"4.00","holds_close":true,"state":"open"}
                                """,
                                ""));
        assertThat(Run.of("--book", book, "queries", "2026-12", "--json"))
                .isEqualTo(new Run(0, "", ""));
    }

    @Test
    void ledger() {
        assertThat(Run.of("--book", book, "ledger", "--json"))
                .isEqualTo(
                        new Run(
                                0,
                                """
                                {"number":1,"kind":"sale","date":"2026-07-03","document":"","party":"","order":"W-1","description":"Blue bowl",\
                                "evidence":"unstated","currency":"GBP","net":"100.00","vat":"20.00","gross":"120.00","claim":"0.00","rate":"20%%",\
                                "treatment":"uk-sale","rule":"S17a","boxes":{"1":"20.00","6":"100.00"},\
                                "source":{"file":"quarter.csv","sha256":"%1$s","row":2}}
                                {"number":2,"kind":"sale-refund","date":"2026-07-20","document":"","party":"","order":"W-1","description":"Blue bowl",\
                                "evidence":"unstated","currency":"GBP","net":"10.00","vat":"2.00","gross":"12.00","claim":"0.00","rate":"20%%",\
                                "treatment":"uk-sale-reduced","rule":"S17b","boxes":{"1":"-2.00","6":"-10.00"},\
                                "source":{"file":"quarter.csv","sha256":"%1$s","row":3}}
                                {"number":3,"kind":"purchase","date":"2026-08-01","document":"P-1","party":"Fernmoor Pottery Ltd","party_country":"GB",\
                                "party_vat":"GB000472729","description":"Bowls","category":"stock","evidence":"invoice","currency":"GBP",\
                                "net":"50.00","vat":"10.00","gross":"60.00","claim":"10.00","rate":"20%%",\
                                "treatment":"uk-purchase","rule":"U15a","boxes":{"4":"10.00","7":"50.00"},\
                                "source":{"file":"quarter.csv","sha256":"%1$s","row":4}}
                                {"number":4,"kind":"expense","date":"2026-08-09","document":"R-7","party":"Corner Shop","party_country":"GB",\
                                "description":"Paper","category":"stationery","evidence":"missing","currency":"GBP",\
                                "net":"20.00","vat":"4.00","gross":"24.00","claim":"0.00","rate":"20%%",\
                                "treatment":"unclaimed","rule":"U07a","boxes":{"7":"20.00"},\
                                "source":{"file":"quarter.csv","sha256":"%1$s","row":5}}
                                {"number":5,"kind":"fee","date":"2026-09-30","document":"F-1","party":"Adverts Abroad","party_country":"IE",\
                                "description":"Adverts","category":"advertising","evidence":"invoice","currency":"GBP",\
                                "net":"30.00","vat":"6.00","gross":"30.00","claim":"6.00","rate":"20%%",\
                                "treatment":"reverse-charge","rule":"R10","boxes":{"1":"6.00","4":"6.00","6":"30.00","7":"30.00"},\
                                "source":{"file":"quarter.csv","sha256":"%1$s","row":6}}
                                {"number":6,"kind":"payout","date":"2026-09-30","document":"","party":"","description":"To the bank",\
                                "evidence":"unstated","currency":"GBP","net":"45.00","vat":"0.00","gross":"45.00","claim":"0.00",\
                                "treatment":"money-only","rule":"M03","boxes":{},\
                                "source":{"file":"quarter.csv","sha256":"%1$s","row":7}}
                                """
                                        .formatted(SmallBook.QUARTER_SHA256),
                                ""));
    }
}
