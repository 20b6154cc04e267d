package quarterfold.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.LedgerException.Fault;

class SourceArchiveTest {
    /** The digest of "abc": FIPS 180-4, SHA-256 example, as published by NIST. */
    private static final String ABC =
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    @TempDir Path folder;
    private Path sources;
    private SourceArchive archive;

    @BeforeEach
    void open() {
        Book book = Book.create(folder.resolve("book"), Samples.SETTINGS);
        sources = book.folder().resolve("sources");
        archive = book.archive();
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
    void aFileIsKeptByteForByteReadOnlyByItsDigest() throws IOException {
        Path file = file("july.csv", "abc");
        Archived archived = archive.archive(file);

        Path copy = sources.resolve("ba7816bf8f01-july.csv");
        assertThat(archived).isEqualTo(new Archived(copy, ABC, "july.csv", true));
        assertThat(copy).hasContent("abc");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(copy)))
                .doesNotContain("w");
        assertThat(kept()).containsExactly("ba7816bf8f01-july.csv");
        assertThat(file).hasContent("abc");
    }

    @Test
    void aLargeFileIsKeptWhole() throws IOException {
        String text = "0123456789".repeat(200_000) + "end";
        Archived archived = archive.archive(file("large.csv", text));

        assertThat(archived.path()).hasContent(text);
    }

    @Test
    void theSameBytesAreKeptOnce() throws IOException {
        Archived first = archive.archive(file("july.csv", "abc"));
        Archived again = archive.archive(file("july (1).csv", "abc"));

        assertThat(again).isEqualTo(new Archived(first.path(), ABC, "july (1).csv", false));
        assertThat(kept()).hasSize(1);
    }

    @Test
    void aCopyThatWasChangedIsPutRight() throws IOException {
        Archived first = archive.archive(file("july.csv", "abc"));
        assertThat(first.path().toFile().setWritable(true)).isTrue();
        Files.writeString(first.path(), "changed");

        assertThat(archive.archive(file("july.csv", "abc"))).isEqualTo(first);
        assertThat(first.path()).hasContent("abc");
    }

    @Test
    void aNameNoFileSystemRefuses() throws IOException {
        Archived archived = archive.archive(file("a:b*\"Übersicht\" 7.csv", "abc"));
        assertThat(archived.name()).isEqualTo("a:b*\"Übersicht\" 7.csv");
        assertThat(archived.path()).hasFileName("ba7816bf8f01-a_b__Übersicht_ 7.csv");

        Archived longest = archive.archive(file("x".repeat(240) + ".csv", "abcd"));
        assertThat(longest.path())
                .hasFileName(longest.sha256().substring(0, 12) + "-" + "x".repeat(96) + ".csv");
    }

    @Test
    void aFileThatCannotBeReadIsRefused() throws IOException {
        Path missing = folder.resolve("missing.csv");
        assertThatThrownBy(() -> archive.archive(missing))
                .isInstanceOfSatisfying(
                        LedgerException.class,
                        e -> assertThat(e.fault()).isEqualTo(Fault.UNREADABLE))
                .hasMessage(missing + ": there is no such file");
        assertThatThrownBy(() -> archive.archive(folder))
                .hasMessage(folder + ": this is not a file");
        Files.delete(sources);
        Files.writeString(sources, "in the way");
        Path file = file("july.csv", "abc");
        assertThatThrownBy(() -> archive.archive(file))
                .hasMessage(
                        "%s: could not be copied into %s: something else of this name is in the way"
                                .formatted(file, sources));
    }

    @Test
    void aFolderThatACopyOfTheBookLostIsMadeAgain() throws IOException {
        Files.delete(sources);
        archive.archive(file("july.csv", "abc"));
        assertThat(kept()).containsExactly("ba7816bf8f01-july.csv");
    }

    /** File systems count bytes: a name as long as they allow leaves no room for the digest. */
    @Test
    void aNameOfLettersOfManyBytesIsShortened() throws IOException {
        Archived archived = archive.archive(file("七".repeat(83) + ".csv", "abc"));
        assertThat(archived.name()).isEqualTo("七".repeat(83) + ".csv");
        assertThat(kept()).containsExactly("ba7816bf8f01-" + "七".repeat(32) + ".csv");
    }

    @Test
    void aRefusedFilesCopyIsRemovedUnlessTheLedgerHasIt() throws IOException {
        Archived entered = archive.archive(file("july.csv", "abc"));
        Archived refused = archive.archive(file("august.csv", "abcd"));
        try (Ledger ledger = Samples.again(folder, java.time.Duration.ZERO)) {
            Samples.enter(ledger, ABC, Samples.FULL);
            archive.discard(entered, ledger);
            archive.discard(refused, ledger);
        }

        assertThat(kept()).containsExactly("ba7816bf8f01-july.csv");
    }
}
