package quarterfold.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The files of a folder on the disk.
 *
 * @param root the folder that was brought; nothing outside it is found, by a link either
 * @param folder the folder below it that names are seen from, with a slash at its end, or empty
 * @param prefix what stands before the names of its files in messages
 */
record FolderBeside(Path root, String folder, String prefix) implements Beside {

    @Override
    public Optional<Piece> find(String name) throws IOException {
        Optional<String> inside = Beside.path(folder, name);
        if (inside.isEmpty()) {
            return Optional.empty();
        }
        try {
            Path path = root.resolve(inside.get());
            if (!Files.isRegularFile(path) || !path.toRealPath().startsWith(root.toRealPath())) {
                return Optional.empty();
            }
            int slash = inside.get().lastIndexOf('/');
            String own = inside.get().substring(0, slash + 1);
            return Optional.of(
                    Piece.at(
                            path,
                            prefix + inside.get(),
                            new FolderBeside(root, own, prefix),
                            false));
        } catch (InvalidPathException noName) {
            return Optional.empty();
        }
    }
}
