package quarterfold.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Finds the few entries that matter beyond their own period, by their profiles: the database looks
 * through the entries, and only those found are made. What is given lacks the original text of the
 * amounts and the notes.
 */
public final class EntrySearch {

    private final Path file;
    private final Connection connection;
    private final Predicate<Source> seen;
    private final KindDecisions kinds;

    EntrySearch(Path file, Connection connection, Predicate<Source> seen, KindDecisions kinds) {
        this.kinds = kinds;
        this.file = file;
        this.connection = connection;
        this.seen = seen;
    }

    /** Every entry whose profile is such, in the order of its number. */
    public void forEach(Predicate<Profile> which, Consumer<Entry> each) {
        forEach(EntryReader.EARLIEST, EntryReader.LATEST, which, each);
    }

    /** The same, of those with a tax point from {@code first} to {@code last}. */
    public void forEach(
            LocalDate first, LocalDate last, Predicate<Profile> which, Consumer<Entry> each) {
        find(first, last, which, "", each);
    }

    /** Every entry whose profile is such that was paid from {@code first} to {@code last}. */
    public void forEachPaid(
            LocalDate first, LocalDate last, Predicate<Profile> which, Consumer<Entry> each) {
        find(
                EntryReader.EARLIEST,
                EntryReader.LATEST,
                which,
                " and e.paid between %d and %d".formatted(first.toEpochDay(), last.toEpochDay()),
                each);
    }

    /** Every entry that a question about the kind of rows is about, in the order of its number. */
    public void forEachAsked(RaisedQuery.Name query, Consumer<Entry> each) {
        Transaction.run(
                file,
                () -> {
                    try (EntryReader reader =
                            new EntryReader(connection, ById.MANY, EntryReader.RUN, kinds)) {
                        for (AskedEntries run : AskedEntries.of(connection, query)) {
                            reader.run(run, query.source(), each);
                        }
                    }
                    return true;
                });
    }

    /** The rows of a source that made entries; the caller closes it. */
    public EnteredRows rows(Source source) {
        return Transaction.run(file, () -> new EnteredRows(file, connection, source));
    }

    private void find(
            LocalDate first,
            LocalDate last,
            Predicate<Profile> which,
            String also,
            Consumer<Entry> each) {
        Transaction.run(
                file,
                () -> {
                    List<Long> profiles = profiles(which);
                    if (profiles.isEmpty() && kinds.isNone()) {
                        return false;
                    }
                    String ofThem =
                            profiles.stream()
                                    .map(Object::toString)
                                    .collect(Collectors.joining(",", "e.profile in (", ")"));
                    String query = EntryReader.RUN_OF_FIGURES + " and " + kinds.or(ofThem) + also;
                    Consumer<Entry> found = found(which, each);
                    try (EntryReader reader =
                            new EntryReader(connection, ById.MANY, query, kinds)) {
                        for (Source source : SourceTable.all(connection)) {
                            if (seen.test(source)
                                    && source.dates()
                                            .filter(d -> !d.last().isBefore(first))
                                            .filter(d -> !d.first().isAfter(last))
                                            .isPresent()) {
                                reader.run(source, first, last, found);
                            }
                        }
                    }
                    return true;
                });
    }

    /** With decisions on kinds, what was found may be of another profile than it was entered. */
    private Consumer<Entry> found(Predicate<Profile> which, Consumer<Entry> each) {
        return kinds.isNone()
                ? each
                : entry -> {
                    if (which.test(entry.profile())) {
                        each.accept(entry);
                    }
                };
    }

    /** Whether any sale states a rate of its own. */
    public boolean hasStatedSaleRates() {
        return hasProfile("kind = 'sale' and rate <> ''") || kinds.any(Kind.SALE);
    }

    /** Whether any sale may be stated to be exempt. */
    public boolean hasExemptSales() {
        List<Kind> sales =
                Arrays.stream(Kind.values()).filter(k -> k.side() == Kind.Side.SALES).toList();
        String codes =
                sales.stream().map(k -> "'" + k.code() + "'").collect(Collectors.joining(", "));
        return hasProfile("rate = 'exempt' and kind in (" + codes + ")")
                || (sales.stream().anyMatch(kinds::any) && hasRate(StatedRate.EXEMPT));
    }

    /** Whether any entry states the rate. */
    public boolean hasRate(StatedRate rate) {
        return hasProfile("rate = ?", rate.code());
    }

    /** Whether any entry may be of the kind. */
    public boolean hasKind(Kind kind) {
        return hasProfile("kind = ?", kind.code()) || kinds.any(kind);
    }

    /** Whether any entry of the kind may have other evidence than this. */
    public boolean hasOtherEvidence(Kind kind, Evidence evidence) {
        return hasProfile("kind = ? and evidence <> ?", kind.code(), evidence.code())
                || kinds.any(kind);
    }

    private boolean hasProfile(String condition, Object... values) {
        return Transaction.run(file, () -> ProfileTable.any(connection, condition, values));
    }

    private List<Long> profiles(Predicate<Profile> which) throws SQLException {
        return Sql.list(
                        connection,
                        "select * from profile",
                        row -> which.test(ProfileTable.read(row)) ? row.getLong(1) : 0)
                .stream()
                .filter(id -> id > 0)
                .toList();
    }
}
