package quarterfold.treatment;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Profile;

/**
 * Under which names and VAT numbers channels charge their fees, as far as fee entries say: a
 * channel's invoices mostly come from another entity than its name suggests. All are small letters
 * and digits alone.
 */
public final class ChannelParties {

    private final Map<String, Set<String>> channels = new HashMap<>();

    ChannelParties() {}

    /** Learns from a fee who charges the fees of its channel. */
    void add(Profile fee) {
        if (isFee(fee.kind()) && !fee.channel().isEmpty()) {
            ofParty(fee)
                    .forEach(
                            name ->
                                    channels.computeIfAbsent(name, n -> new LinkedHashSet<>())
                                            .add(Plain.name(fee.channel())));
        }
    }

    /**
     * What the channel whose fees a document charges may be called: as the document says, or else
     * the names and numbers of its party, and the channels whose fees that party charges.
     */
    public Set<String> charging(Profile document) {
        if (!document.channel().isEmpty()) {
            return Set.of(Plain.name(document.channel()));
        }
        Set<String> names = ofParty(document);
        Set<String> all = new LinkedHashSet<>(names);
        names.forEach(name -> all.addAll(channels.getOrDefault(name, Set.of())));
        return all;
    }

    /** What a fee on a settlement calls its channel: by name, party or VAT number. */
    public static Set<String> taking(Profile line) {
        Set<String> names = ofParty(line);
        names.add(Plain.name(line.channel()));
        names.remove("");
        return names;
    }

    private static Set<String> ofParty(Profile profile) {
        Set<String> names = new LinkedHashSet<>();
        names.add(Plain.name(profile.party()));
        names.add(Plain.name(profile.partyVat()));
        names.remove("");
        return names;
    }

    static boolean isFee(Kind kind) {
        return kind == Kind.FEE || kind == Kind.FEE_REFUND;
    }
}
