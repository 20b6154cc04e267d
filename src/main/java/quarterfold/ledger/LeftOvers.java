package quarterfold.ledger;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What killed imports left in an archive: unfinished copies, and whole ones of files that were
 * never entered. Whatever else a person keeps there stays.
 */
final class LeftOvers {
    private final Path folder;
    private final Ledger ledger;

    LeftOvers(Path folder, Ledger ledger) {
        this.folder = folder;
        this.ledger = ledger;
    }

    /** Removes them, unless an import is at work: what there is may be its own. */
    void remove() throws IOException {
        // Listed before it is asked who is at work, so that nothing of a newcomer's is among them.
        List<Path> likely = likely();
        if (likely.isEmpty() || isInUse()) {
            return;
        }
        try {
            Transaction alone = ledger.change(); // so that no import commits what goes now
            try {
                Set<String> known = known();
                for (Path path : likely) {
                    if (isUnfinished(path) || isUnknownCopy(path, known)) {
                        path.toFile().setWritable(true); // or Windows would not remove it
                        Files.deleteIfExists(path);
                    }
                }
            } finally {
                alone.close();
            }
        } catch (LedgerException e) {
            if (e.fault() != LedgerException.Fault.IN_USE) {
                throw e;
            }
        }
    }

    private List<Path> likely() throws IOException {
        Set<String> known = known();
        return list().stream()
                .filter(path -> isUnfinished(path) || isNamedAsUnknown(path, known))
                .toList();
    }

    private List<Path> list() throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(Files::isRegularFile).sorted().toList();
        }
    }

    /** The first digits of the digests of all files that were entered. */
    private Set<String> known() {
        return Stream.concat(
                        ledger.sources().stream().map(Source::sha256),
                        ledger.attachments().all().stream().map(Attachment::sha256))
                .map(sha256 -> sha256.substring(0, SourceArchive.PREFIX))
                .collect(Collectors.toSet());
    }

    private boolean isInUse() throws IOException {
        return list().stream()
                .filter(path -> name(path).startsWith(ArchiveUse.PREFIX))
                .anyMatch(ArchiveUse::isAtWork);
    }

    private static boolean isUnfinished(Path path) {
        String name = name(path);
        return name.startsWith(ArchiveUse.PREFIX) || name.startsWith(SourceArchive.INCOMING);
    }

    private static boolean isNamedAsUnknown(Path path, Set<String> known) {
        String name = name(path);
        return name.matches("[0-9a-f]{" + SourceArchive.PREFIX + "}-.+")
                && !known.contains(name.substring(0, SourceArchive.PREFIX));
    }

    /** Whether it is what its name says, the copy of a file, and of none that was entered. */
    private static boolean isUnknownCopy(Path path, Set<String> known) throws IOException {
        return isNamedAsUnknown(path, known)
                && Digest.of(path).startsWith(name(path).substring(0, SourceArchive.PREFIX));
    }

    private static String name(Path path) {
        return String.valueOf(path.getFileName());
    }
}
