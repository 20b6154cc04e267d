package quarterfold.treatment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import quarterfold.ledger.Particular;
import quarterfold.ledger.SampleLine;

/** Import VAT and duty, and money that is no supply. */
class ImportsAndMoneyTest {

    private static SampleLine postponed() {
        return SampleLine.of("import-vat-postponed").evidence("postponed-statement");
    }

    static Stream<Arguments> cases() {
        return Stream.of(
                Arguments.of(
                        "T-106, paid at the border",
                        SampleLine.of("import-vat-paid")
                                .printed("2000", "400")
                                .evidence("import-certificate"),
                        "import-paid I01 20%: 2000.00 + 400.00, claim 400.00; 4=400.00 7=2000.00; asks nothing",
                        "HMRC manual IMPS03100"),
                Arguments.of(
                        "paid, only the VAT stated: the value on which the rate gives it",
                        SampleLine.of("import-vat-paid").vat("400").evidence("import-certificate"),
                        "import-paid I01 20%: 2000.00 + 400.00, claim 400.00; 4=400.00 7=2000.00; asks nothing",
                        "VATA 1994 s.21"),
                Arguments.of(
                        "paid, without the certificate",
                        SampleLine.of("import-vat-paid").printed("2000", "400").evidence("invoice"),
                        "import-unevidenced I03 20%: 2000.00 + 400.00, claim 0.00; 7=2000.00; asks import-certificate-missing",
                        "HMRC manual IMPS03100"),
                Arguments.of(
                        "T-108, postponed",
                        postponed().printed("8720", "1744"),
                        "import-postponed I04 20%: 8720.00 + 1744.00, claim 1744.00; 1=1744.00 4=1744.00 7=8720.00; asks nothing",
                        "gov.uk, Complete your VAT Return to account for import VAT"),
                Arguments.of(
                        "T-109, postponed, only the value stated",
                        postponed().net("100000"),
                        "import-postponed I04 20%: 100000.00 + 20000.00, claim 20000.00; 1=20000.00 4=20000.00 7=100000.00; asks nothing",
                        "tax press, consistent with gov.uk"),
                Arguments.of(
                        "postponed, VAT and the sum with it stated",
                        postponed().vat("1744").gross("10464"),
                        "import-postponed I04 20%: 8720.00 + 1744.00, claim 1744.00; 1=1744.00 4=1744.00 7=8720.00; asks nothing",
                        "gov.uk, Complete your VAT Return to account for import VAT"),
                Arguments.of(
                        "postponed, only the VAT stated",
                        postponed().vat("1744"),
                        "import-postponed I04 20%: 8720.00 + 1744.00, claim 1744.00; 1=1744.00 4=1744.00 7=8720.00; asks nothing",
                        "VATA 1994 s.21"),
                Arguments.of(
                        "postponed, worked out to the penny",
                        postponed().net("0.13"),
                        "import-postponed I04 20%: 0.13 + 0.03, claim 0.03; 1=0.03 4=0.03 7=0.13; asks nothing",
                        "VATREC12030"),
                Arguments.of(
                        "postponed, the statement not yet held",
                        SampleLine.of("import-vat-postponed").vat("1744"),
                        "import-postponed I06 20%: 8720.00 + 1744.00, claim 1744.00; 1=1744.00 4=1744.00 7=8720.00; asks postponed-statement-missing",
                        "gov.uk: estimate, and put it right on the next return"),
                Arguments.of(
                        "duty",
                        SampleLine.of("import-duty").gross("90"),
                        "import-duty I07 no rate: 90.00 + 0.00, claim 0.00; no box; asks nothing",
                        "VATA 1994 s.24(1): duty is not VAT"),
                Arguments.of(
                        "T-1007, lost goods made good",
                        SampleLine.of("compensation").gross("250"),
                        "compensation M01 no rate: 250.00 + 0.00, claim 0.00; no box; asks nothing",
                        "HMRC manual VATSC61800"),
                Arguments.of(
                        "a payout",
                        SampleLine.of("payout").gross("21000"),
                        "money-only M03 no rate: 21000.00 + 0.00, claim 0.00; no box; asks nothing",
                        "the tax authority's page on boxes 6 and 7"),
                Arguments.of(
                        "a reserve",
                        SampleLine.of("reserve").gross("-100"),
                        "money-only M03 no rate: -100.00 + 0.00, claim 0.00; no box; asks nothing",
                        "no supply"),
                Arguments.of(
                        "wages",
                        SampleLine.of("other-money").gross("-4000").category("wages"),
                        "money-only M03 no rate: -4000.00 + 0.00, claim 0.00; no box; asks nothing",
                        "VAT Notice 700/12: no wages in box 7"),
                Arguments.of(
                        "money in another currency",
                        SampleLine.of("payout").gross("21000").currency("EUR"),
                        "money-only M03 no rate: 21000.00 + 0.00, claim 0.00; no box; asks nothing",
                        "no supply in any currency"),
                Arguments.of(
                        "a bad debt",
                        SampleLine.of("other-money")
                                .gross("600")
                                .rate("20")
                                .category("bad-debt-relief")
                                .particular(Particular.DUE, "2026-02-01"),
                        "bad-debt-relief M02 20%: 500.00 + 100.00, claim 100.00; 4=100.00; asks nothing",
                        "VATA 1994 s.36; VBDR2300"),
                Arguments.of(
                        "a bad debt of the time of 17.5%",
                        SampleLine.of("other-money")
                                .gross("117.50")
                                .rate("17.5")
                                .category("bad-debt-relief")
                                .particular(Particular.DUE, "2010-02-01")
                                .on("2011-08-01"),
                        "bad-debt-relief M02 17.5%: 100.00 + 17.50, claim 17.50; 4=17.50; asks nothing",
                        "VATA 1994 s.36: the VAT of the unpaid supply"));
    }

    @ParameterizedTest(name = "{0} [{3}]")
    @MethodSource("cases")
    void importsAndMoney(String what, SampleLine line, String told, String source) {
        assertThat(Treating.gb().told(line)).as("%s [%s]", what, source).isEqualTo(told);
    }

    /** Postponed accounting began on 1 January 2021. */
    @Test
    void postponedBefore2021() {
        assertThat(Treating.gb().told(postponed().printed("8720", "1744").on("2020-12-31")))
                .isEqualTo("undecided - no rate: 8720.00 + 0.00, claim 0.00; no box; asks no-rule");
        assertThat(Treating.gb().told(postponed().printed("8720", "1744").on("2021-01-01")))
                .startsWith("import-postponed I04");
    }

    /** The rate of the day of import; 17.5% until 3 January 2011. */
    @Test
    void importValueAtTheRateOfTheDay() {
        assertThat(
                        Treating.gb()
                                .told(
                                        SampleLine.of("import-vat-paid")
                                                .vat("175")
                                                .evidence("import-certificate")
                                                .on("2011-01-03")))
                .isEqualTo(
                        "import-paid I01 17.5%: 1000.00 + 175.00, claim 175.00; 4=175.00 7=1000.00;"
                                + " asks nothing");
    }
}
