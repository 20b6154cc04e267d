package quarterfold.independent;

import static java.math.BigDecimal.ONE;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;

/**
 * Made-up quarters of a business on the flat rate from its registration on. The percentages are
 * those of the table in VAT Regulations 1995 reg 55K since 4 January 2011; a point less until the
 * day before the first anniversary of the registration, reg 55JB; 16.5 where goods come to less
 * than 2 per cent of the turnover, or than 1,000 a year, reg 55A(4).
 */
class FlatRateCheckTest {

    private static final int QUARTERS = 10;
    private static final BigDecimal LIMITED_COST = new BigDecimal("16.5");

    /** A sector's number in the table, and its percentage. */
    private record Sector(String id, String percent) {}

    private static final List<Sector> SECTORS =
            List.of(
                    new Sector("044", "7.5"), // retailing not listed elsewhere
                    new Sector("042", "4"), // retailing food, confectionery, tobacco, newspapers
                    new Sector("009", "14.5"), // computer and IT consultancy
                    new Sector("037", "11"), // publishing
                    new Sector("054", "8.5")); // wholesaling not listed elsewhere

    @TempDir private Path folder;

    static IntStream seeds() {
        return IntStream.rangeClosed(1, Checks.books(12));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agreesByThePercentageOfTheTakings(int seed) throws IOException {
        Dice dice = new Dice(50_000 + seed);
        // some register within a quarter, so that the lower percentage ends within one
        LocalDate registered = LocalDate.of(2021, 1, 1).plusMonths(dice.between(0, 24));
        Sector sector = dice.of(SECTORS);
        boolean inTime = !dice.oneIn(4);
        boolean valuesToo = dice.oneIn(2);
        boolean claimsAtLimit = dice.oneIn(2);
        Trader trader =
                Trader.gb(
                        registered,
                        dice.oneIn(3),
                        Map.of(
                                "flat-rate-first-year", inTime ? "yes" : "no",
                                "flat-rate-reverse-charge-in-boxes-6-and-7",
                                        valuesToo ? "yes" : "no",
                                "flat-rate-capital-goods-at-limit",
                                        claimsAtLimit ? "claim" : "not-claim"));
        FlatRateTrade trade = new FlatRateTrade(trader, valuesToo, claimsAtLimit);
        Sheets sheets = new Sheets();
        List<YearMonth> quarters = Quarters.from(registered, QUARTERS);
        for (YearMonth name : quarters) {
            quarter(dice, trade, name, sector, inTime, sheets);
        }
        Settings settings =
                SampleSettings.of(
                        trader.settings(),
                        trader.settings().periods(),
                        Schemes.of("flat-rate", Optional.of(sector.id())));
        try (CheckedBook book = new CheckedBook(folder, settings, Liability.PRODUCTS)) {
            book.enter(sheets);
            book.agree(sheets, quarters, "seed " + seed + ", " + sector);
        }
    }

    private static void quarter(
            Dice dice,
            FlatRateTrade trade,
            YearMonth name,
            Sector sector,
            boolean inTime,
            Sheets sheets) {
        LocalDate registered = trade.trader().registered();
        LocalDate first = name.minusMonths(2).atDay(1);
        LocalDate start = first.isBefore(registered) ? registered : first;
        LocalDate next = name.plusMonths(1).atDay(1);
        long months = ChronoUnit.MONTHS.between(start, next);
        FlatRateTrade.Quarter quarter = new FlatRateTrade.Quarter();
        int events = dice.between(8, 40);
        for (int i = 0; i < events; i++) {
            trade.happen(dice, day(dice, start, next), quarter, name + "-" + i, sheets);
        }
        BigDecimal turnover = quarter.turnover(start, next);
        BigDecimal part = turnover.movePointLeft(2).add(turnover.movePointLeft(2));
        BigDecimal least =
                new BigDecimal(1000 * months).divide(new BigDecimal(12), 6, RoundingMode.HALF_UP);
        BigDecimal missing =
                part.max(least).setScale(2, RoundingMode.CEILING).subtract(quarter.goods());
        if (missing.compareTo(ONE) > 0 && dice.oneIn(2)) {
            // a penny to either side of what makes a limited-cost trader
            BigDecimal stock = missing.add(BigDecimal.valueOf(dice.between(-1, 1), 2));
            trade.stock(day(dice, start, next), quarter, stock, name + "-stock", sheets);
        }
        boolean limited =
                quarter.goods().compareTo(part) < 0 || quarter.goods().compareTo(least) < 0;
        BigDecimal percent = limited ? LIMITED_COST : new BigDecimal(sector.percent());
        LocalDate anniversary = registered.plusYears(1);
        LocalDate split =
                !inTime || anniversary.isBefore(start)
                        ? start
                        : anniversary.isAfter(next) ? next : anniversary;
        sheets.box(
                start, 1, FlatRateTrade.due(quarter.turnover(start, split), percent.subtract(ONE)));
        sheets.box(start, 1, FlatRateTrade.due(quarter.turnover(split, next), percent));
    }

    private static LocalDate day(Dice dice, LocalDate start, LocalDate next) {
        return start.plusDays(dice.between(0, (int) ChronoUnit.DAYS.between(start, next) - 1));
    }
}
