package quarterfold.independent;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.ledger.Decision;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;

/**
 * Made-up months in which a third of the rows was entered as money of which nobody knew what it
 * was, until a person said it of each: the nine boxes are the plain sums of what the rows are.
 */
class KindsDecidedCheckTest {
    private static final int MONTHS = 12;

    @TempDir private Path folder;

    static IntStream seeds() {
        return IntStream.rangeClosed(1, Checks.books(8));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agreesByWhatRowsAre(int seed) throws IOException {
        Dice dice = new Dice(110_000 + seed);
        LocalDate registered = LocalDate.of(2021 + seed % 5, 1, 1);
        Trader trader = Trader.of(dice, registered, List.of(Month.values()));
        List<Category> categories = Categories.all();
        Sheets sheets = new Sheets();
        for (int month = 0; month < MONTHS; month++) {
            YearMonth name = YearMonth.from(registered.plusMonths(month));
            int rows = sheets.size() + dice.between(20, 60);
            while (sheets.size() < rows) {
                LocalDate day = dice.dayOf(name);
                Category category = dice.of(categories);
                if (category.fits(trader, day)) {
                    category.happen(dice, trader, day, sheets);
                }
            }
        }
        List<YearMonth> months =
                IntStream.range(0, MONTHS)
                        .mapToObj(m -> YearMonth.from(registered.plusMonths(m)))
                        .toList();
        check(trader.settings(), sheets, dice, months, "seed " + seed + ", " + trader);
    }

    /** What counts when it is paid is found whatever it was entered as: regs 57 and 65. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agreesUnderCashAccounting(int seed) throws IOException {
        Dice dice = new Dice(120_000 + seed);
        LocalDate registered = LocalDate.of(2021 + seed % 3, 1, 1);
        Trader trader = Trader.gb(registered, dice.oneIn(3), Map.of());
        PaidTrade trade = new PaidTrade(trader, Optional.empty(), Optional.empty());
        Sheets sheets = new Sheets();
        for (int month = 0; month < MONTHS; month++) {
            int rows = sheets.size() + dice.between(8, 20);
            while (sheets.size() < rows) {
                trade.happen(
                        dice, dice.dayOf(YearMonth.from(registered.plusMonths(month))), sheets);
            }
        }
        Settings settings = trader.settings();
        check(
                SampleSettings.of(
                        settings,
                        settings.periods(),
                        new Schemes(new TreeMap<>(Map.of(registered, "cash")), Optional.empty())),
                sheets,
                dice,
                Quarters.from(registered, MONTHS / 3),
                "seed " + seed);
    }

    private void check(
            Settings settings, Sheets sheets, Dice dice, List<YearMonth> periods, String about)
            throws IOException {
        Map<Long, String> kinds = sheets.disguise(dice);
        assertThat(kinds).hasSizeGreaterThan(20);
        try (CheckedBook book = new CheckedBook(folder, settings, Liability.PRODUCTS)) {
            book.enter(sheets.file());
            kinds.forEach(
                    (number, kind) ->
                            book.decide(
                                    Decision.Target.ENTRY,
                                    Long.toString(number),
                                    Decision.Action.STATE,
                                    "kind=" + kind));
            book.agree(sheets, periods, about);
        }
    }
}
