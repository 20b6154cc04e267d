package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;

/** Capital goods under the flat rate: VAT Regulations 1995 reg 55E; HMRC manual FRS6500. */
class FlatRateGoodsTest {

    private static Treating book(String choice) {
        Settings settings =
                SampleSettings.choosing(Map.of("flat-rate-capital-goods-at-limit", choice));
        return Treating.of(
                SampleSettings.of(
                        settings, settings.periods(), Schemes.of("flat-rate", Optional.of("044"))));
    }

    private static SampleLine bought(String gross) {
        return SampleLine.of("purchase")
                .party("Example supplier", "GB", "GB101747696")
                .document("S-1")
                .evidence("invoice")
                .rate("20")
                .category("capital-goods")
                .gross(gross);
    }

    /** One purchase of 2,000 or more with VAT, or of more than 2,000: the book's choice. */
    @ParameterizedTest(name = "{0}, at the limit {1}: {2}")
    @CsvSource({
        "1999.99, claim, false",
        "2000.00, claim, true",
        "2000.00, not-claim, false",
        "2000.01, not-claim, true",
        "-2400.00, not-claim, true"
    })
    void theLimitOfOnePurchase(String gross, String choice, boolean claimed) {
        assertThat(!book(choice).one(bought(gross)).claim().isZero()).isEqualTo(claimed);
    }

    /** Other goods, whatever they cost, are in the flat rate; and the sale of capital goods out. */
    @Test
    void whatIsOutsideTheFlatRate() {
        assertThat(book("claim").one(bought("2400").category("stock")).claim().isZero()).isTrue();
        assertThat(book("claim").one(bought("2400").category("")).claim().isZero()).isTrue();
        SampleLine sale = SampleLine.of("sale").gross("120").rate("20");
        assertThat(book("claim").one(sale.category("capital-goods")).boxes()).containsKey("1");
        assertThat(book("claim").one(sale.category("")).boxes()).doesNotContainKey("1");
    }
}
