package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quarterfold.law.Dated;
import quarterfold.law.Law;

/**
 * What happens of a supply that is not paid in full within six months of the later of the supply
 * and the day payment was due: input tax on what is unpaid goes back (VATA 1994 s.26A, VAT
 * Regulations 1995 regs 172F to 172H) and comes again with each later payment (reg 172I); for a
 * sale, relief may be claimed (VATA 1994 s.36, VAT Notice 700/18).
 */
final class Unpaid {

    private final Law law;

    Unpaid(Law law) {
        this.law = law;
    }

    /**
     * The day the time is up with something unpaid, and each later payment.
     *
     * @param limit the name of the time in {@code limits.csv}
     */
    List<Counted> after(String limit, Counted last, LocalDate due, Paid paid) {
        LocalDate supplied = last.taxPoint();
        LocalDate from = due.isAfter(supplied) ? due : supplied;
        Optional<LocalDate> end =
                law.limit(limit, supplied).map(Dated::value).map(l -> l.after(from));
        Share all = paid.all();
        if (end.isEmpty() || all.part().signum() <= 0) {
            return List.of();
        }
        Share unpaid = all.between(paid.by(end.get()), all.end());
        if (unpaid.part().isZero()) {
            return List.of();
        }
        LocalDate day = last.day().isAfter(end.get()) ? last.day() : end.get();
        List<Counted> counted = new ArrayList<>();
        counted.add(new Counted(day, supplied, Cause.UNPAID, unpaid));
        for (Paid.Part part : paid.parts()) {
            if (part.day().isAfter(end.get())) {
                LocalDate again = part.day().isAfter(day) ? part.day() : day;
                counted.add(new Counted(again, supplied, Cause.PAID_AFTER_ALL, part.share()));
            }
        }
        return counted;
    }
}
