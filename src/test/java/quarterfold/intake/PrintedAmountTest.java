package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.money.Amount;

/** Amounts in the text of pages, however they are written. */
class PrintedAmountTest {

    private static boolean isIn(String text, String amount, String currency) {
        return new PrintedAmount(Amount.of(amount), currency).isIn(text);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1,234.56",
                "1.234,56",
                "1 234,56",
                "1'234.56",
                "1\u2019234.56",
                "1234.56",
                "1234,56",
                "1234\u00b756",
                "Total £1,234.56",
                "-1,234.56",
                "(1,234.56)",
                "Qty 2 1 234,56",
                "1,234.56.",
                "to pay:1,234.56 GBP"
            })
    void inAnyWriting(String text) {
        assertThat(isIn(text, "1234.56", "GBP")).isTrue();
        assertThat(isIn(text, "-1234.56", "GBP")).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "11,234.56",
                "1,234.567",
                "1,234.5",
                "1,234",
                "12,34.56",
                "9.1,234.56",
                "1,234.56.7",
                "1,235.56",
                "1,234\n.56",
                ""
            })
    void notWithinAnotherNumber(String text) {
        assertThat(isIn(text, "1234.56", "GBP")).isFalse();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    Total £1,200              | GBP | true
                    Total GBP 1200            | GBP | true
                    1.200 €                   | EUR | true
                    € -1.200                  | EUR | true
                    1.200,-                   | EUR | true
                    1,200.00                  | GBP | true
                    1,200                     | GBP | false
                    1200 bowls                | GBP | false
                    EUR 1,200                 | GBP | false
                    £1,200.50                 | GBP | false
                    £11,200                   | GBP | false
                    Total 1,200               | JPY | true
                    Total 11,200              | JPY | false
                    """)
    void aWholeAmountNeedsItsDecimalsOrItsCurrency(String text, String currency, boolean is) {
        assertThat(isIn(text, "1200", currency)).isEqualTo(is);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    Net 100.00 VAT 20.00 Total 120.00 | 120.00
                    1.234,56 and 999,99               | 1.234,56
                    20.07.2026 and 3.50               | 3.50
                    9 bowls                           | none
                    12345678901234567890.00 and 1.00  | 1.00
                    """)
    void theLargest(String text, String largest) {
        assertThat(PrintedAmount.largest(text).orElse("none")).isEqualTo(largest);
    }
}
