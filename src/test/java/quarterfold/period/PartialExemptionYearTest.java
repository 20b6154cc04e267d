package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.law.Law;
import quarterfold.law.Tables;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;

/** Partial exemption over the periods of a year: VAT Regulations 1995 regs 99 to 107. */
class PartialExemptionYearTest {

    private static final Settings CURRENT =
            SampleSettings.choosing(Map.of("partial-exemption-share", "current-period"));

    @TempDir private Path folder;

    private TempBook book() {
        return new TempBook(folder, CURRENT);
    }

    private static SampleLine taxable(String day, String net) {
        return SampleLine.of("sale").on(day).net(net).rate("0");
    }

    private static SampleLine exempt(String day, String net) {
        return SampleLine.of("sale").on(day).net(net).rate("exempt");
    }

    private static SampleLine bought(String day, String net, String vat) {
        return SampleLine.of("purchase")
                .on(day)
                .printed(net, vat)
                .rate("20")
                .category("stock")
                .party("Example supplier", "GB", "GB101747696")
                .evidence("invoice");
    }

    /** Bought with VAT of 10,000.00, for both. */
    private static SampleLine forBoth(String day) {
        return bought(day, "50000", "10000").particular(Particular.USE, "both");
    }

    private static SampleLine unstated(String day) {
        return bought(day, "15000", "3000");
    }

    /** A quarter half exempt: by reg 101(2)(d) it leaves out 5,000.00 of 10,000.00. */
    private static void half(TempBook book, String day) {
        book.enter(day, taxable(day, "50000"), exempt(day, "50000"), forBoth(day));
    }

    private static String claimed(TempBook book, String period) {
        return book.of(period).box("4").text();
    }

    private static Adjustment settled(TempBook book, Law law, String period) {
        return book.returns(law).of(book.period(period)).adjustments().stream()
                .filter(a -> a.treatment().equals("partial-exemption-year"))
                .findFirst()
                .orElseThrow();
    }

    /** What none of four quarters stated is one question of the year. */
    @Test
    void usesUnstatedOverTheYear() {
        try (TempBook book = book()) {
            for (String day : List.of("2025-04-01", "2025-07-01", "2025-10-01", "2026-01-01")) {
                book.enter(
                        day,
                        taxable(day, "50000"),
                        exempt(day, "50000"),
                        unstated(day),
                        unstated(day));
            }
            assertThat(book.of("2026-06").queries())
                    .extracting(q -> q.id() + " " + q.money() + " " + q.question())
                    .containsExactly(
                            "2026-03-31/partial-exemption-use 24000.00 The business makes exempt supplies, and purchases with VAT of 24000.00 do not state what they are used for (entries 3, 4, 7, 8, 11 and 3 more). That VAT is not reclaimed. State use as taxable, exempt or both.");
            book.decide("party", "Example supplier", "state", "use=taxable");
            book.decide("entry", "16", "state", "use=exempt");
            assertThat(book.of("2026-06").queries()).isEmpty();
        }
    }

    @Test
    void fiveEntriesAreAllNamed() {
        try (TempBook book = book()) {
            String day = "2026-08-01";
            book.enter(
                    "a.csv",
                    exempt(day, "50000"),
                    unstated(day),
                    unstated(day),
                    unstated(day),
                    unstated(day),
                    unstated(day));
            assertThat(book.of("2026-09").queries())
                    .singleElement()
                    .satisfies(q -> assertThat(q.question()).contains("(entries 2, 3, 4, 5, 6)."));
        }
    }

    /** Exempt supplies earlier in the tax year make a use matter in a quarter without any. */
    @Test
    void aQuarterAfterAPartlyExemptOne() {
        try (TempBook book = book()) {
            book.enter(
                    "a.csv",
                    exempt("2026-05-01", "50000"),
                    taxable("2026-08-01", "50000"),
                    unstated("2026-08-01"));
            assertThat(claimed(book, "2026-09")).isEqualTo("0.00");
            assertThat(TempBook.queries(book.of("2026-09")))
                    .containsExactly("2026-09/partial-exemption-use");
        }
    }

    @Test
    void aQuarterBeforeAPartlyExemptOne() {
        try (TempBook book = book()) {
            book.enter(
                    "a.csv",
                    exempt("2026-03-01", "50000"),
                    taxable("2026-08-01", "50000"),
                    unstated("2026-08-01"),
                    exempt("2026-11-01", "50000"));
            assertThat(claimed(book, "2026-09"))
                    .as("March is of the year before, November still to come")
                    .isEqualTo("3000.00");
            assertThat(book.of("2026-09").queries()).isEmpty();
        }
    }

    /** Reg 99: after a year with exempt input tax the longer period is the whole tax year. */
    @Test
    void theYearAfterAPartlyExemptOneIsWhole() {
        try (TempBook book = book()) {
            half(book, "2026-01-01");
            book.enter("more.csv", taxable("2026-05-01", "50000"));
            half(book, "2026-07-01");
            assertThat(settled(book, TempBook.LAW, "2027-06").about())
                    .isEqualTo("2026-04-01 to 2027-03-31");
        }
    }

    /**
     * Reg 107(1): twice 5,000.00 left out, and 10,000.00 of the year: nothing is left to settle.
     */
    @Test
    void nothingToSettle() {
        try (TempBook book = book()) {
            half(book, "2025-04-01");
            half(book, "2025-07-01");
            Adjustment settled = settled(book, TempBook.LAW, "2026-06");
            assertThat(settled.why())
                    .endsWith(
                            "The returns of the year left out 10000.00, the year as a whole 10000.00: 0.00 more is deducted.");
            assertThat(settled.boxes()).isEmpty();
        }
    }

    /**
     * Reg 107(1): what the returns left out is what they were closed with, whatever the limits are
     * now: with 6,250 a month as an invented limit the year deducts all of it.
     */
    @Test
    void whatClosedReturnsLeftOut() {
        try (TempBook book = book()) {
            half(book, "2025-04-01");
            half(book, "2025-07-01");
            book.close("2025-06");
            book.close("2025-09");
            Law generous =
                    Tables.with(
                            "limits.csv",
                            text ->
                                    text.replace(
                                            "partial-exemption-month,625,",
                                            "partial-exemption-month,6250,"));
            Adjustment settled = settled(book, generous, "2026-06");
            assertThat(settled.why())
                    .endsWith(
                            "The returns of the year left out 10000.00, the year as a whole 0.00: 10000.00 more is deducted.");
            assertThat(settled.boxes()).hasToString("{4=10000.00}");
        }
    }

    /** The settlement of the year before, on a return of this year, is not left out of this one. */
    @Test
    void theSettlementBeforeIsOfItsOwnYear() {
        try (TempBook book = book()) {
            half(book, "2025-04-01");
            book.enter("more.csv", taxable("2026-01-01", "250000"), forBoth("2026-01-01"));
            half(book, "2026-04-01");
            half(book, "2026-07-01");
            for (String quarter : List.of("2025-06", "2025-09", "2025-12", "2026-03", "2026-06")) {
                book.close(quarter);
            }
            assertThat(settled(book, TempBook.LAW, "2026-06").boxes())
                    .as("the year before: 300,000 of 350,000 is 86 per cent, 2,800.00 is small")
                    .hasToString("{4=5000.00}");
            assertThat(settled(book, TempBook.LAW, "2027-06").why())
                    .endsWith(
                            "The returns of the year left out 10000.00, the year as a whole 10000.00: 0.00 more is deducted.");
        }
    }

    /** A flat-rate trader deducts no input tax: those quarters are no part of the longer period. */
    @Test
    void flatRateQuartersAreNoPartOfIt() {
        Schemes changing =
                new Schemes(
                        new TreeMap<>(
                                Map.of(
                                        LocalDate.parse("2003-01-01"), "standard",
                                        LocalDate.parse("2025-10-01"), "flat-rate")),
                        Optional.of("044"));
        try (TempBook book =
                new TempBook(
                        folder,
                        SampleSettings.of(CURRENT, SampleSettings.GB.periods(), changing))) {
            for (String day : List.of("2025-04-01", "2025-07-01", "2025-10-01", "2026-01-01")) {
                half(book, day);
            }
            assertThat(settled(book, TempBook.LAW, "2026-06").about())
                    .isEqualTo("2025-04-01 to 2025-09-30");
        }
    }
}
