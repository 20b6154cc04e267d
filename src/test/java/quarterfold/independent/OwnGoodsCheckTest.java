package quarterfold.independent;

import static java.math.RoundingMode.DOWN;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Made-up periods with own goods moved and road fuel put to private use. Goods moved from Great
 * Britain to Northern Ireland have the same VAT in boxes 1 and 4 (HMRC manuals PE68300 and
 * VBNB47210); from there to the European Union their value is in boxes 6 and 8 (VAT Notice 700/12
 * box 8); other moves are nowhere. The fuel scale charge has its VAT in box 1 and the rest in box 6
 * (VATA 1994 ss.56 and 57).
 */
class OwnGoodsCheckTest {

    /** A charge for one car by grams of carbon dioxide, for 3 months and for one. */
    private record Charge(int quarter, int month) {}

    private static final LocalDate MAY_2025 = LocalDate.of(2025, 5, 1);
    private static final LocalDate MAY_2026 = LocalDate.of(2026, 5, 1);

    /** GOV.UK, VAT road fuel scale charges from 1 May 2025 and 2026 (secondary source). */
    private static final NavigableMap<Integer, Charge> FROM_2025 =
            new TreeMap<>(
                    Map.of(
                            0, new Charge(164, 54),
                            125, new Charge(248, 82),
                            130, new Charge(263, 87),
                            135, new Charge(280, 93),
                            140, new Charge(297, 99),
                            145, new Charge(313, 103),
                            150, new Charge(330, 109),
                            155, new Charge(347, 115),
                            160, new Charge(363, 120)));

    private static final NavigableMap<Integer, Charge> FROM_2026 =
            new TreeMap<>(
                    Map.of(
                            0, new Charge(163, 54),
                            125, new Charge(246, 81),
                            130, new Charge(261, 86),
                            135, new Charge(278, 92),
                            140, new Charge(294, 98),
                            145, new Charge(311, 103),
                            150, new Charge(328, 109),
                            155, new Charge(344, 114),
                            160, new Charge(361, 119)));

    @TempDir private Path folder;

    static IntStream seeds() {
        return IntStream.rangeClosed(1, Checks.books(10));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agreesOnGoodsMovedAndFuelUsed(int seed) throws IOException {
        Dice dice = new Dice(90_000 + seed);
        boolean monthly = seed % 2 == 0;
        boolean inBox7 = dice.oneIn(2);
        LocalDate registered = LocalDate.of(2025, 7, 1);
        Trader trader =
                new Trader(
                        "GB",
                        dice.of("GB", "XI"),
                        true,
                        dice.oneIn(3),
                        Map.of(
                                "stock-to-ni-in-box-7", inBox7 ? "yes" : "no",
                                "unregistered-supplier-in-box-7", "yes",
                                "blocked-in-box-7", "yes",
                                "import-value-from", "import-entry"),
                        registered,
                        monthly ? List.of(Month.values()) : Quarters.ENDS);
        List<YearMonth> names =
                Stream.iterate(
                                YearMonth.of(2025, monthly ? 7 : 9),
                                n -> n.plusMonths(monthly ? 1 : 3))
                        .limit(monthly ? 18 : 6)
                        .toList();
        Sheets sheets = new Sheets();
        List<Category> others =
                List.of(new TaxedSales(Liability.NOT_EXEMPT), new UkPurchases(), new Money());
        for (YearMonth name : names) {
            YearMonth first = monthly ? name : name.minusMonths(2);
            int events = dice.between(10, 30);
            for (int i = 0; i < events; i++) {
                LocalDate day = dice.dayOf(first.plusMonths(monthly ? 0 : dice.between(0, 2)));
                switch (dice.between(1, 4)) {
                    case 1 -> fuel(dice, trader, day, first.atDay(1), monthly, sheets);
                    case 2, 3 -> moved(dice, trader, day, inBox7, sheets);
                    default -> dice.of(others).happen(dice, trader, day, sheets);
                }
            }
        }
        try (CheckedBook book = new CheckedBook(folder, trader.settings(), Liability.PRODUCTS)) {
            book.enter(sheets);
            book.agree(sheets, names, "seed " + seed);
        }
    }

    private static void moved(
            Dice dice, Trader trader, LocalDate day, boolean inBox7, Sheets sheets) {
        String from = dice.of("GB", "GB", "XI");
        String to =
                from.equals("GB")
                        ? dice.of("XI", "XI", "DE", "US")
                        : dice.of("DE", "FR", "GB", "US");
        BigDecimal rate = dice.of(List.of(Vat.standard(day), Vat.standard(day), Vat.REDUCED));
        Price price = Price.atRate(dice, trader, rate, dice.pounds());
        Sheets.Row row = sheets.row(day, "stock-moved").put("from", from).put("to", to);
        if (to.equals("XI")) {
            row.put(price).put("rate", rate.toPlainString());
            sheets.box(day, 1, price.vat());
            sheets.box(day, 4, price.vat());
            if (inBox7) {
                sheets.box(day, 7, price.net());
            }
            return;
        }
        BigDecimal value = price.net().setScale(2, DOWN);
        row.put("gross", value.toPlainString());
        if (from.equals("XI") && (to.equals("DE") || to.equals("FR"))) {
            sheets.box(day, 6, value);
            sheets.box(day, 8, value);
        }
    }

    /** By the table in force when the period begins; grams are rounded down to a multiple of 5. */
    private static void fuel(
            Dice dice,
            Trader trader,
            LocalDate day,
            LocalDate periodStart,
            boolean monthly,
            Sheets sheets) {
        int co2 = dice.between(60, 164);
        NavigableMap<Integer, Charge> table =
                periodStart.isBefore(MAY_2026) ? FROM_2025 : FROM_2026;
        if (periodStart.isBefore(MAY_2025)) {
            throw new IllegalArgumentException("no charges for " + periodStart);
        }
        Charge charge = Optional.ofNullable(table.floorEntry(co2)).orElseThrow().getValue();
        BigDecimal gross = BigDecimal.valueOf(monthly ? charge.month() : charge.quarter());
        Sheets.Row row = sheets.row(day, "fuel-scale").put("co2", Integer.toString(co2));
        if (dice.oneIn(2)) {
            row.put("gross", gross.toPlainString());
        }
        BigDecimal vat = Vat.inside(gross, Vat.standard(day), trader);
        sheets.box(day, 1, vat);
        sheets.box(day, 6, gross.subtract(vat));
    }
}
