package quarterfold.treatment;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.provider.Arguments;
import quarterfold.ledger.Bundles.Part;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.money.Amount;

/** The questions about channels, consignments, margin goods, gifts, fuel, stock and vouchers. */
final class GoodsQuestions {

    /** A zero-rated book and a disc, sold together. */
    static final Map<String, List<Part>> BUNDLES =
            Map.of(
                    "BOTH",
                    List.of(new Part("BOOK", Amount.of("5")), new Part("DISC", Amount.of("10"))));

    private GoodsQuestions() {}

    /** Code, an entry that raises it, the money at stake, and the whole text. */
    static Stream<Arguments> all() {
        return Stream.of(
                Arguments.of(
                        "sale-vat-apportioned",
                        SampleLine.of("sale").product("BOTH").printed("15", "3"),
                        "2.00",
                        "The sale states VAT of 3.00, but its goods are of several rates and what is "
                                + "worked out by their prices differs by more than a penny. What is worked out "
                                + "is in box 1; VAT shown on an invoice is owed, so look at the invoice."),
                Arguments.of(
                        "sale-vat-shown",
                        SampleLine.of("sale").rate("exempt").printed("100", "20"),
                        "20.00",
                        "The sale is exempt, yet it states VAT of 20.00. VAT shown on an invoice is "
                                + "owed: it is in box 1 until a credit note puts the invoice right."),
                Arguments.of(
                        "channel-collected-above",
                        SampleLine.of("sale")
                                .gross("120")
                                .goods("CN", "GB")
                                .channel("Quaylark", "yes")
                                .particular(Particular.CONSIGNMENT, "136"),
                        "120.00",
                        "The channel withheld the VAT on goods of 120.00 from abroad in a consignment "
                                + "above the limit, on which the importer pays it. It is in no box. Ask the "
                                + "channel, then enter it with channel_collects no, or correct the consignment."),
                Arguments.of(
                        "channel-should-account",
                        SampleLine.of("sale").gross("120").channel("Quaylark", "no"),
                        "20.00",
                        "Goods of 120.00 that were here were sold through Quaylark by a business "
                                + "established abroad, to a customer who gave no VAT number, and Quaylark does "
                                + "not account for the VAT. An online marketplace must. VAT of 20.00 is charged "
                                + "until that is settled: enter channel_collects yes, or leave it as it is if "
                                + "Quaylark is no marketplace."),
                Arguments.of(
                        "goods-to-northern-ireland",
                        SampleLine.of("sale").gross("120").goods("CN", "XI"),
                        "120.00",
                        "Goods of 120.00 from abroad went to a customer in Northern Ireland and no "
                                + "channel accounts for the VAT. Other rules hold there than in Great Britain; "
                                + "it is in no box until that is settled."),
                Arguments.of(
                        "margin-cost-missing",
                        SampleLine.of("sale").gross("120").rate("margin"),
                        "120.00",
                        "Goods of 120.00 are sold under the margin scheme and what they cost is not "
                                + "known, so the sale is in no box. Enter cost, or the one purchase of the same "
                                + "product with rate margin. Global accounting is not kept here."),
                Arguments.of(
                        "margin-vat-shown",
                        SampleLine.of("purchase").printed("100", "20").rate("margin"),
                        "120.00",
                        "A purchase of 120.00 under the margin scheme prints VAT of 20.00. Goods "
                                + "bought with VAT shown cannot be sold under it, so it is in no box. Enter the "
                                + "rate the document charges, or leave out VAT it does not print."),
                Arguments.of(
                        "margin-with-flat-rate",
                        SampleLine.of("sale")
                                .gross("120")
                                .rate("margin")
                                .particular(Particular.COST, "60"),
                        "120.00",
                        "Goods of 120.00 are sold under the margin scheme, which a business on the "
                                + "flat rate may not use, so the sale is in no box. Enter the rate, or look at "
                                + "the scheme."),
                Arguments.of(
                        "margin-from-northern-ireland",
                        SampleLine.of("sale")
                                .gross("120")
                                .rate("margin")
                                .particular(Particular.COST, "60")
                                .goods("XI", "DE"),
                        "120.00",
                        "Goods of 120.00 under the margin scheme went from Northern Ireland to the "
                                + "European Union. How that sale is taxed must be settled; it is in no box."),
                Arguments.of(
                        "reverse-charge-customer",
                        SampleLine.of("sale").net("120").rate("reverse-charge"),
                        "120.00",
                        "The sale of 120.00 says that the customer accounts for the VAT, but no valid "
                                + "VAT number of a customer here is stated, or the charge was not in force on "
                                + "2026-08-01. It is in no box. Enter customer_vat, or the rate."),
                Arguments.of(
                        "reverse-charge-vat-printed",
                        SampleLine.of("purchase")
                                .printed("100", "20")
                                .rate("reverse-charge")
                                .party("Example supplier", "GB", "GB101747696")
                                .evidence("invoice"),
                        "120.00",
                        "The document says that the customer accounts for the VAT, yet prints VAT of "
                                + "20.00 on 120.00. It is in no box. Enter the rate it charges, or ask the "
                                + "supplier for an invoice without VAT."),
                Arguments.of(
                        "consignment-missing",
                        SampleLine.of("purchase")
                                .gross("120")
                                .rate("reverse-charge")
                                .goods("CN", "GB"),
                        "120.00",
                        "The document for goods of 120.00 from abroad says that the customer accounts "
                                + "for the VAT, which holds for small consignments alone. It is in no box. "
                                + "Enter consignment, the value of all the goods that came together."),
                Arguments.of(
                        "consignment-northern-ireland",
                        SampleLine.of("purchase")
                                .gross("120")
                                .goods("CN", "XI")
                                .particular(Particular.CONSIGNMENT, "120"),
                        "120.00",
                        "Goods of 120.00 came from abroad to Northern Ireland in a small consignment. "
                                + "Other rules hold there than in Great Britain; it is in no box until that is "
                                + "settled."),
                Arguments.of(
                        "gift-recipient-missing",
                        SampleLine.of("gift").net("120"),
                        "120.00",
                        "A gift of 120.00 without who got it. Above the limit for one person in "
                                + "twelve months VAT is due on the cost; it is in no box. Enter party."),
                Arguments.of(
                        "fuel-scale-differs",
                        SampleLine.of("fuel-scale").gross("120").particular(Particular.CO2, "118"),
                        "20.00",
                        "The fuel scale charge of 120.00 is not the one the table has for the car and "
                                + "the period. It is taken as stated; look at it, or leave the amount out."),
                Arguments.of(
                        "fuel-scale-unlisted",
                        SampleLine.of("fuel-scale").gross("120"),
                        "20.00",
                        "No fuel scale charge is listed for the car or for a period of this length, "
                                + "or co2 is not stated, so the 120.00 entered is taken as it is. Look it up in "
                                + "the published table."),
                Arguments.of(
                        "fuel-scale-missing",
                        SampleLine.of("fuel-scale"),
                        "0",
                        "A fuel scale charge without an amount, and none is listed for the car or for "
                                + "a period of this length, or co2 is not stated. It is in no box. Enter co2, "
                                + "or gross from the published table."),
                Arguments.of(
                        "stock-eu-to-ni",
                        SampleLine.of("stock-moved").net("120").goods("DE", "XI"),
                        "120.00",
                        "Own goods of 120.00 moved from the European Union to Northern Ireland. "
                                + "Whether VAT is due on them in box 2 must be settled; it is in no box."),
                Arguments.of(
                        "voucher-before-2019",
                        SampleLine.of("voucher").gross("120").on("2018-12-31"),
                        "120.00",
                        "A voucher of 120.00 on 2018-12-31, before 2019. Other rules held for "
                                + "vouchers issued then; it is in no box until that is settled."),
                Arguments.of(
                        "voucher-kind-missing",
                        SampleLine.of("voucher").gross("120"),
                        "120.00",
                        "A voucher of 120.00 without category single-purpose or multi-purpose, or "
                                + "used for goods that leave or that have no rate here, so when its VAT is due "
                                + "is not known. It is in no box. Enter the category."));
    }
}
