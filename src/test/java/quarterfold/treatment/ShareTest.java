package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.money.Amount;

class ShareTest {

    @Test
    void aThirdThreeTimes() {
        Amount whole = Amount.of("300");
        Amount third = Amount.of("100");
        Amount vat = Amount.of("0.1");
        assertThat(new Share(Amount.ZERO, third, whole).of(vat)).hasToString("0.0333");
        assertThat(new Share(third, third, whole).of(vat)).hasToString("0.0334");
        assertThat(new Share(Amount.of("200"), third, whole).of(vat)).hasToString("0.0333");
    }

    @Test
    void theWholeIsUntouched() {
        Amount amount = Amount.of("-12.3456");
        assertThat(Share.WHOLE.of(amount)).isEqualTo(amount);
        assertThat(Share.WHOLE.isWhole()).isTrue();
        assertThat(new Share(Amount.ZERO, Amount.of("7"), Amount.of("7")).isWhole()).isTrue();
        assertThat(new Share(Amount.of("1"), Amount.of("6"), Amount.of("7")).isWhole()).isFalse();
        assertThat(new Share(Amount.ZERO, Amount.of("6"), Amount.of("7")).isWhole()).isFalse();
    }

    /** Whatever the parts, they add up to the amount. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void partsAddUp(long seed) {
        Random random = new Random(seed);
        for (int run = 0; run < 200; run++) {
            Amount whole = new Amount(1 + random.nextInt(100_000_000));
            Amount amount = new Amount(random.nextInt() / 2L);
            Amount before = Amount.ZERO;
            Amount sum = Amount.ZERO;
            while (!before.equals(whole)) {
                long left = whole.minus(before).tenThousandths();
                Amount part = new Amount(1 + random.nextInt(Integer.MAX_VALUE) % left);
                sum = sum.plus(new Share(before, part, whole).of(amount));
                before = before.plus(part);
            }
            assertThat(sum).as("seed %d, run %d", seed, run).isEqualTo(amount);
        }
    }
}
