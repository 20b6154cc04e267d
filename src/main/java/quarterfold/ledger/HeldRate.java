package quarterfold.ledger;

/**
 * An exchange rate the ledger holds. Never changed and never removed.
 *
 * @param id 1, 2, 3 … over the whole ledger, in the order they came
 * @param source the {@link Source} it came from
 */
public record HeldRate(long id, long source, PublishedRate rate) {}
