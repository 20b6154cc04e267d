package quarterfold.intake;

import java.io.Closeable;
import java.util.List;
import quarterfold.ledger.PublishedRate;

/** The rows of a file of exchange rates, one at a time. */
interface RateRows extends Closeable {

    /** Moves to the next row; false at the end. Refuses a file that breaks its own format. */
    boolean next() throws BadFile;

    /** The row's number as a person counts it in the file, from 1; each row has its own. */
    long number();

    /** Where the row is, for problems. */
    String place();

    /** The rates of the row it stands at; what is wrong with it becomes problems. */
    List<PublishedRate> rates(Problems problems);
}
