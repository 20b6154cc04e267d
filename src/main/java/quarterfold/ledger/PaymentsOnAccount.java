package quarterfold.ledger;

import java.time.LocalDate;
import quarterfold.money.Amount;

/**
 * Interim payments in each quarter, which the tax authority notified (VAT Notice 700/60).
 *
 * @param from first day of the first quarter they are paid in
 * @param yearlyVat the yearly VAT the notice goes by
 */
public record PaymentsOnAccount(LocalDate from, Amount yearlyVat) {}
