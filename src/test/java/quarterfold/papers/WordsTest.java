package quarterfold.papers;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.money.Amount;
import quarterfold.period.Period;

class WordsTest {

    @ParameterizedTest
    @CsvSource({
        "uk-sale, UK sale",
        "uk-sale-reduced, UK sale: refund or discount",
        "ni-acquisition-credit, NI acquisition credit",
        "imported-goods-in-box-7, Imported goods in box 7",
        "'', ''",
    })
    void treatments(String code, String words) {
        assertThat(Words.treatment(code)).isEqualTo(words);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0.00",
        "1670, '1,670.00'",
        "-1234567.8, '-1,234,567.80'",
        "1.665, 1.665",
        "0.0001, 0.0001",
    })
    void money(String amount, String words) {
        assertThat(Words.money(Amount.of(amount))).isEqualTo(words);
    }

    @Test
    void spanOverTheTurnOfTheYearSaysBothYears() {
        Period winter =
                new Period(
                        YearMonth.of(2027, 1),
                        LocalDate.of(2026, 11, 1),
                        LocalDate.of(2027, 1, 31),
                        LocalDate.of(2027, 3, 7));

        assertThat(Words.span(winter)).isEqualTo("1 November 2026 to 31 January 2027");
        assertThat(Words.span(Samples.PERIOD)).isEqualTo("1 July to 30 September 2026");
    }

    @ParameterizedTest
    @CsvSource({
        "Tea towel, 20, 1",
        "Copper kettle with a lid, 14, 2",
        "WWWWWWWWWW, 6, 3",
        "'one\ntwo', 20, 2",
    })
    void linesOfAText(String text, double width, int lines) {
        assertThat(Wrapping.lines(text, width)).isEqualTo(lines);
    }
}
