package quarterfold.period;

import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.money.Amount;
import quarterfold.treatment.Treated;

/**
 * Watches for a channel that takes fees off its settlements while no invoice for its fees is
 * entered: their VAT, or the reverse charge, would be missed.
 */
final class FeeWatch {

    private final Map<String, Amount> onSettlements = new TreeMap<>();
    private final Set<String> invoiced = new HashSet<>();

    void see(Treated treated) {
        Entry entry = treated.entry();
        if (entry.kind() != Kind.FEE && entry.kind() != Kind.FEE_REFUND) {
            return;
        }
        String channel = entry.profile().channel();
        if (!entry.profile().settlement().isEmpty()
                && entry.profile().evidence() == Evidence.UNSTATED) {
            onSettlements.merge(
                    channel, treated.money().times(-entry.kind().direction()), Amount::plus);
        } else {
            invoiced.add(channel);
        }
    }

    /** The fees taken by each channel of which no fee document is entered. */
    Map<String, Amount> withoutInvoice() {
        Map<String, Amount> without = new TreeMap<>(onSettlements);
        without.keySet().removeAll(invoiced);
        return without;
    }
}
