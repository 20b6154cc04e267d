package quarterfold.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import quarterfold.cli.Run;

/** A file a person keeps in a book: its settings, or a list of goods. */
final class SettingsTarget implements Target {
    private final Mutator mutator;
    private final FreshBooks books;
    private final Path book;
    private final String name;
    private final byte[] sound;

    SettingsTarget(Path folder, String name, Mutator mutator) throws IOException {
        this.mutator = mutator;
        this.name = name;
        books = new FreshBooks(folder);
        book = books.next();
        Path file = book.resolve(name);
        sound = Files.exists(file) ? Files.readAllBytes(file) : new byte[0];
    }

    /** The book's own file, as it was made. */
    byte[] sound() {
        return sound;
    }

    @Override
    public byte[] next() {
        return mutator.next();
    }

    @Override
    public boolean reads(byte[] input) throws IOException {
        Files.write(book.resolve(name), input);
        Run run = Run.of("--book", book, "return", "2026-09", "--json");
        assertThat(run.code()).as(run.err()).isIn(0, 2, 65);
        if (run.code() == 65) {
            assertThat(run.err().lines()).isNotEmpty();
            assertThat(run.err()).startsWith(name);
        } else if (run.code() == 2) {
            assertThat(run.err())
                    .startsWith("PERIOD: "); // settings with which 2026-09 is no period
        }
        return run.code() == 0;
    }

    @Override
    public void close() {}
}
