package quarterfold.period;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import quarterfold.law.Law;
import quarterfold.ledger.Attachment;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.SetAside;
import quarterfold.ledger.Settings;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.treatment.Treated;

/**
 * The papers of a period that is still open: its return worked out once from the ledger, its
 * entries each time they are asked for.
 */
final class DraftPack implements Pack {

    private final Settings settings;
    private final Law law;
    private final Ledger ledger;
    private final Returns returns;
    private final Period period;
    private Optional<VatReturn> vatReturn = Optional.empty();

    DraftPack(Settings settings, Law law, Ledger ledger, Returns returns, Period period) {
        this.settings = settings;
        this.law = law;
        this.ledger = ledger;
        this.returns = returns;
        this.period = period;
    }

    @Override
    public Settings settings() {
        return settings;
    }

    @Override
    public Law law() {
        return law;
    }

    @Override
    public VatReturn vatReturn() {
        if (vatReturn.isEmpty()) {
            vatReturn = Optional.of(returns.draft(period));
        }
        return vatReturn.get();
    }

    @Override
    public List<Source> sources() {
        return Returns.sourcesIn(ledger, vatReturn(), settings.registeredFrom());
    }

    @Override
    public Optional<Source> source(long id) {
        return ledger.sources().stream().filter(s -> s.id() == id).findFirst();
    }

    @Override
    public List<SetAside> setAside() {
        return sources().stream().flatMap(s -> ledger.setAside(s.id()).stream()).toList();
    }

    @Override
    public List<Attachment> attachments() {
        return sources().stream().flatMap(s -> ledger.attachments().of(s).stream()).toList();
    }

    @Override
    public Map<String, Amount> otherRounding() {
        return returns.otherRounding(period);
    }

    @Override
    public void forEachTreated(Consumer<Treated> each) {
        returns.forEachTreated(period, each);
    }
}
