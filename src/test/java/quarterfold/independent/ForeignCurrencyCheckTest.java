package quarterfold.independent;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Made-up quarters of a business that buys and sells in other currencies too, held against plain
 * divisions by rates that were made for the test.
 */
class ForeignCurrencyCheckTest {

    private static final int QUARTERS = 12;

    @TempDir private Path folder;

    static IntStream seeds() {
        return IntStream.rangeClosed(1, Checks.books(12));
    }

    /** Every third goes by daily rates, every fourth rounds each amount to the penny. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agreesByTheRateOfTheTaxPoint(int seed) throws IOException {
        Dice dice = new Dice(40_000 + seed);
        boolean daily = seed % 3 == 0;
        LocalDate registered = LocalDate.of(2021 + seed % 3, 1, 1);
        YearMonth first = YearMonth.from(registered);
        RateLists rates = new RateLists(dice, first.minusMonths(3), 3 * QUARTERS + 3);
        Trader trader =
                Trader.gb(
                        registered,
                        seed % 4 == 0,
                        Map.of("exchange-rates", daily ? "ecb" : "period-rate"));
        ForeignTrade trade = new ForeignTrade(trader, rates, daily);
        List<Category> others =
                List.of(new TaxedSales(Liability.NOT_EXEMPT), new UkPurchases(), new Money());
        Sheets sheets = new Sheets();
        for (int month = 0; month < 3 * QUARTERS; month++) {
            int rows = sheets.size() + dice.between(5, 25);
            while (sheets.size() < rows) {
                LocalDate day = dice.dayOf(first.plusMonths(month));
                if (dice.oneIn(5)) {
                    dice.of(others).happen(dice, trader, day, sheets);
                } else {
                    trade.happen(dice, day, "F-" + sheets.size(), sheets);
                }
            }
        }
        try (CheckedBook book = new CheckedBook(folder, trader.settings(), Liability.PRODUCTS)) {
            book.enter(daily ? rates.daily() : rates.monthly());
            book.enter(sheets);
            book.agree(sheets, Quarters.from(registered, QUARTERS), "seed " + seed);
        }
    }
}
