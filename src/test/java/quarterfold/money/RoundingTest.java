package quarterfold.money;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every rounding on both sides of the half, for what is sold and what is refunded. */
class RoundingTest {

    /** VATREC12030: under 0.5p goes down, 0.5p or more goes up; a refund mirrors its sale. */
    @ParameterizedTest(name = "{0} {1} is {2}")
    @CsvSource(
            textBlock =
                    """
        NEAREST_PENNY,            1.6649,  1.66
        NEAREST_PENNY,            1.6650,  1.67
        NEAREST_PENNY,            1.67,    1.67
        NEAREST_PENNY,            0.0049,  0
        NEAREST_PENNY,            0.0050,  0.01
        NEAREST_PENNY,            0,       0
        PENNY_DOWN,               3.9980,  3.99
        PENNY_DOWN,               3.9999,  3.99
        PENNY_DOWN,               3.99,    3.99
        PENNY_DOWN,               0.0099,  0
        NEAREST_TENTH_OF_A_PENNY, 0.0014,  0.001
        NEAREST_TENTH_OF_A_PENNY, 0.0015,  0.002
        NEAREST_HALF_PENNY,       0.0024,  0
        NEAREST_HALF_PENNY,       0.0025,  0.005
        NEAREST_HALF_PENNY,       1.0075,  1.01
        POUNDS_DOWN,              34.67,   34
        POUNDS_DOWN,              34.9999, 34
        POUNDS_DOWN,              34,      34
        POUNDS_DOWN,              0.9999,  0
        """)
    void bothSidesOfTheHalf(Rounding rounding, String exact, String rounded) {
        assertThat(Amount.of(exact).rounded(rounding)).isEqualTo(Amount.of(rounded));
        assertThat(Amount.of(exact).negated().rounded(rounding))
                .isEqualTo(Amount.of(rounded).negated());
    }
}
