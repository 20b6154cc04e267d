package quarterfold.independent;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.ledger.Decision;

/** Made-up quarters in which a person decided of many rows, and took a quarter of it back. */
class DecisionsCheckTest {

    private static final int QUARTERS = 8;

    @TempDir private Path folder;

    static IntStream seeds() {
        return IntStream.rangeClosed(1, Checks.books(10));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agreesByWhatWasDecided(int seed) throws IOException {
        Dice dice = new Dice(100_000 + seed);
        LocalDate registered = LocalDate.of(2021 + seed % 4, 1, 1);
        Trader trader = Trader.gb(registered, dice.oneIn(3), Map.of());
        DecidedTrade trade = new DecidedTrade(trader);
        Sheets sheets = new Sheets();
        for (YearMonth quarter : Quarters.from(registered, QUARTERS)) {
            int events = dice.between(10, 40);
            for (int i = 0; i < events; i++) {
                trade.happen(dice, Quarters.day(dice, quarter), sheets);
            }
        }
        try (CheckedBook book = new CheckedBook(folder, trader.settings(), Liability.PRODUCTS)) {
            book.enter(sheets.file());
            for (DecidedTrade.Answer answer : trade.answers()) {
                long id =
                        book.decide(
                                answer.target(), answer.about(), answer.action(), answer.value());
                if (answer.undone()) {
                    book.decide(
                            answer.target(),
                            answer.about(),
                            Decision.Action.UNDO,
                            Long.toString(id));
                }
            }
            book.agree(sheets, Quarters.from(registered, QUARTERS), "seed " + seed);
        }
    }
}
