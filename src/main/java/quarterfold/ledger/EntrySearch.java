package quarterfold.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.LocalDate;
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

    EntrySearch(Path file, Connection connection, Predicate<Source> seen) {
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
                    if (profiles.isEmpty()) {
                        return false;
                    }
                    String query =
                            EntryReader.RUN_OF_FIGURES
                                    + profiles.stream()
                                            .map(Object::toString)
                                            .collect(
                                                    Collectors.joining(
                                                            ",", " and e.profile in (", ")"))
                                    + also;
                    try (EntryReader reader = new EntryReader(connection, ById.MANY, query)) {
                        for (Source source : SourceTable.all(connection)) {
                            if (seen.test(source)
                                    && source.dates()
                                            .filter(d -> !d.last().isBefore(first))
                                            .filter(d -> !d.first().isAfter(last))
                                            .isPresent()) {
                                reader.run(source, first, last, each);
                            }
                        }
                    }
                    return true;
                });
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
