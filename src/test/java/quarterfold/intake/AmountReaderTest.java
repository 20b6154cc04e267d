package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.money.Amount;

class AmountReaderTest {
    private final AmountReader plain = new AmountReader(Layout.Numbers.PLAIN);
    private final AmountReader thousands =
            new AmountReader(new Layout.Numbers('.', ',', true, true));
    private final AmountReader comma = new AmountReader(new Layout.Numbers(',', '.', false, false));
    private final AmountReader spaced =
            new AmountReader(new Layout.Numbers(',', ' ', false, false));

    /** An account's credit comes in, its debit goes out, whatever stands between. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    1,234.56 CR    | 1234.56
                    1,234.56DR     | -1234.56
                    2.00 dr        | -2.00
                    £2.00 Cr       | 2.00
                    2.00 GBP\u00a0DR | -2.00
                    0.00           | 0.00
                    0.00 DR        | 0.00
                    """)
    void lettersForSigns(String text, String amount) {
        AmountReader money = AmountReader.ofMoney(letters());
        assertThat(money.read(text)).isEqualTo(Amount.of(amount).tenThousandths());
    }

    /** Where letters say which way money goes, none goes without, and none has a sign besides. */
    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"2.00", "-2.00", "-2.00 DR", "(2.00) CR", "2.00- DR", "CR", "2.00 XR"})
    void moneyWithoutLetters(String text) {
        AmountReader money = AmountReader.ofMoney(letters());
        assertThat(money.read(text)).isEqualTo(AmountReader.BAD);
        assertThat(letters().expected())
                .isEqualTo(
                        "an amount with at most 4 decimals and with CR or DR behind it, such as 1,234.50 CR");
    }

    /** Other numbers beside it need none; and without the form letters are no sign. */
    @Test
    void lettersWhereTheyAre() {
        assertThat(new AmountReader(letters()).read("3")).isEqualTo(30_000);
        assertThat(AmountReader.ofMoney(letters()).readNumber("-2.5")).isEqualTo(-25_000);
        assertThat(AmountReader.ofMoney(letters()).readNumber("0")).isZero();
        assertThat(AmountReader.ofMoney(letters()).readNumber("2.5")).isEqualTo(AmountReader.BAD);
        assertThat(thousands.read("2.00 DR")).isEqualTo(AmountReader.BAD);
    }

    private static Layout.Numbers letters() {
        return new Layout.Numbers('.', ',', true, true, true, true, 0, List.of("£", "GBP"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0",
                "1",
                "-1",
                "12.5",
                "-0.01",
                "1234.56",
                "0.0001",
                ".5",
                "000012.30",
                "-0",
                "9999999999999.9999",
                "-9999999999999.9999",
                "1.00000000"
            })
    void readsPlainDigitsAsExactDecimalsDo(String text) {
        assertThat(plain.read(text)).isEqualTo(Amount.of(text).tenThousandths());
        assertThat(plain.converted()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "-",
                ".",
                "-.",
                "5.",
                "1.23456",
                "1,234.00",
                "1,5",
                "£5",
                "5 GBP",
                "--5",
                "5-",
                "(5)",
                "+5",
                "1e3",
                "1.2.3",
                "10000000000000",
                "99999999999999999999999",
                " 5",
                "0x10",
                "٣",
                "NaN",
                "=1+1"
            })
    void refusesAllElse(String text) {
        assertThat(plain.read(text)).isEqualTo(AmountReader.BAD);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1,234.50   |  1234.50",
                "-1,234,567 | -1234567",
                "1234.50-   | -1234.50",
                "(1,234.50) | -1234.50",
                "(5)        | -5",
                "\u22125.00 | -5",
                "999,999.99 |  999999.99"
            })
    void readsThousandsAndSignsWhereTheLayoutHasThem(String text, String value) {
        assertThat(thousands.read(text)).isEqualTo(Amount.of(value).tenThousandths());
        assertThat(thousands.converted()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1,23",
                "12,34.5",
                ",123",
                "1234,567",
                "1,234,5",
                "1,,234",
                "(5",
                "5)",
                "-(5)",
                "1.234,50",
                "(-5)",
                "()",
                "1,234."
            })
    void refusesThousandsMarksOutOfPlace(String text) {
        assertThat(thousands.read(text)).isEqualTo(AmountReader.BAD);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"1.234,50 | 1234.50", "-0,5 | -0.5", "12,3456 | 12.3456", "1.234 | 1234"})
    void readsADecimalComma(String text, String value) {
        assertThat(comma.read(text)).isEqualTo(Amount.of(value).tenThousandths());
        assertThat(comma.converted()).isTrue();
    }

    @Test
    void aNumberTheFileStoresHasAPointWhateverTheLayout() {
        assertThat(comma.readNumber("1234.5")).isEqualTo(12_345_000);
        assertThat(comma.read("1234.5")).isEqualTo(AmountReader.BAD);
    }

    @Test
    void aSpaceBetweenThousandsMayBeANoBreakSpace() {
        assertThat(spaced.read("1\u00a0234,50")).isEqualTo(12_345_000);
        assertThat(spaced.read("1\u202f234,50")).isEqualTo(12_345_000);
        assertThat(spaced.read("1 234,50")).isEqualTo(12_345_000);
    }
}
