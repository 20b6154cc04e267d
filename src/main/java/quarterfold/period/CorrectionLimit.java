package quarterfold.period;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * Up to what net amount errors of closed returns may be put right on the return for the period in
 * which they are discovered: VAT Regulations 1995 reg 34(3), by the first day of that period. Since
 * 1 July 2008 the larger of a floor and a share of the turnover box, which has a cap.
 *
 * @param amount the limit
 * @param itself whether an amount of exactly the limit is within it
 * @param why how it was worked out, in words
 * @param authority the rows it rests on
 */
public record CorrectionLimit(Amount amount, boolean itself, String why, String authority) {

    /** A book that follows the words of the regulation at the floor itself. */
    private static final String OUTSIDE = "error-at-the-limit=separately";

    /**
     * The limit for a period of discovery; empty where the tables have none for its first day.
     *
     * @param choices the book's
     * @param figures the figures of the return for the period, by box id, without its corrections
     */
    static Optional<CorrectionLimit> of(
            Law law, Map<String, String> choices, LocalDate start, Map<String, Amount> figures) {
        return law.limit("error-correction-floor", start)
                .map(floor -> of(law, choices, start, figures, floor));
    }

    private static CorrectionLimit of(
            Law law,
            Map<String, String> choices,
            LocalDate start,
            Map<String, Amount> figures,
            Dated<Law.Limit> floor) {
        Amount least = floor.value().amount();
        Optional<Dated<Law.Limit>> percent = law.limit("error-correction-percent", start);
        Optional<Dated<Law.Limit>> cap = law.limit("error-correction-cap", start);
        Optional<Dated<String>> box = law.periodRuleOn("error-limit-turnover-box", start);
        if (percent.isEmpty() || cap.isEmpty() || box.isEmpty()) {
            return new CorrectionLimit(
                    least, true, least + ", whatever the turnover", floor.source());
        }
        Percent share = new Percent(percent.get().value().amount().decimal());
        Amount turnover = figures.getOrDefault(box.get().value(), Amount.ZERO);
        Amount part = turnover.signum() < 0 ? Amount.ZERO : turnover.portion(share);
        Amount most = cap.get().value().amount();
        Amount capped = part.compareTo(most) > 0 ? most : part;
        boolean atFloor = capped.compareTo(least) < 0;
        return new CorrectionLimit(
                atFloor ? least : capped,
                !atFloor || !law.choices().holds(OUTSIDE, choices),
                "the larger of %s and %s%% of box %s, which is %s of %s%s"
                        .formatted(
                                least,
                                share,
                                box.get().value(),
                                part,
                                turnover,
                                part.compareTo(most) > 0 ? ", at most " + most : ""),
                floor.source());
    }

    /** Whether a net amount, of either sign, is within the limit. */
    boolean allows(Amount net) {
        int over = net.abs().compareTo(amount);
        return itself ? over <= 0 : over < 0;
    }
}
