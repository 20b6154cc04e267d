package quarterfold.ledger;

import java.time.LocalDate;
import java.util.Optional;
import quarterfold.money.Amount;

/**
 * A file brought in: kept byte for byte, known by its digest, with the control totals it was
 * entered by. Its entries are one unbroken run of numbers.
 *
 * @param id 1, 2, 3 … in the order of import
 * @param sha256 64 lower-case hexadecimal digits
 * @param name the file's own name, without folders
 * @param layout the layout it was read with; {@code plain-sheet} for the plain sheet
 * @param firstEntry the number of its first entry, or 0 where it has none
 * @param rowsRead rows read below the header
 * @param rowsEntered rows that made at least one entry; {@code rowsRead - rowsEntered} were set
 *     aside, each with a reason
 * @param moneyIn the money of every row as the file states it, seen by the business, but for rows
 *     that repeat one of an earlier source, where their money is
 * @param moneyEntered the same added up over the entries; equal to {@code moneyIn}
 * @param dates first and last tax point, empty where there are no entries
 */
public record Source(
        long id,
        String sha256,
        String name,
        String layout,
        long firstEntry,
        long entries,
        long rowsRead,
        long rowsEntered,
        Amount moneyIn,
        Amount moneyEntered,
        Optional<Dates> dates) {

    /** First and last tax point of a source's entries. */
    public record Dates(LocalDate first, LocalDate last) {}

    /** A source of which nothing is entered yet. */
    static Source begun(long id, String sha256, String name, String layout, long firstEntry) {
        return new Source(
                id,
                sha256,
                name,
                layout,
                firstEntry,
                0,
                0,
                0,
                Amount.ZERO,
                Amount.ZERO,
                Optional.empty());
    }

    /** Whether its tax points and the days from {@code first} to {@code last} overlap. */
    boolean overlaps(LocalDate first, LocalDate last) {
        return dates.filter(d -> !d.last().isBefore(first) && !d.first().isAfter(last)).isPresent();
    }

    public long rowsSetAside() {
        return rowsRead - rowsEntered;
    }
}
