package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.ledger.SampleLine;
import quarterfold.treatment.EvidenceGrade.Grade;

/** VAT on a document held against its rate: HMRC manuals VATREC12010 and VAEC0180. */
class OverchargeTest {

    private static SampleLine bill(String kind) {
        return SampleLine.of(kind)
                .party("Example supplier", "GB", "GB101747696")
                .document("S-1")
                .evidence("invoice")
                .category("stock");
    }

    private static EvidenceGrade grade(SampleLine line) {
        return Treating.gb().one(line).evidence().orElseThrow();
    }

    private static Optional<String> told(SampleLine line) {
        List<String> told =
                grade(line).reasons().stream().filter(r -> r.startsWith("VAT of ")).toList();
        assertThat(told).hasSizeLessThan(2);
        return told.stream().findFirst();
    }

    /** VAT Notice 700 para 17.5: a supplier may round, so a penny either way is nothing. */
    @ParameterizedTest(name = "{0} and {1} at {2}: {3}")
    @CsvSource({
        "100, 20.01, 20, agrees with 20%, ENOUGH",
        "100, 20.02, 20, is more than 20%, IN_QUESTION",
        "100, 19.99, 20, agrees with 20%, ENOUGH",
        "100, 19.98, 20, is less than 20%, ENOUGH",
        "-100, -20.01, 20, agrees with 20%, ENOUGH",
        "-100, -20.02, 20, is more than 20%, IN_QUESTION",
        "-100, -19.98, 20, is less than 20%, ENOUGH",
        "100, 5.02, 5, is more than 5%, IN_QUESTION",
    })
    void morePrintedThanTheRateGives(
            String net, String vat, String rate, String told, Grade grade) {
        SampleLine line = bill("purchase").printed(net, vat).rate(rate);
        assertThat(told(line)).contains("VAT of " + vat + " " + told + " of the value without VAT");
        assertThat(grade(line).grade()).isEqualTo(grade);
    }

    /** HMRC manual VAEC0180: where no rate is stated, no VAT can be above the standard rate. */
    @ParameterizedTest(name = "{0} on {1}: {2}")
    @CsvSource({
        "20.01, 2026-08-01, is not more than 20%, ENOUGH",
        "20.02, 2026-08-01, is more than 20%, IN_QUESTION",
        "5.00, 2026-08-01, is not more than 20%, ENOUGH",
        "17.51, 2011-01-03, is not more than 17.5%, ENOUGH",
        "17.52, 2011-01-03, is more than 17.5%, IN_QUESTION",
        "17.52, 2011-01-04, is not more than 20%, ENOUGH",
    })
    void withoutARateItIsTheStandardRate(String vat, String day, String told, Grade grade) {
        SampleLine line = bill("purchase").on(day).printed("100", vat);
        assertThat(told(line)).contains("VAT of " + vat + " " + told + " of the value without VAT");
        assertThat(grade(line).grade()).isEqualTo(grade);
    }

    /** Nothing to hold against: no VAT, no rate that is one on the day, no purchase. */
    @Test
    void whereNothingIsHeldAgainstARate() {
        assertThat(told(bill("purchase").printed("100", "0").rate("20"))).isEmpty();
        assertThat(told(bill("purchase").gross("120").rate("20"))).isEmpty();
        assertThat(told(bill("purchase").printed("100", "20").rate("17.5"))).isEmpty();
        assertThat(told(bill("purchase").printed("100", "20").rate("exempt"))).isEmpty();
        assertThat(told(bill("purchase").printed("100", "20").rate("0"))).isEmpty();
        assertThat(
                        told(
                                SampleLine.of("import-vat-paid")
                                        .printed("100", "40")
                                        .rate("20")
                                        .evidence("import-certificate")))
                .isEmpty();
    }

    /** A tax from abroad is not VAT of this country: VATA 1994 s.24(1). */
    @ParameterizedTest(name = "{0} with {1}: {2}")
    @CsvSource({
        "IE, IE1234567T, false",
        "IE, '', false",
        "IE, GB101747696, true",
        "XI, '', true",
        "'', '', true"
    })
    void onlyVatOfThisCountry(String country, String number, boolean held) {
        SampleLine line =
                bill("purchase")
                        .party("Example supplier", country, number)
                        .printed("100", "23")
                        .rate("20");
        assertThat(told(line).isPresent()).isEqualTo(held);
    }
}
