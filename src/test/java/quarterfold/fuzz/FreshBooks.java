package quarterfold.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import quarterfold.cli.SmallBook;

/** New books by copying one: making a ledger takes longer than what is tried on it. */
final class FreshBooks {
    private final Path pattern;
    private final Path folder;

    FreshBooks(Path folder) {
        this.folder = folder;
        pattern = SmallBook.empty(folder);
    }

    /** The book {@code folder/fresh}, new. */
    Path next() throws IOException {
        Path book = folder.resolve("fresh");
        remove(book);
        for (Path from : all(pattern)) {
            Files.copy(from, book.resolve(pattern.relativize(from).toString()));
        }
        return book;
    }

    private static void remove(Path book) throws IOException {
        if (Files.exists(book)) {
            for (Path path : all(book).stream().sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }

    private static List<Path> all(Path folder) {
        try (Stream<Path> paths = Files.walk(folder)) {
            return paths.toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
