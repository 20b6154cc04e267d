package quarterfold.law;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.money.Percent;

/** The sectors of the flat-rate scheme: VAT Regulations 1995 reg 55K, SI 2010/2940 reg 4. */
class FlatRateTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 8, 1);
    private static final LocalDate FIRST = LocalDate.of(2011, 1, 4);

    private final Law law = Law.of("GB");

    /** As hmrc/vat-registration-frontend lists them, conf/frs-business-types.json. */
    @Test
    void everySectorOfTheAuthoritysList() {
        List<FlatRate> sectors = law.flatRates(TODAY);
        assertThat(sectors)
                .extracting(FlatRate::id)
                .containsExactlyElementsOf(
                        IntStream.rangeClosed(1, 55).mapToObj("%03d"::formatted).toList());
        assertThat(sectors).extracting(FlatRate::sector).doesNotHaveDuplicates();
        assertThat(
                        sectors.stream()
                                .map(s -> s.percent().value())
                                .reduce(BigDecimal.ZERO, BigDecimal::add))
                .isEqualByComparingTo("575.5");
    }

    @ParameterizedTest(name = "{0} {1}: {2}%")
    @CsvSource(
            textBlock =
                    """
        001, Accountancy or book-keeping,                     14.5
        013, Farming or agriculture not listed elsewhere,      6.5
        017, General building or construction services,        9.5
        022, Labour-only building or construction services,   14.5
        030, "Manufacturing yarn, textiles or clothing",        9
        035, Post offices,                                     5
        042, "Retailing food, confectionery, tobacco, newspapers or children's clothing", 4
        044, Retailing not listed elsewhere,                   7.5
        054, Wholesaling not listed elsewhere,                 8.5
        055, Dealing in waste and scrap,                      10.5
        """,
            quoteCharacter = '"')
    void aSector(String id, String sector, String percent) {
        assertThat(law.flatRate(id, TODAY).orElseThrow().value())
                .isEqualTo(new FlatRate(id, sector, Percent.of(percent)));
    }

    /** SI 2010/2940 reg 1: in force on 4 January 2011. */
    @Test
    void theTableBeginsWithTheRateOfTwentyPerCent() {
        assertThat(law.flatRate("044", FIRST.minusDays(1))).isEmpty();
        assertThat(law.flatRates(FIRST.minusDays(1))).isEmpty();
        assertThat(law.flatRate("044", FIRST).orElseThrow().value().percent()).hasToString("7.5");
        assertThat(law.flatRate("056", TODAY)).isEmpty();
        assertThat(law.changes()).contains(FIRST);
    }

    @Test
    void anotherRateOfALaterDay() {
        Law changed =
                Tables.with(
                        "flat-rates.csv",
                        t ->
                                t.replace("7.5,2011-01-04,,", "7.5,2011-01-04,2030-03-31,")
                                        + "044,Retailing,8,2030-04-01,,a text\n");
        LocalDate day = LocalDate.of(2030, 4, 1);
        assertThat(changed.flatRate("044", day.minusDays(1)).orElseThrow().value().percent())
                .hasToString("7.5");
        assertThat(changed.flatRate("044", day).orElseThrow().value())
                .isEqualTo(new FlatRate("044", "Retailing", Percent.of("8")));
        assertThat(changed.changes()).contains(day);
    }
}
