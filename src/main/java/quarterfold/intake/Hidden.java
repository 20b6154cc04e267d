package quarterfold.intake;

import java.util.Locale;
import java.util.Set;

/** Files that systems and programs put into folders for themselves, by their names. */
final class Hidden {
    private static final Set<String> SYSTEM = Set.of("thumbs.db", "desktop.ini", "__macosx");

    private Hidden() {}

    /** {@code name}: of a file or folder, without the folders it is in. */
    static boolean is(String name) {
        return name.startsWith(".")
                || name.startsWith("~$")
                || SYSTEM.contains(name.toLowerCase(Locale.ROOT));
    }
}
