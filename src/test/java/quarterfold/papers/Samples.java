package quarterfold.papers;

import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import quarterfold.law.Law;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.ChannelCollects;
import quarterfold.ledger.Customer;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Item;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;
import quarterfold.ledger.Profile;
import quarterfold.ledger.SetAside;
import quarterfold.ledger.Settings;
import quarterfold.ledger.Source;
import quarterfold.ledger.StatedRate;
import quarterfold.money.Amount;
import quarterfold.money.Percent;
import quarterfold.money.Rounding;
import quarterfold.period.Adjustment;
import quarterfold.period.Period;
import quarterfold.period.VatReturn;
import quarterfold.treatment.EvidenceGrade;
import quarterfold.treatment.Occasion;
import quarterfold.treatment.Query;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/** Invented quarters for the papers' tests. */
final class Samples {

    static final Period PERIOD =
            new Period(
                    YearMonth.of(2026, 9),
                    LocalDate.of(2026, 7, 1),
                    LocalDate.of(2026, 9, 30),
                    LocalDate.of(2026, 11, 7));

    static Law law() {
        return Law.of("GB");
    }

    static Settings settings(String name) {
        return new Settings(
                name,
                "GB",
                "GB101747696",
                LocalDate.of(2024, 1, 1),
                List.of(Month.MARCH, Month.JUNE, Month.SEPTEMBER, Month.DECEMBER),
                "standard",
                ZoneId.of("Europe/London"),
                "GBP",
                false,
                false,
                "GB",
                Map.of());
    }

    /** A quarter being put together, entry by entry. */
    static final class Quarter {
        private final List<Treated> entries = new ArrayList<>();
        private final List<Adjustment> adjustments = new ArrayList<>();
        private final List<Query> queries = new ArrayList<>();
        private final List<Source> sources = new ArrayList<>();
        private final List<SetAside> setAside = new ArrayList<>();
        private LocalDate day = LocalDate.of(2026, 7, 1);
        private String party = "";
        private String document = "";
        private String order = "";
        private String description = "";

        Quarter on(LocalDate newDay) {
            day = newDay;
            return this;
        }

        Quarter with(String newParty, String newDocument, String newOrder, String words) {
            party = newParty;
            document = newDocument;
            order = newOrder;
            description = words;
            return this;
        }

        /** A sale at a VAT-inclusive price. */
        Quarter sale(Kind kind, String gross, String percent) {
            Amount price = Amount.of(gross);
            Amount vat = price.vatInside(Percent.of(percent));
            int sign = kind.direction();
            return add(
                    kind,
                    Amounts.ofGross(price),
                    percent.equals("0") ? "uk-zero-rated" : "uk-sale",
                    percent.equals("0") ? "S02" : "S01",
                    percent + "%",
                    price.minus(vat),
                    vat,
                    Amount.ZERO,
                    Map.of("1", vat.times(sign), "6", price.minus(vat).times(sign)));
        }

        /** A purchase with the VAT printed on its invoice, of which a part may be claimed. */
        Quarter purchase(Kind kind, String net, String vat, String claimed) {
            int sign = -kind.direction();
            return add(
                    kind,
                    new Amounts(
                            Optional.of(Amount.of(net)),
                            Optional.of(Amount.of(vat)),
                            Optional.of(Amount.of(net).plus(Amount.of(vat)))),
                    "uk-purchase",
                    "P01",
                    "20%",
                    Amount.of(net),
                    Amount.of(vat),
                    Amount.of(claimed),
                    Map.of("4", Amount.of(claimed).times(sign), "7", Amount.of(net).times(sign)));
        }

        /** A service from abroad: the same VAT due and reclaimed. */
        Quarter reverseCharge(String net) {
            Amount vat = Amount.of(net).vatOnTop(Percent.of("20")).rounded(Rounding.NEAREST_PENNY);
            return add(
                    Kind.FEE,
                    Amounts.ofGross(Amount.of(net)),
                    "overseas-service",
                    "P05",
                    "20%",
                    Amount.of(net),
                    vat,
                    vat,
                    Map.of("1", vat, "4", vat, "6", Amount.of(net), "7", Amount.of(net)));
        }

        /** Goods imported, the VAT postponed. */
        Quarter postponed(String value, String vat) {
            return add(
                    Kind.IMPORT_VAT_POSTPONED,
                    new Amounts(
                            Optional.of(Amount.of(value)),
                            Optional.of(Amount.of(vat)),
                            Optional.empty()),
                    "import-vat-postponed",
                    "I02",
                    "20%",
                    Amount.of(value),
                    Amount.of(vat),
                    Amount.of(vat),
                    Map.of("1", Amount.of(vat), "4", Amount.of(vat), "7", Amount.of(value)));
        }

        /** Takings under the flat-rate scheme, which add to a total and no box. */
        Quarter takings(String gross) {
            Amount price = Amount.of(gross);
            Amount vat = price.vatInside(Percent.of("20"));
            return add(
                    Kind.SALE,
                    Amounts.ofGross(price),
                    "uk-sale",
                    "S01",
                    "20%",
                    price.minus(vat),
                    vat,
                    Amount.ZERO,
                    Map.of("flat-rate-turnover", price));
        }

        /** Something that is no entry and moves boxes. */
        Quarter adjustment(String name, String about, String why, Map<String, Amount> boxes) {
            adjustments.add(
                    new Adjustment(
                            name,
                            about,
                            why,
                            "VAT Regulations 1995",
                            Amount.of("9250.0001"),
                            Amount.of("749.9999"),
                            Amount.of("-12.34"),
                            boxes));
            return this;
        }

        /** Money that is in no box. */
        Quarter money(Kind kind, String amount) {
            return add(
                    kind,
                    Amounts.ofGross(Amount.of(amount)),
                    "not-vat",
                    "M01",
                    "",
                    Amount.of(amount),
                    Amount.ZERO,
                    Amount.ZERO,
                    Map.of());
        }

        private Quarter add(
                Kind kind,
                Amounts amounts,
                String treatment,
                String rule,
                String rate,
                Amount net,
                Amount vat,
                Amount claim,
                Map<String, Amount> boxes) {
            long number = entries.size() + 1L;
            Profile profile =
                    new Profile(
                            kind,
                            "GBP",
                            StatedRate.NONE,
                            party,
                            "GB",
                            "",
                            "",
                            kind == Kind.IMPORT_VAT_POSTPONED ? "CN" : "",
                            kind == Kind.IMPORT_VAT_POSTPONED ? "GB" : "",
                            Customer.CONSUMER,
                            "",
                            "",
                            ChannelCollects.NO,
                            "",
                            Evidence.INVOICE,
                            Percent.HUNDRED);
            Line line =
                    new Line(
                            number + 1,
                            day,
                            profile,
                            new Item("", description),
                            document,
                            order,
                            amounts,
                            Optional.empty(),
                            "",
                            "");
            entries.add(
                    new Treated(
                            Occasion.of(new Entry(number, Math.max(1, sources.size()), line)),
                            TakenUp.IN_ITS_PERIOD,
                            treatment,
                            rule,
                            "The words of " + rule,
                            "VATA 1994 s19(2)",
                            rate,
                            net,
                            vat,
                            claim,
                            boxes,
                            List.of(),
                            evidence(line),
                            Optional.empty()));
            return this;
        }

        private static Optional<EvidenceGrade> evidence(Line line) {
            return switch (line.profile().kind().side()) {
                case PURCHASES, IMPORTS ->
                        Optional.of(
                                new EvidenceGrade(
                                        EvidenceGrade.Grade.IN_QUESTION, List.of("seen")));
                case SALES, MONEY -> Optional.empty();
            };
        }

        /** The file that the entries added from now on come from. */
        Quarter source(String name, String layout, long rows, long entered, String money) {
            long id = sources.size() + 1L;
            sources.add(
                    new Source(
                            id,
                            "%02x".formatted(id).repeat(32),
                            name,
                            layout,
                            entries.size() + 1L,
                            entered,
                            rows,
                            entered,
                            Amount.of(money),
                            Amount.of(money),
                            Optional.of(new Source.Dates(PERIOD.start(), PERIOD.end()))));
            return this;
        }

        Quarter aside(long row, String reason) {
            setAside.add(new SetAside(sources.size(), row, reason));
            return this;
        }

        Quarter query(String id, String place, String question, String money) {
            queries.add(new Query(id, OptionalLong.of(1), place, question, Amount.of(money)));
            return this;
        }

        ListPack pack(String business, VatReturn.Status status) {
            return ListPack.of(
                    settings(business),
                    PERIOD,
                    status,
                    law(),
                    sources,
                    setAside,
                    entries,
                    adjustments,
                    queries);
        }
    }

    /** A small quarter with every kind of row, and texts that try to be something else. */
    static ListPack small() {
        Quarter q = new Quarter();
        q.source("orders-july.csv", "plain-sheet", 8, 6, "268.9900");
        q.with("Ada Fenwick", "", "Q-1001", "Copper kettle").sale(Kind.SALE, "9.99", "20");
        q.with("=HYPERLINK(\"http://invalid.example\",\"pay here\")", "+1", "@x", "-2+3")
                .sale(Kind.SALE, "9.99", "20");
        q.with("Żółć Kowalski", "", "Q-1003", "茶壺 teapot _x0041_ \u0001\u000b end")
                .sale(Kind.SALE, "119.99", "20");
        q.with("Ζωή Παππά", "", "Q-1004", "A tea towel so long that " + "it goes on ".repeat(40))
                .sale(Kind.SALE, "9.99", "20");
        q.with("Brine & Barrow <Books>", "", "Q-1005", "Picture book")
                .sale(Kind.SALE, "109.02", "0");
        q.on(LocalDate.of(2026, 9, 30))
                .with("Ada Fenwick", "", "Q-1001", "Copper kettle sent back")
                .sale(Kind.SALE_REFUND, "9.99", "20");
        q.aside(5, "blank row").aside(9, "blank row");
        q.source("suppliers.csv", "plain-sheet", 3, 3, "-60.0000");
        q.with("Harrow Crate Works", "HC-77", "", "Boxes")
                .purchase(Kind.PURCHASE, "40.00", "8.00", "8.00");
        q.with("Harrow Crate Works", "HC-78", "", "Boxes back")
                .purchase(Kind.PURCHASE_CREDIT, "10.00", "2.00", "2.00");
        q.with("Lantern Freight", "LF-9", "", "Lunch for a customer")
                .purchase(Kind.EXPENSE, "10.00", "2.00", "0.00");
        q.with("Quayline Services", "QS-3", "", "Selling fees").reverseCharge("12.52");
        q.with("", "PS-2026-08", "", "Kettles").postponed("500.00", "100.00");
        q.with("Quayline", "", "", "Payout of 14 July").money(Kind.PAYOUT, "150.00");
        q.query(
                "E9/evidence-missing",
                "suppliers.csv row 4",
                "No invoice is stated for LF-9; 2.00 of VAT is not claimed until one is.",
                "2.00");
        return q.pack("Moss & Kettle Limited", VatReturn.Status.CLOSED);
    }

    /** A flat-rate quarter: its boxes come from adjustments but for one purchase. */
    static ListPack adjusted() {
        Quarter q = new Quarter();
        q.source("till.csv", "plain-sheet", 3, 3, "9999.99");
        q.with("", "", "", "Takings").takings("6000.00").takings("3999.99");
        q.with("Harrow Crate Works", "HC-77", "", "A press")
                .purchase(Kind.PURCHASE, "2000.00", "400.00", "400.00");
        q.adjustment(
                "flat-rate",
                "2026-07-01 to 2026-09-30",
                "Turnover with VAT 9999.99 at 7.5% is 749.9993.",
                Map.of("1", Amount.of("749.9993"), "6", Amount.of("9999.99")));
        q.adjustment(
                "partial-exemption-year",
                "2025-04-01 to 2026-03-31",
                "=1+1 is the year's settlement.",
                Map.of("4", Amount.of("-12.34")));
        q.adjustment("partial-exemption", "2026-07-01 to 2026-09-30", "All of it.", Map.of());
        return q.pack("Till & Co", VatReturn.Status.DRAFT);
    }

    /** A busy quarter: so many sales, spread over the days, and a heap of purchases. */
    static ListPack busy(int sales) {
        Quarter q = new Quarter();
        q.source(
                "quayline-settlement-2026-07-14.csv",
                "row-per-order",
                sales + 4L,
                sales,
                "48210.5500");
        String[] prices = {"9.99", "24.50", "112.00", "3.49", "59.95"};
        String[] people = {
            "Ada Fenwick",
            "Bartholomew Featherstonehaugh-Cholmondeley of Upper Netherbridge",
            "Żółć Kowalski",
            "J. Oyelaran",
            "The Very Long Named Wholesale Gift and Homeware Emporium Company Limited"
        };
        for (int i = 0; i < sales; i++) {
            q.on(PERIOD.start().plusDays(i % 92L))
                    .with(
                            people[i % 5],
                            "",
                            "Q-%05d".formatted(10_000 + i),
                            i % 3 == 0 ? "Copper kettle, 1.2 litre, hammered finish" : "Tea towel")
                    .sale(
                            i % 17 == 16 ? Kind.SALE_REFUND : Kind.SALE,
                            prices[i % 5],
                            i % 7 == 6 ? "0" : "20");
        }
        q.aside(3, "The row repeats the heading").aside(70, "Blank row").aside(71, "Blank row");
        q.source("supplier-invoices.xlsx", "supplier-list", 25, 25, "-18400.0000");
        for (int i = 0; i < 25; i++) {
            q.on(PERIOD.start().plusDays(i * 3L))
                    .with(people[(i + 1) % 5], "INV-" + (700 + i), "", "Stock and packaging")
                    .purchase(
                            i == 9 ? Kind.PURCHASE_CREDIT : Kind.PURCHASE,
                            "613.33",
                            "122.66",
                            i == 12 ? "0.00" : "122.66");
        }
        q.source("postponed-statement-august.csv", "postponed-list", 3, 3, "0.0000");
        for (int i = 0; i < 3; i++) {
            q.with("", "PS-2026-0" + (7 + i), "", "Kettles, 40 cartons")
                    .postponed("2500.00", "500.00");
        }
        q.source("quayline-fees.csv", "plain-sheet", 8, 8, "-3116.0800");
        q.with("Quayline Services (Overseas) Limited", "QS-3", "", "Selling fees")
                .reverseCharge("1210.04");
        for (int i = 0; i < 6; i++) {
            q.with("Quayline", "", "", "Payout " + (i + 1)).money(Kind.PAYOUT, "6150.17");
        }
        for (int i = 0; i < 30; i++) {
            q.query(
                    "E" + (sales + i + 1) + "/evidence-missing",
                    "supplier-invoices.xlsx Sheet1 row " + (i + 2),
                    "No invoice is stated for INV-"
                            + (700 + i)
                            + " from "
                            + people[i % 5]
                            + "; 122.66 of VAT is not claimed until one is. State the evidence, or"
                            + " decide that the VAT stays unclaimed.",
                    i % 4 == 0 ? "1122.66" : "122.66");
        }
        return q.pack(
                "The Moss and Kettle Household Goods Trading Company of Netherbridge Limited",
                VatReturn.Status.CLOSED);
    }

    private Samples() {}
}
