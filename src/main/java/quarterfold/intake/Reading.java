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

    /** Moves to the next row; false at the end. Refuses a file that breaks its own format. */
    boolean next() throws BadFile;

    /** Reads the row it stands at, as {@link RowReader#read} does. */
    long read(RowReader.Output output);

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
