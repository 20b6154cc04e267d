package quarterfold.papers;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.stream.Stream;
import quarterfold.period.Pack;

/**
 * The working papers of a period: {@code workbook.xlsx}, {@code summary.pdf}, {@code return.json}
 * and {@code return.csv}; and the worksheet of corrections, {@code corrections.json} and {@code
 * corrections.csv}, where the return takes up something of earlier periods. The same pack gives the
 * same bytes, on any day.
 */
public final class WorkingPapers {

    private WorkingPapers() {}

    /**
     * Writes the papers into a folder. They are made beside it first and moved there when all are
     * whole, so a folder never holds half of them: a new folder appears at once; in one that is
     * there, each paper takes the place of its old self and other files stay.
     *
     * @throws IOException if they cannot be written; what was there before then still is
     */
    public static void write(Pack pack, Path folder) throws IOException {
        write(pack, folder, Sheets.ROW_LIMIT);
    }

    static void write(Pack pack, Path folder, int rowLimit) throws IOException {
        Path whole = folder.toAbsolutePath().normalize();
        Path parent = whole.getParent();
        if (parent == null) {
            throw new IOException(
                    "papers cannot be written to " + folder + ": name a folder in it");
        }
        Files.createDirectories(parent);
        Path making =
                parent.resolve("." + whole.getFileName() + ".part" + ProcessHandle.current().pid());
        remove(making);
        Files.createDirectory(making);
        try {
            make(pack, making, rowLimit);
            move(making, whole);
        } finally {
            remove(making);
        }
    }

    private static void make(Pack pack, Path folder, int rowLimit) throws IOException {
        Tally tally = Tally.of(pack, WorkbookFile.entriesInSheet(rowLimit));
        WorkbookFile.write(pack, tally, folder.resolve("workbook.xlsx"), rowLimit);
        SummaryPdf.write(pack, tally, folder.resolve("summary.pdf"));
        Files.writeString(folder.resolve("return.json"), ReturnJson.of(pack.vatReturn()) + "\n");
        Files.writeString(folder.resolve("return.csv"), ReturnCsv.of(pack.vatReturn()));
        if (!pack.vatReturn().corrections().isEmpty()) {
            Files.writeString(
                    folder.resolve("corrections.json"), CorrectionJson.of(pack.vatReturn()) + "\n");
            Files.writeString(
                    folder.resolve("corrections.csv"), CorrectionCsv.of(pack.vatReturn()));
        }
    }

    private static void move(Path from, Path to) throws IOException {
        if (!Files.exists(to)) {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
            return;
        }
        for (Path paper : papers(from)) {
            Files.move(
                    paper,
                    to.resolve(paper.getFileName()),
                    StandardCopyOption.ATOMIC_MOVE,
                    StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static void remove(Path folder) throws IOException {
        if (Files.exists(folder)) {
            for (Path paper : papers(folder)) {
                if (Files.isDirectory(paper)) {
                    remove(paper);
                } else {
                    Files.delete(paper);
                }
            }
            Files.delete(folder);
        }
    }

    private static List<Path> papers(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        }
    }
}
