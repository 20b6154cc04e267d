package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.LedgerException.Fault;

/** What killed imports leave, and files that are written to while they are read. */
class LeftOversTest {
    /** The digest of "abc": FIPS 180-4, SHA-256 example, as published by NIST. */
    private static final String ABC =
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    @TempDir Path folder;
    private Path sources;
    private SourceArchive archive;
    private Ledger ledger;

    @BeforeEach
    void open() throws IOException {
        Book book = Book.create(folder.resolve("book"), Samples.SETTINGS);
        sources = book.folder().resolve("sources");
        archive = book.archive();
        ledger = Samples.again(folder, Duration.ZERO);
        archive.archive(file("july.csv", "abc"));
        Samples.enter(ledger, ABC, Samples.FULL);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private List<String> kept() throws IOException {
        try (Stream<Path> files = Files.list(sources)) {
            return files.map(f -> String.valueOf(f.getFileName())).sorted().toList();
        }
    }

    @Test
    void whatKilledImportsLeftIsRemovedAndNothingElse() throws IOException {
        archive.archive(file("august.csv", "never entered"));
        Files.writeString(sources.resolve(".incoming-7.part"), "half");
        Files.writeString(sources.resolve(".importing-7.lock"), "");
        Files.writeString(sources.resolve("0123456789ab-notes.txt"), "no copy: another digest");
        Files.writeString(sources.resolve("notes.txt"), "a person's own");
        assertThat(kept()).hasSize(6);

        archive.removeLeftOvers(ledger);

        assertThat(kept())
                .containsExactly("0123456789ab-notes.txt", "ba7816bf8f01-july.csv", "notes.txt");
    }

    @Test
    void whileAnImportIsAtWorkNothingIsRemoved() throws IOException {
        try (ArchiveUse use = archive.use()) {
            use.archive().archive(file("august.csv", "about to be entered"));
            archive.removeLeftOvers(ledger);
            assertThat(kept()).hasSize(3).anyMatch(name -> name.endsWith("-august.csv"));
        }
        assertThat(kept()).hasSize(2);
        archive.removeLeftOvers(ledger);
        assertThat(kept()).containsExactly("ba7816bf8f01-july.csv");
    }

    /**
     * The copy a person put back by hand, or that a disk fault changed, is for verify to tell of.
     */
    @Test
    void theCopyOfAnEnteredFileStaysWhateverIsInIt() throws IOException {
        Path copy = sources.resolve("ba7816bf8f01-july.csv");
        assertThat(copy.toFile().setWritable(true)).isTrue();
        Files.writeString(copy, "changed");
        archive.removeLeftOvers(ledger);
        assertThat(copy).hasContent("changed");
    }

    @Test
    void aFileIsInTheSameStateUntilItIsWrittenTo() throws IOException {
        Path file = file("august.csv", "abcd");
        FileState before = FileState.of(file);
        before.refuseChanged(file, 4);

        String changed =
                file
                        + ": the file changed while it was read; nothing was entered, try again when nothing writes to it";
        assertThatThrownBy(() -> before.refuseChanged(file, 3)).hasMessage(changed);
        Files.writeString(file, "e", StandardOpenOption.APPEND);
        assertThatThrownBy(() -> before.refuseChanged(file, 4))
                .hasMessage(changed)
                .isInstanceOfSatisfying(
                        LedgerException.class,
                        e -> assertThat(e.fault()).isEqualTo(Fault.UNREADABLE));
        Files.writeString(file, "dcba");
        Files.setLastModifiedTime(file, FileTime.fromMillis(before.modified().toMillis() + 1));
        assertThatThrownBy(() -> before.refuseChanged(file, 4)).hasMessage(changed);
    }

    /** Another program goes on writing for as long as the copy is made. */
    @Test
    void aFileThatChangesWhileItIsReadIsRefused() throws Exception {
        Path file = file("august.csv", "2026-08-01,sale,1.00\n".repeat(3_000_000));
        AtomicBoolean done = new AtomicBoolean();
        CountDownLatch begun = new CountDownLatch(1);
        Thread writer =
                new Thread(
                        () -> {
                            try (FileChannel out =
                                    FileChannel.open(file, StandardOpenOption.APPEND)) {
                                while (!done.get()) {
                                    out.write(java.nio.ByteBuffer.wrap(new byte[] {'x'}));
                                    begun.countDown();
                                }
                            } catch (IOException e) {
                                throw new java.io.UncheckedIOException(e);
                            }
                        });
        writer.start();
        begun.await();
        try {
            assertThatThrownBy(() -> archive.archive(file))
                    .hasMessage(
                            file
                                    + ": the file changed while it was read; nothing was entered, try again when nothing writes to it");
        } finally {
            done.set(true);
            writer.join();
        }
        assertThat(kept()).containsExactly("ba7816bf8f01-july.csv");
    }
}
