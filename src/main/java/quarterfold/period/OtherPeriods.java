package quarterfold.period;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import quarterfold.ledger.Ledger;
import quarterfold.treatment.Treated;

/** The book's other periods, read from its ledger. */
record OtherPeriods(Ledger ledger, ExemptTrade exemptTrade, Open open) implements Basis.Others {

    /** Treats the entries of a period that is open. */
    interface Open {
        void forEachTreated(Period period, Consumer<Treated> each);
    }

    @Override
    public void forEachTreated(Period period, Consumer<Treated> each) {
        ledger.close(period.name())
                .ifPresentOrElse(
                        close -> new ClosedPack(ledger, close).forEachTreated(each),
                        () -> open.forEachTreated(period, each));
    }

    @Override
    public Optional<List<Adjustment>> taken(Period period) {
        return ledger.close(period.name())
                .map(close -> close.adjustments().stream().map(Adjustment::of).toList());
    }

    @Override
    public boolean mayBePartlyExempt() {
        return exemptTrade.mayBe();
    }
}
