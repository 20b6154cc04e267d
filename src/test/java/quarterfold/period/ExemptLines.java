package quarterfold.period;

import java.time.LocalDate;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/** What a business with exempt supplies sells and buys. */
final class ExemptLines {

    /** The standard rate went from 17.5 to 20 per cent: rates.csv. */
    private static final LocalDate RISE = LocalDate.of(2011, 1, 4);

    static SampleLine taxable(String day, String net) {
        return SampleLine.of("sale").on(day).net(net).rate("0");
    }

    static SampleLine exempt(String day, String net) {
        return SampleLine.of("sale").on(day).net(net).rate("exempt");
    }

    /** A purchase with VAT of so much; an empty use is not stated. */
    static SampleLine bought(String day, String vat, String use) {
        Percent rate = Percent.of(LocalDate.parse(day).isBefore(RISE) ? "17.5" : "20");
        String net = Amount.of(vat).netOfVat(rate).toString();
        SampleLine line =
                SampleLine.of("purchase")
                        .on(day)
                        .printed(net, vat)
                        .category("stock")
                        .party("Example supplier", "GB", "GB101747696")
                        .evidence("invoice");
        return use.isEmpty() ? line : line.particular(Particular.USE, use);
    }

    private ExemptLines() {}
}
