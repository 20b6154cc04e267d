package quarterfold.ledger;

import java.time.LocalDate;
import java.time.Month;
import java.util.List;
import java.util.Optional;
import quarterfold.money.Percent;

/**
 * What settings say of the return periods.
 *
 * @param registeredFrom first day of the registration
 * @param registeredTo last day of the registration, where it was cancelled
 * @param ends the months periods end in, rising
 * @param notified periods as the tax authority notified them, rising, apart from each other, each
 *     named by another month
 * @param annual the annual accounting scheme, where it is used
 * @param onAccount payments on account, where they are due
 * @param partialExemptionYearEnds the month the tax year for partial exemption ends in, where it is
 *     not the one VAT Regulations 1995 reg 99 gives
 * @param partialExemptionLastYear the share of input tax for taxable and exempt supplies alike that
 *     was deducted over the tax year before the first the book holds, where it was partly exempt
 */
public record Periods(
        LocalDate registeredFrom,
        Optional<LocalDate> registeredTo,
        List<Month> ends,
        List<NotifiedPeriod> notified,
        Optional<AnnualAccounting> annual,
        Optional<PaymentsOnAccount> onAccount,
        Optional<Month> partialExemptionYearEnds,
        Optional<Percent> partialExemptionLastYear) {

    public Periods {
        ends = List.copyOf(ends);
        notified = List.copyOf(notified);
    }

    /** A business that says nothing of an earlier year. */
    public Periods(
            LocalDate registeredFrom,
            Optional<LocalDate> registeredTo,
            List<Month> ends,
            List<NotifiedPeriod> notified,
            Optional<AnnualAccounting> annual,
            Optional<PaymentsOnAccount> onAccount,
            Optional<Month> partialExemptionYearEnds) {
        this(
                registeredFrom,
                registeredTo,
                ends,
                notified,
                annual,
                onAccount,
                partialExemptionYearEnds,
                Optional.empty());
    }

    /** Periods that end in the months, from the registration on; nothing was notified. */
    public static Periods of(LocalDate registeredFrom, List<Month> ends) {
        return new Periods(
                registeredFrom,
                Optional.empty(),
                ends,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }
}
