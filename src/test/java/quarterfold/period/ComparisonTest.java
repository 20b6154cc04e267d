package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.NotifiedPeriod;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** What explains the change of a box from one return to the next. */
class ComparisonTest {

    @TempDir private Path folder;

    private static SampleLine sale(String day, String gross) {
        return SampleLine.of("sale").on(day).gross(gross);
    }

    private static Comparison.BoxChange box(TempBook book, String id) {
        return Comparison.withPeriodBefore(book.returns(), book.period("2026-09"))
                .orElseThrow()
                .boxes()
                .stream()
                .filter(b -> b.now().box().id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> largest(Comparison.BoxChange box) {
        return box.largest().stream()
                .map(l -> l.treated().entry().number() + ": " + l.adds())
                .toList();
    }

    /** The three largest whichever period they are of; of those alike the ones that came first. */
    @Test
    void theLargestEntries() {
        try (TempBook book = new TempBook(folder, SampleSettings.GB)) {
            book.enter(
                    "a.csv",
                    sale("2026-07-01", "12"),
                    sale("2026-07-02", "24"),
                    sale("2026-07-03", "24"),
                    sale("2026-07-04", "36"),
                    sale("2026-07-05", "24"),
                    sale("2026-05-01", "6"));
            assertThat(largest(box(book, "1"))).containsExactly("4: 6.00", "2: 4.00", "3: 4.00");
            assertThat(box(book, "1").difference().toString()).isEqualTo("19.00");
        }
    }

    /** What came to the same in both explains nothing. */
    @Test
    void whatIsTheSameIsNotTold() {
        try (TempBook book = new TempBook(folder, SampleSettings.GB)) {
            book.enter(
                    "a.csv",
                    sale("2026-05-01", "120"),
                    sale("2026-07-01", "120"),
                    sale("2026-07-02", "50").rate("exempt"));
            assertThat(box(book, "1").treatments()).isEmpty();
            assertThat(box(book, "6").treatments())
                    .extracting(t -> t.treatment() + " " + t.difference())
                    .containsExactly("exempt-sale 50.00");
        }
    }

    /**
     * VATA 1994 s.26B: the flat rate's VAT is made by no entry, and explains box 1 all the same.
     */
    @Test
    void aFigureBesideTheEntries() {
        try (TempBook book = new TempBook(folder, SampleSettings.scheme("flat-rate", "044"))) {
            book.enter("a.csv", sale("2026-05-01", "1000"), sale("2026-07-01", "3000"));
            Comparison.BoxChange box = box(book, "1");
            assertThat(box.treatments())
                    .extracting(t -> t.treatment() + " " + t.entriesNow() + " " + t.entriesThen())
                    .containsExactly("flat-rate 1 1");
            assertThat(box.treatments().get(0).difference()).isEqualTo(box.difference());
            assertThat(box.largest()).isEmpty();
        }
    }

    /** A period longer than a year has the same day of last year within itself. */
    @Test
    void aPeriodIsNotComparedWithItself() {
        Periods periods = SampleSettings.GB.periods();
        Periods longOne =
                new Periods(
                        LocalDate.of(2025, 1, 1),
                        Optional.empty(),
                        periods.ends(),
                        List.of(
                                new NotifiedPeriod(
                                        LocalDate.of(2025, 1, 1),
                                        LocalDate.of(2026, 3, 31),
                                        Optional.empty())),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty());
        try (TempBook book = new TempBook(folder, SampleSettings.on(longOne))) {
            book.enter("a.csv", sale("2025-05-01", "120"), sale("2026-05-01", "120"));
            assertThat(Comparison.withLastYear(book.returns(), book.period("2026-03"))).isEmpty();
            assertThat(Comparison.withLastYear(book.returns(), book.period("2026-06")))
                    .map(c -> c.then().period().name().toString())
                    .contains("2026-03");
        }
    }
}
