package quarterfold.period;

import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import quarterfold.law.Law;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.SetAside;
import quarterfold.ledger.Settings;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.treatment.Treated;

/** The papers of a period that is still open, worked out from the ledger each time. */
record DraftPack(Settings settings, Law law, Ledger ledger, Returns returns, Period period)
        implements Pack {

    @Override
    public VatReturn vatReturn() {
        return returns.draft(period);
    }

    @Override
    public List<Source> sources() {
        return Returns.sourcesIn(ledger, period, settings.registeredFrom());
    }

    @Override
    public List<SetAside> setAside() {
        return sources().stream().flatMap(s -> ledger.setAside(s.id()).stream()).toList();
    }

    @Override
    public Map<String, Amount> otherRounding() {
        return returns.otherRounding(period);
    }

    @Override
    public void forEachTreated(Consumer<Treated> each) {
        returns.draft(period, each);
    }
}
