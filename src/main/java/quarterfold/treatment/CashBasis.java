package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Particulars;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;

/**
 * Counts the supplies made and received under the cash accounting scheme when they are paid (VAT
 * Regulations 1995 regs 56 to 65). What is unpaid when the scheme is left counts in the last period
 * under it, or as paid up to six months later by the book's choice (reg 61 as substituted by SI
 * 2004/767 reg 9; HMRC manual VCAS6250). A supply belongs to the scheme its tax point is in, so a
 * change of scheme neither loses nor repeats any.
 */
final class CashBasis {

    private static final String LATER = "leaving-cash-accounting=six-months";

    private final Law law;
    private final Settings settings;
    private final boolean ever;

    CashBasis(Law law, Settings settings) {
        this.law = law;
        this.settings = settings;
        this.ever = settings.schemes().from().containsValue(Schemes.CASH);
    }

    /** Whether the book was ever on the scheme. */
    boolean isEver() {
        return ever;
    }

    /** Whether a supply of the day is under the scheme, by its terms: reg 58(2)(e) and (f). */
    boolean covers(Entry entry, LocalDate taxPoint) {
        if (!settings.schemeOn(taxPoint).equals(Schemes.CASH)) {
            return false;
        }
        Particulars stated = entry.line().particulars();
        LocalDate invoiced = stated.day(Particular.INVOICED).orElse(taxPoint);
        boolean longTerms =
                stated.day(Particular.DUE)
                        .filter(
                                due ->
                                        law.limit("cash-accounting-terms", taxPoint)
                                                .map(Dated::value)
                                                .filter(l -> due.isAfter(l.after(invoiced)))
                                                .isPresent())
                        .isPresent();
        boolean inAdvance = stated.day(Particular.SENT).filter(invoiced::isBefore).isPresent();
        return !longTerms && !inAdvance;
    }

    /** How one part of a supply under the scheme counts: by payment, and what is unpaid. */
    List<Counted> count(Entry entry, TaxPoint point, Paid known) {
        Paid paid = known.parts().isEmpty() ? unstated(entry, known) : known;
        if (paid.all().equals(Share.WHOLE)) {
            return List.of(new Counted(point.day(), point.day(), Cause.SUPPLY, Share.WHOLE));
        }
        Share whole = point.share();
        Optional<LocalDate> until = until(point.day());
        Map<LocalDate, Share> byDay = new TreeMap<>();
        Amount reached = whole.before();
        for (Paid.Part part : paid.parts()) {
            Share share = whole.between(part.share().before(), part.share().end());
            if (!share.part().isZero()) {
                LocalDate day = until.filter(part.day()::isAfter).orElse(part.day());
                byDay.merge(day, share, Share::joined);
                reached = share.end();
            }
        }
        Share unpaid = whole.between(reached, whole.end());
        if (until.isPresent() && !unpaid.part().isZero()) {
            byDay.merge(until.get(), unpaid, Share::joined);
        }
        List<Counted> counted = new ArrayList<>();
        awaiting(point, paid).ifPresent(counted::add);
        byDay.forEach(
                (day, share) -> counted.add(new Counted(day, point.day(), Cause.SUPPLY, share)));
        return counted;
    }

    /** What was not paid by the day of the supply, so that its own period shows it. */
    private static Optional<Counted> awaiting(TaxPoint point, Paid paid) {
        Share later = point.share().between(paid.by(point.day()), point.share().end());
        return later.part().isZero()
                ? Optional.empty()
                : Optional.of(new Counted(point.day(), point.day(), Cause.AWAITING_PAYMENT, later));
    }

    /** A sale without a document is paid when it is made, and money given back when it is given. */
    private static Paid unstated(Entry entry, Paid known) {
        boolean onTheSpot =
                entry.kind().side() == Kind.Side.SALES
                        && (entry.line().document().isEmpty()
                                || entry.kind() == Kind.SALE_REFUND
                                || entry.kind() == Kind.DELIVERY_REFUND);
        boolean givenBack =
                entry.kind() == Kind.PURCHASE_CREDIT
                        || entry.kind() == Kind.EXPENSE_CREDIT
                        || entry.kind() == Kind.FEE_REFUND;
        return onTheSpot || givenBack ? Paid.on(entry.taxPoint(), known.whole()) : known;
    }

    /** The last day on which a supply of the scheme can count, where the scheme was left. */
    private Optional<LocalDate> until(LocalDate taxPoint) {
        return left(taxPoint).map(this::lastDay);
    }

    /** The first day after the tax point that is under another scheme. */
    private Optional<LocalDate> left(LocalDate taxPoint) {
        return settings.schemes().changes().stream()
                .filter(day -> day.isAfter(taxPoint))
                .filter(day -> !settings.schemeOn(day).equals(Schemes.CASH))
                .findFirst();
    }

    private LocalDate lastDay(LocalDate left) {
        LocalDate after =
                law.choices().holds(LATER, settings.choices())
                        ? law.limit("cash-accounting-leave-time", left)
                                .map(l -> l.value().after(left))
                                .orElse(left)
                        : left;
        return after.minusDays(1);
    }

    /** The days on which what is unpaid of an earlier scheme falls due, rising. */
    List<LocalDate> reckonings() {
        return settings.schemes().changes().stream()
                .filter(day -> !settings.schemeOn(day).equals(Schemes.CASH))
                .filter(day -> settings.schemeOn(day.minusDays(1)).equals(Schemes.CASH))
                .map(this::lastDay)
                .toList();
    }
}
