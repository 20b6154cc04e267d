package quarterfold.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.time.YearMonth;

/**
 * One period being closed: one transaction. {@link #close} without {@link #commit} leaves the
 * ledger as it was. For one thread at a time.
 */
public final class CloseWriter implements AutoCloseable {
    private static final int BATCH = 1_000;

    private final Connection connection;
    private final Transaction transaction;
    private final YearMonth period;
    private final long first;
    private final PreparedStatement insert;
    private final Interned<RulingTable.Ruling> rulings;
    private long entries;
    private int corrections;

    CloseWriter(Connection connection, Transaction transaction, YearMonth period, long first) {
        this.connection = connection;
        this.transaction = transaction;
        this.period = period;
        this.first = first;
        this.insert =
                transaction.run(
                        () ->
                                connection.prepareStatement(
                                        "insert into closed_entry (id, number, day, cause, ruling,"
                                                + " net, vat, claim, boxes, evidence, exchange)"
                                                + " values (?, ?, ?, ?, ?, ?, ?, ?, ?,"
                                                + " nullif(?, ''), nullif(?, ''))"));
        this.rulings =
                transaction.run(() -> new Interned<>(connection, "ruling", RulingTable.TEXTS));
    }

    /** Freezes how VAT applied to an occasion of an entry, as of this close. */
    public void add(ClosedEntry closed) {
        transaction.step(
                () -> {
                    insert.setLong(1, first + entries);
                    insert.setLong(2, closed.number());
                    insert.setLong(3, closed.day().toEpochDay());
                    insert.setString(4, closed.cause());
                    insert.setLong(
                            5,
                            rulings.id(
                                    new RulingTable.Ruling(
                                            closed.treatment(),
                                            closed.rule(),
                                            closed.rate(),
                                            closed.takenUp())));
                    insert.setLong(6, closed.net().tenThousandths());
                    insert.setLong(7, closed.vat().tenThousandths());
                    insert.setLong(8, closed.claim().tenThousandths());
                    insert.setString(9, BoxesText.of(closed.boxes()));
                    insert.setString(10, closed.evidence());
                    insert.setString(11, closed.exchange());
                    insert.addBatch();
                    if (++entries % BATCH == 0) {
                        insert.executeBatch();
                    }
                });
    }

    /** Freezes a row of the return's worksheet of corrections. */
    public void add(ClosedCorrection correction) {
        transaction.step(
                () ->
                        ClosedCorrectionTable.add(
                                connection, period.toString(), ++corrections, correction));
    }

    /** Freezes the return. Refuses the close of another period than was begun. */
    public void commit(Close close) {
        if (!close.period().equals(period)) {
            throw new IllegalArgumentException(
                    "closing %s, found the close of %s".formatted(period, close.period()));
        }
        transaction.step(
                () -> {
                    insert.executeBatch();
                    CloseTable.add(connection, close, first, entries);
                });
        transaction.commit();
    }

    @Override
    public void close() {
        try (transaction) {
            transaction.step(
                    () -> {
                        insert.close();
                        rulings.close();
                    });
        }
    }
}
