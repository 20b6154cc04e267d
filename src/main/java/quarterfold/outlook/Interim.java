package quarterfold.outlook;

import java.time.LocalDate;
import quarterfold.money.Amount;

/**
 * A payment within a period: an instalment of the year, or a payment on account.
 *
 * @param due the last working day it may arrive
 */
public record Interim(LocalDate due, Amount amount) {}
