package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LinePatternTest {

    private static Optional<Map<String, String>> match(String pattern, String line) {
        return LinePattern.of(pattern).match(line);
    }

    @Test
    void namesInWords() {
        assertThat(match("Total {VAT paid: [0-9,.]+} of {}", "TOTAL 1,234.00 of 3 entries"))
                .contains(Map.of("VAT paid", "1,234.00"));
        assertThat(match("Port {Port}: {VAT: [0-9.]+}", "Port Norham Wharf: 60.00"))
                .contains(Map.of("Port", "Norham Wharf", "VAT", "60.00"));
        assertThat(LinePattern.of("{A} {B}").names()).containsExactly("A", "B");
    }

    /** The whole line, and its signs as they are. */
    @ParameterizedTest(name = "{0} / {1}")
    @CsvSource({
        "Total {V: [0-9]+}, Total 12 and more",
        "Total {V: [0-9]+}, The total 12",
        "Total. {V: [0-9]+}, Total: 12",
        "Total {V: [0-9]{3}}, Total 12",
        "{V: [a-z]+}, ABC"
    })
    void doesNotFit(String pattern, String line) {
        assertThat(match(pattern, line)).isEmpty();
    }

    /** Groups of an expression are its own affair. */
    @Test
    void groupsWithinAnExpression() {
        assertThat(match("{A: (GB|XI)([0-9])+} {B}", "GB12 rest"))
                .contains(Map.of("A", "GB12", "B", "rest"));
        assertThat(match("{: (a|b)+} {B}", "abab rest")).contains(Map.of("B", "rest"));
    }

    @Test
    void wordsOfItsOwn() {
        assertThat(LinePattern.of("Port {Port}").hasWords()).isTrue();
        assertThat(LinePattern.of("{Port}: - {VAT}").hasWords()).isFalse();
        assertThat(LinePattern.of("{}").hasWords()).isFalse();
    }

    /** An expression that other engines try in 2 to the power of 1,999 ways. */
    @Test
    void noExpressionTakesForEver() {
        assertThat(match("{A: (a|aa|a*)*b}", "a".repeat(1_999) + "c")).isEmpty();
    }

    @ParameterizedTest(name = "line ''{0}''")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    ''             | found nothing; expected a line, such as Total {VAT paid}
                    Total {VAT     | found 'Total {VAT' with a brace too many or too few; expected a name in braces, such as Total {VAT paid}
                    Total VAT}     | found 'Total VAT}' with a brace too many or too few; expected a name in braces, such as Total {VAT paid}
                    {A} {A}        | found the name 'A' twice in '{A} {A}'; expected it once, such as Total {VAT paid}
                    Total {A: [0-9}| found '[0-9', which is no regular expression (missing closing ]); expected one in the syntax of RE2, such as [0-9,.]+
                    {A: x(?=y)}    | found 'x(?=y)', which is no regular expression (invalid or unsupported Perl syntax); expected one in the syntax of RE2, such as [0-9,.]+
                    """)
    void isNone(String pattern, String message) {
        assertThatThrownBy(() -> LinePattern.of(pattern))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(message);
    }
}
