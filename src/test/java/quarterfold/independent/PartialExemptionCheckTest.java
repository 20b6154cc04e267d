package quarterfold.independent;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Made-up quarters of a business with exempt supplies, held against the standard method. */
class PartialExemptionCheckTest {

    private static final int QUARTERS = 14;

    @TempDir private Path folder;

    static IntStream seeds() {
        return IntStream.rangeClosed(1, Checks.books(12));
    }

    /** What a tax year is like. */
    private enum Year {
        TAXABLE,
        EXEMPT_SUPPLIES_ALONE,
        EXEMPT_LATE_IN_THE_YEAR,
        EXEMPT
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agreesByTheStandardMethod(int seed) throws IOException {
        Dice dice = new Dice(60_000 + seed);
        LocalDate registered = LocalDate.of(2021 + seed % 3, 1 + 3 * dice.between(0, 3), 1);
        boolean byLastYear = dice.oneIn(2);
        boolean onLast = dice.oneIn(3);
        Trader trader =
                Trader.gb(
                        registered,
                        dice.oneIn(3),
                        Map.of(
                                "partial-exemption-share",
                                        byLastYear ? "last-year" : "current-period",
                                "partial-exemption-year-on",
                                        onLast ? "last-of-year" : "first-after"));
        Sheets sheets = new Sheets();
        NavigableMap<YearMonth, UseQuarter> sums = new TreeMap<>();
        Year year = Year.EXEMPT;
        for (YearMonth name : Quarters.from(registered, QUARTERS)) {
            if (name.getMonthValue() == 6) {
                year = dice.of(List.of(Year.values()));
            }
            boolean supplies = year != Year.TAXABLE && !(isEarly(name) && isLate(year));
            boolean purchases = supplies && year != Year.EXEMPT_SUPPLIES_ALONE;
            sums.put(name, new UseTrade(trader, supplies, purchases).quarter(dice, name, sheets));
        }
        ExemptYears years = new ExemptYears(sums, byLastYear);
        for (YearMonth name : sums.keySet()) {
            sheets.box(name.atDay(1), 4, years.denied(name).negate());
            YearMonth settles = onLast ? name : name.minusMonths(3);
            if (settles.getMonthValue() == 3) {
                sheets.box(name.atDay(1), 4, years.adjustment(settles));
            }
        }
        try (CheckedBook book = new CheckedBook(folder, trader.settings(), Liability.WITH_EXEMPT)) {
            book.enter(sheets);
            book.agree(sheets, List.copyOf(sums.keySet()), "seed " + seed + " " + trader);
        }
    }

    private static boolean isEarly(YearMonth name) {
        return name.getMonthValue() == 6 || name.getMonthValue() == 9;
    }

    private static boolean isLate(Year year) {
        return year == Year.EXEMPT_LATE_IN_THE_YEAR;
    }
}
