package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.money.Amount;

/** Every question as a person reads it, with the money at stake. */
class QueryTextTest {

    /** Questions that may wait till after the close: for a paper, a payment, a write-off. */
    private static final Set<String> WAITING =
            Set.of(
                    "export-evidence",
                    "dispatch-evidence",
                    "export-overdue",
                    "postponed-statement-missing",
                    "debt-unpaid",
                    "supplier-unpaid",
                    "bad-debt-days-missing",
                    "supplier-payment-without-document");

    /** What one entry of an ordinary book cannot raise: EvidenceTest and RegistrationEdgesTest. */
    private static final Set<String> OF_WHOLE_BOOKS =
            Set.of(
                    "likely-duplicate",
                    "import-vat-billed",
                    "copy-entered-twice",
                    "fees-claimed-twice",
                    "advance-claimed-twice",
                    "import-vat-claimed-on-bill",
                    "on-hand-missing",
                    "after-registration");

    private static SampleLine expense() {
        return SampleLine.of("expense")
                .party("Example supplier", "GB", "GB101747696")
                .rate("20")
                .evidence("invoice")
                .printed("100", "20");
    }

    private static SampleLine sale() {
        return SampleLine.of("sale").gross("120");
    }

    static Stream<Arguments> questions() {
        return Stream.of(
                Arguments.of(
                        "no-exchange-rate",
                        sale().currency("EUR"),
                        "120.00",
                        "For 120.00 EUR the book holds no rate of the tax authority in 2026-08, so it is in no box. Import its"
                                + " file of the rates for that month, CSV or XML."),
                Arguments.of(
                        "rate-not-in-force",
                        sale().rate("17.5"),
                        "120.00",
                        "The rate 17.5% was no VAT rate on 2026-08-01, so 120.00 is in no box. Enter the"
                                + " rate the document shows, or the right date."),
                Arguments.of(
                        "channel-tax-unclear",
                        sale().channel("Quaylark", "unclear"),
                        "120.00",
                        "The report shows a tax and withholds a different one, so who accounts for the VAT"
                                + " on 120.00 is not known, and it is in no box. Ask the channel, then enter"
                                + " it with channel_collects yes or no."),
                Arguments.of(
                        "stock-abroad-to-uk",
                        sale().goods("CN", "GB"),
                        "120.00",
                        "Goods of 120.00 from stock abroad went to a customer here and no channel accounts"
                                + " for the VAT. Up to 135 a consignment the seller charges VAT at the sale;"
                                + " above it the importer pays. It is in no box. Enter as consignment the value of"
                                + " all the goods sent together."),
                Arguments.of(
                        "dispatch-evidence",
                        sale().goods("XI", "DE").customer("business", "DE123456788"),
                        "120.00",
                        "Goods of 120.00 went from Northern Ireland to the European Union without evidence"
                                + " yet. They are zero-rated here; hold evidence that they left within 3"
                                + " months of 2026-08-01, or their VAT falls due then."),
                Arguments.of(
                        "destination-missing",
                        sale().goods("DE", ""),
                        "120.00",
                        "Goods of 120.00 were sold from stock abroad and where they went is not stated; it"
                                + " is in no box. Enter the country in the column to."),
                Arguments.of(
                        "uk-vat-on-goods-from-abroad",
                        SampleLine.of("purchase")
                                .printed("100", "20")
                                .party("Factory", "CN", "GB101747696"),
                        "120.00",
                        "The document charges United Kingdom VAT of 20.00 on goods of 120.00 from abroad;"
                                + " nothing is reclaimed and it is in no box. If the goods were here when"
                                + " they were sold, enter from GB; if they were imported, ask the supplier"
                                + " why VAT is charged."),
                Arguments.of(
                        "channel-collected-wrongly",
                        sale().channel("Quaylark", "yes"),
                        "120.00",
                        "The channel withheld the VAT on 120.00, but on a sale of goods here this seller"
                                + " accounts for it. It is in no box. Ask the channel why, then enter it with"
                                + " channel_collects no, or show where the goods started."),
                Arguments.of(
                        "ni-to-eu-consumer",
                        sale().goods("XI", "IE"),
                        "120.00",
                        "Goods of 120.00 went from Northern Ireland to the European Union without a"
                                + " customer's VAT number there. Where that sale is taxed must be settled; it"
                                + " is in no box."),
                Arguments.of(
                        "northern-ireland-not-set",
                        sale().goods("XI", "IE"),
                        "120.00",
                        "Goods of 120.00 moved between Northern Ireland and the European Union, but the"
                                + " book says that the business does not trade there; it is in no box. Set"
                                + " northern_ireland: yes in book.yaml, or correct where the goods"
                                + " moved."),
                Arguments.of(
                        "eu-before-2021",
                        sale().goods("", "IE").on("2020-12-31"),
                        "120.00",
                        "Goods of 120.00 moved between here and the European Union on 2020-12-31, before"
                                + " 2021. These tables do not cover that trade; it is in no box."),
                Arguments.of(
                        "export-evidence",
                        sale().goods("", "US"),
                        "120.00",
                        "Export of 120.00 without evidence yet. It is zero-rated here; hold evidence of"
                                + " export within 3 months of 2026-08-01, or its VAT falls due then."),
                Arguments.of(
                        "sale-vat-nil",
                        sale().vat("0"),
                        "20.00",
                        "The sale prints a VAT of nought, but its goods are taxed at 20%. VAT of 20.00 is"
                                + " worked out inside the price of 120.00; enter rate 0 if it is right, or"
                                + " list the product."),
                Arguments.of(
                        "foreign-vat-charged",
                        expense().rate("").party("Werk", "DE", "DE123456788").printed("100", "19"),
                        "119.00",
                        "The document shows a tax of 19.00 that is not United Kingdom VAT and cannot be"
                                + " reclaimed here. Ask for a document without it, or use the other country's"
                                + " refund route."),
                Arguments.of(
                        "place-of-supply",
                        SampleLine.of("expense")
                                .party("Pension", "DE", "")
                                .category("travel")
                                .evidence("invoice")
                                .gross("90"),
                        "90.00",
                        "A trip's cost of 90.00 from a supplier abroad. If it was used abroad it is in no"
                                + " box; if it is taxed here the reverse charge applies. It is in no box until"
                                + " that is settled."),
                Arguments.of(
                        "evidence-missing",
                        expense().evidence("missing"),
                        "20.00",
                        "No document is held for 120.00, so its VAT of 20.00 is not reclaimed. Find the"
                                + " invoice, or leave it out."),
                Arguments.of(
                        "evidence-fails",
                        SampleLine.of("expense")
                                .party("Adverts", "DE", "")
                                .evidence("simplified")
                                .gross("300"),
                        "60.00",
                        "The document for 300.00 does not support a reclaim: the whole of it is above the"
                                + " limit of its kind. Its VAT of 60.00 is due and is not reclaimed. Ask the"
                                + " supplier for an invoice to the business."),
                Arguments.of(
                        "credit-unevidenced",
                        SampleLine.of("expense-credit")
                                .rate("20")
                                .party("Example supplier", "GB", "GB101747696")
                                .evidence("missing")
                                .printed("100", "20"),
                        "20.00",
                        "By what is entered no document supports the supplier's credit of 120.00, so its"
                                + " VAT of 20.00 is not yet taken off box 4. If the VAT of the purchase was"
                                + " reclaimed it must be: find the credit note, or decide --entry"
                                + " 1 --treat-as uk-purchase-credit."),
                Arguments.of(
                        "evidence-over-limit",
                        expense().evidence("simplified").printed("250", "50"),
                        "50.00",
                        "A simplified invoice does not do for 300.00: above the limit a full VAT invoice is"
                                + " needed. Its VAT of 50.00 is not reclaimed until it is held."),
                Arguments.of(
                        "evidence-not-for-category",
                        expense().evidence("none-needed").category("postage").printed("10", "2"),
                        "2.00",
                        "Without a document VAT is reclaimed only on the few small costs the law names. The"
                                + " VAT of 2.00 on 12.00 is not reclaimed; find the receipt."),
                Arguments.of(
                        "category-unknown",
                        expense().category("helicopter"),
                        "20.00",
                        "The category 'helicopter' is in no table, so whether its VAT is blocked is not"
                                + " known. The VAT of 20.00 on 120.00 is not reclaimed until it has a category"
                                + " of blocked.csv."),
                Arguments.of(
                        "supplier-number-fails",
                        expense().party("Example supplier", "GB", "GB123456789"),
                        "20.00",
                        "The supplier's VAT number GB123456789 fails its check digits, so the VAT of 20.00"
                                + " on 120.00 is not reclaimed. Look at the document, or ask the supplier."),
                Arguments.of(
                        "supplier-number-missing",
                        expense().party("Example supplier", "GB", ""),
                        "20.00",
                        "The supplier's United Kingdom VAT number is not stated, so the VAT of 20.00 on"
                                + " 120.00 is not reclaimed. Enter the number printed on the document."),
                Arguments.of(
                        "vat-not-stated",
                        SampleLine.of("expense")
                                .party("Example supplier", "GB", "GB101747696")
                                .evidence("invoice")
                                .gross("120"),
                        "120.00",
                        "Neither an amount of VAT nor a rate is stated for 120.00, so nothing is reclaimed."
                                + " Enter what the document prints; rate 0 or exempt if it charges"
                                + " none."),
                Arguments.of(
                        "supplier-country-missing",
                        SampleLine.of("fee").gross("30").evidence("invoice"),
                        "30.00",
                        "A service of 30.00 without the supplier's country or VAT number, so whether the"
                                + " reverse charge is due is not known. It is in no box. Enter party_country"
                                + " from the document."),
                Arguments.of(
                        "vat-nil-at-rate",
                        expense().printed("100", "0"),
                        "100.00",
                        "The document states a rate of 20% but prints no VAT on 100.00. Nothing is"
                                + " reclaimed; look at the document."),
                Arguments.of(
                        "import-certificate-missing",
                        SampleLine.of("import-vat-paid").printed("2000", "400").evidence("invoice"),
                        "400.00",
                        "Import VAT of 400.00 without the import VAT certificate: a courier's or agent's"
                                + " invoice is no evidence. It is not reclaimed until the certificate is"
                                + " held."),
                Arguments.of(
                        "postponed-statement-missing",
                        SampleLine.of("import-vat-postponed").net("8720"),
                        "1744.00",
                        "Postponed import VAT of 1744.00 is an estimate: the statement is not held. When it"
                                + " comes, enter its line with the same entry number as document: only"
                                + " the difference is then taken up."),
                Arguments.of(
                        "vat-differs",
                        expense().printed("100", "19"),
                        "19.00",
                        "The document prints VAT of 19.00, which is more than a penny below 20% of its value."
                                + " It is taken as printed; look at it."),
                Arguments.of(
                        "vat-overcharged",
                        expense().printed("100", "21"),
                        "21.00",
                        "The document prints VAT of 21.00, which is more than a penny above 20% of its value."
                                + " Only what the rate gives is reclaimed: an overcharge is not input tax. Ask"
                                + " the supplier for a credit note, or correct the rate."),
                Arguments.of(
                        "sale-vat-differs",
                        sale().vat("21"),
                        "21.00",
                        "The sale states VAT of 21.00, which is more than a penny from 20% of its value. It"
                                + " is taken as stated; look at the invoice."),
                Arguments.of(
                        "sale-vat-untaxed",
                        sale().vat("20").goods("", "US").evidence("export"),
                        "120.00",
                        "The sale states a tax of 20.00, but by its rate or where it went it is without"
                                + " United Kingdom VAT, so that tax is in no box. United Kingdom VAT shown on"
                                + " an invoice is owed until the invoice is put right: if it is that, enter"
                                + " the sale as taxed; if it is another country's, declare it there."),
                Arguments.of(
                        "export-destination-missing",
                        sale().evidence("export"),
                        "20.00",
                        "Evidence of export is entered for 120.00, but not where the goods went, so VAT of"
                                + " 20.00 is charged. Enter the country in the column to."),
                Arguments.of(
                        "ni-acquisition-unclear",
                        SampleLine.of("purchase")
                                .goods("DE", "XI")
                                .evidence("invoice")
                                .gross("100"),
                        "100.00",
                        "Goods of 100.00 came into Northern Ireland from the European Union, but the"
                                + " supplier is not stated to be there, so whether VAT is due in box 2 is not"
                                + " known. It is in no box. Enter party_country from the document."),
                Arguments.of(
                        "vat-at-no-rate",
                        expense().rate("exempt"),
                        "120.00",
                        "The document states exempt but prints VAT of 20.00 on 120.00, so its VAT is not"
                                + " reclaimed. Enter the rate it charges, or ask the supplier."),
                Arguments.of(
                        "document-needed",
                        SampleLine.of("expense")
                                .category("toll")
                                .evidence("none-needed")
                                .rate("20")
                                .gross("25.01"),
                        "4.1683",
                        "25.01 is above the limit for a cost that needs no document. Its VAT of 4.17 is not"
                                + " reclaimed until a receipt or invoice is held."),
                Arguments.of(
                        "bad-debt-rate-missing",
                        SampleLine.of("other-money").category("bad-debt-relief").gross("120"),
                        "120.00",
                        "Relief for an unpaid debt of 120.00 without the rate the sale was taxed at, so it"
                                + " is in no box. Enter the rate."),
                Arguments.of(
                        "vat-on-money",
                        SampleLine.of("compensation").printed("100", "20"),
                        "120.00",
                        "The row states VAT of 20.00, but a row of this kind carries none, so that VAT is in"
                                + " no box. Enter VAT with the sale, purchase, expense or import it belongs"
                                + " to."),
                Arguments.of(
                        "evidence-alternative",
                        expense().evidence("alternative"),
                        "20.00",
                        "Other proof than an invoice is held for 120.00. Only the tax authority can accept"
                                + " it, so its VAT of 20.00 is not reclaimed. When it has:"
                                + " decide --entry 1 --evidence-seen alternative; or find the invoice."),
                Arguments.of(
                        "made-out-to-another",
                        expense().particular(Particular.ADDRESSED, "other"),
                        "20.00",
                        "The document for 120.00 is made out in another name than the business, so its VAT"
                                + " of 20.00 is not reclaimed. That it was seen does not change that. If it"
                                + " is the business's all the same, such as under a name it trades in:"
                                + " decide --entry 1 --state addressed=business. If it is not: ask the"
                                + " supplier for one made out to the business, or decide --entry 1"
                                + " --disallow. One in an employee's name does for subsistence and motoring"
                                + " alone."),
                Arguments.of(
                        "credit-adds-to-claim",
                        SampleLine.of("purchase-credit")
                                .party("Cobble Hare Couriers Ltd", "GB", "GB101747696")
                                .document("CN-1")
                                .rate("20")
                                .printed("-100", "-20"),
                        "-20.00",
                        "The supplier's credit CN-1 is of less than nothing, so it would add 20.00 to the"
                                + " claim. By what is entered no document supports that, and nothing is"
                                + " reclaimed. If it charges 120.00, and the document is held: decide --entry"
                                + " 1 --evidence-seen invoice. If it takes that back: enter it as a"
                                + " purchase-credit with positive amounts, and decide --entry 1 --duplicate-of"
                                + " that one."),
                Arguments.of(
                        "import-importer-unstated",
                        SampleLine.of("import-vat-paid")
                                .vat("386.42")
                                .document("26GB01")
                                .evidence("import-certificate"),
                        "386.42",
                        "Whose import 26GB01 is, with VAT of 386.42, is not stated, so it is in no box: the"
                                + " document must show this business as importer, consignee or owner (VAT"
                                + " Regulations 1995 reg 29(2)(c)). Enter the number it shows: decide --entry"
                                + " 1 --state party_vat=NUMBER. Where import-importer-unstated is own"
                                + " under choices in book.yaml, a row without it is this business's, but not in"
                                + " a file that has imports of another."),
                Arguments.of(
                        "import-of-another",
                        SampleLine.of("import-vat-paid")
                                .vat("386.42")
                                .party("", "", "GB101747696000")
                                .evidence("import-certificate"),
                        "386.42",
                        "The importer's number GB101747696000 is not that of this book, so the import VAT"
                                + " of 386.42 is not reclaimed and the import is in no box. The owner of"
                                + " the goods at import reclaims it. Look at the number on the certificate or statement, and ask who"
                                + " owned the goods."),
                Arguments.of(
                        "pre-registration-evidence",
                        expense()
                                .on("2002-12-31")
                                .rate("17.5")
                                .evidence("missing")
                                .printed("100", "17.5"),
                        "17.50",
                        "VAT on 117.50, bought on 2002-12-31 before the registration, is in no box: by what"
                                + " is entered, its document does not support a reclaim. Look at the"
                                + " document, the supplier's VAT number, the rate and the category."),
                Arguments.of(
                        "stock-day",
                        SampleLine.of("stock-on-hand").net("5100"),
                        "5100.00",
                        "Goods on hand of 5100.00 are dated 2026-08-01. Enter them on the last day of the"
                                + " registration, and that day as registered_to in book.yaml; until then"
                                + " they are in no box."),
                Arguments.of(
                        "vat-above-every-rate",
                        expense().rate("").category("client-entertaining").printed("100", "33"),
                        "33.00",
                        "The document prints VAT of 33.00, which is more than the standard rate of its"
                                + " value, and states no rate. Only what the standard rate gives is reclaimed;"
                                + " an overcharge is not input tax, so look at it."),
                Arguments.of(
                        "no-rule",
                        sale().on("1973-03-31"),
                        "120.00",
                        "No rule of the treatment table fits this entry of 120.00, so it is in no box. Look"
                                + " at what is missing on it."));
    }

    /** An open question about an entry. */
    private static Query query(
            String code,
            String id,
            OptionalLong entry,
            String place,
            String question,
            Amount money) {
        return new Query(id, entry, place, question, money, !WAITING.contains(code), "");
    }

    /** Questions about what happens of an entry, and of rows that pay or write off. */
    static Stream<Arguments> questionsOfTime() {
        SampleLine away = sale().goods("", "US");
        SampleLine relief =
                SampleLine.of("other-money").category("bad-debt-relief").rate("20").gross("120");
        return Stream.of(
                Arguments.of(
                        "export-overdue",
                        Cause.EXPORT_TIME_UP,
                        away,
                        "20.00",
                        "Evidence that goods of 120.00 left was not held within 3 months of 2026-08-01,"
                                + " so their VAT of 20.00 is due now. When the evidence comes, enter its day as"
                                + " evidenced: the VAT is then taken back."),
                Arguments.of(
                        "debt-unpaid",
                        Cause.UNPAID,
                        sale(),
                        "120.00",
                        "All or part of 120.00 is unpaid 6 months after payment was due. If the debt is"
                                + " written off, relief may be claimed: enter what is unpaid as"
                                + " other-money of category bad-debt-relief, with the document, due and"
                                + " rate."),
                Arguments.of(
                        "supplier-unpaid",
                        Cause.UNPAID,
                        expense(),
                        "20.00",
                        "All or part of 120.00 is not entered as paid 6 months after payment was due, so"
                                + " the VAT reclaimed on that part goes back here. If it was paid, enter"
                                + " the day."),
                Arguments.of(
                        "bad-debt-early",
                        Cause.SUPPLY,
                        relief.particular(Particular.DUE, "2026-02-02"),
                        "120.00",
                        "Relief for an unpaid debt of 120.00 is claimed on 2026-08-01, before 6 months"
                                + " have passed since the supply and the day payment was due; it is in no"
                                + " box. Claim it when they have."),
                Arguments.of(
                        "bad-debt-late",
                        Cause.SUPPLY,
                        SampleLine.of("other-money")
                                .category("bad-debt-relief")
                                .rate("20")
                                .gross("120")
                                .particular(Particular.DUE, "2022-01-31"),
                        "120.00",
                        "Relief for an unpaid debt of 120.00 is claimed on 2026-08-01, more than 4 years"
                                + " and 6 months after the supply and the day payment was due; it is in"
                                + " no box."),
                Arguments.of(
                        "bad-debt-days-missing",
                        Cause.SUPPLY,
                        SampleLine.of("other-money")
                                .category("bad-debt-relief")
                                .rate("20")
                                .gross("120"),
                        "20.00",
                        "Relief for an unpaid debt of 120.00 without the day payment was due, so whether"
                                + " it is in time is not known; it is given here. Enter due, and sent if"
                                + " the supply was later."),
                Arguments.of(
                        "customer-payment-without-document",
                        Cause.SUPPLY,
                        SampleLine.of("customer-payment").gross("50"),
                        "50.00",
                        "A customer's payment of 50.00 names no document that is entered, so what it pays"
                                + " is not known. A payment before the goods go or the invoice is issued"
                                + " is taxed when it is received: enter the sale with its document, party"
                                + " and sent; or correct the payment's."),
                Arguments.of(
                        "supplier-payment-without-document",
                        Cause.SUPPLY,
                        SampleLine.of("supplier-payment").gross("50"),
                        "50.00",
                        "A payment of 50.00 to a supplier names no document that is entered, so what it"
                                + " pays is not known. Enter the purchase with its document and party, or"
                                + " correct the payment's."));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("questionsOfTime")
    void askedOfTimeInFull(
            String code, Cause cause, SampleLine line, String money, String question) {
        assertThat(Treating.gb().one(line, cause).queries())
                .containsExactly(
                        query(
                                code,
                                "E1/" + code,
                                OptionalLong.of(1),
                                "sheet-1.csv row 2",
                                question,
                                Amount.of(money)));
    }

    /** More than the document asks: only the payment that goes above it. */
    @Test
    void askedOfAPaymentAboveItsDocument() {
        List<Treated> all =
                Treating.gb()
                        .all(
                                sale().document("INV-1").party("Customer", "GB", ""),
                                SampleLine.of("customer-payment")
                                        .document("INV-1")
                                        .party("Customer", "GB", "")
                                        .gross("100"),
                                SampleLine.of("customer-payment")
                                        .on("2026-08-02")
                                        .document("INV-1")
                                        .party("Customer", "GB", "")
                                        .gross("20.01"),
                                expense().document("B-1"),
                                SampleLine.of("supplier-payment")
                                        .document("B-1")
                                        .party("Example supplier", "GB", "")
                                        .gross("120.01"));
        assertThat(all.get(1).queries()).isEmpty();
        assertThat(all.get(2).queries())
                .extracting(Query::question)
                .containsExactly(
                        "With this payment of 20.01 a customer has paid more than the document asks."
                                + " Enter what the rest is for, or correct the amount or the document.");
        assertThat(all.get(4).queries())
                .extracting(Query::question)
                .containsExactly(
                        "With this payment of 120.01 a supplier has been paid more than the document"
                                + " asks. Correct the amount or the document.");
    }

    static Stream<Arguments> all() {
        return Stream.concat(questions(), GoodsQuestions.all());
    }

    private static Treating book(String code) {
        if (code.startsWith("ni-")
                || code.startsWith("dispatch-")
                || code.equals("margin-from-northern-ireland")) {
            return Treating.of(SampleSettings.established("XI", "XI"));
        }
        return switch (code) {
            case "import-importer-unstated" ->
                    Treating.of(SampleSettings.choosing(Map.of(code, "ask")));
            case "channel-should-account" -> Treating.of(SampleSettings.established("US", "GB"));
            case "margin-with-flat-rate" -> Treating.of(SampleSettings.scheme("flat-rate", "044"));
            default -> Treating.gb().selling(Map.of("BOOK", "zero"), GoodsQuestions.BUNDLES);
        };
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("all")
    void askedInFull(String code, SampleLine line, String money, String question) {
        Treating book = book(code);
        assertThat(book.one(line).queries())
                .containsExactly(
                        query(
                                code,
                                "E1/" + code,
                                OptionalLong.of(1),
                                "sheet-1.csv row 2",
                                question,
                                Amount.of(money)));
    }

    /** Each code of the decision table, and the two on printed VAT, stands in the list above. */
    @Test
    void everyQuestionOfAnEntryIsListed() {
        List<String> tested =
                Stream.of(
                                all().map(a -> (String) a.get()[0]),
                                questionsOfTime().map(a -> (String) a.get()[0]),
                                Stream.of("flat-rate-import")) // below
                        .flatMap(s -> s)
                        .toList();
        assertThat(Treating.LAW.treatments().rows())
                .extracting(r -> r.value().query())
                .filteredOn(q -> !q.isEmpty())
                .filteredOn(q -> !OF_WHOLE_BOOKS.contains(q))
                .isSubsetOf(tested);
    }

    /** Whoever accounts for it, the tax at stake is what the tables worked out. */
    @Test
    void aForeignTaxOnAFeeAsksOfItself() {
        Treated fee =
                Treating.gb()
                        .one(
                                SampleLine.of("fee")
                                        .party("Example platform", "IE", "IE1234567T")
                                        .evidence("invoice")
                                        .printed("100", "23"));
        assertThat(fee.queries())
                .extracting(Query::question)
                .containsExactly(
                        "The document shows a tax of 23.00 that is not United Kingdom VAT and cannot be"
                                + " reclaimed here. Ask for a document without it, or use the other"
                                + " country's refund route.");
    }

    @Test
    void anImportUnderTheFlatRateBeforeJune2022() {
        Treated early =
                Treating.of(SampleSettings.scheme("flat-rate", "044"))
                        .one(
                                SampleLine.of("import-vat-postponed")
                                        .on("2022-05-31")
                                        .printed("500", "100")
                                        .evidence("postponed-statement"));
        assertThat(early.queries())
                .extracting(Query::question)
                .containsExactly(
                        "Import VAT of 100.00 was postponed under the flat-rate scheme before June 2022. These"
                                + " tables do not state how; it is in no box.");
    }

    @Test
    void askedOfNoSingleEntry() {
        Questions questions = new Questions(Treating.gb().context(List.of()));
        assertThat(
                        questions.ask(
                                "fees-without-invoice",
                                "2026-09/Quaylark",
                                Amount.of("41.5"),
                                Map.of("channel", "Quaylark")))
                .isEqualTo(
                        new Query(
                                "2026-09/Quaylark/fees-without-invoice",
                                OptionalLong.empty(),
                                "",
                                "Quaylark took fees of 41.50 off its settlements in the period, but no"
                                        + " invoice for its fees is entered. Ask the channel for it: its VAT"
                                        + " is reclaimed, or the reverse charge is due, on that document.",
                                Amount.of("41.5")));
        assertThat(questions.ask("late-purchase", expense().entry(7)))
                .isEqualTo(
                        new Query(
                                "E7/late-purchase",
                                OptionalLong.of(7),
                                "sheet-1.csv row 8",
                                "120.00 is dated 2026-08-01, in a period that is closed, and when its document"
                                        + " was held is not stated. It is taken as an error of that return, which"
                                        + " counts toward the limit for errors. If the document came only after that"
                                        + " period, state held with its day: it is then a late claim, and no error.",
                                Amount.of("120"),
                                false,
                                ""));
    }

    /** What an entry says may hold braces; it is text, and is not filled in again. */
    @Test
    void whatAnEntrySaysIsNotFilledInAgain() {
        Treated treated =
                Treating.gb().one(expense().category("{channel}").channel("{date}", "no"));
        assertThat(treated.queries())
                .extracting(Query::question)
                .containsExactly(
                        "The category '{channel}' is in no table, so whether its VAT is blocked is not"
                                + " known. The VAT of 20.00 on 120.00 is not reclaimed until it has a"
                                + " category of blocked.csv.");
    }
}
