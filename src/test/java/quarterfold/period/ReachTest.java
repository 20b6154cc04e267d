package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;

/** What reaches into a period though nothing else in the book points at it. */
class ReachTest {

    private static final Periods QUARTERS =
            Periods.of(LocalDate.of(2025, 1, 1), SampleSettings.months("3 6 9 12"));

    @TempDir private Path folder;

    private static Settings scheme(Map<LocalDate, String> from) {
        return SampleSettings.on(QUARTERS, new Schemes(new TreeMap<>(from), Optional.empty()));
    }

    private static SampleLine invoice(String kind, String day) {
        return SampleLine.of(kind)
                .on(day)
                .printed("1000", "200")
                .rate("20")
                .document("INV-" + day)
                .party("Other business", "GB", "GB101747696")
                .evidence("invoice");
    }

    private static List<String> boxes(TempBook book, String period) {
        return List.of(book.of(period).box("1").text(), book.of(period).box("4").text());
    }

    /** VAT Regulations 1995 reg 57: by the day stated as paid alone, of a sale and a purchase. */
    @Test
    void cashAccountingGoesByTheDayPaid() {
        try (TempBook book = new TempBook(folder, scheme(Map.of(LocalDate.MIN, "cash")))) {
            book.enter(
                    "a.csv",
                    invoice("sale", "2025-02-01").paid("2025-08-01"),
                    invoice("purchase", "2025-02-02").paid("2025-12-31"));
            assertThat(boxes(book, "2025-03")).containsExactly("0.00", "0.00");
            assertThat(boxes(book, "2025-09")).containsExactly("200.00", "0.00");
            assertThat(boxes(book, "2025-12")).containsExactly("0.00", "200.00");
        }
    }

    /** Reg 61: what is unpaid when a book leaves the scheme is in the last return under it. */
    @Test
    void whatIsNeverPaidIsSettledUp() {
        Map<LocalDate, String> schemes =
                Map.of(LocalDate.of(2025, 1, 1), "cash", LocalDate.of(2026, 1, 1), "standard");
        try (TempBook book = new TempBook(folder, scheme(schemes))) {
            book.enter("a.csv", invoice("sale", "2025-02-01"), invoice("purchase", "2025-02-02"));
            for (String before : List.of("2025-03", "2025-06", "2025-09")) {
                assertThat(boxes(book, before)).as(before).containsExactly("0.00", "0.00");
            }
            assertThat(boxes(book, "2025-12")).containsExactly("200.00", "200.00");
            assertThat(boxes(book, "2026-03")).containsExactly("0.00", "0.00");
        }
    }

    /** VAT Notice 718: the list of goods alone says that what is sold is on the margin scheme. */
    @Test
    void marginGoodsByTheListAlone() throws IOException {
        try (TempBook book = new TempBook(folder, SampleSettings.GB)) {
            book.enter(
                    "a.csv",
                    SampleLine.of("sale")
                            .product("CHAIR-1")
                            .gross("1600")
                            .particular(Particular.COST, "1000"));
            assertThat(book.of("2026-09").box("1").text()).isEqualTo("266.67");
            book.products("CHAIR-1,margin,,\n");
            assertThat(book.of("2026-09").box("1").text()).isEqualTo("100.00");
        }
    }

    /** VAT Notice 700 s.31: delivery goes with the goods, whatever is only in a bundle. */
    @Test
    void deliveryFollowsABundle() throws IOException {
        try (TempBook book = new TempBook(folder, SampleSettings.GB)) {
            book.products("BOOK,zero,2003-01-01,\n");
            Files.writeString(
                    folder.resolve("bundles.csv"),
                    "bundle,product,shelf_price,from,to\nSET,BOOK,10.00,2003-01-01,\n");
            book.enter(
                    "a.csv",
                    SampleLine.of("sale").gross("10").product("SET").order("Q-1"),
                    SampleLine.of("delivery").gross("3.60").order("Q-1"),
                    SampleLine.of("delivery").gross("3.60").order("Q-2"));
            assertThat(book.of("2026-09").box("1").text()).isEqualTo("0.60");
            VatReturn closed = book.close("2026-09");
            Files.writeString(
                    folder.resolve("bundles.csv"),
                    "bundle,product,shelf_price,from,to\nSET,OTHER,10.00,2003-01-01,\n");
            assertThat(book.differences()).as("closed with the list as it was").isEmpty();
            assertThat(book.of("2026-09")).isEqualTo(closed);
        }
    }

    /** GOV.UK, VAT road fuel scale charges from 1 May 2026: 163 for a quarter, to 120 grams. */
    @Test
    void theFuelChargeGoesByTheLengthOfThePeriod() {
        SampleLine car =
                SampleLine.of("fuel-scale").on("2026-09-30").particular(Particular.CO2, "118");
        try (TempBook book = new TempBook(folder, SampleSettings.GB)) {
            book.enter("a.csv", car);
            assertThat(book.of("2026-09").box("1").text()).isEqualTo("27.17");
            assertThat(book.of("2026-09").box("6").text()).isEqualTo("135");
            assertThat(book.of("2026-09").queries()).isEmpty();
        }
    }

    /**
     * VAT Regulations 1995 reg 29(1): claimed when the document is held, an import like a purchase.
     */
    @Test
    void aPurchaseHeldLaterIsALateClaimOfEachKind() {
        try (TempBook book = new TempBook(folder, SampleSettings.GB)) {
            book.enter(
                    "a.csv",
                    SampleLine.of("import-vat-paid")
                            .on("2026-06-20")
                            .vat("70")
                            .evidence("import-certificate")
                            .particular(Particular.HELD, "2026-07-10"),
                    invoice("purchase", "2026-06-21").particular(Particular.HELD, "2026-07-10"));
            assertThat(book.of("2026-09").corrections().rows())
                    .extracting(r -> r.entry() + " " + r.of() + " " + r.takenUp().code())
                    .containsExactly("1 2026-06 late-claim", "2 2026-06 late-claim");
            assertThat(book.of("2026-09").box("4").text()).isEqualTo("270.00");
        }
    }
}
