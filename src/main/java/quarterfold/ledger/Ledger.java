package quarterfold.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.time.Duration;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import quarterfold.money.Amount;

/**
 * The ledger of a book, open: what was entered and what was closed. Only grows. For one thread at a
 * time; every method may throw a {@link LedgerException} where the file cannot be read or written.
 */
public final class Ledger implements AutoCloseable {

    private final Path file;
    private final Connection connection;

    private Ledger(Path file, Connection connection) {
        this.file = file;
        this.connection = connection;
    }

    /** Another process's transaction is waited for up to {@code wait}. */
    static Ledger open(Path file, Duration wait) {
        return new Ledger(file, LedgerFile.open(file, wait, false));
    }

    /** The source with this digest, where the ledger has it. */
    public Optional<Source> source(String sha256) {
        return read(() -> SourceTable.bySha256(connection, sha256));
    }

    /** Every source, in the order of import. */
    public List<Source> sources() {
        return read(() -> SourceTable.all(connection));
    }

    /** The rows of a source that made no entry, in the order they were set aside. */
    public List<SetAside> setAside(long source) {
        return read(
                () ->
                        Sql.list(
                                connection,
                                "select * from set_aside where source = ? order by id",
                                row ->
                                        new SetAside(
                                                row.getLong("source"),
                                                row.getLong("row"),
                                                row.getString("reason")),
                                source));
    }

    /** Every question the reading of files raised, in the order they were raised. */
    public List<RaisedQuery> raised() {
        return read(
                () ->
                        Sql.list(
                                connection,
                                "select * from raised_query order by id",
                                row ->
                                        new RaisedQuery(
                                                row.getLong("source"),
                                                row.getString("code"),
                                                row.getString("about"),
                                                row.getString("question"))));
    }

    /**
     * Begins to enter a file. Another process that is writing is waited for.
     *
     * @throws LedgerException if the other process does not finish in time, or the file is known
     *     already: {@code IN_USE} or {@code REFUSED}
     */
    public FileEntry begin(String sha256, String name, String layout) throws LedgerException {
        Transaction transaction = new Transaction(file, connection);
        try {
            Optional<Source> known = source(sha256);
            if (known.isPresent()) {
                throw new LedgerException(
                        LedgerException.Fault.REFUSED,
                        "%s: this file is in the book already, as source %d, '%s'; nothing was entered"
                                .formatted(name, known.get().id(), known.get().name()));
            }
            return new FileEntry(
                    connection,
                    transaction,
                    new Source(
                            next("source", "id"),
                            sha256,
                            name,
                            layout,
                            next("entry", "number"),
                            0,
                            0,
                            0,
                            Amount.ZERO,
                            Amount.ZERO,
                            Optional.empty()));
        } catch (RuntimeException e) {
            transaction.close();
            throw e;
        }
    }

    private long next(String table, String column) {
        return read(
                () ->
                        Sql.number(
                                connection,
                                "select coalesce(max(%s), 0) + 1 from %s"
                                        .formatted(column, table)));
    }

    /** The entry with this number. */
    public Optional<Entry> entry(long number) {
        return read(
                () -> {
                    Optional<Source> source = SourceTable.holding(connection, number);
                    if (source.isEmpty()) {
                        return Optional.empty();
                    }
                    try (EntryReader reader =
                            new EntryReader(connection, ById.ONE, EntryReader.RUN)) {
                        return Optional.of(reader.entry(number, source.get().id()));
                    }
                });
    }

    /**
     * Every entry with a tax point from {@code first} to {@code last}, in the order of its number,
     * one at a time: nothing is held.
     */
    public void forEach(LocalDate first, LocalDate last, Consumer<Entry> each) {
        forEach(first, last, EntryReader.RUN, each);
    }

    /**
     * The same without what no box depends on: the original text of the amounts and the notes are
     * empty in what is given.
     */
    public void forEachFigured(LocalDate first, LocalDate last, Consumer<Entry> each) {
        forEach(first, last, EntryReader.RUN_OF_FIGURES, each);
    }

    private void forEach(LocalDate first, LocalDate last, String query, Consumer<Entry> each) {
        read(
                () -> {
                    try (EntryReader reader = new EntryReader(connection, ById.MANY, query)) {
                        for (Source source : SourceTable.all(connection)) {
                            if (source.dates().filter(d -> overlap(d, first, last)).isPresent()) {
                                reader.run(source, first, last, each);
                            }
                        }
                    }
                    return true;
                });
    }

    private static boolean overlap(Source.Dates dates, LocalDate first, LocalDate last) {
        return !dates.last().isBefore(first) && !dates.first().isAfter(last);
    }

    /** Whether any entry has a tax point from {@code first} to {@code last}. */
    public boolean hasEntries(LocalDate first, LocalDate last) {
        return read(
                () -> {
                    for (Source source : SourceTable.all(connection)) {
                        if (source.dates().filter(d -> overlap(d, first, last)).isPresent()
                                && EntryReader.any(connection, source, first, last)) {
                            return true;
                        }
                    }
                    return false;
                });
    }

    /** The highest entry number; 0 in an empty ledger. */
    public long lastEntry() {
        return read(() -> next("entry", "number") - 1);
    }

    /** Whether any sale states a rate of its own. */
    public boolean hasStatedSaleRates() {
        return read(
                () ->
                        Sql.number(
                                        connection,
                                        "select exists (select 1 from profile where kind = 'sale' and rate <> '')")
                                > 0);
    }

    /** Every entry, in the order of its number. */
    public void forEach(Consumer<Entry> each) {
        forEach(EntryReader.EARLIEST, EntryReader.LATEST, each);
    }

    /** Every entry with what its close froze of it, if one did, in the order of its number. */
    public void forEachWithClosed(BiConsumer<Entry, List<ClosedEntry>> each) {
        read(
                () -> {
                    try (ClosedReader closed = new ClosedReader(connection)) {
                        forEach(
                                entry ->
                                        each.accept(
                                                entry, read(() -> closed.entry(entry.number()))));
                    }
                    return true;
                });
    }

    /** Every decision, in the order they were made; also those undone since. */
    public List<Decision> decisions() {
        return read(() -> DecisionTable.all(connection));
    }

    /**
     * Appends a decision; its {@code id} is given by the ledger. Another process that is writing is
     * waited for.
     *
     * @return the decision with its number
     */
    public Decision decide(Decision decision) throws LedgerException {
        try (Transaction transaction = new Transaction(file, connection)) {
            Decision numbered =
                    new Decision(
                            next("decision", "id"),
                            decision.target(),
                            decision.about(),
                            decision.action(),
                            decision.value(),
                            decision.why(),
                            decision.who(),
                            decision.day());
            transaction.step(() -> DecisionTable.add(connection, numbered));
            transaction.commit();
            return numbered;
        }
    }

    /** The highest decision's number; 0 where none was made. */
    public long lastDecision() {
        return read(() -> next("decision", "id") - 1);
    }

    /** Every entry that states a particular, in the order of its number. */
    public void forEachWithParticulars(Consumer<Entry> each) {
        forEach(
                EntryReader.EARLIEST,
                EntryReader.LATEST,
                EntryReader.RUN_OF_FIGURES_WITH_PARTICULARS,
                each);
    }

    /** Every entry that states a document, in the order of its number. */
    public void forEachWithDocument(Consumer<Entry> each) {
        forEach(
                EntryReader.EARLIEST,
                EntryReader.LATEST,
                EntryReader.RUN_OF_FIGURES_WITH_DOCUMENT,
                each);
    }

    /** Whether any entry is of the kind. */
    public boolean hasKind(Kind kind) {
        return read(
                () ->
                        Sql.number(
                                        connection,
                                        "select exists (select 1 from profile where kind = ?)",
                                        kind.code())
                                > 0);
    }

    /** The close of a period, where it is closed. */
    public Optional<Close> close(YearMonth period) {
        return read(() -> CloseTable.find(connection, period));
    }

    /** Every close, by period. */
    public List<Close> closes() {
        return read(() -> CloseTable.all(connection));
    }

    /**
     * Begins to close a period. Another process that is writing is waited for.
     *
     * @throws LedgerException if the other process does not finish in time, or the period is closed
     *     already: {@code IN_USE} or {@code REFUSED}
     */
    public CloseWriter beginClose(YearMonth period) throws LedgerException {
        Transaction transaction = new Transaction(file, connection);
        try {
            if (read(() -> CloseTable.isClosed(connection, period))) {
                throw new LedgerException(
                        LedgerException.Fault.REFUSED,
                        "%s is closed already, and a closed period never changes; nothing was changed"
                                .formatted(period));
            }
            return new CloseWriter(connection, transaction, period, next("closed_entry", "id"));
        } catch (RuntimeException e) {
            transaction.close();
            throw e;
        }
    }

    /** Every occasion of an entry that a close froze, in the order they were frozen. */
    public List<ClosedEntry> closedEntry(long number) {
        return read(
                () -> {
                    try (ClosedReader reader = new ClosedReader(connection)) {
                        return reader.entry(number);
                    }
                });
    }

    /** What a close froze of each entry, in the order it was frozen; nothing where none is. */
    public void forEachClosed(YearMonth period, BiConsumer<Entry, ClosedEntry> each) {
        read(
                () -> {
                    try (ClosedReader reader = new ClosedReader(connection)) {
                        reader.read(period, each);
                    }
                    return true;
                });
    }

    private <T> T read(Transaction.Work<T> work) {
        return Transaction.run(file, work);
    }

    @Override
    public void close() {
        read(
                () -> {
                    connection.close();
                    return true;
                });
    }
}
