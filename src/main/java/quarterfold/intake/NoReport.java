package quarterfold.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import quarterfold.ledger.Settings;

/**
 * Tells a file in a folder that is no report from a report that cannot be read. What may hold money
 * is never taken for the first.
 */
final class NoReport {
    private NoReport() {}

    /** Why a file that no form fits need not be read; nothing where it may be a report. */
    static Optional<String> reason(Path file, String name, Settings book) throws IOException {
        Head head = Head.of(file);
        if (head.isPdf()) {
            return Optional.of("a PDF that no form of report fits, and no list of receipts names");
        }
        boolean xml = head.isXml() || name.toLowerCase(Locale.ROOT).endsWith(".xml");
        if (xml || YamlTables.isList(file, name) || isWorkbook(file)) {
            return Optional.empty();
        }
        if (name.matches("(.*/)?(products|bundles)\\.csv")) {
            return Optional.of("a list of goods: its place is the book's own folder");
        }
        boolean table = Nature.hasTableEnding(name) || name.matches("(.*/)?[^./]+");
        if (table && new Learner(book).hasTable(file, name)) {
            return Optional.empty();
        }
        return Optional.of(
                table ? "no row has a date and a number" : "a text that no layout knows");
    }

    private static boolean isWorkbook(Path file) throws IOException {
        return Nature.of("", () -> Files.newInputStream(file)) != Nature.TABLE;
    }
}
