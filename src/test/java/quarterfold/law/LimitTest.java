package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.money.Amount;

/** Limits that are spans of time. */
class LimitTest {

    /** A month of a shorter month ends with it; 29 February is a year from 28 February. */
    @ParameterizedTest(name = "{0} {1} around {2}: {3} and {4}")
    @CsvSource({
        "4, years, 2024-02-29, 2020-02-29, 2028-02-29",
        "1, years, 2024-02-29, 2023-02-28, 2025-02-28",
        "3, months, 2026-05-31, 2026-02-28, 2026-08-31",
        "6, months, 2026-01-16, 2025-07-16, 2026-07-16",
        "14, days, 2026-03-01, 2026-02-15, 2026-03-15"
    })
    void aSpanBeforeAndAfterADay(
            String amount, String unit, LocalDate day, LocalDate before, LocalDate after) {
        Law.Limit limit = new Law.Limit(Amount.of(amount), unit);
        assertThat(limit.before(day)).isEqualTo(before);
        assertThat(limit.after(day)).isEqualTo(after);
    }

    @Test
    void whatIsNoSpanIsRefused() {
        Law.Limit pounds = new Law.Limit(Amount.of("250"), "pounds");
        assertThatThrownBy(() -> pounds.after(LocalDate.of(2026, 1, 1)))
                .isInstanceOf(LawException.class)
                .hasMessage("limits.csv: pounds is no span of time");
        assertThatThrownBy(() -> pounds.before(LocalDate.of(2026, 1, 1)))
                .isInstanceOf(LawException.class);
    }
}
