package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Random;

/** Chance that falls the same way for the same seed. */
final class Dice {

    private final Random random;

    Dice(long seed) {
        this.random = new Random(seed);
    }

    /** From {@code least} to {@code most}, both included. */
    int between(int least, int most) {
        return least + random.nextInt(most - least + 1);
    }

    boolean oneIn(int times) {
        return random.nextInt(times) == 0;
    }

    String of(String... choices) {
        return choices[random.nextInt(choices.length)];
    }

    <T> T of(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }

    /** Pounds and pence, mostly small as prices are. */
    BigDecimal pounds() {
        return BigDecimal.valueOf(between(100, oneIn(5) ? 200_000 : 12_000), 2);
    }

    LocalDate dayOf(YearMonth month) {
        return month.atDay(between(1, month.lengthOfMonth()));
    }
}
