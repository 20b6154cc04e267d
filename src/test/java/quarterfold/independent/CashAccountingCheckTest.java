package quarterfold.independent;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;

/**
 * Made-up quarters of a business under cash accounting, some of which leave it, held against plain
 * sums by the days money moved: VAT Regulations 1995 regs 56 to 65; VAT Notice 731.
 */
class CashAccountingCheckTest {

    private static final int QUARTERS = 16;

    /** What is outside the scheme, and what is paid as it happens. */
    private static final List<Category> OTHERS =
            List.of(
                    new TaxedSales(Liability.NOT_EXEMPT),
                    new Imports(),
                    new ServicesFromAbroad(false),
                    new Money());

    @TempDir private Path folder;

    static IntStream seeds() {
        return IntStream.rangeClosed(1, Checks.books(10));
    }

    /** Every third leaves the scheme, one half of them with six months more: reg 61. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agreesByTheDaysMoneyMoved(int seed) throws IOException {
        Dice dice = new Dice(30_000 + seed);
        LocalDate registered = LocalDate.of(2021 + seed % 3, 1, 1);
        boolean leaves = seed % 3 == 0;
        boolean later = seed % 2 == 0;
        Optional<LocalDate> left =
                leaves
                        ? Optional.of(registered.plusMonths(3L * dice.between(4, 12)))
                        : Optional.empty();
        Optional<LocalDate> last = left.map(day -> (later ? day.plusMonths(6) : day).minusDays(1));
        Trader trader =
                Trader.gb(
                        registered,
                        dice.oneIn(3),
                        Map.of("leaving-cash-accounting", later ? "six-months" : "settle-up"));
        PaidTrade trade = new PaidTrade(trader, left, last);
        Sheets sheets = new Sheets();
        for (int month = 0; month < 3 * QUARTERS; month++) {
            int rows = sheets.size() + dice.between(8, 20);
            while (sheets.size() < rows) {
                LocalDate day = dice.dayOf(java.time.YearMonth.from(registered.plusMonths(month)));
                if (dice.oneIn(4)) {
                    dice.of(OTHERS).happen(dice, trader, day, sheets);
                } else {
                    trade.happen(dice, day, sheets);
                }
            }
        }
        try (CheckedBook book =
                new CheckedBook(folder, settings(trader, left), Liability.PRODUCTS)) {
            book.enter(sheets);
            book.agree(sheets, Quarters.from(registered, QUARTERS), "seed " + seed);
        }
    }

    private static Settings settings(Trader trader, Optional<LocalDate> left) {
        TreeMap<LocalDate, String> from = new TreeMap<>(Map.of(trader.registered(), "cash"));
        left.ifPresent(day -> from.put(day, "standard"));
        Settings settings = trader.settings();
        return SampleSettings.of(settings, settings.periods(), new Schemes(from, Optional.empty()));
    }
}
