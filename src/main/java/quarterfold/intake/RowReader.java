package quarterfold.intake;

import quarterfold.ledger.Line;
import quarterfold.ledger.PublishedRate;

/** Turns rows into lines. For one thread; keeps nothing of a row but what many rows share. */
interface RowReader {

    /**
     * Reads the row {@code row} stands at: gives lines, or sets the row aside, or adds problems.
     *
     * @return the money of the row as its counted cells state it, in ten-thousandths, positive
     *     where it comes to the business
     */
    long read(Row row, Output output);

    /**
     * The row under the header of its own shape, where the file has rows of several; asked once for
     * each row, in their order, before it is read.
     */
    default Row stand(Row row) {
        return row;
    }

    /** Where the outcome of a row goes. */
    interface Output {
        void line(Line line);

        void setAside(long row, String reason);

        /** An exchange rate; only files of such give any. */
        default void rate(PublishedRate rate) {
            throw new IllegalStateException("a rate among entries: " + rate);
        }

        /** A question about lines of a row; before them. */
        default void asked(Ask ask) {}

        /** A document that the row names as its evidence; after the row's lines. */
        default void attach(Named document) {}
    }
}
