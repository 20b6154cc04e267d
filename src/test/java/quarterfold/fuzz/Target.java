package quarterfold.fuzz;

import java.io.IOException;
import java.nio.file.Path;

/** A reader under broken input. */
interface Target extends AutoCloseable {

    /** The next input for it. */
    byte[] next() throws IOException;

    /**
     * Reads the input, and fails where anything happens but what may: it is taken whole, and what
     * was taken adds up, or it is refused with a place.
     *
     * @return whether it was taken
     */
    boolean reads(byte[] input) throws IOException;

    /** How many were held against what they state themselves, by another library. */
    default long checked() {
        return 0;
    }

    @Override
    void close();

    /** Makes a target that works in a folder of its own. */
    interface Maker {
        Target in(Path folder, long seed) throws IOException;
    }
}
