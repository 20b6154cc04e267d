package quarterfold.treatment;

import java.util.List;
import quarterfold.ledger.Entry;

/** Rules on an occasion of an entry: finds the facts that differ from entry to entry. */
final class Rulings {

    private final Decider decider;
    private final RareFinder rare;
    private final Portions portions;
    private final EvidenceWeigher weigher;
    private final Exchange exchange;

    Rulings(Context context, Exchange exchange) {
        this.decider = new Decider(context.law(), context.settings());
        this.rare = new RareFinder(context);
        this.portions = new Portions(context);
        this.weigher = new EvidenceWeigher(context, exchange);
        this.exchange = exchange;
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
     * @param weighed what its document supports
     */
    Ruling of(
            Entry entry,
            Portion portion,
            Rare ofTheEntry,
            Answered answered,
            EvidenceWeigher.Weighed weighed) {
        Rare facts = measured(entry, portion, ofTheEntry);
        // a decided treatment is the supply's: what comes after goes by the table, and so does an
        // amount in another currency, since a treatment does not make it one in the return's
        boolean mayBeDecided = facts.cause() == Cause.SUPPLY && exchange.isHome(entry);
        return decider.decide(
                entry.profile(),
                entry.taxPoint(),
                new Decider.Varying(
                        portion.liability(),
                        printed(portion),
                        answered.treatment().isEmpty() ? weighed.claims() : weighed.unlessAgain(),
                        facts,
                        mayBeDecided ? answered.treatment() : ""));
    }

    /** The treatment the tables give the portion where its document supports this. */
    String treatment(Entry entry, Portion portion, Rare ofTheEntry, String claims) {
        return decider.decide(
                        exchange.home(entry.profile()),
                        entry.taxPoint(),
                        new Decider.Varying(
                                portion.liability(),
                                printed(portion),
                                claims,
                                measured(entry, portion, ofTheEntry),
                                ""))
                .row()
                .treatment();
    }

    private Rare measured(Entry entry, Portion portion, Rare ofTheEntry) {
        return portions.measured(entry, portion.liability())
                .map(ofTheEntry::measuring)
                .orElse(ofTheEntry);
    }

    private static String printed(Portion portion) {
        return portion.amounts().vat().map(v -> v.isZero() ? "nil" : "printed").orElse("unstated");
    }
}
