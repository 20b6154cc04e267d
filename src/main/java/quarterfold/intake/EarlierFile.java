package quarterfold.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import quarterfold.ledger.EnteredRows;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Line;
import quarterfold.ledger.Source;

/**
 * A file of the same layout that came before, and the rows it entered. It is read again only when a
 * row of its days comes. For one thread, but for {@link #covers}.
 */
final class EarlierFile {
    private static final int BATCH = 8_192;

    private final Source source;
    private final Source.Dates dates;
    private final Shelf shelf;
    private Optional<MarkTable> marks = Optional.empty();
    private boolean otherwise;
    private Optional<long[]> made = Optional.empty();

    /** A row of it that says the same as one of the file being read. */
    record Met(String file, long source, long row, long entry) {
        @Override
        public String toString() {
            return "row %d of %s, source %d".formatted(row, file, source);
        }
    }

    EarlierFile(Source source, Shelf shelf) {
        this.source = source;
        this.dates = source.dates().orElseThrow();
        this.shelf = shelf;
    }

    /** Whether it has entries before and after the day, or on it. */
    boolean covers(LocalDate day) {
        return !day.isBefore(dates.first()) && !day.isAfter(dates.last());
    }

    /** A row that says the same and that no other row has met. */
    Optional<Met> meet(RowMark mark) throws BadFile {
        if (marks.isEmpty()) {
            marks = Optional.of(read());
        }
        int at = marks.get().meet(mark);
        return at < 0
                ? Optional.empty()
                : Optional.of(
                        met(marks.get().row(at), source.firstEntry() + marks.get().entry(at)));
    }

    private Met met(long row, long entry) {
        return new Met(source.name(), source.id(), row, entry);
    }

    private MarkTable read() throws BadFile {
        Optional<BadFile> first = Optional.empty();
        for (Layouts as : shelf.ways(source)) {
            try {
                MarkTable table = read(as);
                otherwise = first.isPresent();
                return table;
            } catch (BadFile e) {
                first = first.or(() -> Optional.of(e));
            }
        }
        throw first.orElseThrow();
    }

    private MarkTable read(Layouts as) throws BadFile {
        MarkTable table = new MarkTable(source.rowsEntered());
        try (Reading reading = shelf.open(source, as);
                EnteredRows entered = shelf.ledger().search().rows(source)) {
            boolean more = entered.next();
            while (more && reading.next()) {
                RowMark mark = reading.mark();
                if (mark.row() == entered.row()) {
                    table.add(mark, entered.number() - source.firstEntry());
                    more = entered.next();
                }
            }
            if (more) {
                throw new BadFile(
                        source.name(),
                        "found no row %d, which entry %d was made of, in source %d as the layout %s reads it now; expected the layout as it was when the file came"
                                .formatted(
                                        entered.row(),
                                        entered.number(),
                                        source.id(),
                                        source.layout()));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return table;
    }

    /** Whether the layout as it is now does not read it, so that its rows say things otherwise. */
    boolean isReadOtherwise() {
        return otherwise;
    }

    /** Whether some row of it makes such entries; see {@link EntryDigest}. */
    boolean makes(long entries) {
        if (made.isEmpty()) {
            long[] all = new long[Math.toIntExact(source.rowsEntered())];
            int[] count = new int[1];
            forEachRow((row, entry, digest) -> all[count[0]++] = digest);
            Arrays.sort(all);
            made = Optional.of(all);
        }
        return Arrays.binarySearch(made.get(), entries) >= 0;
    }

    /** The first row of it that makes such entries. */
    Optional<Met> maker(long entries) {
        List<Met> found = new ArrayList<>();
        forEachRow(
                (row, entry, digest) -> {
                    if (digest == entries && found.isEmpty()) {
                        found.add(met(row, entry));
                    }
                });
        return found.stream().findFirst();
    }

    private interface EachRow {
        void row(long row, long firstEntry, long digest);
    }

    private void forEachRow(EachRow each) {
        EntryDigest digest = new EntryDigest();
        List<Line> lines = new ArrayList<>();
        long next = source.firstEntry();
        long end = next + source.entries();
        while (next < end) {
            for (Entry entry : shelf.ledger().entries(source, next, BATCH)) {
                if (!lines.isEmpty() && lines.get(0).row() != entry.line().row()) {
                    each.row(lines.get(0).row(), next - lines.size(), digest.of(lines));
                    lines.clear();
                }
                lines.add(entry.line());
                next++;
            }
        }
        each.row(lines.get(0).row(), next - lines.size(), digest.of(lines));
    }
}
