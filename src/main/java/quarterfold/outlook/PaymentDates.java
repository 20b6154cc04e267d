package quarterfold.outlook;

import java.time.LocalDate;
import java.util.Optional;
import quarterfold.ledger.PaymentMethod;

/**
 * When a payment must be made by one method.
 *
 * @param arrivesBy the last day it may be in the tax authority's account
 * @param actBy the last day to send it, or to set a direct debit up
 * @param otherActBy that day as another official text has it, where it is later
 * @param taken the day a direct debit is collected, where a rule gives it
 */
public record PaymentDates(
        PaymentMethod method,
        LocalDate arrivesBy,
        LocalDate actBy,
        Optional<LocalDate> otherActBy,
        Optional<LocalDate> taken) {}
