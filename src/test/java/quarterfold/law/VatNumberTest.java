package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** T-901: the check digits, by numbers the tax authority publishes in its tests. */
class VatNumberTest {

    @ParameterizedTest(name = "{0} {1}: {2}, {3} [{4}]")
    @CsvFileSource(files = "fixtures/published/vat-numbers.csv", numLinesToSkip = 1)
    void publishedNumbers(
            String id, @Nullable String number, String valid, String why, String source) {
        VatNumber.Status status = VatNumber.status(number == null ? "" : number, true);
        assertThat(status == VatNumber.Status.GB)
                .as("%s %s: %s [%s]", id, number, why, source)
                .isEqualTo(valid.equals("yes"));
    }

    @ParameterizedTest(name = "{0}, at home: {1}, abroad: {2}")
    @CsvSource(
            textBlock =
                    """
        101747696,       GB,       FOREIGN
        101747641,       GB,       FOREIGN
        GB101747696,     GB,       GB
        gb 101 7476 96,  GB,       GB
        XI101747696,     GB,       GB
        GB101747696001,  GB,       GB
        101747696001,    GB,       FOREIGN
        101.747.696,     GB,       FOREIGN
        101-747-696,     GB,       FOREIGN
        GB123456789,     GB_FAILS, GB_FAILS
        XI123456789,     GB_FAILS, GB_FAILS
        123456789,       GB_FAILS, FOREIGN
        123456789001,    GB_FAILS, FOREIGN
        101747697,       GB_FAILS, FOREIGN
        110747696,       GB_FAILS, FOREIGN
        GB,              GB_FAILS, GB_FAILS
        GB10174769,      GB_FAILS, GB_FAILS
        GB1017476960,    GB_FAILS, GB_FAILS
        GB1017476960011, GB_FAILS, GB_FAILS
        10174769A,       GB_FAILS, FOREIGN
        A01747696,       GB_FAILS, FOREIGN
        GB10174769/,     GB_FAILS, GB_FAILS
        GB10174769:,     GB_FAILS, GB_FAILS
        GBGD001,         GB,       GB
        GB GD499,        GB,       GB
        GBGD500,         GB_FAILS, GB_FAILS
        GBHA500,         GB,       GB
        GBHA499,         GB_FAILS, GB_FAILS
        GBHA5000,        GB_FAILS, GB_FAILS
        DE123456788,     FOREIGN,  FOREIGN
        EL123456789,     FOREIGN,  FOREIGN
        DE,              GB_FAILS, FOREIGN
        """)
    void whatTheDigitsTell(String text, VatNumber.Status home, VatNumber.Status abroad) {
        assertThat(VatNumber.status(text, true)).isEqualTo(home);
        assertThat(VatNumber.status(text, false)).isEqualTo(abroad);
    }

    @Test
    void nothingWritten() {
        assertThat(VatNumber.status("", true)).isEqualTo(VatNumber.Status.NONE);
        assertThat(VatNumber.status("", false)).isEqualTo(VatNumber.Status.NONE);
        assertThat(VatNumber.status(" \t. - ", true)).isEqualTo(VatNumber.Status.NONE);
    }

    /**
     * Of the 81 slips of one digit two pass, both by the later series: it admits a sum 55 short of
     * a multiple of 97, which the weights 7 and 6 can reach.
     */
    @Test
    void slipsOfOneDigit() {
        String number = "101747696";
        List<String> pass = new ArrayList<>();
        for (int place = 0; place < number.length(); place++) {
            for (char digit = '0'; digit <= '9'; digit++) {
                String other = number.substring(0, place) + digit + number.substring(place + 1);
                if (VatNumber.status(other, true) == VatNumber.Status.GB) {
                    pass.add(other);
                }
            }
        }
        pass.removeIf(number::equals);
        assertThat(pass).containsExactly("161747696", "108747696");
    }
}
