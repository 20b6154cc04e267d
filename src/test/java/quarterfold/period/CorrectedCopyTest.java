package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/**
 * A corrected copy of a document, and closed returns. VAT Regulations 1995 reg 29(4): input tax is
 * never deducted twice. The amounts are our own.
 */
class CorrectedCopyTest {
    @TempDir Path folder;
    private TempBook book;

    @BeforeEach
    void open() {
        book =
                new TempBook(
                        folder.resolve("book"),
                        SampleSettings.registered(LocalDate.of(2026, 1, 1), "3 6 9 12"));
        book.enter("first.csv", bill("100", "20"));
    }

    @AfterEach
    void close() {
        book.close();
    }

    private static SampleLine bill(String net, String vat) {
        return SampleLine.of("purchase")
                .on("2026-03-28")
                .party("Cobble Hare Couriers Ltd", "GB", "GB101747696")
                .rate("20")
                .category("stock")
                .document("A1")
                .evidence("invoice")
                .printed(net, vat);
    }

    private String box4() {
        return book.of("2026-06").box("4").text();
    }

    /** The first copy is taken back and the other claims: 22.00 less 20.00. */
    @Test
    void afterTheCloseItWaits() {
        assertThat(book.close("2026-03").box("4").text()).isEqualTo("20.00");
        book.enter("corrected.csv", bill("110", "22"));
        assertThat(box4()).isEqualTo("0.00");
        assertThat(TempBook.queries(book.of("2026-06"))).contains("E2/copy-entered-twice");
        book.decide("entry", "1", "duplicate-of", "2");
        assertThat(box4()).isEqualTo("2.00");
        book.close("2026-06");
        assertThat(book.differences()).isEmpty();
    }

    /** The return was closed with the copy in no box; what is decided since counts in the next. */
    @Test
    void decidedAfterBothAreClosed() {
        book.enter("corrected.csv", bill("110", "22"));
        assertThat(book.close("2026-03").box("4").text()).isEqualTo("20.00");
        assertThat(book.of("2026-06").corrections().rows()).isEmpty();
        book.decide("entry", "1", "duplicate-of", "2");
        assertThat(box4()).isEqualTo("2.00");
        book.close("2026-06");
        assertThat(book.differences()).isEmpty();
        assertThat(book.of("2026-09").corrections().rows()).isEmpty();
    }
}
