package quarterfold.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;

/** Asks about what a workbook does not show, or what of it is not read, where that may be money. */
final class Unseen {
    static final String HIDDEN = "hidden-in-sheet";
    static final String NOT_READ = "sheet-not-read";

    private static final int LOOKED_AT = 200;

    private final Tables tables;
    private final String table;
    private final Optional<String> hidden;

    /** {@code hidden}: rows and columns of the table that is read. */
    Unseen(Tables tables, String table, Optional<String> hidden) {
        this.tables = tables;
        this.table = table;
        this.hidden = hidden;
    }

    void raise(Payouts.Raise raise) {
        if (tables.isHidden(table)) {
            raise.query(
                    HIDDEN,
                    table,
                    "sheet %s is hidden, and was read: is it the one that is meant?"
                            .formatted(Problem.quoted(table)));
        }
        hidden.ifPresent(
                words ->
                        raise.query(
                                HIDDEN,
                                table + " " + words,
                                "sheet %s hides %s, which were read like the others: is their money meant?"
                                        .formatted(Problem.quoted(table), words)));
        for (String other : tables.names()) {
            if (!other.equals(table) && hasMoney(other)) {
                raise.query(
                        NOT_READ,
                        other,
                        "sheet %s has dated amounts and was not read, sheet %s was: is its money in there already, or is it to be entered too?"
                                .formatted(Problem.quoted(other), Problem.quoted(table)));
            }
        }
    }

    /** Whether a row among the first has a date and a number. */
    private boolean hasMoney(String other) {
        try (Rows rows = tables.rows(other, Layout.Shape.COMMA)) {
            for (int i = 0; i < LOOKED_AT && rows.next(); i++) {
                if (hasDateAndNumber(rows)) {
                    return true;
                }
            }
            return false;
        } catch (BadFile e) {
            return true; // what cannot be looked into may hold anything
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean hasDateAndNumber(Rows rows) {
        boolean date = false;
        boolean number = false;
        for (int i = 0; i < rows.width(); i++) {
            number |= rows.isNumber(i) && !rows.cell(i).isEmpty();
            date |= !rows.isNumber(i) && DateFinder.isLike(rows.cell(i).strip());
        }
        return date && number;
    }
}
