package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;
import static quarterfold.period.ExemptLines.bought;
import static quarterfold.period.ExemptLines.exempt;
import static quarterfold.period.ExemptLines.taxable;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Month;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;
import quarterfold.money.Percent;

/** Partial exemption by the standard method: VAT Regulations 1995 regs 99 to 107. */
class PartialExemptionTest {

    private static final Map<String, String> CURRENT =
            Map.of("partial-exemption-share", "current-period");

    @TempDir private Path folder;

    private static Settings settings(String registered, String ends, Map<String, String> choices) {
        return SampleSettings.of(
                SampleSettings.choosing(choices),
                Periods.of(LocalDate.parse(registered), SampleSettings.months(ends)),
                SampleSettings.GB.schemes());
    }

    private TempBook book(Settings settings) {
        return new TempBook(folder, settings);
    }

    private static String claimed(VatReturn vatReturn) {
        return vatReturn.box("4").text();
    }

    private String claimed(Settings settings, String period, SampleLine... lines) {
        try (TempBook book = book(settings)) {
            book.enter("period.csv", lines);
            return claimed(book.of(period));
        }
    }

    private static final Settings QUARTERS = settings("2003-01-01", "3 6 9 12", CURRENT);

    /** A book without exempt supplies claims what does not state its use, and takes nothing up. */
    @Test
    void noExemptSupplies() {
        try (TempBook book = book(QUARTERS)) {
            book.enter(
                    "a.csv",
                    taxable("2026-08-01", "1000"),
                    bought("2026-08-01", "3000", ""),
                    SampleLine.of("expense").gross("50").rate("exempt").evidence("invoice"));
            VatReturn vatReturn = book.of("2026-09");
            assertThat(claimed(vatReturn)).isEqualTo("3000.00");
            assertThat(vatReturn.adjustments()).isEmpty();
            assertThat(vatReturn.queries()).isEmpty();
        }
    }

    /** Reg 106(1): 625 a month on average, and one half of all input tax; both sides of each. */
    @ParameterizedTest
    @CsvSource({
        "3 6 9 12, 1875.00, 1875.00, 3750.00",
        "3 6 9 12, 1875.00, 1874.99, 1874.99",
        "3 6 9 12, 1875.01, 1876.00, 1876.00",
        "3 6 9 12, 1875.00, 9000.00, 10875.00",
        "1 2 3 4 5 6 7 8 9 10 11 12, 625.00, 700.00, 1325.00",
        "1 2 3 4 5 6 7 8 9 10 11 12, 625.01, 700.00, 700.00",
        "9, 7500.00, 7600.00, 15100.00",
        "9, 7500.01, 7600.00, 7600.00"
    })
    void deMinimis(String ends, String forExempt, String forTaxable, String claim) {
        assertThat(
                        claimed(
                                settings("2003-01-01", ends, CURRENT),
                                "2026-09",
                                taxable("2026-09-01", "40000"),
                                exempt("2026-09-01", "60000"),
                                bought("2026-09-01", forExempt, "exempt"),
                                bought("2026-09-01", forTaxable, "taxable")))
                .isEqualTo(claim);
    }

    /** Reg 105A(1) as inserted by SI 2010/559 on 1 April 2010: for periods that begin then. */
    @ParameterizedTest
    @CsvSource({"2010-03, 0.00", "2010-06, 1875.00"})
    void theSimplerTestHasADay(String period, String claim) {
        String day = period + "-01";
        assertThat(
                        claimed(
                                QUARTERS,
                                period,
                                taxable(day, "50000"),
                                exempt(day, "50000"),
                                bought(day, "1875.00", "exempt")))
                .isEqualTo(claim);
    }

    /** Reg 105A(1): both sides of 625 a month, and of one half of the supplies. */
    @ParameterizedTest
    @CsvSource({"1875.00, 50000, 2875.00", "1875.01, 50000, 1000.00", "1875.00, 50000.01, 1000.00"})
    void theSimplerTest(String forExempt, String exemptSupplies, String claim) {
        assertThat(
                        claimed(
                                QUARTERS,
                                "2026-09",
                                taxable("2026-09-01", "50000"),
                                exempt("2026-09-01", exemptSupplies),
                                bought("2026-09-01", "1000", "taxable"),
                                bought("2026-09-01", forExempt, "exempt")))
                .isEqualTo(claim);
    }

    /** Reg 101(4): up to the next whole per cent; 79.01 per cent is 80. */
    @ParameterizedTest
    @CsvSource({"79010, 20990, 8000.00", "79000, 21000, 7900.00", "100, 99900, 100.00"})
    void theShareIsRoundedUp(String taxable, String exempt, String claim) {
        assertThat(
                        claimed(
                                QUARTERS,
                                "2026-09",
                                taxable("2026-08-01", taxable),
                                exempt("2026-08-01", exempt),
                                bought("2026-08-01", "10000", "both")))
                .isEqualTo(claim);
    }

    /** Reg 101(5), SI 2005/762: to two decimals above 400,000 a month on average. */
    @ParameterizedTest
    @CsvSource({
        "2026-09, 1200000.00, 960000.00",
        "2026-09, 1200000.01, 948120.01",
        "2005-03, 1200000.01, 960000.01"
    })
    void theShareOfALargeBusiness(String period, String vat, String claim) {
        String day = period + "-02";
        assertThat(
                        claimed(
                                QUARTERS,
                                period,
                                taxable(day, "79010"),
                                exempt(day, "20990"),
                                bought(day, vat, "both")))
                .isEqualTo(claim);
    }

    /** Reg 101(3): capital goods and incidental supplies are left out of the share. */
    @Test
    void suppliesLeftOutOfTheShare() {
        assertThat(
                        claimed(
                                QUARTERS,
                                "2026-09",
                                taxable("2026-08-01", "40000"),
                                exempt("2026-08-01", "60000"),
                                taxable("2026-08-02", "900000").category("business-asset"),
                                exempt("2026-08-02", "500000").category("incidental"),
                                bought("2026-08-01", "10000", "both")))
                .isEqualTo("4000.00");
    }

    /** Import VAT and the reverse charge are input tax; relief for bad debts is not. */
    @Test
    void whatIsInputTax() {
        assertThat(
                        claimed(
                                QUARTERS,
                                "2026-09",
                                taxable("2026-08-01", "40000"),
                                exempt("2026-08-01", "60000"),
                                SampleLine.of("import-vat-postponed")
                                        .printed("50000", "10000")
                                        .evidence("postponed-statement")
                                        .particular(Particular.USE, "both"),
                                SampleLine.of("fee")
                                        .gross("5000")
                                        .party("Example channel", "IE", "")
                                        .evidence("invoice")
                                        .particular(Particular.USE, "exempt"),
                                SampleLine.of("other-money")
                                        .gross("600")
                                        .rate("20")
                                        .category("bad-debt-relief")))
                .as("4,000.00 of the import and 100.00 of the relief")
                .isEqualTo("4100.00");
    }

    @Test
    void theWholeWorking() {
        try (TempBook book = book(QUARTERS)) {
            book.enter(
                    "a.csv",
                    taxable("2026-08-01", "30000"),
                    exempt("2026-08-01", "70000"),
                    bought("2026-08-01", "1000", "taxable"),
                    bought("2026-08-01", "500", "exempt"),
                    bought("2026-08-01", "3000", "both"));
            assertThat(book.of("2026-09").adjustments())
                    .singleElement()
                    .satisfies(
                            a -> {
                                assertThat(a.treatment()).isEqualTo("partial-exemption");
                                assertThat(a.about()).isEqualTo("2026-07-01 to 2026-09-30");
                                assertThat(a.claim().toString()).isEqualTo("-2600.00");
                                assertThat(a.boxes()).hasToString("{4=-2600.00}");
                                assertThat(a.authority())
                                        .startsWith("VATA 1994 s.26; VAT Regulations 1995 reg 101");
                                assertThat(a.why())
                                        .isEqualTo(
                                                "Input tax that exempt supplies cost is not deducted, unless it is small enough. "
                                                        + "Input tax 4500.00: 1000.00 used for taxable supplies, 500.00 for exempt ones, 3000.00 for both. "
                                                        + "Of the part for both 30% is for taxable supplies, which is 900.00 (taxable supplies 30000.00 of 100000.00, rounded up to a whole per cent). "
                                                        + "For exempt supplies: 2600.00. "
                                                        + "Input tax other than for taxable supplies, 3500.00, is above 1875.00 (625.00 a month for 3 months), and exempt supplies, 70000.00, are above 50% of all supplies, 100000.00: the simpler test is not met. "
                                                        + "Input tax for exempt supplies, 2600.00, is above 1875.00 (625.00 a month for 3 months) and above 50% of all input tax, 4500.00: it is not deducted.");
                            });
        }
    }

    /** VAT kept back for want of a use is asked about in one question; a decision answers it. */
    @Test
    void aUseThatIsNotStated() {
        try (TempBook book = book(QUARTERS)) {
            SampleLine[] lines = new SampleLine[8];
            lines[0] = taxable("2026-08-01", "40000");
            lines[1] = exempt("2026-08-01", "60000");
            for (int i = 2; i < lines.length; i++) {
                lines[i] = bought("2026-08-01", "1000", "");
            }
            book.enter("a.csv", lines);
            VatReturn vatReturn = book.of("2026-09");
            assertThat(claimed(vatReturn)).isEqualTo("0.00");
            assertThat(vatReturn.queries())
                    .singleElement()
                    .satisfies(
                            q -> {
                                assertThat(q.id()).isEqualTo("2026-09/partial-exemption-use");
                                assertThat(q.holdsClose()).isTrue();
                                assertThat(q.money().toString()).isEqualTo("6000.00");
                                assertThat(q.question())
                                        .isEqualTo(
                                                "The business makes exempt supplies, and purchases with VAT of 6000.00 do not state what they are used for (entries 3, 4, 5, 6, 7 and 1 more). That VAT is not reclaimed. State use as taxable, exempt or both.");
                            });
            book.decide("party", "Example supplier", "state", "use=taxable");
            assertThat(claimed(book.of("2026-09"))).isEqualTo("6000.00");
            assertThat(book.of("2026-09").queries()).isEmpty();
        }
    }

    /** What is small enough even as exempt needs no answer. */
    @Test
    void aUseThatDoesNotMatter() {
        try (TempBook book = book(QUARTERS)) {
            book.enter(
                    "a.csv",
                    taxable("2026-08-01", "60000"),
                    exempt("2026-08-01", "40000"),
                    bought("2026-08-01", "1875", ""));
            assertThat(claimed(book.of("2026-09"))).isEqualTo("1875.00");
            assertThat(book.of("2026-09").queries()).isEmpty();
        }
    }

    /** Reg 101(2)(f): the year before was 40 per cent, though this period is 90. */
    @Test
    void lastYearsShare() {
        try (TempBook book = book(settings("2003-01-01", "3 6 9 12", Map.of()))) {
            book.enter(
                    "a.csv",
                    taxable("2025-08-01", "40000"),
                    exempt("2025-08-01", "60000"),
                    bought("2025-04-01", "10000", "both"),
                    taxable("2026-08-01", "90000"),
                    exempt("2026-08-01", "10000"),
                    bought("2026-08-01", "10000", "both"));
            VatReturn vatReturn = book.of("2026-09");
            assertThat(claimed(vatReturn)).isEqualTo("4000.00");
            assertThat(vatReturn.adjustments().get(0).why())
                    .contains(
                            "Of the part for both 40% is for taxable supplies, which is 4000.00 (the share of the longer period 2025-04-01 to 2026-03-31: taxable supplies 40000.00 of 100000.00, rounded up to a whole per cent).");
            assertThat(vatReturn.queries()).isEmpty();
        }
    }

    /** Reg 101(2)(d): without exempt supplies in the year before, this period's values. */
    @ParameterizedTest
    @CsvSource({"2003-01-01, true", "2026-04-01, false"})
    void noYearBefore(String registered, boolean sold) {
        try (TempBook book = book(settings(registered, "3 6 9 12", Map.of()))) {
            if (sold) {
                book.enter("before.csv", taxable("2025-08-01", "40000"));
            }
            book.enter(
                    "a.csv",
                    taxable("2026-08-01", "90000"),
                    exempt("2026-08-01", "10000"),
                    bought("2026-08-01", "30000", "both"));
            assertThat(claimed(book.of("2026-09"))).isEqualTo("27000.00");
            assertThat(book.of("2026-09").queries()).isEmpty();
        }
    }

    /** A year the book does not hold is asked for, or stated in the settings. */
    @Test
    void aYearTheBookDoesNotHold() {
        Periods periods = SampleSettings.GB.periods();
        Periods stated =
                new Periods(
                        periods.registeredFrom(),
                        periods.registeredTo(),
                        periods.ends(),
                        periods.notified(),
                        periods.annual(),
                        periods.onAccount(),
                        periods.partialExemptionYearEnds(),
                        Optional.of(Percent.of("43")));
        SampleLine[] lines = {
            taxable("2026-08-01", "90000"),
            exempt("2026-08-01", "10000"),
            bought("2026-08-01", "30000", "both")
        };
        try (TempBook book = new TempBook(folder.resolve("asked"), SampleSettings.GB)) {
            book.enter("a.csv", lines);
            assertThat(claimed(book.of("2026-09"))).isEqualTo("27000.00");
            assertThat(book.of("2026-09").queries())
                    .singleElement()
                    .satisfies(
                            q ->
                                    assertThat(q.question())
                                            .isEqualTo(
                                                    "VAT of 30000.00 on purchases used for taxable and exempt supplies goes by the share of the tax year before, which this book does not hold. It went by the supplies of this period. Set partial_exemption_last_year in book.yaml, or choose partial-exemption-share: current-period."));
        }
        try (TempBook book = new TempBook(folder.resolve("stated"), SampleSettings.on(stated))) {
            book.enter("a.csv", lines);
            assertThat(claimed(book.of("2026-09"))).isEqualTo("12900.00");
            assertThat(book.of("2026-09").queries()).isEmpty();
        }
    }

    /** Four quarters to 31 March: 50, 80, 50 and 80 per cent taxable, 4,000.00 for both in each. */
    private static void year(TempBook book) {
        int quarter = 0;
        for (String day : List.of("2025-04-01", "2025-07-01", "2025-10-01", "2026-01-01")) {
            boolean even = quarter++ % 2 == 0;
            book.enter(
                    day + ".csv",
                    taxable(day, even ? "50000" : "80000"),
                    exempt(day, even ? "50000" : "20000"),
                    bought(day, "10000", "both"));
        }
    }

    /**
     * Reg 107(1): the year as a whole has taxable supplies of 400,000 in 540,000, which is 75 per
     * cent, so 10,000.00 is left out; its quarters left out 5,000.00, 2,000.00, 5,000.00 and
     * nothing.
     */
    @Test
    void theYearSettledOnTheFirstReturnAfterIt() {
        try (TempBook book = book(QUARTERS)) {
            year(book);
            book.enter("more.csv", taxable("2026-03-31", "140000"));
            assertThat(claimed(book.of("2026-03")))
                    .as("220,000 of 240,000 is 92 per cent, rounded up; 800.00 is small enough")
                    .isEqualTo("10000.00");
            for (String period : List.of("2025-06", "2025-09", "2025-12", "2026-03")) {
                book.close(period);
            }
            VatReturn after = book.of("2026-06");
            assertThat(after.adjustments())
                    .singleElement()
                    .satisfies(
                            a -> {
                                assertThat(a.treatment()).isEqualTo("partial-exemption-year");
                                assertThat(a.about()).isEqualTo("2025-04-01 to 2026-03-31");
                                assertThat(a.why())
                                        .endsWith(
                                                "The returns of the year left out 12000.00, the year as a whole 10000.00: 2000.00 more is deducted.");
                            });
            assertThat(claimed(after)).isEqualTo("2000.00");
            assertThat(book.of("2026-09").adjustments()).isEmpty();
        }
    }

    /** The same figures whether the quarters are closed or open, and on the year's last return. */
    @Test
    void theYearSettledOnItsLastReturn() {
        Settings last =
                settings(
                        "2003-01-01",
                        "3 6 9 12",
                        Map.of(
                                "partial-exemption-share", "current-period",
                                "partial-exemption-year-on", "last-of-year"));
        try (TempBook book = book(last)) {
            year(book);
            book.enter("more.csv", taxable("2026-03-31", "140000"));
            assertThat(claimed(book.of("2026-03"))).isEqualTo("12000.00");
            assertThat(book.of("2026-06").adjustments()).isEmpty();
        }
    }

    /**
     * Reg 99 (paragraph from memory): without exempt input tax in the year before, the longer
     * period begins with the first period that has some.
     */
    @Test
    void theFirstLongerPeriod() {
        try (TempBook book = book(QUARTERS)) {
            book.enter(
                    "a.csv",
                    taxable("2025-04-01", "1000000"),
                    bought("2025-04-01", "10000", "taxable"),
                    taxable("2025-07-01", "50000"),
                    exempt("2025-07-01", "50000"),
                    bought("2025-07-01", "10000", "both"),
                    taxable("2026-01-01", "50000"));
            assertThat(book.of("2026-06").adjustments())
                    .singleElement()
                    .satisfies(
                            a -> {
                                assertThat(a.about()).isEqualTo("2025-07-01 to 2026-03-31");
                                assertThat(a.why())
                                        .contains("taxable supplies 100000.00 of 150000.00")
                                        .endsWith(
                                                "The returns of the year left out 5000.00, the year as a whole 0.00: 5000.00 more is deducted.");
                            });
        }
    }

    /**
     * Reg 99(1)(d): the tax year ends with March, April or May, as the periods do; or as stated.
     */
    @ParameterizedTest
    @CsvSource({
        "3 6 9 12, , 2026-06, 2025-04-01 to 2026-03-31",
        "1 4 7 10, , 2026-07, 2025-05-01 to 2026-04-30",
        "2 5 8 11, , 2026-08, 2025-06-01 to 2026-05-31",
        "3 6 9 12, 12, 2026-03, 2025-01-01 to 2025-12-31"
    })
    void taxYears(String ends, Integer stated, String settles, String about) {
        Periods periods =
                new Periods(
                        LocalDate.parse("2003-01-01"),
                        Optional.empty(),
                        SampleSettings.months(ends),
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.ofNullable(stated).map(Month::of));
        try (TempBook book =
                book(SampleSettings.of(SampleSettings.choosing(CURRENT), periods, schemes()))) {
            for (String day : List.of("2024-12-01", "2025-02-01", "2025-06-01", "2025-12-01")) {
                book.enter(
                        day + ".csv",
                        taxable(day, "50000"),
                        exempt(day, "50000"),
                        bought(day, "10000", "both"));
            }
            assertThat(book.of(settles).adjustments())
                    .filteredOn(a -> a.treatment().equals("partial-exemption-year"))
                    .extracting(Adjustment::about)
                    .containsExactly(about);
        }
    }

    private static Schemes schemes() {
        return SampleSettings.GB.schemes();
    }

    /** Reg 107E(1)(b): residual input tax of more than 50,000 in the year. */
    @ParameterizedTest
    @CsvSource({"40000.00, 0", "40000.01, 1"})
    void theOverrideIsNotWorkedOut(String vat, int queries) {
        try (TempBook book = book(QUARTERS)) {
            book.enter(
                    "a.csv",
                    taxable("2025-04-01", "50000"),
                    exempt("2025-04-01", "50000"),
                    bought("2025-04-01", "10000", "both"),
                    taxable("2026-01-01", "50000"),
                    exempt("2026-01-01", "50000"),
                    bought("2026-01-01", vat, "both"));
            assertThat(TempBook.queries(book.of("2026-06")))
                    .isEqualTo(
                            queries == 0
                                    ? List.of()
                                    : List.of("2026-03-31/partial-exemption-override"));
        }
    }

    /** Reg 107(3), by SI 2002/1074 (note): the last return settles the part of a year. */
    @Test
    void theLastReturn() {
        Periods periods = QUARTERS.periods();
        Periods ended =
                new Periods(
                        periods.registeredFrom(),
                        Optional.of(LocalDate.parse("2026-08-31")),
                        periods.ends(),
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty());
        try (TempBook book = book(SampleSettings.of(QUARTERS, ended, schemes()))) {
            book.enter(
                    "a.csv",
                    taxable("2026-04-01", "50000"),
                    exempt("2026-04-01", "50000"),
                    bought("2026-04-01", "10000", "both"),
                    taxable("2026-08-31", "200000"),
                    exempt("2026-08-31", "20000"),
                    bought("2026-08-31", "10000", "both"));
            assertThat(claimed(book.of("2026-06"))).isEqualTo("5000.00");
            assertThat(claimed(book.of("2026-08")))
                    .as("79 per cent of 20,000.00 over five months, less the 5,000.00 claimed")
                    .isEqualTo("10800.00");
        }
    }

    /** A flat-rate trader has no input tax to attribute, and such a period is in no year. */
    @Test
    void flatRatePeriodsAreLeftOut() {
        Schemes changing =
                new Schemes(
                        new TreeMap<>(
                                Map.of(
                                        LocalDate.parse("2003-01-01"), "flat-rate",
                                        LocalDate.parse("2025-10-01"), "standard")),
                        Optional.of("044"));
        Settings settings =
                SampleSettings.of(
                        SampleSettings.choosing(CURRENT), SampleSettings.GB.periods(), changing);
        try (TempBook book = book(settings)) {
            year(book);
            assertThat(book.of("2025-09").adjustments())
                    .extracting(Adjustment::treatment)
                    .containsExactly("flat-rate");
            assertThat(book.of("2026-06").adjustments())
                    .extracting(Adjustment::about)
                    .containsExactly("2025-10-01 to 2026-03-31");
        }
    }
}
