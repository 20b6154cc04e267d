package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/**
 * Who accounts for a sale to a customer here: VATA 1994 s.5A and s.7AA; gov.uk 'Charging VAT when
 * using an online marketplace' and 'Charging VAT on goods sold direct to customers in the UK'. The
 * limit of a small consignment is 135 pounds for the whole of it.
 */
class ChannelsTest {

    private static final String NUMBER = "GB101747696";

    private static SampleLine sale(
            String from, String collects, String number, String consignment) {
        SampleLine line =
                SampleLine.of("sale")
                        .gross("120")
                        .goods(from, "GB")
                        .customer(number.isEmpty() ? "consumer" : "business", number)
                        .channel(
                                collects.equals("direct") ? "" : "Quaylark",
                                collects.equals("direct") ? "no" : collects);
        return consignment.isEmpty() ? line : line.particular(Particular.CONSIGNMENT, consignment);
    }

    /** A row for each line of the decision table, in both of its columns of sellers. */
    @ParameterizedTest(name = "{0} seller, goods in {1}, channel {2}, number {3}, consignment {4}")
    @CsvSource(
            nullValues = "-",
            textBlock =
                    """
                    GB, GB, no,     '',          '',     uk-sale S17a; 1=20.00 6=100.00; nothing
                    GB, GB, direct, GB101747696, '',     uk-sale S17a; 1=20.00 6=100.00; nothing
                    GB, GB, yes,    '',          '',     undecided S10; no box; channel-collected-wrongly
                    GB, CN, yes,    '',          '',     deemed-supply S04a; 6=120.00; nothing
                    GB, CN, yes,    '',          135,    deemed-supply S04a; 6=120.00; nothing
                    GB, CN, yes,    '',          135.01, undecided S29; no box; channel-collected-above
                    GB, CN, no,     GB101747696, 135,    sale-customer-accounts S22; no box; nothing
                    GB, CN, direct, GB101747696, 135,    sale-customer-accounts S22; no box; nothing
                    GB, CN, direct, '',          135,    uk-sale S23a; 1=20.00 6=100.00; nothing
                    GB, CN, direct, DE123456788, 135,    uk-sale S23a; 1=20.00 6=100.00; nothing
                    GB, CN, direct, '',          135.01, sale-abroad S24a; 6=120.00; nothing
                    GB, CN, direct, GB101747696, 135.01, sale-abroad S24a; 6=120.00; nothing
                    GB, CN, direct, '',          '',     undecided S06; no box; stock-abroad-to-uk
                    GB, CN, direct, GB123456789, 135,    undecided S06; no box; stock-abroad-to-uk
                    US, GB, yes,    '',          '',     deemed-supply S08a; 6=120.00; nothing
                    US, GB, yes,    DE123456788, '',     deemed-supply S08a; 6=120.00; nothing
                    US, GB, yes,    GB101747696, '',     undecided S27; no box; channel-collected-wrongly
                    US, GB, yes,    GB123456789, '',     undecided S27; no box; channel-collected-wrongly
                    US, GB, no,     GB101747696, '',     uk-sale S17a; 1=20.00 6=100.00; nothing
                    US, GB, no,     '',          '',     uk-sale S30; 1=20.00 6=100.00; channel-should-account
                    US, GB, direct, '',          '',     uk-sale S17a; 1=20.00 6=100.00; nothing
                    US, CN, yes,    '',          135,    deemed-supply S04a; 6=120.00; nothing
                    US, CN, direct, '',          135,    uk-sale S23a; 1=20.00 6=100.00; nothing
                    """)
    void whoAccounts(
            String seller,
            String from,
            String collects,
            String number,
            String consignment,
            String outcome) {
        assertThat(
                        brief(
                                Treating.of(SampleSettings.established(seller, "GB"))
                                        .told(sale(from, collects, number, consignment))))
                .isEqualTo(outcome);
    }

    /** Treatment and rule; boxes; queries. */
    private static String brief(String told) {
        String[] parts = told.split("; ", -1);
        String[] first = told.split(" ", -1);
        return first[0] + " " + first[1] + "; " + parts[1] + "; " + parts[2].substring(5);
    }

    /** gov.uk page on returned goods: only a seller who charged the VAT takes it away. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "direct, 135, uk-sale-reduced S23b; 1=-20.00 6=-100.00; nothing",
        "direct, 135.01, sale-abroad-reduced S24b; 6=-120.00; nothing",
        "yes, 135, deemed-supply-reduced S04b; 6=-120.00; nothing"
    })
    void refunds(String collects, String consignment, String outcome) {
        SampleLine line =
                SampleLine.of("sale-refund")
                        .gross("120")
                        .goods("CN", "GB")
                        .channel(
                                collects.equals("direct") ? "" : "Quaylark",
                                collects.equals("direct") ? "no" : collects)
                        .particular(Particular.CONSIGNMENT, consignment);
        assertThat(brief(Treating.gb().told(line))).isEqualTo(outcome);
    }

    /** Northern Ireland is outside the rules for small consignments. */
    @ParameterizedTest(name = "consignment {0}")
    @CsvSource({"100", "200"})
    void toNorthernIreland(String consignment) {
        assertThat(
                        brief(
                                Treating.gb()
                                        .told(
                                                sale("CN", "direct", "", consignment)
                                                        .goods("CN", "XI"))))
                .isEqualTo("undecided S26; no box; goods-to-northern-ireland");
    }

    /** The rules began with 2021: before, goods from abroad were imported or acquired. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "2020-12-31, undecided S06; no box; stock-abroad-to-uk",
        "2021-01-01, uk-sale S23a; 1=20.00 6=100.00; nothing"
    })
    void since2021(String day, String outcome) {
        assertThat(brief(Treating.gb().told(sale("CN", "direct", "", "135").on(day))))
                .isEqualTo(outcome);
    }

    private static SampleLine bought(String consignment) {
        SampleLine line =
                SampleLine.of("purchase")
                        .gross("120")
                        .goods("CN", "GB")
                        .party("Example supplier", "CN", "")
                        .evidence("invoice");
        return consignment.isEmpty() ? line : line.particular(Particular.CONSIGNMENT, consignment);
    }

    /** Example 1-D: bought direct with the number given, boxes 1, 4 and 7; above, an import. */
    @ParameterizedTest(name = "consignment {0} on {1}, rate {2}")
    @CsvSource({
        "135, 2026-08-01, '', customer-accounts G16g; 1=24.00 4=24.00 7=120.00; nothing",
        "135, 2026-08-01, reverse-charge,"
                + " customer-accounts G16g; 1=24.00 4=24.00 7=120.00; nothing",
        "135, 2026-08-01, 5, customer-accounts G16e; 1=6.00 4=6.00 7=120.00; nothing",
        "135, 2026-08-01, 0, no-vat-purchase G16a; 7=120.00; nothing",
        "135.01, 2026-08-01, '', imported-goods-invoice G03; no box; nothing",
        "'', 2026-08-01, '', imported-goods-invoice G03; no box; nothing",
        "'', 2026-08-01, reverse-charge, undecided G20; no box; consignment-missing",
        "135, 2020-12-31, '', imported-goods-invoice G03; no box; nothing",
        "135, 2021-01-01, '', customer-accounts G16g; 1=24.00 4=24.00 7=120.00; nothing"
    })
    void boughtInASmallConsignment(String consignment, String day, String rate, String outcome) {
        assertThat(brief(Treating.gb().told(bought(consignment).on(day).rate(rate))))
                .isEqualTo(outcome);
    }

    /** The invoice is the only evidence; the VAT is due without it too. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "missing, '', customer-accounts-unclaimed G16c; 1=24.00 7=120.00; evidence-missing",
        "invoice, client-entertaining, customer-accounts-unclaimed G16d; 1=24.00 7=120.00; nothing"
    })
    void boughtWithoutClaim(String evidence, String category, String outcome) {
        assertThat(brief(Treating.gb().told(bought("100").evidence(evidence).category(category))))
                .isEqualTo(outcome);
    }

    /** A supplier who was not given the number charges VAT at the sale: an ordinary purchase. */
    @ParameterizedTest(name = "consignment {0}")
    @CsvSource({
        "135, uk-purchase U15a; 4=20.00 7=100.00; nothing",
        "135.01, undecided G10; no box; uk-vat-on-goods-from-abroad"
    })
    void boughtWithVatAtTheSale(String consignment, String outcome) {
        assertThat(
                        brief(
                                Treating.gb()
                                        .told(
                                                bought(consignment)
                                                        .without()
                                                        .printed("100", "20")
                                                        .rate("20")
                                                        .party("Example supplier", "CN", NUMBER))))
                .isEqualTo(outcome);
    }

    @ParameterizedTest(name = "credit of {0}")
    @CsvSource({"120"})
    void creditForASmallConsignment(String gross) {
        assertThat(
                        brief(
                                Treating.gb()
                                        .told(
                                                SampleLine.of("purchase-credit")
                                                        .gross(gross)
                                                        .goods("CN", "GB")
                                                        .party("Example supplier", "CN", "")
                                                        .evidence("invoice")
                                                        .particular(
                                                                Particular.CONSIGNMENT, gross))))
                .isEqualTo("customer-accounts-credit G16h; 1=-24.00 4=-24.00 7=-120.00; nothing");
    }
}
