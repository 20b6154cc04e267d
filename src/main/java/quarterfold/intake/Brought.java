package quarterfold.intake;

import java.nio.file.Path;
import quarterfold.ledger.Settings;

/**
 * A file brought to be read, with what is needed to read it.
 *
 * @param path where its bytes are
 * @param name its own name, for messages
 * @param problems where what is wrong with it is told
 */
record Brought(Path path, String name, Settings book, Layouts layouts, Problems problems) {}
