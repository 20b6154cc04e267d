package quarterfold.treatment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * Adds up the VAT on the goods held when the registration ended: whether it is due at all goes by
 * all of them together (VATA 1994 Sch 4 para 8(1)(c) as amended by SI 2000/266).
 */
final class StockOnHand {

    private final Law law;
    private final Settings settings;
    private final Liabilities liabilities;
    private final Answers answers;
    private final Exchange exchange;

    StockOnHand(
            Law law,
            Settings settings,
            Liabilities liabilities,
            Answers answers,
            Exchange exchange) {
        this.law = law;
        this.settings = settings;
        this.liabilities = liabilities;
        this.answers = answers;
        this.exchange = exchange;
    }

    /** The VAT on all goods entered on the last day of the registration. */
    Amount vat(Together.Scan scan) {
        List<Amount> vat = new ArrayList<>();
        scan.forEach(
                entry -> {
                    if (entry.kind() == Kind.STOCK_ON_HAND
                            && settings.registeredTo().equals(Optional.of(entry.taxPoint()))) {
                        Answered answered = Answered.of(entry, answers);
                        if (!answered.decided().equals("duplicate")) {
                            vat.add(vat(exchange.home(answered.entry())));
                        }
                    }
                });
        return vat.stream().reduce(Amount.ZERO, Amount::plus);
    }

    private Amount vat(Entry entry) {
        Liability liability = liabilities.of(entry, Baskets.NONE).get(0).liability();
        Percent rate =
                liability
                        .percent()
                        .or(
                                () ->
                                        law.rates()
                                                .on(liability.category(), entry.taxPoint())
                                                .map(Dated::value))
                        .orElse(Percent.ZERO);
        return Figures.inside(entry.amounts(), rate, Optional.empty()).vat();
    }
}
