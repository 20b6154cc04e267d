package quarterfold.period;

import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Profile;
import quarterfold.money.Amount;
import quarterfold.treatment.ChannelParties;
import quarterfold.treatment.Context;
import quarterfold.treatment.DoubleClaims;
import quarterfold.treatment.Treated;

/**
 * Watches for a channel that takes fees off its settlements while no invoice for its fees is
 * entered: their VAT, or the reverse charge, would be missed. An invoice of the channel that is
 * held and has no category counts whatever kind it is entered as, since an e-invoice does not say
 * what it is for.
 */
final class FeeWatch {

    /** What a settlement says of who takes its fees. */
    private record Taker(String channel, String party, String partyVat) {}

    private final Optional<ChannelParties> parties;
    private final Map<String, Amount> onSettlements = new TreeMap<>();
    private final Map<Taker, Profile> takers = new HashMap<>();
    private final Set<String> invoiced = new HashSet<>();

    FeeWatch(Context context) {
        parties = context.together().claims().map(DoubleClaims::channels);
    }

    void see(Treated treated) {
        Entry entry = treated.entry();
        if (entry.kind().side() != Kind.Side.PURCHASES) {
            return;
        }
        Profile profile = entry.profile();
        boolean fee = entry.kind() == Kind.FEE || entry.kind() == Kind.FEE_REFUND;
        if (!fee) {
            if (mayBeForFees(profile)) {
                parties.ifPresent(p -> invoiced.addAll(p.charging(profile)));
            }
            return;
        }
        if (profile.settlement().isEmpty() || profile.evidence() != Evidence.UNSTATED) {
            parties.ifPresent(p -> invoiced.addAll(orNameless(p.charging(profile))));
            return;
        }
        onSettlements.merge(
                profile.channel(), treated.money().times(-entry.kind().direction()), Amount::plus);
        takers.putIfAbsent(
                new Taker(profile.channel(), profile.party(), profile.partyVat()), profile);
    }

    /** A purchase is no invoice for fees where it says what else it is, or is not held. */
    private static boolean mayBeForFees(Profile profile) {
        return profile.settlement().isEmpty()
                && profile.category().isEmpty()
                && profile.evidence() != Evidence.UNSTATED
                && profile.evidence() != Evidence.MISSING;
    }

    /** Fees of nobody are met by a fee document of nobody. */
    private static Set<String> orNameless(Set<String> names) {
        return names.isEmpty() ? Set.of("") : names;
    }

    /** The fees taken by each channel of which no fee document is entered. */
    Map<String, Amount> withoutInvoice() {
        Map<String, Amount> without = new TreeMap<>(onSettlements);
        takers.forEach(
                (taker, profile) -> {
                    if (!Collections.disjoint(
                            orNameless(ChannelParties.taking(profile)), invoiced)) {
                        without.remove(taker.channel());
                    }
                });
        return without;
    }
}
