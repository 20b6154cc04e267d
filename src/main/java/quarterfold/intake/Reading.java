package quarterfold.intake;

import java.io.Closeable;

/**
 * A file recognised and being read, whatever its format: its rows one at a time, then the questions
 * it raises. A row is what a person would count in the file: a line of a table, an entry of a bank
 * statement, a line of an invoice's VAT breakdown. For one thread; closing it closes the file.
 */
interface Reading extends Closeable {

    /** What it is read as, by the name {@code --layout} takes. */
    String layout();

    /** What a person calls such a file, such as {@code e-invoice}; empty: by what it holds. */
    default String kind() {
        return "";
    }

    /** Moves to the next row; false at the end. Refuses a file that breaks its own format. */
    boolean next() throws BadFile;

    /** Reads the row it stands at, as {@link RowReader#read} does. */
    long read(RowReader.Output output);

    /** What becomes of rows that an earlier file read the same way has too. */
    default RepeatRule repeats() {
        return RepeatRule.EACH;
    }

    /** All that the row it stands at says; asked only where {@link #repeats} lets rows meet. */
    default RowMark mark() {
        throw new IllegalStateException(layout() + " marks no rows");
    }

    /** Adds a problem with the row it stands at. */
    void fault(String fault);

    /**
     * Looks at the file as a whole once all its rows are read.
     *
     * @throws BadFile if there is nothing in it to enter, or it is not all there
     */
    void finish() throws BadFile;

    /** Raises the questions that the file as a whole asks; once all its rows are read. */
    void raise(Payouts.Raise raise);
}
