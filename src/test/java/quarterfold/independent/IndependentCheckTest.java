package quarterfold.independent;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Some two thousand made-up return periods through the whole program, held against plain sums of
 * what the generator knows it wrote. The sources of the sums stand in the categories. All nine
 * boxes of every period must agree to the penny.
 */
class IndependentCheckTest {

    private static final List<Month> MONTHLY = List.of(Month.values());

    /** A quarter of the books. */
    private static final int BOOKS = Checks.books(21);

    @TempDir private Path folder;

    static IntStream since() {
        return IntStream.rangeClosed(1, 3 * BOOKS);
    }

    /** Twenty-four return periods of a month each, from some year since 2021. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("since")
    void agreesOnMonthsSince2021(int seed) throws IOException {
        check(seed, Categories.all(), 2021 + seed % 5, 24);
    }

    static IntStream before() {
        return IntStream.rangeClosed(10_001, 10_000 + BOOKS);
    }

    /** The same before 2021: over three changes of the standard rate, in 2008, 2010 and 2011. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("before")
    void agreesOnMonthsBefore2021(int seed) throws IOException {
        int year = seed % 3 == 0 ? 2012 + seed % 8 : 2007 + seed % 4;
        check(seed, Categories.all(), year, 24);
    }

    /** One quarter of 20,000 rows: whatever is a rounding too many adds up. */
    @Test
    void agreesOnABigQuarter() throws IOException {
        List<Month> quarters = List.of(Month.MARCH, Month.JUNE, Month.SEPTEMBER, Month.DECEMBER);
        Dice dice = new Dice(1_000);
        Trader trader = Trader.of(dice, LocalDate.of(2026, 4, 1), quarters);
        Sheets sheets = new Sheets();
        List<Category> categories = Categories.all();
        while (sheets.size() < 20_000) {
            happen(dice, trader, categories, YearMonth.of(2026, dice.between(4, 6)), sheets);
        }
        agree(trader, sheets, List.of(YearMonth.of(2026, 6)), Liability.PRODUCTS, "big quarter");
    }

    static Stream<Category> kinds() {
        return Stream.concat(Categories.all().stream(), Categories.alone().stream());
    }

    /** Nothing but one kind of event, which says where to look when a whole book disagrees. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("kinds")
    void agreesOnEachKindAlone(Category kind) throws IOException {
        check(-1, List.of(kind), 2025, 6);
    }

    private void check(int seed, List<Category> categories, int year, int periods)
            throws IOException {
        LocalDate registered = LocalDate.of(year, 1, 1);
        YearMonth last = YearMonth.of(year, 1).plusMonths(periods - 1);
        Dice dice = new Dice(seed);
        Trader trader = trader(dice, categories, registered);
        Sheets sheets = new Sheets();
        List<YearMonth> months = new ArrayList<>();
        for (YearMonth month = YearMonth.from(registered);
                !month.isAfter(last);
                month = month.plusMonths(1)) {
            months.add(month);
            int rows = sheets.size() + dice.between(20, 60);
            while (sheets.size() < rows) {
                happen(dice, trader, categories, month, sheets);
            }
        }
        String products = seed < 0 || seed % 4 == 0 ? Liability.WITH_EXEMPT : Liability.PRODUCTS;
        agree(trader, sheets, months, products, "seed " + seed);
    }

    private static void happen(
            Dice dice, Trader trader, List<Category> categories, YearMonth month, Sheets sheets) {
        LocalDate day = dice.dayOf(month);
        Category category = dice.of(categories);
        if (category.fits(trader, day)) {
            category.happen(dice, trader, day, sheets);
        }
    }

    private void agree(
            Trader trader, Sheets sheets, List<YearMonth> months, String products, String seed)
            throws IOException {
        try (CheckedBook book = new CheckedBook(folder, trader.settings(), products)) {
            book.enter(sheets);
            book.agree(sheets, months, seed + ", " + trader);
        }
    }

    /** One to whom something of that can happen. */
    private static Trader trader(Dice dice, List<Category> categories, LocalDate registered) {
        while (true) {
            Trader trader = Trader.of(dice, registered, MONTHLY);
            if (categories.stream().anyMatch(kind -> kind.fits(trader, registered))) {
                return trader;
            }
        }
    }
}
