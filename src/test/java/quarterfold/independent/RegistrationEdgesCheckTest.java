package quarterfold.independent;

import static java.math.RoundingMode.HALF_UP;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleSettings;

/**
 * Made-up short registrations, from what was bought before them to the goods left when they ended:
 * VAT Regulations 1995 reg 111 and HMRC manual VIT32000; VATA 1994 Sch 4 para 8 and VATDREG16050.
 */
class RegistrationEdgesCheckTest {

    private static final BigDecimal HUNDRED = new BigDecimal(100);
    private static final BigDecimal NOT_DUE = new BigDecimal("1000.00");

    @TempDir private Path folder;

    static IntStream seeds() {
        return IntStream.rangeClosed(1, Checks.books(24));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agreesFromTheFirstReturnToTheLast(int seed) throws IOException {
        Dice dice = new Dice(70_000 + seed);
        LocalDate registered =
                LocalDate.of(2021 + seed % 5, dice.between(1, 12), dice.between(1, 28));
        LocalDate ended = registered.plusDays(dice.between(100, 300));
        boolean values = dice.oneIn(2);
        Trader trader =
                Trader.gb(
                        registered,
                        dice.oneIn(3),
                        Map.of("pre-registration-in-box-7", values ? "yes" : "no"));
        Sheets sheets = new Sheets();
        int before = dice.between(5, 25);
        for (int i = 0; i < before; i++) {
            bought(dice, trader, ended, "O-" + i, values, sheets);
        }
        during(dice, trader, ended, sheets);
        stock(dice, ended, sheets);
        Periods periods =
                new Periods(
                        registered,
                        Optional.of(ended),
                        Quarters.ENDS,
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty());
        try (CheckedBook book =
                new CheckedBook(
                        folder,
                        SampleSettings.of(trader.settings(), periods, trader.settings().schemes()),
                        Liability.PRODUCTS)) {
            book.enter(sheets);
            book.agree(sheets, names(registered, ended), "seed " + seed + ", " + periods);
        }
    }

    private static List<YearMonth> names(LocalDate registered, LocalDate ended) {
        List<YearMonth> names = new ArrayList<>();
        YearMonth name = Quarters.of(registered);
        while (name.isBefore(YearMonth.from(ended))) {
            names.add(name);
            name = name.plusMonths(3);
        }
        names.add(YearMonth.from(ended)); // the last period is named by the month it ends in
        return names;
    }

    /** From before the registration, often a day to either side of what the law reaches back to. */
    private static void bought(
            Dice dice,
            Trader trader,
            LocalDate ended,
            String document,
            boolean values,
            Sheets sheets) {
        LocalDate registered = trader.registered();
        if (dice.oneIn(6)) { // sold before it: in no return
            sheets.row(registered.minusDays(dice.between(1, 400)), "sale")
                    .put("gross", dice.pounds().toPlainString());
            return;
        }
        boolean goods = dice.oneIn(2);
        LocalDate first = goods ? registered.minusYears(4) : registered.minusMonths(6);
        int days = (int) ChronoUnit.DAYS.between(first, registered);
        LocalDate day =
                first.plusDays(dice.oneIn(2) ? dice.between(-1, 1) : dice.between(0, days - 1));
        BigDecimal gross = dice.pounds();
        Price price =
                Price.printed(dice, gross, Vat.inside(gross, new BigDecimal(20), trader), Map.of());
        boolean held = !dice.oneIn(6);
        boolean credit = dice.oneIn(8);
        String category = dice.oneIn(6) ? "client-entertaining" : goods ? "stock" : "software";
        int onHand = dice.oneIn(3) ? dice.between(0, 100) : 100;
        Sheets.Row row =
                sheets.row(day, (goods ? "purchase" : "expense") + (credit ? "-credit" : ""))
                        .put(price)
                        .put("document", document)
                        .put("party", "Example supplier")
                        .put("party_country", "GB")
                        .put("party_vat", "GB101747696")
                        .put("category", category)
                        .put("evidence", held ? "invoice" : "missing");
        LocalDate claimed = registered;
        if (goods) {
            row.put("on_hand", Integer.toString(onHand));
        }
        if (dice.oneIn(5)) {
            LocalDate came = day.plusDays(dice.between(0, 90));
            row.put("held", came.toString());
            claimed = came.isBefore(registered) ? registered : came;
        }
        boolean blocked = category.equals("client-entertaining");
        if (day.isBefore(first) || !held || blocked || claimed.isAfter(ended)) {
            return;
        }
        BigDecimal part = new BigDecimal(goods ? onHand : 100).multiply(sign(credit));
        sheets.box(claimed, 4, share(price.vat(), part));
        if (values) {
            sheets.box(claimed, 7, share(price.net(), part));
        }
    }

    private static BigDecimal sign(boolean credit) {
        return credit ? BigDecimal.ONE.negate() : BigDecimal.ONE;
    }

    private static BigDecimal share(BigDecimal amount, BigDecimal percent) {
        return amount.multiply(percent).divide(HUNDRED, 4, HALF_UP);
    }

    private static void during(Dice dice, Trader trader, LocalDate ended, Sheets sheets) {
        List<Category> categories =
                List.of(
                        new TaxedSales(Liability.NOT_EXEMPT),
                        new UkPurchases(),
                        new Imports(),
                        new Money());
        int days = (int) ChronoUnit.DAYS.between(trader.registered(), ended);
        int events = dice.between(5, 60);
        for (int i = 0; i < events; i++) {
            LocalDate day = trader.registered().plusDays(dice.between(0, days));
            dice.of(categories).happen(dice, trader, day, sheets);
        }
        if (dice.oneIn(2)) { // after the end: in no return
            sheets.row(ended.plusDays(dice.between(1, 5)), "sale").put("gross", "120.00");
        }
    }

    /** Goods left are supplied on the last day, unless the VAT on all of them is 1,000 or less. */
    private static void stock(Dice dice, LocalDate ended, Sheets sheets) {
        List<Price> all = new ArrayList<>();
        BigDecimal vat = BigDecimal.ZERO;
        int rows = dice.between(0, 4);
        for (int i = 0; i < rows; i++) {
            BigDecimal rate =
                    dice.oneIn(4) ? dice.of(List.of(Vat.REDUCED, Vat.NONE)) : new BigDecimal(20);
            BigDecimal net = BigDecimal.valueOf(dice.between(100, 300_000), 2);
            all.add(priced(net, rate));
            vat = vat.add(Vat.onTop(net, rate));
        }
        BigDecimal missing = NOT_DUE.subtract(vat);
        if (missing.signum() > 0 && dice.oneIn(2)) { // a penny to either side of the limit
            BigDecimal net =
                    missing.add(BigDecimal.valueOf(dice.between(-1, 1), 2))
                            .multiply(new BigDecimal(5));
            all.add(priced(net, new BigDecimal(20)));
            vat = vat.add(Vat.onTop(net, new BigDecimal(20)));
        }
        for (Price price : all) {
            sheets.row(ended, "stock-on-hand").put(price);
            if (vat.compareTo(NOT_DUE) > 0) {
                sheets.box(ended, 1, price.vat());
                sheets.box(ended, 6, price.net());
            }
        }
    }

    private static Price priced(BigDecimal net, BigDecimal rate) {
        return new Price(
                net,
                Vat.onTop(net, rate),
                Map.of("net", net.toPlainString(), "rate", rate.toPlainString()));
    }
}
