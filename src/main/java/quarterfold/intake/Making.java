package quarterfold.intake;

import java.util.List;
import java.util.Optional;

/** Makes the layout of a file that is learned. */
interface Making {

    /**
     * Nothing where something needed was not found; the findings then say what.
     *
     * @param name of the layout
     * @param file its own name, which may say what its rows are
     */
    Optional<Layout> make(String name, String file);

    /** The column that says what a row comes to, where the one table has one. */
    default Optional<OwnTotal> ownTotal() {
        return Optional.empty();
    }

    /** What was found, in words. */
    List<String> found();
}
