package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static quarterfold.period.ExemptLines.bought;
import static quarterfold.period.ExemptLines.exempt;
import static quarterfold.period.ExemptLines.taxable;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleSettings;

/**
 * What part of a tax year partial exemption is settled over, and by whose share the year after it
 * goes: VAT Regulations 1995 reg 99 and reg 101(2)(d) and (f); HMRC manual PE37400.
 */
class LongerPeriodTest {

    @TempDir private Path folder;

    private TempBook book(String registered, String ends) {
        return new TempBook(
                folder,
                SampleSettings.of(
                        SampleSettings.choosing(Map.of()),
                        Periods.of(LocalDate.parse(registered), SampleSettings.months(ends)),
                        SampleSettings.GB.schemes()));
    }

    /** 90 per cent of 30,000.00 by this period's values; 27,000.00. */
    private static void thisYear(TempBook book) {
        book.enter(
                "now.csv",
                taxable("2026-08-01", "90000"),
                exempt("2026-08-01", "10000"),
                bought("2026-08-01", "30000", "both"));
    }

    private static String claimed(TempBook book, String period) {
        return book.of(period).box("4").text();
    }

    /** Reg 101(2)(d): "does not have an immediately preceding longer period". */
    @Test
    void aYearOfExemptSuppliesThatCostNoInputTaxHasNoShare() {
        try (TempBook book = book("2003-01-01", "3 6 9 12")) {
            book.enter(
                    "before.csv",
                    taxable("2025-08-01", "40000"),
                    exempt("2025-08-01", "60000"),
                    bought("2025-08-01", "5000", "taxable"));
            thisYear(book);
            assertThat(claimed(book, "2026-09")).isEqualTo("27000.00");
        }
    }

    /** PE37400: only in the last period of the year, and none the year before: none applies. */
    @Test
    void exemptInputTaxInTheLastPeriodAloneMakesNone() {
        try (TempBook book = book("2003-01-01", "3 6 9 12")) {
            book.enter(
                    "before.csv",
                    taxable("2025-05-01", "90000"),
                    taxable("2026-02-01", "40000"),
                    exempt("2026-02-01", "60000"),
                    bought("2026-02-01", "10000", "both"));
            thisYear(book);
            assertThat(claimed(book, "2026-03")).isEqualTo("4000.00");
            assertThat(book.of("2026-06").adjustments()).isEmpty();
            assertThat(claimed(book, "2026-09")).isEqualTo("27000.00");
        }
    }

    /** From the first exempt input tax on: 130,000 of 200,000, not 430,000 of 500,000. */
    @Test
    void theShareIsThatOfTheLongerPeriodAlone() {
        try (TempBook book = book("2003-01-01", "3 6 9 12")) {
            book.enter(
                    "before.csv",
                    taxable("2025-05-01", "300000"),
                    taxable("2025-11-01", "40000"),
                    exempt("2025-11-01", "60000"),
                    bought("2025-11-01", "20000", "both"),
                    taxable("2026-02-01", "90000"),
                    exempt("2026-02-01", "10000"));
            thisYear(book);
            assertThat(claimed(book, "2025-12")).isEqualTo("8000.00");
            assertThat(book.of("2026-06").adjustments())
                    .extracting(Adjustment::about, a -> a.claim().toString())
                    .containsExactly(tuple("2025-10-01 to 2026-03-31", "5000.00"));
            assertThat(claimed(book, "2026-09")).as("65 per cent").isEqualTo("19500.00");
            assertThat(book.of("2026-09").adjustments().get(0).why())
                    .contains(
                            "the share of the longer period 2025-10-01 to 2026-03-31: taxable"
                                    + " supplies 130000.00 of 200000.00, rounded up to a whole per cent");
        }
    }

    /**
     * Exempt input tax the year before: all of this one, also before its first exempt input tax.
     */
    @Test
    void allOfTheYearAfterOneWithExemptInputTax() {
        try (TempBook book = book("2003-01-01", "3 6 9 12")) {
            book.enter(
                    "before.csv",
                    taxable("2025-08-01", "50000"),
                    exempt("2025-08-01", "50000"),
                    bought("2025-08-01", "10000", "exempt"),
                    bought("2025-11-01", "10000", "exempt"));
            thisYear(book);
            assertThat(book.of("2027-06").adjustments())
                    .extracting(Adjustment::about)
                    .containsExactly("2026-04-01 to 2027-03-31");
        }
    }

    /**
     * What the year before left out by its annual adjustment alone, its share leaves out of this
     * year's returns, which the year gives back. Reg 107(1): "the difference".
     */
    @Test
    void afterAYearWithExemptInputTaxByItsAdjustmentAlone() {
        try (TempBook book = book("2003-01-01", "3 6 9 12")) {
            book.enter(
                    "before.csv",
                    taxable("2024-05-01", "90000"),
                    exempt("2024-05-01", "10000"),
                    bought("2024-05-01", "30000", "exempt"),
                    taxable("2025-05-01", "100000"),
                    bought("2025-05-01", "30000", "both"),
                    exempt("2025-08-01", "100000"),
                    taxable("2026-05-01", "100000"),
                    bought("2026-05-01", "30000", "both"));
            assertThat(claimed(book, "2026-06"))
                    .as("half, and the adjustment")
                    .isEqualTo("3000.00");
            assertThat(book.of("2027-06").adjustments())
                    .extracting(Adjustment::about, a -> a.claim().toString(), Adjustment::why)
                    .containsExactly(
                            tuple(
                                    "2026-04-01 to 2027-03-31",
                                    "15000.00",
                                    "The input tax of the year attributed anew over the whole of it,"
                                            + " less what its returns took: the annual adjustment."
                                            + " Input tax 30000.00: 0.00 used for taxable supplies,"
                                            + " 0.00 for exempt ones, 30000.00 for both. Of the part"
                                            + " for both 100% is for taxable supplies, which is"
                                            + " 30000.00 (taxable supplies 100000.00 of 100000.00,"
                                            + " rounded up to a whole per cent). For exempt supplies:"
                                            + " 0.00. All of it is deducted. The returns of the year"
                                            + " left out 15000.00, the year as a whole 0.00: 15000.00"
                                            + " more is deducted."));
        }
    }

    /**
     * One return a year goes by the share of the year before too, so its year must be settled: 40
     * per cent of 30,000.00 were deducted; by its own values 10 per cent are for exempt supplies,
     * which is small enough.
     */
    @Test
    void oneReturnAYearIsSettledToo() {
        try (TempBook book = book("2003-04-01", "3")) {
            book.enter(
                    "before.csv",
                    taxable("2025-08-01", "40000"),
                    exempt("2025-08-01", "60000"),
                    bought("2025-08-01", "30000", "both"),
                    taxable("2024-08-01", "40000"),
                    exempt("2024-08-01", "60000"),
                    bought("2024-08-01", "30000", "both"));
            thisYear(book);
            assertThat(claimed(book, "2027-03")).isEqualTo("12000.00");
            assertThat(claimed(book, "2028-03")).isEqualTo("18000.00");
        }
    }
}
