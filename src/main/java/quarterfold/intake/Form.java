package quarterfold.intake;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import quarterfold.ledger.Settings;

/** A form that a table may have: a layout, or the plain sheet. */
sealed interface Form permits Layout, PlainSheet {

    /** As {@code --layout} takes it. */
    String name();

    Layout.Shape shape();

    /** Lines above the column names, and the columns that all rows have from them. */
    default List<LinePattern> above() {
        return List.of();
    }

    /** The columns a header must have to be of the form. */
    Set<String> columns();

    /** Every column that has a meaning in the form. */
    Set<String> named();

    /** The column that names a row's document, where there is one. */
    Optional<String> documents();

    /** What becomes of rows that an earlier file of the form has too. */
    RepeatRule repeats();

    /** A reader of rows under this header; what is wrong with the header becomes problems. */
    RowReader reader(Terms terms);

    /**
     * What a reader is given beside rows.
     *
     * @param place of the header, for problems
     * @param nativeDates whether ISO texts are dates whatever the form says
     */
    record Terms(
            Header header,
            String place,
            Settings book,
            boolean nativeDates,
            Payouts payouts,
            Asked asked,
            Problems problems) {
        /** The same under another header. */
        Terms with(Header other) {
            return new Terms(other, place, book, nativeDates, payouts, asked, problems);
        }

        ZoneId zone() {
            return book.zone();
        }
    }
}
