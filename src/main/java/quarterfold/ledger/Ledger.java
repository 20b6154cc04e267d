package quarterfold.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/**
 * The ledger of a book, open: what was entered and what was closed. Only grows. For one thread at a
 * time; every method may throw a {@link LedgerException} where the file cannot be read or written.
 */
public final class Ledger implements AutoCloseable {

    private final Path file;
    private final Connection connection;
    private final Horizon horizon;

    private Optional<KindDecisions> kinds = Optional.empty();

    private Ledger(Path file, Connection connection, Horizon horizon) {
        this.file = file;
        this.connection = connection;
        this.horizon = horizon;
    }

    /** Another process's transaction is waited for up to {@code wait}. */
    static Ledger open(Path file, Duration wait) {
        return new Ledger(file, LedgerFile.open(file, wait, false), Horizon.ALL);
    }

    /**
     * This ledger as it stood when the period was closed: the entries, decisions and closes that
     * were there. For reading; it is open for as long as this one is.
     */
    public Ledger asOf(Close close) {
        return new Ledger(file, connection, read(() -> Horizon.of(connection, close)));
    }

    Transaction change() {
        if (!horizon.isAll()) {
            throw new IllegalStateException("a ledger as it stood is not written to");
        }
        return new Transaction(file, connection);
    }

    /**
     * Tells of each way in which the numbers of entries and the runs of files do not hold.
     *
     * @return whether the ledger can be read at all: every row that another names is there
     */
    public boolean check(Consumer<Finding> found) {
        return read(() -> new LedgerCheck(connection, found).check());
    }

    /** The source with this digest, where the ledger has it. */
    public Optional<Source> source(String sha256) {
        return read(() -> SourceTable.bySha256(connection, sha256));
    }

    /** Every source, in the order of import. */
    public List<Source> sources() {
        return read(() -> SourceTable.all(connection)).stream().filter(horizon::sees).toList();
    }

    /** The rows of a source that made no entry, in the order they were set aside. */
    public List<SetAside> setAside(long source) {
        return read(() -> SourceTable.setAside(connection, source));
    }

    /** The documents that rows of sources name as their evidence. */
    public Attachments attachments() {
        return new Attachments(file, connection);
    }

    /** Every question the reading of files raised, in the order they were raised. */
    public List<RaisedQuery> raised() {
        return read(() -> SourceTable.raised(connection));
    }

    /**
     * Begins to enter a file. Another process that is writing is waited for.
     *
     * @throws LedgerException if the other process does not finish in time, or the file is known
     *     already: {@code IN_USE} or {@code REFUSED}
     */
    public FileEntry begin(String sha256, String name, String layout) throws LedgerException {
        Transaction transaction = change();
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
                    Source.begun(
                            next("source", "id"), sha256, name, layout, next("entry", "number")));
        } catch (RuntimeException e) {
            transaction.close();
            throw e;
        }
    }

    private long next(String table, String column) {
        return read(() -> Sql.next(connection, table, column));
    }

    /** The entry with this number. */
    public Optional<Entry> entry(long number) {
        return read(
                () -> {
                    Optional<Source> source =
                            SourceTable.holding(connection, number).filter(horizon::sees);
                    if (source.isEmpty()) {
                        return Optional.empty();
                    }
                    try (EntryReader reader =
                            new EntryReader(connection, ById.ONE, EntryReader.RUN, kinds())) {
                        return Optional.of(reader.entry(number, source.get().id()));
                    }
                });
    }

    /** Every entry with a tax point from {@code first} to {@code last}, in order; none is held. */
    public void forEach(LocalDate first, LocalDate last, Consumer<Entry> each) {
        forEachAfter(0, first, last, each);
    }

    /** The same without what no box depends on: amounts' original texts and notes are empty. */
    public void forEachFigured(LocalDate first, LocalDate last, Consumer<Entry> each) {
        forEach(0, first, last, EntryReader.RUN_OF_FIGURES, each);
    }

    private void forEach(String query, Consumer<Entry> each) {
        forEach(0, EntryReader.EARLIEST, EntryReader.LATEST, query, each);
    }

    private void forEach(
            long after, LocalDate first, LocalDate last, String query, Consumer<Entry> each) {
        read(
                () -> {
                    try (EntryReader reader =
                            new EntryReader(connection, ById.MANY, query, kinds())) {
                        for (Source source : sources()) {
                            if (source.firstEntry() > after && source.overlaps(first, last)) {
                                reader.run(source, first, last, each);
                            }
                        }
                    }
                    return true;
                });
    }

    /** The same of the entries numbered above {@code number}. */
    public void forEachAfter(long number, LocalDate first, LocalDate last, Consumer<Entry> each) {
        forEach(number, first, last, EntryReader.RUN, each);
    }

    /** Every entry of a kind, in the order of its number, as {@link #forEachFigured} gives it. */
    public void forEachOfKind(Kind kind, Consumer<Entry> each) {
        forEach(
                EntryReader.runOfFiguresOf(kind, kinds()),
                entry -> {
                    if (entry.kind() == kind) {
                        each.accept(entry);
                    }
                });
    }

    /** Whether any entry has a tax point from {@code first} to {@code last}. */
    public boolean hasEntries(LocalDate first, LocalDate last) {
        return read(
                () -> {
                    for (Source source : sources()) {
                        if (source.overlaps(first, last)
                                && EntryReader.any(connection, source, first, last)) {
                            return true;
                        }
                    }
                    return false;
                });
    }

    /** The highest entry number; 0 in an empty ledger. */
    public long lastEntry() {
        return Math.min(horizon.lastEntry(), read(() -> next("entry", "number") - 1));
    }

    /** Every entry, in the order of its number. */
    public void forEach(Consumer<Entry> each) {
        forEach(EntryReader.EARLIEST, EntryReader.LATEST, each);
    }

    /** Every entry with what its close froze of it, if one did, in the order of its number. */
    public void forEachWithClosed(BiConsumer<Entry, List<ClosedEntry>> each) {
        lookUpClosed(closed -> forEach(entry -> each.accept(entry, closed.of(entry.number()))));
    }

    /** Every decision, in the order they were made; also those undone since. */
    public List<Decision> decisions() {
        return read(() -> DecisionTable.all(connection)).stream().filter(horizon::sees).toList();
    }

    /**
     * Appends a decision; its {@code id} is given by the ledger. Another process that is writing is
     * waited for.
     *
     * @return the decision with its number
     */
    public Decision decide(Decision decision) throws LedgerException {
        try (Transaction transaction = change()) {
            Decision numbered = decision.numbered(next("decision", "id"));
            transaction.step(() -> DecisionTable.add(connection, numbered));
            transaction.commit();
            return numbered;
        }
    }

    /** The kinds that people gave entries after they came, by the decisions there are. */
    public KindDecisions kinds() {
        long last = lastDecision();
        if (kinds.filter(k -> k.asOf() == last).isEmpty()) {
            List<Decision> all = decisions();
            kinds = Optional.of(read(() -> KindDecisions.of(connection, all, last)));
        }
        return kinds.orElseThrow();
    }

    /** The entries that questions of a source about the kind of its rows are about. */
    public List<AskedEntries> asked(long source) {
        return read(() -> AskedEntries.of(connection, source));
    }

    /** Those of them that one question is about. */
    public List<AskedEntries> asked(RaisedQuery.Name query) {
        return read(() -> AskedEntries.of(connection, query));
    }

    /** The text of the layout that a source was read with, where the ledger has it. */
    public Optional<String> layoutText(Source source) {
        return read(() -> LayoutTexts.of(connection, source.id()));
    }

    /** The exchange rates. */
    public Rates rates() {
        return new Rates(file, connection, horizon);
    }

    /** The highest decision's number; 0 where none was made. */
    public long lastDecision() {
        return Math.min(horizon.lastDecision(), read(() -> next("decision", "id") - 1));
    }

    /**
     * Every entry that states a particular, in the order of its number; not those that state an
     * account alone, as each line of a bank statement does.
     */
    public void forEachWithParticulars(Consumer<Entry> each) {
        forEach(EntryReader.RUN_OF_FIGURES_WITH_PARTICULARS, each);
    }

    /** A way to some of the entries, wherever in the ledger they are. */
    public EntrySearch search() {
        return new EntrySearch(file, connection, horizon::sees, kinds());
    }

    /** What the close of a period took up of earlier ones, in its order. */
    public List<ClosedCorrection> corrections(YearMonth period) {
        return read(() -> ClosedCorrectionTable.of(connection, period));
    }

    /** What closes took up of an entry, in the order of the closes. */
    public List<ClosedCorrection> corrections(long number) {
        return read(() -> ClosedCorrectionTable.of(connection, number, horizon::seesClose));
    }

    /** Whether a close froze the occasion of an entry. */
    public boolean isClosed(long number, LocalDate day, String cause) {
        return read(
                () -> CloseTable.isClosed(connection, number, day, cause, horizon.firstFrozen()));
    }

    /** The close of a period, where it is closed. */
    public Optional<Close> close(YearMonth period) {
        return horizon.seesClose(period)
                ? read(() -> CloseTable.find(connection, period))
                : Optional.empty();
    }

    /** Every close, by period. */
    public List<Close> closes() {
        return read(() -> CloseTable.all(connection)).stream()
                .filter(c -> horizon.seesClose(c.period()))
                .toList();
    }

    /**
     * Begins to close a period. Another process that is writing is waited for.
     *
     * @throws LedgerException if the other process does not finish in time, or the period is closed
     *     already: {@code IN_USE} or {@code REFUSED}
     */
    public CloseWriter beginClose(YearMonth period) throws LedgerException {
        Transaction transaction = change();
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
                    try (ClosedReader reader = new ClosedReader(connection, horizon)) {
                        return reader.entry(number);
                    }
                });
    }

    /** What closes froze of an entry, while {@link #lookUpClosed} runs. */
    public interface ClosedEntries {
        List<ClosedEntry> of(long number);
    }

    /** Lets {@code work} look up many entries one after the other. */
    public void lookUpClosed(Consumer<ClosedEntries> work) {
        withClosed(closed -> work.accept(number -> read(() -> closed.entry(number))));
    }

    /** At most so many entries of a source from a number on, in order, as they were entered. */
    public List<Entry> entries(Source source, long from, int count) {
        return read(
                () -> {
                    List<Entry> entries = new ArrayList<>(count);
                    try (EntryReader reader =
                            new EntryReader(
                                    connection, ById.MANY, EntryReader.RUN, KindDecisions.NONE)) {
                        reader.run(source, from, count, entries::add);
                    }
                    return entries;
                });
    }

    /** What a close froze of each entry, in the order it was frozen; nothing where none is. */
    public void forEachClosed(YearMonth period, BiConsumer<Entry, ClosedEntry> each) {
        KindDecisions then = close(period).map(c -> asOf(c).kinds()).orElse(KindDecisions.NONE);
        withClosed(closed -> closed.read(period, then, each));
    }

    private interface ClosedWork {
        void with(ClosedReader closed) throws SQLException;
    }

    private void withClosed(ClosedWork work) {
        read(
                () -> {
                    try (ClosedReader closed = new ClosedReader(connection, horizon)) {
                        work.with(closed);
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
