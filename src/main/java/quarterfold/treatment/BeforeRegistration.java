package quarterfold.treatment;

import java.time.LocalDate;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * Purchases and imports from before the registration. Their VAT is treated as if it were input tax
 * of the first return, as far as the goods were still held when the registration began, and not
 * reduced for use before it: VAT Regulations 1995 reg 111; HMRC manual VIT32000. Sales from before
 * it are in no return.
 */
public final class BeforeRegistration {

    private final Settings settings;
    private final Answers answers;

    public BeforeRegistration(Settings settings, Answers answers) {
        this.settings = settings;
        this.answers = answers;
    }

    /** Whether the entry is one whose VAT the first return may take up. */
    public boolean isClaimOf(Entry entry) {
        return entry.taxPoint().isBefore(settings.registeredFrom()) && isBought(entry);
    }

    /** Whether the entry is a purchase or an import with a document of its own. */
    public static boolean isBought(Entry entry) {
        return SupplierDocuments.isWeighed(entry);
    }

    /**
     * The share still held, on the first day of the registration or, where the document came later,
     * on the day it did.
     */
    Occasion occasion(Entry entry) {
        Entry known = Answered.of(entry, answers).entry();
        LocalDate first = settings.registeredFrom();
        LocalDate day =
                known.line()
                        .particulars()
                        .day(Particular.HELD)
                        .filter(held -> held.isAfter(first))
                        .orElse(first);
        return new Occasion(entry, day, Cause.SUPPLY, share(known));
    }

    private static Share share(Entry known) {
        Amount money = known.amounts().money();
        return known.line()
                .particulars()
                .share(Particular.ON_HAND)
                .filter(s -> !s.isZero() && !s.equals(Percent.HUNDRED) && !money.isZero())
                .map(s -> new Share(Amount.ZERO, money.portion(s), money))
                .orElse(Share.WHOLE);
    }
}
