package quarterfold.ledger;

import java.time.LocalDate;
import java.util.Optional;
import quarterfold.money.Amount;

/**
 * One taxable or money event as a file states it, before the ledger has given it a number.
 *
 * @param row the row of the source, from 1, as a person counts it in the file
 * @param taxPoint the date of supply in the book's zone
 * @param document the number printed on the invoice or certificate, or empty
 * @param order the channel's order, or empty
 * @param particulars the facts few lines state; mostly none
 * @param original the amounts as the file wrote them, where reading them meant converting; or empty
 * @param notes columns the layout does not name, as {@code column: value; …}; or empty
 */
public record Line(
        long row,
        LocalDate taxPoint,
        Profile profile,
        Item item,
        String document,
        String order,
        Amounts amounts,
        Optional<LocalDate> paid,
        Particulars particulars,
        String original,
        String notes) {

    /** A line that states no particular. */
    public Line(
            long row,
            LocalDate taxPoint,
            Profile profile,
            Item item,
            String document,
            String order,
            Amounts amounts,
            Optional<LocalDate> paid,
            String original,
            String notes) {
        this(
                row,
                taxPoint,
                profile,
                item,
                document,
                order,
                amounts,
                paid,
                Particulars.NONE,
                original,
                notes);
    }

    /** The money that moves, seen by the business: what comes in is positive. */
    public Amount signedMoney() {
        return amounts.money().times(profile.kind().direction());
    }

    /**
     * The same line as one of another kind: the money that moves is the same, so where the kinds'
     * money goes opposite ways the amounts turn. The money of a customs entry is its VAT.
     */
    Line as(Kind kind) {
        boolean turned = kind.direction() * profile.kind().direction() < 0;
        Amounts as = turned ? amounts.negated() : amounts;
        boolean alone = as.net().isEmpty() && (as.vat().isPresent() != as.gross().isPresent());
        if (alone && kind == Kind.IMPORT_VAT_PAID) {
            as = new Amounts(Optional.empty(), Optional.of(as.money()), Optional.empty());
        } else if (alone && profile.kind() == Kind.IMPORT_VAT_PAID) {
            as = Amounts.ofGross(as.money());
        }
        return worth(profile.of(kind), as, turned ? particulars.turned() : particulars);
    }

    /** The same line as it stands in another currency. */
    public Line worth(Profile otherProfile, Amounts otherAmounts, Particulars otherParticulars) {
        return new Line(
                row,
                taxPoint,
                otherProfile,
                item,
                document,
                order,
                otherAmounts,
                paid,
                otherParticulars,
                original,
                notes);
    }

    /** The same line with another tax point. */
    public Line at(LocalDate otherTaxPoint) {
        return new Line(
                row,
                otherTaxPoint,
                profile,
                item,
                document,
                order,
                amounts,
                paid,
                particulars,
                original,
                notes);
    }
}
