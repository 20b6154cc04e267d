package quarterfold.outlook;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import quarterfold.law.Dated;
import quarterfold.money.Amount;
import quarterfold.period.Period;
import quarterfold.period.VatReturn;

/**
 * What a period asks of the business, and when.
 *
 * @param status whether the figures are a draft or closed
 * @param interims payments within the period: instalments, or payments on account
 * @param payments how and when what is left is paid, the book's own method first
 * @param owed what is left to pay with the return; zero where nothing is
 * @param lastDay the last day of payment, after which it is late
 * @param late what paying it late would cost, day by day; none where nothing is owed
 * @param newestRate the newest rate of interest in the tables where {@code late} uses it: a later
 *     one may be missing
 * @param points what sending the return late would do; empty for a period before points began
 */
public record Deadline(
        Period period,
        VatReturn.Status status,
        List<Interim> interims,
        List<PaymentDates> payments,
        Amount owed,
        LocalDate lastDay,
        List<Late> late,
        Optional<Dated<String>> newestRate,
        Optional<Points> points) {

    /**
     * The cost of paying all that is owed on a late day.
     *
     * @param number 1 is the day after the due day
     * @param penalty empty where the period began before the tables' penalties
     * @param interest empty where the tables have no rate for one of the days
     */
    public record Late(
            long number, LocalDate day, Optional<Amount> penalty, Optional<Amount> interest) {}

    /**
     * What a late return does.
     *
     * @param before points before it
     * @param after points after it
     * @param threshold points at which a late return costs money
     * @param penalty what it costs
     * @param expires the day a point below the threshold is gone
     * @param clearFrom first day of the months in which every return must be on time, at the
     *     threshold
     * @param clearTo last day of them
     * @param backMonths months back in which every return must be in as well
     * @param exempt whether the period is a first, last or notified one, of which some get no point
     */
    public record Points(
            Frequency frequency,
            int before,
            int after,
            int threshold,
            Amount penalty,
            LocalDate expires,
            LocalDate clearFrom,
            LocalDate clearTo,
            int backMonths,
            boolean exempt) {

        public boolean isAtThreshold() {
            return after >= threshold;
        }
    }
}
