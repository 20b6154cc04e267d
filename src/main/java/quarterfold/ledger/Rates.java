package quarterfold.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.util.List;
import java.util.Optional;

/** The exchange rates of a ledger, as far as it sees them. */
public final class Rates {

    private final Path file;
    private final Connection connection;
    private final Horizon horizon;

    Rates(Path file, Connection connection, Horizon horizon) {
        this.file = file;
        this.connection = connection;
        this.horizon = horizon;
    }

    /** Every rate, in the order they came. */
    public List<HeldRate> all() {
        return seen(() -> RateTable.all(connection));
    }

    /** Every rate of a publisher for a currency, by its first day. */
    public List<HeldRate> of(Publisher publisher, String currency) {
        return seen(() -> RateTable.of(connection, publisher, currency));
    }

    /** Every rate that came with a source, in the order they came. */
    public List<HeldRate> of(Source source) {
        return seen(() -> RateTable.of(connection, source.id()));
    }

    /** The rate with this number. */
    public Optional<HeldRate> find(long id) {
        return Transaction.run(file, () -> RateTable.find(connection, id)).filter(horizon::sees);
    }

    /** The highest rate's number; 0 where none is held. */
    public long last() {
        long last = Transaction.run(file, () -> Sql.next(connection, "exchange_rate", "id")) - 1;
        return Math.min(horizon.lastRate(), last);
    }

    private List<HeldRate> seen(Transaction.Work<List<HeldRate>> work) {
        return Transaction.run(file, work).stream().filter(horizon::sees).toList();
    }
}
