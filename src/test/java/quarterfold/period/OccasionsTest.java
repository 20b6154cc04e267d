package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;
import quarterfold.treatment.Treated;

/** What reaches into a period from another, found in a ledger on disk. */
class OccasionsTest {

    @TempDir Path folder;

    private static final Periods QUARTERS =
            Periods.of(LocalDate.of(2025, 1, 1), SampleSettings.months("3 6 9 12"));

    private static Settings scheme(Map<LocalDate, String> from) {
        return SampleSettings.on(QUARTERS, new Schemes(new TreeMap<>(from), Optional.empty()));
    }

    private TempBook standard() {
        return new TempBook(folder, SampleSettings.on(QUARTERS));
    }

    private static SampleLine invoice(String day) {
        return SampleLine.of("sale")
                .on(day)
                .printed("1000", "200")
                .rate("20")
                .document("INV-1")
                .party("Customer", "GB", "");
    }

    private static SampleLine received(String day, String money) {
        return SampleLine.of("customer-payment")
                .on(day)
                .gross(money)
                .document("INV-1")
                .party("Customer", "GB", "");
    }

    private static SampleLine export(String day) {
        return SampleLine.of("sale").on(day).gross("600").goods("", "US");
    }

    private static String box(TempBook book, String period, String box) {
        return book.of(period).box(box).text();
    }

    private static List<String> told(List<Treated> treated) {
        return treated.stream()
                .map(t -> t.occasion().day() + " " + t.treatment() + " " + new TreeMap<>(t.boxes()))
                .toList();
    }

    /** Exports of the months before, without any particular: HMRC manual VEXP30300. */
    @Test
    void theTimeForEvidenceRunsOutInTheNextPeriod() {
        try (TempBook book = standard()) {
            book.enter("a.csv", export("2026-01-10"), export("2025-11-30"), export("2026-03-31"));
            assertThat(box(book, "2026-03", "1")).as("of November").isEqualTo("100.00");
            assertThat(box(book, "2026-03", "6")).isEqualTo("1100");
            assertThat(box(book, "2026-06", "1")).as("of January and March").isEqualTo("200.00");
            assertThat(box(book, "2026-06", "6")).isEqualTo("-200");
            assertThat(box(book, "2026-09", "1")).isEqualTo("0.00");
        }
    }

    /** The refund's own date is far from the day its sale's evidence comes. */
    @Test
    void aRefundIsFoundWhenTheEvidenceOfItsSaleComes() {
        try (TempBook book = standard()) {
            book.enter(
                    "a.csv",
                    export("2025-05-10")
                            .order("Q-1")
                            .particular(Particular.EVIDENCED, "2026-02-03"),
                    SampleLine.of("sale-refund")
                            .on("2025-06-01")
                            .gross("300")
                            .goods("", "US")
                            .order("Q-1"));
            assertThat(box(book, "2025-06", "6")).isEqualTo("300");
            assertThat(box(book, "2025-09", "1")).isEqualTo("50.00");
            assertThat(box(book, "2026-03", "1")).isEqualTo("-50.00");
        }
    }

    /** Evidence seen by a decision, of an entry that states nothing itself. */
    @Test
    void decisionsReachIntoThePeriodOfTheirDay() {
        try (TempBook book = standard()) {
            book.enter("a.csv", export("2025-01-10").party("Buyer", "US", ""));
            decide(book, Decision.Target.ENTRY, "1");
            assertThat(box(book, "2025-06", "1")).isEqualTo("100.00");
            assertThat(box(book, "2026-09", "1")).isEqualTo("-100.00");
        }
    }

    @Test
    void decisionsAboutAPartyReachToo() {
        try (TempBook book = standard()) {
            book.enter("a.csv", export("2025-01-10").party("Buyer", "US", ""));
            decide(book, Decision.Target.PARTY, "Buyer");
            assertThat(box(book, "2026-09", "1")).isEqualTo("-100.00");
        }
    }

    private static void decide(TempBook book, Decision.Target target, String about) {
        book.ledger()
                .decide(
                        new Decision(
                                0,
                                target,
                                about,
                                Decision.Action.EVIDENCE_SEEN,
                                "export",
                                "the waybill came",
                                "a person",
                                LocalDate.of(2026, 8, 5)));
    }

    /** Closed as zero-rated, charged when the time ran out, and each in one return. */
    @Test
    void eachOccasionIsClosedOnce() {
        try (TempBook book = standard()) {
            book.enter("a.csv", export("2026-01-10"));
            book.close("2026-03");
            assertThat(box(book, "2026-06", "1")).isEqualTo("100.00");
            book.close("2026-06");
            decideSeen(book);
            assertThat(box(book, "2026-09", "1")).isEqualTo("-100.00");
            assertThat(told(book.returns().treated(1)))
                    .containsExactly(
                            "2026-01-10 export-awaited {6=600.00}",
                            "2026-04-10 export-overdue {1=100.00, 6=-100.00}",
                            "2026-08-05 export-evidenced {1=-100.00, 6=100.00}");
            List<Treated> all = new ArrayList<>();
            book.returns().forEachTreated(all::add);
            assertThat(told(all)).isEqualTo(told(book.returns().treated(1)));
        }
    }

    private static void decideSeen(TempBook book) {
        decide(book, Decision.Target.ENTRY, "1");
    }

    /** What a close froze stays in the list where a later paper shows it need not have been. */
    @Test
    void aFrozenOccasionIsNotForgotten() {
        try (TempBook book = standard()) {
            book.enter(
                    "a.csv",
                    SampleLine.of("purchase")
                            .on("2025-01-16")
                            .printed("1000", "200")
                            .rate("20")
                            .document("B-1")
                            .party("Supplier", "GB", "GB101747696")
                            .evidence("invoice")
                            .particular(Particular.DUE, "2025-02-15"));
            book.close("2025-03");
            book.close("2025-06");
            book.close("2025-09");
            book.enter(
                    "b.csv",
                    SampleLine.of("supplier-payment")
                            .on("2025-02-10")
                            .gross("1200")
                            .document("B-1")
                            .party("Supplier", "GB", ""));
            assertThat(told(book.returns().treated(1)))
                    .containsExactly(
                            "2025-01-16 uk-purchase {4=200.00, 7=1000.00}",
                            "2025-08-15 supplier-unpaid {4=-200.00}");
        }
    }

    /** VAT Regulations 1995 reg 57: what is paid in the period, whenever it was sold. */
    @Test
    void cashAccountingFindsWhatIsPaid() {
        try (TempBook book = new TempBook(folder, scheme(Map.of(LocalDate.MIN, "cash")))) {
            book.enter(
                    "a.csv",
                    invoice("2025-02-01"),
                    invoice("2025-02-02").document("INV-2").paid("2026-02-01"),
                    received("2025-03-31", "600"),
                    received("2026-01-01", "600"));
            assertThat(box(book, "2025-03", "1")).isEqualTo("100.00");
            assertThat(box(book, "2025-06", "1")).isEqualTo("0.00");
            assertThat(box(book, "2026-03", "1")).isEqualTo("300.00");
            List<Treated> all = new ArrayList<>();
            book.returns().forEachTreated(all::add);
            assertThat(told(all.subList(0, 3)))
                    .containsExactly(
                            "2025-02-01 awaiting-payment {}",
                            "2025-03-31 uk-sale {1=100.00, 6=500.00}",
                            "2026-01-01 uk-sale {1=100.00, 6=500.00}");
        }
    }

    /** Reg 61: through both changes of scheme every supply counts once, in the end in full. */
    @Test
    void changesOfSchemeNeitherLoseNorRepeat() {
        Map<LocalDate, String> schemes =
                Map.of(
                        LocalDate.of(2025, 1, 1), "standard",
                        LocalDate.of(2025, 7, 1), "cash",
                        LocalDate.of(2026, 1, 1), "standard");
        try (TempBook book = new TempBook(folder, scheme(schemes))) {
            book.enter(
                    "a.csv",
                    invoice("2025-06-30").document("INV-2").paid("2025-08-01"),
                    invoice("2025-08-15").document("INV-3").paid("2025-11-01"),
                    invoice("2025-09-15"),
                    received("2026-02-01", "1200"),
                    invoice("2026-01-05").document("INV-4").paid("2026-06-01"));
            assertThat(box(book, "2025-06", "1")).as("standard").isEqualTo("200.00");
            assertThat(box(book, "2025-09", "1")).as("nothing paid").isEqualTo("0.00");
            assertThat(box(book, "2025-12", "1")).as("paid, and settled up").isEqualTo("400.00");
            assertThat(box(book, "2026-03", "1")).as("standard again").isEqualTo("200.00");
            assertThat(box(book, "2026-06", "1")).isEqualTo("0.00");
        }
    }
}
