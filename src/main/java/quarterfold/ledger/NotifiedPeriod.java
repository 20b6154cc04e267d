package quarterfold.ledger;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A return period the tax authority notified, where it is none that the period ends give: a long
 * first one, one that ends within a month, a short last one (VAT Regulations 1995 reg 25(1)(c)).
 *
 * @param from first day
 * @param to last day
 * @param due the day the return is due, where the notice says
 */
public record NotifiedPeriod(LocalDate from, LocalDate to, Optional<LocalDate> due) {}
