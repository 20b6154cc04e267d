package quarterfold.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import quarterfold.ledger.IoText;

/** The files of a folder and of those in it, by name. Symbolic links are not followed. */
final class FolderWalk {
    static final int MOST_FILES = 10_000;

    private final Path root;
    private final String name;
    private final String prefix;
    private final Gathered into;
    private int files;
    private boolean any;

    /**
     * @param name what messages call the folder
     * @param prefix what stands before the names of its files
     */
    FolderWalk(Path root, String name, String prefix, Gathered into) {
        this.root = root;
        this.name = name;
        this.prefix = prefix;
        this.into = into;
    }

    /** Finds its files; refuses a folder of too many, and one that is a book. */
    void walk() throws BadFile {
        if (isBook(root)) {
            throw new BadFile(
                    name,
                    "found a book; expected a folder of reports, such as the folder they were downloaded to");
        }
        walk(root, "");
        if (!any) {
            throw new BadFile(
                    name,
                    "found a folder with no file in it; expected at least one, such as the folder they were downloaded to");
        }
    }

    private void walk(Path folder, String inside) throws BadFile {
        for (Path child : children(folder, inside)) {
            boolean found = true;
            String own = String.valueOf(child.getFileName());
            String path = inside + own;
            if (Files.isSymbolicLink(child)) {
                into.passedOver(prefix + path, "a symbolic link: links are not followed");
            } else if (Hidden.is(own)) {
                into.hidden(name, path);
            } else if (Files.isDirectory(child, LinkOption.NOFOLLOW_LINKS)) {
                if (isBook(child)) {
                    into.passedOver(prefix + path, "a book: its files are in it already");
                } else {
                    walk(child, path + "/");
                    found = false;
                }
            } else if (Files.isRegularFile(child, LinkOption.NOFOLLOW_LINKS)) {
                file(child, path, inside);
            } else {
                into.passedOver(prefix + path, "no file");
            }
            any |= found;
        }
    }

    private void file(Path file, String path, String inside) throws BadFile {
        if (++files > MOST_FILES) {
            throw new BadFile(
                    name,
                    "found more than %,d files in a folder; expected at most that, such as one quarter's; nothing of it was entered"
                            .formatted(MOST_FILES));
        }
        if (Files.isReadable(file)) {
            into.file(Piece.at(file, prefix + path, new FolderBeside(root, inside, prefix), false));
        } else {
            into.refused(prefix + path, "could not be read: permission denied");
        }
    }

    private List<Path> children(Path folder, String inside) {
        try (Stream<Path> children = Files.list(folder)) {
            return children.sorted(Comparator.comparing(c -> String.valueOf(c.getFileName())))
                    .toList();
        } catch (IOException e) {
            into.refused(
                    inside.isEmpty() ? name : prefix + inside,
                    "could not be read: " + IoText.withFile(e));
            any = true;
            return List.of();
        }
    }

    private static boolean isBook(Path folder) {
        return Files.isRegularFile(folder.resolve("book.yaml"))
                && Files.isRegularFile(folder.resolve("ledger.sqlite"));
    }
}
