package quarterfold.papers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.law.Law;
import quarterfold.ledger.Attachment;
import quarterfold.ledger.SetAside;
import quarterfold.ledger.Settings;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.period.Pack;
import quarterfold.period.VatReturn;
import quarterfold.treatment.Treated;

class WorkingPapersTest {

    private static final List<String> PAPERS =
            List.of("return.csv", "return.json", "summary.pdf", "workbook.xlsx");

    @TempDir Path folder;

    @Test
    void newFolderHoldsTheFourPapersAndNothingIsLeftBeside() throws IOException {
        WorkingPapers.write(Samples.small(), folder.resolve("papers/2026-09"));

        assertThat(names(folder.resolve("papers"))).containsExactly("2026-09");
        assertThat(names(folder.resolve("papers/2026-09"))).containsExactlyElementsOf(PAPERS);
    }

    @Test
    void samePackGivesTheSameBytesInAnotherZoneAndLanguage() throws IOException {
        WorkingPapers.write(Samples.small(), folder.resolve("here"));
        Locale language = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Auckland"));
            WorkingPapers.write(Samples.small(), folder.resolve("there"));
        } finally {
            Locale.setDefault(language);
            TimeZone.setDefault(zone);
        }

        for (String paper : PAPERS) {
            assertThat(folder.resolve("there").resolve(paper))
                    .hasSameBinaryContentAs(folder.resolve("here").resolve(paper));
        }
    }

    @Test
    void papersTakeTheirOldPlaceAndOtherFilesStay() throws IOException {
        Path papers = Files.createDirectories(folder.resolve("2026-09"));
        Files.writeString(papers.resolve("my notes.txt"), "kept");
        Files.writeString(papers.resolve("return.json"), "old");

        WorkingPapers.write(Samples.small(), papers);

        assertThat(papers.resolve("my notes.txt")).hasContent("kept");
        assertThat(papers.resolve("return.json"))
                .hasContent(ReturnJson.of(Samples.small().vatReturn()) + "\n");
        assertThat(names(folder)).containsExactly("2026-09");
    }

    @Test
    void papersThatCannotBeFinishedLeaveWhatWasThere() throws IOException {
        Path papers = folder.resolve("2026-09");
        WorkingPapers.write(Samples.small(), papers);
        Map<String, byte[]> before = contents(papers);

        assertThatThrownBy(
                        () ->
                                WorkingPapers.write(
                                        new Watched(Samples.small(), WorkingPapersTest::fail),
                                        papers))
                .hasMessage("the ledger cannot be read");

        assertThat(names(folder)).containsExactly("2026-09");
        assertThat(contents(papers)).containsExactlyEntriesOf(before);
    }

    /** The platform's folder for such files may belong to another user of the machine. */
    @Test
    void rowsBeingWrittenLieInsideTheFolderOfThePapers() throws IOException {
        List<String> seen = new ArrayList<>();
        Pack watched = new Watched(Samples.small(), () -> seen.addAll(below(folder)));

        WorkingPapers.write(watched, folder.resolve("2026-09"));

        assertThat(seen)
                .anyMatch(f -> f.matches("\\.2026-09\\.part\\d+/\\.rows/poi-sxssf-sheet.*\\.xml"));
        assertThat(names(folder)).containsExactly("2026-09");
        assertThat(names(folder.resolve("2026-09"))).containsExactlyElementsOf(PAPERS);
    }

    private static List<String> below(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.map(f -> folder.relativize(f).toString().replace('\\', '/')).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString()).sorted().toList();
        }
    }

    private static Map<String, byte[]> contents(Path folder) throws IOException {
        Map<String, byte[]> contents = new TreeMap<>();
        for (String name : names(folder)) {
            contents.put(name, Files.readAllBytes(folder.resolve(name)));
        }
        return contents;
    }

    private static void fail() {
        throw new IllegalStateException("the ledger cannot be read");
    }

    /** A pack that does something more whenever its entries are read again after the first time. */
    private static final class Watched implements Pack {
        private final Pack whole;
        private final Runnable more;
        private int readings;

        Watched(Pack whole, Runnable more) {
            this.whole = whole;
            this.more = more;
        }

        @Override
        public void forEachTreated(Consumer<Treated> each) {
            readings++;
            if (readings > 1) {
                more.run();
            }
            whole.forEachTreated(each);
        }

        @Override
        public Settings settings() {
            return whole.settings();
        }

        @Override
        public VatReturn vatReturn() {
            return whole.vatReturn();
        }

        @Override
        public Law law() {
            return whole.law();
        }

        @Override
        public List<Source> sources() {
            return whole.sources();
        }

        @Override
        public List<SetAside> setAside() {
            return whole.setAside();
        }

        @Override
        public List<Attachment> attachments() {
            return whole.attachments();
        }

        @Override
        public Map<String, Amount> otherRounding() {
            return whole.otherRounding();
        }
    }
}
