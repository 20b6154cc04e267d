package quarterfold.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import quarterfold.ledger.Borrowed;
import quarterfold.ledger.LedgerException;
import quarterfold.ledger.SourceArchive;

/**
 * The files in what a person named: single files, and those in folders and ZIPs, a ZIP in a ZIP
 * included. ZIPs stay open until it is closed.
 */
final class Gathering implements AutoCloseable {
    private static final int DEEPEST = 2;

    private final SourceArchive archive;
    private final List<Piece> pieces = new ArrayList<>();
    private final List<ImportResult> told = new ArrayList<>();
    private final Deque<Zip> open = new ArrayDeque<>();
    private final Deque<Borrowed> borrowed = new ArrayDeque<>();
    private int filesInZips;
    private long bytesInZips;

    Gathering(SourceArchive archive) {
        this.archive = archive;
    }

    /** {@code several}: whether other files are named too, so that names must say the folder. */
    void add(Path named, boolean several) {
        if (Files.isDirectory(named)) {
            Path whole = named.toAbsolutePath().normalize();
            String name = whole.getFileName() == null ? whole + "" : whole.getFileName() + "";
            Found found = new Found(0, pieces, told);
            found.take(
                    name,
                    () -> new FolderWalk(named, name, several ? name + "/" : "", found).walk());
        } else {
            new Found(0, pieces, told).file(Piece.named(named));
        }
    }

    List<Piece> pieces() {
        return pieces;
    }

    /** What became of those that are not to be read. */
    List<ImportResult> told() {
        return told;
    }

    /** Lists a folder or ZIP; whatever it finds before it gives up does not count. */
    private interface Listing {
        void list() throws BadFile;
    }

    /** What one folder or ZIP holds. */
    private final class Found implements Gathered {
        private final int depth;
        private final Map<String, List<String>> hidden = new TreeMap<>();
        private List<Piece> here;
        private List<ImportResult> toldHere;

        /** {@code here} and {@code toldHere}: of what it stands in. */
        Found(int depth, List<Piece> here, List<ImportResult> toldHere) {
            this.depth = depth;
            this.here = here;
            this.toldHere = toldHere;
        }

        void take(String name, Listing listing) {
            List<Piece> outer = here;
            List<ImportResult> toldOuter = toldHere;
            here = new ArrayList<>();
            toldHere = new ArrayList<>();
            try {
                listing.list();
                outer.addAll(here);
                toldOuter.addAll(toldHere);
                hidden.forEach((named, files) -> toldOuter.add(passedOver(named, files)));
            } catch (BadFile e) {
                toldOuter.add(ImportResult.Refused.unread(name, e.problem()));
            }
        }

        private static ImportResult passedOver(String named, List<String> files) {
            return new ImportResult.PassedOver(
                    named,
                    "%d hidden %s, such as %s"
                            .formatted(
                                    files.size(),
                                    files.size() == 1 ? "file or folder" : "files or folders",
                                    files.get(0)));
        }

        @Override
        public void file(Piece piece) {
            Zip.Kind kind;
            try {
                if (isNamedWorkbook(piece) || !isPacked(piece)) {
                    here.add(piece);
                    return;
                }
                Path path = piece.path().isPresent() ? piece.path().get() : borrow(piece).path();
                Zip zip = Zip.open(path, piece.name());
                open.push(zip);
                kind = zip.kind();
                if (kind == Zip.Kind.FILES && depth < DEEPEST) {
                    Found inner = new Found(depth + 1, here, toldHere);
                    inner.take(piece.name(), () -> zip.list(inner));
                    return;
                }
            } catch (BadFile e) {
                refused(e.problem());
                return;
            } catch (LedgerException e) {
                if (!(e.getCause() instanceof BadBytes bad)) {
                    throw e;
                }
                refused(bad.problem());
                return;
            }
            packed(piece, kind);
        }

        /** Of all ZIPs together, those in others too: many small ones may hold a vast number. */
        @Override
        public void zip(String name, int files, long bytes) throws BadFile {
            if (filesInZips + files > Zip.MOST_FILES || bytesInZips + bytes > Zip.LARGEST_SUM) {
                throw new BadFile(
                        name,
                        "found %,d files of %,d bytes in it, after %,d of %,d in other ZIPs; expected at most %,d of %,d in all, such as this ZIP brought in by itself; nothing of it was entered"
                                .formatted(
                                        files,
                                        bytes,
                                        filesInZips,
                                        bytesInZips,
                                        Zip.MOST_FILES,
                                        Zip.LARGEST_SUM));
            }
            filesInZips += files;
            bytesInZips += bytes;
        }

        private void packed(Piece piece, Zip.Kind kind) {
            switch (kind) {
                case WORKBOOK -> here.add(piece);
                case OFFICE -> passedOver(piece.name(), "an office document that is no workbook");
                case OPEN_DOCUMENT ->
                        refused(
                                piece.name(),
                                "found an OpenDocument; expected an XLSX workbook or a text table, such as the same sheet saved as .xlsx");
                case FILES ->
                        refused(
                                piece.name(),
                                "found a ZIP in a ZIP in a ZIP; expected one ZIP in another at most, such as this one unpacked");
            }
        }

        private Borrowed borrow(Piece piece) {
            Borrowed copy = archive.borrow(piece.name(), piece.bytes());
            borrowed.push(copy);
            return copy;
        }

        private void refused(Problem problem) {
            toldHere.add(ImportResult.Refused.unread(problem.place(), problem));
        }

        @Override
        public void refused(String name, String fault) {
            refused(new Problem(name, "", fault));
        }

        @Override
        public void passedOver(String name, String reason) {
            toldHere.add(new ImportResult.PassedOver(name, reason));
        }

        @Override
        public void hidden(String named, String file) {
            hidden.computeIfAbsent(named, n -> new ArrayList<>()).add(file);
        }
    }

    /** A broken workbook is told as one, not as a ZIP of parts. */
    private static boolean isNamedWorkbook(Piece piece) {
        return piece.name().toLowerCase(Locale.ROOT).matches(".*\\.xls[xm]");
    }

    /** A file that is not there, or cannot be read, is told when it is brought in. */
    private static boolean isPacked(Piece piece) {
        try {
            return Nature.of(piece.name(), piece.bytes()) == Nature.PACKED;
        } catch (IOException e) {
            return false;
        }
    }

    @Override
    public void close() throws IOException {
        try {
            while (!open.isEmpty()) {
                open.pop().close();
            }
        } finally {
            while (!borrowed.isEmpty()) {
                borrowed.pop().close();
            }
        }
    }
}
