package quarterfold.treatment;

import java.time.LocalDate;
import java.util.Optional;

/**
 * What the rest of the ledger and the calendar say of an entry: gifts to the same person, what its
 * goods cost, the return period of its day, the exchange rates held.
 */
public record Related(Gifts gifts, StockBook stock, Periods periods, Exchange.Rates rates) {

    /** Nothing is given away, no goods are on the margin scheme, and no period or rate is known. */
    public static final Related NONE =
            new Related(Gifts.NONE, StockBook.NONE, day -> Optional.empty(), Exchange.Rates.NONE);

    /** The return period a day falls in, where there is one. */
    public interface Periods {
        Optional<Span> of(LocalDate day);
    }

    /** First and last day of a return period. */
    public record Span(LocalDate start, LocalDate end) {}
}
