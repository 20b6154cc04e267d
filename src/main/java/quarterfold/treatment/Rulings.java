package quarterfold.treatment;

import java.util.List;
import java.util.Optional;
import quarterfold.law.EvidenceRule;
import quarterfold.ledger.Entry;
import quarterfold.money.Amount;

/** Rules on an occasion of an entry: finds the facts that differ from entry to entry. */
final class Rulings {

    private final Decider decider;
    private final RareFinder rare;
    private final Portions portions;

    Rulings(Context context) {
        this.decider = new Decider(context.law(), context.settings());
        this.rare = new RareFinder(context.law(), context.settings());
        this.portions = new Portions(context);
    }

    /** The facts that are the same for nearly every entry. */
    Rare rare(Entry entry, Occasion occasion, Answered answered) {
        return rare.of(entry, occasion, answered.decided());
    }

    /** The portions of an entry, one or more. */
    List<Portion> portions(Entry entry) {
        return portions.of(entry);
    }

    /** The ruling on a portion of an entry. */
    Ruling of(Entry entry, Portion portion, Rare ofTheEntry, Answered answered) {
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
                new Decider.Varying(
                        portion.liability(),
                        printed,
                        claims(entry, portion.liability()),
                        facts,
                        decided));
    }

    /** What the entry's evidence supports by its amount and category. */
    private String claims(Entry entry, Liability liability) {
        Optional<EvidenceRule> rule = decider.evidence(entry.profile(), entry.taxPoint());
        if (rule.isEmpty() || !rule.get().claims()) {
            return "no";
        }
        List<String> categories = rule.get().onlyCategories();
        if (!categories.isEmpty() && !categories.contains(entry.profile().category())) {
            return "not-this-category";
        }
        boolean over =
                rule.get()
                        .upTo()
                        .filter(limit -> price(entry, liability).abs().compareTo(limit) > 0)
                        .isPresent();
        return over ? "over-limit" : "yes";
    }

    private static Amount price(Entry entry, Liability liability) {
        return Figures.price(entry.amounts(), liability.percent());
    }
}
