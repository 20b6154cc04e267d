package quarterfold.intake;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/** The files that one file may name: those about it in the folder or ZIP that was brought. */
interface Beside {
    Beside NOTHING = name -> Optional.empty();

    /**
     * The file of a name, seen from the folder of the one that names it; nothing where there is
     * none.
     */
    Optional<Piece> find(String name) throws IOException;

    /**
     * Where a name leads, without {@code .} and {@code ..}; nothing where it leads out.
     *
     * @param folder the folder it is seen from, with a slash at its end, or empty
     */
    static Optional<String> path(String folder, String name) {
        String plain = name.replace('\\', '/');
        if (plain.startsWith("/") || plain.matches("[A-Za-z]:.*")) {
            return Optional.empty();
        }
        Deque<String> path = new ArrayDeque<>();
        for (String step : (folder + plain).split("/", -1)) {
            if (step.equals("..")) {
                if (path.pollLast() == null) {
                    return Optional.empty();
                }
            } else if (!step.isEmpty() && !step.equals(".")) {
                path.addLast(step);
            }
        }
        return path.isEmpty() ? Optional.empty() : Optional.of(String.join("/", path));
    }
}
