package quarterfold.period;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.ClosedEntry;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.treatment.DoubleClaims;

/** What a ledger knows of entries: what its closed returns claim, and how their files were read. */
final class KnownEntries implements DoubleClaims.Known {
    private final Ledger ledger;
    private final Map<Long, String> layouts = new HashMap<>();

    KnownEntries(Ledger ledger) {
        this.ledger = ledger;
        for (Source source : ledger.sources()) {
            layouts.put(source.id(), source.layout());
        }
    }

    /**
     * What returns have claimed of the entry, in the period of the first that took it up, where the
     * claim stands.
     */
    @Override
    public Optional<DoubleClaims.Claim> claimed(long entry) {
        List<ClosedEntry> frozen = ledger.closedEntry(entry);
        Amount claim = frozen.stream().map(ClosedEntry::claim).reduce(Amount.ZERO, Amount::plus);
        return claim.signum() > 0
                ? frozen.stream()
                        .map(first -> new DoubleClaims.Claim(first.closedIn(), claim))
                        .findFirst()
                : Optional.empty();
    }

    @Override
    public String layout(long source) {
        return layouts.getOrDefault(source, "");
    }
}
