package quarterfold.intake;

import java.io.IOException;

/** A form of file that is no table and is known by its content, such as an e-invoice. */
interface DocumentForm {

    /** As {@code --layout} takes it. */
    String name();

    /** Whether a file that begins so is of this form. */
    boolean fits(Head head, Brought file) throws BadFile, IOException;

    /** Opens a file of this form. */
    Reading open(Brought file) throws BadFile, IOException;
}
