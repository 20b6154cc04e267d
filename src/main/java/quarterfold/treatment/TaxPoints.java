package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Particulars;

/**
 * Finds the tax points of a supply that states when it was sent, invoiced or adopted: VATA 1994
 * s.6. The basic tax point is the day of removal or performance (s.6(2) and (3)); goods on approval
 * have theirs when they are adopted, or twelve months after removal (s.6(2)(c)). An invoice or a
 * payment before it moves what it covers to its own day (s.6(4)); an invoice within fourteen days
 * after it moves the rest (s.6(5)), never what was paid or invoiced before.
 */
final class TaxPoints {

    private static final Set<Kind> SUPPLIES =
            EnumSet.of(
                    Kind.SALE,
                    Kind.DELIVERY,
                    Kind.DISCOUNT,
                    Kind.DISCOUNT_REVERSED,
                    Kind.PURCHASE,
                    Kind.EXPENSE,
                    Kind.FEE);

    private final Law law;

    TaxPoints(Law law) {
        this.law = law;
    }

    /** The tax points, rising by day; where nothing is stated, the date as entered. */
    List<TaxPoint> of(Entry entry, Paid paid) {
        Particulars stated = entry.line().particulars();
        Optional<LocalDate> sent = stated.day(Particular.SENT);
        Optional<LocalDate> invoiced = stated.day(Particular.INVOICED);
        boolean approval =
                stated.day(Particular.ADOPTED).isPresent() || stated.isYes(Particular.APPROVAL);
        if (!SUPPLIES.contains(entry.kind())
                || (sent.isEmpty() && invoiced.isEmpty() && !approval)) {
            return List.of(new TaxPoint(entry.taxPoint(), paid.all()));
        }
        LocalDate removed = sent.orElse(entry.taxPoint());
        LocalDate basic = approval ? adopted(removed, stated) : removed;
        LocalDate rest = invoiced.filter(day -> counts(day, basic)).orElse(basic);
        LocalDate until = rest.isBefore(basic) ? rest : basic;
        List<TaxPoint> points = new ArrayList<>();
        Share all = paid.all();
        if (!approval && !all.equals(Share.WHOLE)) { // s.6(4) leaves payments for approval out
            for (Paid.Part part : paid.parts()) {
                if (part.day().isBefore(until)) {
                    points.add(new TaxPoint(part.day(), part.share()));
                }
            }
        }
        Share left =
                points.isEmpty()
                        ? all
                        : all.between(points.get(points.size() - 1).share().end(), all.end());
        if (points.isEmpty() || !left.part().isZero()) {
            points.add(new TaxPoint(rest, left));
        }
        return points;
    }

    private LocalDate adopted(LocalDate removed, Particulars stated) {
        Optional<LocalDate> adopted = stated.day(Particular.ADOPTED);
        Optional<LocalDate> latest = after("goods-on-approval", removed);
        return latest.filter(last -> adopted.filter(day -> !day.isAfter(last)).isEmpty())
                .or(() -> adopted)
                .orElse(removed);
    }

    /** Whether an invoice of the day moves what was not paid before it. */
    private boolean counts(LocalDate invoiced, LocalDate basic) {
        return invoiced.isBefore(basic)
                || after("invoice-tax-point", basic)
                        .filter(last -> !invoiced.isAfter(last))
                        .isPresent();
    }

    private Optional<LocalDate> after(String limit, LocalDate day) {
        return law.limit(limit, day).map(Dated::value).map(l -> l.after(day));
    }
}
