package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LiabilityTest {

    /**
     * VATA 1994 ss.2, 29A and 30: which of the table's words have VAT above nil, at a known rate.
     */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({
        "standard, true",
        "reduced, true",
        "zero, false",
        "exempt, false",
        "outside, false",
        "margin, false",
        "reverse-charge, false",
        "not-a-rate, false",
        "unstated, false"
    })
    void whereVatAboveNilIsCharged(String category, boolean taxed) {
        assertThat(Liability.of(category).isTaxed()).isEqualTo(taxed);
    }
}
