package quarterfold.intake;

import java.io.Closeable;
import java.util.List;

/**
 * The rows of one table, first to last, one at a time; what memory it needs does not grow with the
 * table. Rows with no text in any cell are passed over. Columns count from 0.
 */
interface Rows extends Closeable {

    /** The most characters one cell may hold. */
    int CELL_LIMIT = 100_000;

    /** The most characters one row may hold. */
    int ROW_LIMIT = 10 * CELL_LIMIT;

    /** The most cells one row may have: as many as a sheet has columns. */
    int COLUMN_LIMIT = 16_384;

    /** Moves to the next row; false at the end. Refuses a file that breaks its own format. */
    boolean next() throws BadFile;

    /** The row's number as a person counts it in the file: from 1, a text file's line. */
    long number();

    /** How many cells the row has. */
    int width();

    /** The cell's text, unchanged; empty beyond the row's width. */
    String cell(int column);

    /** Whether the file itself stores the cell as a number: plain digits and a decimal point. */
    boolean isNumber(int column);

    /** Whether the file itself says that the cell's formula failed, as with {@code #REF!}. */
    default boolean isError(int column) {
        return false;
    }

    /** What lines above the column names say of all rows, by its names; known below them. */
    default List<String> above() {
        return List.of();
    }

    /** What of the rows read so far a person would not see on the screen. */
    default SheetLook look() {
        return new SheetLook();
    }

    /** Whether each row must have as many cells as the header. */
    boolean isEven();

    /** Where the cell is, such as {@code sales.csv:3} or {@code sales.xlsx:Sheet!C14}. */
    String place(int column);

    /** Where the row is, such as {@code sales.csv:3} or {@code sales.xlsx:Sheet!14}. */
    String place();
}
