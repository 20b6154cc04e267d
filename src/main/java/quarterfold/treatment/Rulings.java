package quarterfold.treatment;

import java.util.List;
import quarterfold.ledger.Entry;

/** Rules on an occasion of an entry: finds the facts that differ from entry to entry. */
final class Rulings {

    private final Decider decider;
    private final RareFinder rare;
    private final Portions portions;
    private final EvidenceWeigher weigher;

    Rulings(Context context, Exchange exchange) {
        this.decider = new Decider(context.law(), context.settings());
        this.rare = new RareFinder(context);
        this.portions = new Portions(context);
        this.weigher = new EvidenceWeigher(context, exchange);
    }

    /** The facts that are the same for nearly every entry. */
    Rare rare(Entry entry, Occasion occasion, Answered answered) {
        return rare.of(entry, occasion, answered.decided());
    }

    /** The portions of an entry, one or more. */
    List<Portion> portions(Entry entry) {
        return portions.of(entry);
    }

    /** What the document behind an entry supports. */
    EvidenceWeigher.Weighed weigh(
            Exchange.Exchanged exchanged, Answered answered, Liability liability) {
        Entry entry = exchanged.entry();
        return weigher.weigh(
                answered.with(entry),
                exchanged,
                decider.evidence(entry.profile(), entry.taxPoint()),
                liability);
    }

    /**
     * The ruling on a portion of an entry.
     *
     * @param claims what its document supports, a word of {@link quarterfold.law.Fact#CLAIMS}
     */
    Ruling of(Entry entry, Portion portion, Rare ofTheEntry, Answered answered, String claims) {
        Rare facts =
                portions.measured(entry, portion.liability())
                        .map(ofTheEntry::measuring)
                        .orElse(ofTheEntry);
        // a decided treatment is the supply's: what comes after goes by the table
        String decided = facts.cause() == Cause.SUPPLY ? answered.treatment() : "";
        String printed =
                portion.amounts().vat().map(v -> v.isZero() ? "nil" : "printed").orElse("unstated");
        return decider.decide(
                entry.profile(),
                entry.taxPoint(),
                new Decider.Varying(portion.liability(), printed, claims, facts, decided));
    }
}
