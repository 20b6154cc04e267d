package quarterfold.intake;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;

/**
 * A ZIP of files. Nothing of it is ever written under a name it states: its files are read as they
 * stand in it, within limits.
 */
final class Zip implements Closeable {
    static final int MOST_FILES = 10_000;

    /** In bytes, of one file and of all together, unpacked. */
    private static final long LARGEST = 4L << 30;

    static final long LARGEST_SUM = 8L << 30;

    /** What a packed file is. */
    enum Kind {
        FILES,
        WORKBOOK,
        OFFICE,
        OPEN_DOCUMENT
    }

    private final ZipFile zip;
    private final String name;
    private final OptionalInt counted;

    private Zip(ZipFile zip, String name, OptionalInt counted) {
        this.zip = zip;
        this.name = name;
        this.counted = counted;
    }

    /**
     * Opens a packed file.
     *
     * @param name what messages call it
     */
    static Zip open(Path file, String name) throws BadFile {
        try {
            return new Zip(ZipFile.builder().setPath(file).get(), name, ZipCount.of(file));
        } catch (IOException | RuntimeException e) { // its reader throws both on broken ones
            throw new BadFile(
                    name,
                    "found a ZIP that is not sound; expected one that opens, such as the files packed again");
        }
    }

    /** Told apart by what is in it, not by its name. */
    Kind kind() {
        if (zip.getEntry("[Content_Types].xml") != null) {
            return has("xl/") ? Kind.WORKBOOK : Kind.OFFICE;
        }
        return zip.getEntry("mimetype") != null && zip.getEntry("META-INF/manifest.xml") != null
                ? Kind.OPEN_DOCUMENT
                : Kind.FILES;
    }

    private boolean has(String folder) {
        return Collections.list(zip.getEntries()).stream()
                .anyMatch(e -> e.getName().startsWith(folder));
    }

    /**
     * Adds its files, in the order of their names, and tells of those that may not be read.
     *
     * @throws BadFile if nothing of it may be read
     */
    void list(Gathered into) throws BadFile {
        List<ZipArchiveEntry> entries = Collections.list(zip.getEntries());
        refuseWhole(entries);
        refuseBomb(entries);
        into.zip(name, entries.size(), sum(entries));
        Map<String, List<ZipArchiveEntry>> files = new TreeMap<>();
        for (ZipArchiveEntry entry : entries) {
            Optional<String> path = Beside.path("", entry.getName());
            boolean leads = path.isPresent() && !leadsUp(entry.getName());
            if (!entry.isDirectory() && !leads) {
                into.refused(
                        inside(entry.getName()),
                        "found a name that leads out of the ZIP; expected one of a file in it, such as july/statement.csv");
            } else if (!entry.isDirectory() && isHidden(path.get())) {
                into.hidden(name, path.get());
            } else if (!entry.isDirectory()) {
                files.computeIfAbsent(path.get(), p -> new ArrayList<>()).add(entry);
            }
        }
        Map<String, Piece> pieces = new HashMap<>();
        files.forEach((path, same) -> file(path, same, pieces, into));
    }

    private void refuseWhole(List<ZipArchiveEntry> entries) throws BadFile {
        if (counted.isPresent() && counted.getAsInt() != entries.size()) {
            throw new BadFile(
                    name,
                    "found %d of the %d files and folders that the ZIP counts; expected all of them, such as the files packed again; nothing of it was entered"
                            .formatted(entries.size(), counted.getAsInt()));
        }
        if (entries.stream().allMatch(ZipArchiveEntry::isDirectory)) {
            throw new BadFile(
                    name,
                    "found a ZIP with no file in it; expected at least one, such as the files packed again");
        }
        long locked =
                entries.stream().filter(e -> e.getGeneralPurposeBit().usesEncryption()).count();
        if (locked > 0) {
            throw new BadFile(
                    name,
                    "found a ZIP of which %s locked with a password; expected one that opens without, such as the files packed again; nothing of it was entered"
                            .formatted(locked == 1 ? "1 file is" : locked + " files are"));
        }
        if (entries.size() > MOST_FILES) {
            throw new BadFile(
                    name,
                    "found %,d files in a ZIP; expected at most %,d, such as one quarter's; nothing of it was entered"
                            .formatted(entries.size(), MOST_FILES));
        }
        long sum = sum(entries);
        if (sum > LARGEST_SUM) {
            throw new BadFile(
                    name,
                    "found a ZIP that unpacks to %,d bytes; expected at most %,d, such as one quarter's files; nothing of it was entered"
                            .formatted(sum, LARGEST_SUM));
        }
    }

    /** Many files that are small enough by themselves may be a bomb together. */
    private void refuseBomb(List<ZipArchiveEntry> entries) throws BadFile {
        List<ZipArchiveEntry> others =
                entries.stream()
                        .filter(e -> !Unpacked.isBomb(e.getSize(), e.getCompressedSize()))
                        .toList();
        long packed = others.stream().mapToLong(e -> Math.max(0, e.getCompressedSize())).sum();
        if (Unpacked.isBomb(sum(others), packed)) {
            throw new BadFile(
                    name,
                    "found a ZIP of files that unpack to more than %d times their size in it; expected less, such as the files by themselves; nothing of it was entered"
                            .formatted(Unpacked.RATIO));
        }
    }

    private static long sum(List<ZipArchiveEntry> entries) {
        long sum = 0;
        for (ZipArchiveEntry entry : entries) {
            sum += Math.min(LARGEST_SUM + 1, Math.max(0, entry.getSize()));
        }
        return sum;
    }

    private void file(
            String path, List<ZipArchiveEntry> same, Map<String, Piece> pieces, Gathered into) {
        ZipArchiveEntry entry = same.get(0);
        Optional<String> fault = fault(same, entry);
        if (entry.isUnixSymlink()) {
            into.refused(
                    inside(path),
                    "found a symbolic link; expected a file, such as the one it leads to packed in its place: links are not followed");
        } else if (fault.isPresent()) {
            into.refused(inside(path), fault.get());
        } else {
            Piece piece = piece(path, entry, pieces);
            pieces.put(path, piece);
            into.file(piece);
        }
    }

    private Optional<String> fault(List<ZipArchiveEntry> same, ZipArchiveEntry entry) {
        if (same.size() > 1) {
            return Optional.of(
                    "found %d files of this name in the ZIP; expected it once, such as the files packed again"
                            .formatted(same.size()));
        }
        if (!zip.canReadEntryData(entry) && !entry.isUnixSymlink()) {
            return Optional.of(
                    "found a file packed in a way that is not known (method %d); expected a plain ZIP, such as the files packed again"
                            .formatted(entry.getMethod()));
        }
        if (entry.getSize() > LARGEST) {
            return Optional.of(
                    "found a file that unpacks to %,d bytes; expected at most %,d, such as the file in parts"
                            .formatted(entry.getSize(), LARGEST));
        }
        return Unpacked.isBomb(entry.getSize(), entry.getCompressedSize())
                ? Optional.of(Unpacked.bomb())
                : Optional.empty();
    }

    private Piece piece(String path, ZipArchiveEntry entry, Map<String, Piece> pieces) {
        String folder = path.substring(0, path.lastIndexOf('/') + 1);
        return new Piece(
                inside(path),
                inside(path),
                entry.getSize(),
                Optional.empty(),
                () ->
                        new Unpacked(
                                zip.getInputStream(entry),
                                inside(path),
                                entry.getCompressedSize(),
                                entry.getSize(),
                                entry.getCrc()),
                named -> Beside.path(folder, named).map(pieces::get),
                false);
    }

    private String inside(String path) {
        return name + "/" + path;
    }

    private static boolean leadsUp(String name) {
        return List.of(name.replace('\\', '/').split("/", -1)).contains("..");
    }

    private static boolean isHidden(String path) {
        return List.of(path.split("/", -1)).stream().anyMatch(Hidden::is);
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }
}
