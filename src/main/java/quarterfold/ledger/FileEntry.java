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
    private final SetAsideWriter asides;
    private final Source opening;
    private long entries;
    private Optional<AskedEntries> asked = Optional.empty();
    private long setAside;
    private long firstDay = Long.MAX_VALUE;
    private long lastDay = Long.MIN_VALUE;

    /** {@code opening} is the source with its place in the ledger and no entries. */
    FileEntry(Connection connection, Transaction transaction, Source opening) {
        this.connection = connection;
        this.transaction = transaction;
        this.opening = opening;
        this.writer = transaction.run(() -> new EntryWriter(connection));
        this.asides = transaction.run(() -> new SetAsideWriter(connection, opening.id()));
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

    /** Keeps the text of the layout the file is read with. */
    public void readWith(String layout) {
        transaction.step(() -> LayoutTexts.add(connection, opening.id(), layout));
    }

    /** Notes that a question about the kind of rows is about the line entered last. */
    public void asked(String about) {
        long number = opening.firstEntry() + entries - 1;
        if (asked.filter(run -> run.isFollowedBy(about, number)).isEmpty()) {
            addAsked();
            asked = Optional.of(new AskedEntries(about, number, number));
        } else {
            asked = asked.map(run -> run.to(number));
        }
    }

    private void addAsked() {
        asked.ifPresent(
                run ->
                        change(
                                "insert into asked_entry (source, about, first_entry, last_entry)"
                                        + " values (?, ?, ?, ?)",
                                run.about(),
                                run.first(),
                                run.last()));
    }

    /** Enters an exchange rate; whether it agrees with those held is for the reader to see. */
    public HeldRate add(PublishedRate rate) {
        return transaction.run(
                () -> {
                    HeldRate held =
                            new HeldRate(
                                    Sql.next(connection, "exchange_rate", "id"),
                                    opening.id(),
                                    rate);
                    RateTable.add(connection, held);
                    return held;
                });
    }

    /** Records a row that makes no entry, and why. */
    public void setAside(long row, String reason) {
        transaction.step(() -> asides.add(row, reason));
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

    /** The same of a file without rows that repeat an earlier file's. */
    public Source commit(long rowsRead, long rowsEntered, Amount moneyIn, Amount moneyEntered) {
        return commit(rowsRead, rowsEntered, moneyIn, moneyEntered, Amount.ZERO);
    }

    /**
     * Makes it all part of the ledger, with the file's control totals.
     *
     * <p>Rows that repeat a row of an earlier file are set aside, and their money is that file's:
     * what all rows of the file state is what was entered of it and what its repeated rows state.
     * The source keeps what was entered, so that the money of all sources is that of all entries,
     * each once.
     *
     * @param moneyIn what all rows of the file state, repeated or not
     * @param moneyRepeated what the rows state that repeat an earlier file's
     * @throws IllegalArgumentException if the totals do not hold together: a row neither entered
     *     nor set aside, or money lost; nothing is entered then
     */
    public Source commit(
            long rowsRead,
            long rowsEntered,
            Amount moneyIn,
            Amount moneyEntered,
            Amount moneyRepeated) {
        if (rowsRead - rowsEntered != setAside) {
            throw new IllegalArgumentException(
                    "%s: %d rows read, %d entered and %d set aside"
                            .formatted(opening.name(), rowsRead, rowsEntered, setAside));
        }
        if (!moneyIn.equals(moneyEntered.plus(moneyRepeated))) {
            throw new IllegalArgumentException(
                    "%s: money in %s, money entered %s%s"
                            .formatted(
                                    opening.name(),
                                    moneyIn,
                                    moneyEntered,
                                    moneyRepeated.isZero() ? "" : ", repeated " + moneyRepeated));
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
                        moneyIn.minus(moneyRepeated),
                        moneyEntered,
                        dates());
        addAsked();
        transaction.step(
                () -> {
                    writer.flush();
                    asides.flush();
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
            transaction.step(asides::close);
        }
    }
}
