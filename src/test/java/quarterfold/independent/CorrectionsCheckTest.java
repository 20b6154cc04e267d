package quarterfold.independent;

import java.io.IOException;
import java.math.BigDecimal;
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
 * Made-up quarters that are closed one after the other, and what then comes late or is decided
 * otherwise, held against the rule of VAT Regulations 1995 reg 34 and HMRC manual VAEC7190.
 */
class CorrectionsCheckTest {

    private static final int QUARTERS = 5;

    @TempDir private Path folder;

    static IntStream seeds() {
        return IntStream.rangeClosed(1, Checks.books(16));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agreesOnWhatIsPutRightWhere(int seed) throws IOException {
        Dice dice = new Dice(80_000 + seed);
        LocalDate registered = LocalDate.of(2021 + seed % 5, 1, 1);
        boolean valuesToo = dice.oneIn(3);
        boolean apart = dice.oneIn(8);
        boolean atLimitApart = dice.oneIn(2);
        Trader trader =
                Trader.gb(
                        registered,
                        dice.oneIn(3),
                        Map.of(
                                "errors-in-boxes-6-to-9", valuesToo ? "yes" : "no",
                                "errors-told-separately", apart ? "yes" : "no",
                                "error-at-the-limit",
                                        atLimitApart ? "separately" : "on-the-return"));
        Late late = new Late(trader, valuesToo, apart, atLimitApart);
        Sheets sums = new Sheets();
        List<YearMonth> quarters = Quarters.from(registered, QUARTERS);
        try (CheckedBook book = new CheckedBook(folder, trader.settings(), Liability.PRODUCTS)) {
            for (YearMonth quarter : quarters) {
                BigDecimal turnover = own(dice, quarter, late, sums, book);
                if (quarter.isAfter(quarters.get(0))) {
                    YearMonth earlier = quarter.minusMonths(dice.oneIn(3) ? 6 : 3);
                    late.happen(
                            dice,
                            earlier.isBefore(quarters.get(0)) ? quarters.get(0) : earlier,
                            quarter,
                            turnover,
                            sums,
                            book);
                }
                book.agree(sums, List.of(quarter), "seed " + seed);
                book.close(quarter);
            }
            book.agree(sums, quarters, "closed, seed " + seed);
        }
    }

    /** What happens in the quarter itself; its turnover is what the limit goes by. */
    private static BigDecimal own(
            Dice dice, YearMonth quarter, Late late, Sheets sums, CheckedBook book)
            throws IOException {
        Sheets sheet = new Sheets();
        BigDecimal net =
                BigDecimal.valueOf(dice.between(0, dice.oneIn(2) ? 700_000_000 : 20_000_000), 2);
        LocalDate day = Quarters.day(dice, quarter);
        sheet.row(day, "sale")
                .put("net", net.toPlainString())
                .put("vat", Vat.onTop(net, new BigDecimal(20)).toPlainString());
        sums.box(day, 1, Vat.onTop(net, new BigDecimal(20)));
        sums.box(day, 6, net);
        int purchases = dice.between(1, 4);
        for (int i = 0; i < purchases; i++) {
            late.purchase(dice, Quarters.day(dice, quarter), sheet, sums);
        }
        late.entered(sheet, book);
        return net;
    }
}
