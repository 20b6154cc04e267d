package quarterfold.ledger;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Optional;
import quarterfold.money.Amount;

/**
 * One file being entered: one transaction. {@link #close} without {@link #commit} leaves the ledger
 * as it was. For one thread at a time.
 */
public final class FileEntry implements AutoCloseable {

    private final Connection connection;
    private final Transaction transaction;
    private final EntryWriter writer;
    private final Source opening;
    private long entries;
    private long setAside;
    private long firstDay = Long.MAX_VALUE;
    private long lastDay = Long.MIN_VALUE;

    /** {@code opening} is the source with its place in the ledger and no entries. */
    FileEntry(Connection connection, Transaction transaction, Source opening) {
        this.connection = connection;
        this.transaction = transaction;
        this.opening = opening;
        this.writer = transaction.run(() -> new EntryWriter(connection));
    }

    /** Enters a line and returns its number. */
    public long add(Line line) {
        long number = opening.firstEntry() + entries;
        try {
            writer.add(number, line);
        } catch (SQLException e) { // not a step: this runs for every line
            throw transaction.failure(e);
        }
        entries++;
        long day = line.taxPoint().toEpochDay();
        firstDay = Math.min(firstDay, day);
        lastDay = Math.max(lastDay, day);
        return number;
    }

    /** Records a row that makes no entry, and why. */
    public void setAside(long row, String reason) {
        change("insert into set_aside (source, row, reason) values (?, ?, ?)", row, reason);
        setAside++;
    }

    /** Attaches a document to a row; {@code file} and {@code sha256} are the document's. */
    public void attach(long row, String file, String sha256) {
        transaction.step(
                () -> Attachments.add(connection, new Attachment(opening.id(), row, file, sha256)));
    }

    /** Records a question the reading of the file raised; see {@link RaisedQuery}. */
    public void raise(String code, String about, String question) {
        change(
                "insert into raised_query (source, code, about, question) values (?, ?, ?, ?)",
                code,
                about,
                question);
    }

    private void change(String sql, Object... values) {
        Object[] all = new Object[values.length + 1];
        all[0] = opening.id();
        System.arraycopy(values, 0, all, 1, values.length);
        transaction.step(() -> Sql.execute(connection, sql, all));
    }

    /**
     * Makes it all part of the ledger, with the file's control totals.
     *
     * @throws IllegalArgumentException if the totals do not hold together: a row neither entered
     *     nor set aside, or money lost; nothing is entered then
     */
    public Source commit(long rowsRead, long rowsEntered, Amount moneyIn, Amount moneyEntered) {
        if (rowsRead - rowsEntered != setAside) {
            throw new IllegalArgumentException(
                    "%s: %d rows read, %d entered and %d set aside"
                            .formatted(opening.name(), rowsRead, rowsEntered, setAside));
        }
        if (!moneyIn.equals(moneyEntered)) {
            throw new IllegalArgumentException(
                    "%s: money in %s, money entered %s"
                            .formatted(opening.name(), moneyIn, moneyEntered));
        }
        Source source =
                new Source(
                        opening.id(),
                        opening.sha256(),
                        opening.name(),
                        opening.layout(),
                        entries == 0 ? 0 : opening.firstEntry(),
                        entries,
                        rowsRead,
                        rowsEntered,
                        moneyIn,
                        moneyEntered,
                        dates());
        transaction.step(
                () -> {
                    writer.flush();
                    SourceTable.add(connection, source);
                });
        transaction.commit();
        return source;
    }

    private Optional<Source.Dates> dates() {
        return entries == 0
                ? Optional.empty()
                : Optional.of(
                        new Source.Dates(
                                LocalDate.ofEpochDay(firstDay), LocalDate.ofEpochDay(lastDay)));
    }

    @Override
    public void close() {
        try (transaction) {
            transaction.step(writer::close);
        }
    }
}
