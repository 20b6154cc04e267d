package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.law.Law;
import quarterfold.ledger.SampleSettings;

/** Return periods and due days, by the samples and manuals the tax authority publishes. */
class CalendarTest {

    private static final Law LAW = Law.of("GB");

    private static Calendar calendar(String registeredFrom, String periodEnds) {
        return new Calendar(
                SampleSettings.registered(LocalDate.parse(registeredFrom), periodEnds), LAW);
    }

    private static Calendar stagger(String number) {
        return calendar(
                "2003-01-01",
                LAW.periodRule("stagger-" + number, LocalDate.of(2026, 8, 1)).value());
    }

    @ParameterizedTest(name = "stagger {0}, {1}: {2} to {3}, due {4} [{5}]")
    @CsvSource(
            textBlock =
                    """
        1, 2017-03-31, 2017-01-01, 2017-03-31, 2017-05-07, 'T-707, published API sample'
        1, 2017-04-01, 2017-04-01, 2017-06-30, 2017-08-07, 'T-707, published API sample'
        2, 2018-12-15, 2018-11-01, 2019-01-31, 2019-03-07, 'T-707, published API sample'
        0, 2017-02-10, 2017-02-01, 2017-02-28, 2017-04-07, 'T-707, published API sample'
        3, 2026-08-15, 2026-06-01, 2026-08-31, 2026-10-07, 'T-718, DMBM530020'
        2, 2027-01-15, 2026-11-01, 2027-01-31, 2027-03-07, 'T-718, DMBM530020'
        1, 2026-12-31, 2026-10-01, 2026-12-31, 2027-02-07, 'T-718: a Sunday, and the day does not move'
        2, 2013-04-30, 2013-02-01, 2013-04-30, 2013-06-07, T-701
        2, 2013-01-31, 2012-11-01, 2013-01-31, 2013-03-07, T-702
        3, 2013-05-31, 2013-03-01, 2013-05-31, 2013-07-07, T-703
        3, 2015-02-28, 2014-12-01, 2015-02-28, 2015-04-07, T-705
        3, 2013-11-30, 2013-09-01, 2013-11-30, 2014-01-07, T-705
        1, 2014-03-31, 2014-01-01, 2014-03-31, 2014-05-07, T-705
        1, 2016-04-01, 2016-04-01, 2016-06-30, 2016-08-07, 'T-708, VDSOG400'
        2, 2024-01-31, 2023-11-01, 2024-01-31, 2024-03-07, 'seven days after 29 February'
        3, 2024-02-29, 2023-12-01, 2024-02-29, 2024-04-07, 'a leap day is in the period'
        0, 2024-02-29, 2024-02-01, 2024-02-29, 2024-04-07, 'a leap day is in the month'
        1, 2026-12-01, 2026-10-01, 2026-12-31, 2027-02-07, 'over the end of the year'
        """)
    void periodOfADay(
            String stagger,
            LocalDate day,
            LocalDate start,
            LocalDate end,
            LocalDate due,
            String source) {
        assertThat(stagger(stagger).of(day))
                .as(source)
                .contains(new Period(YearMonth.from(end), start, end, due));
        assertThat(stagger(stagger).named(YearMonth.from(end))).isEqualTo(stagger(stagger).of(day));
    }

    /** T-719, VAT Regulations 1995 reg 25(1): registered from 15 February 2026, no notice. */
    @Test
    void theFirstPeriodBeginsWithTheRegistration() {
        Calendar calendar = calendar("2026-02-15", "3 6 9 12");
        Period first =
                new Period(
                        YearMonth.of(2026, 3),
                        LocalDate.of(2026, 2, 15),
                        LocalDate.of(2026, 3, 31),
                        LocalDate.of(2026, 5, 7));
        assertThat(calendar.of(LocalDate.of(2026, 2, 15))).contains(first);
        assertThat(calendar.of(LocalDate.of(2026, 2, 14))).isEmpty();
        assertThat(calendar.named(YearMonth.of(2026, 3))).contains(first);
        assertThat(calendar.named(YearMonth.of(2025, 12))).isEmpty();
        assertThat(calendar.of(LocalDate.of(2026, 4, 1)).orElseThrow().start())
                .isEqualTo(LocalDate.of(2026, 4, 1));
    }

    @Test
    void registeredOnTheLastOrFirstDayOfAPeriod() {
        assertThat(calendar("2026-03-31", "3 6 9 12").named(YearMonth.of(2026, 3)).orElseThrow())
                .extracting(Period::start, Period::end)
                .containsExactly(LocalDate.of(2026, 3, 31), LocalDate.of(2026, 3, 31));
        assertThat(calendar("2026-04-01", "3 6 9 12").named(YearMonth.of(2026, 3))).isEmpty();
        assertThat(calendar("2026-01-01", "3 6 9 12").named(YearMonth.of(2026, 3)).orElseThrow())
                .extracting(Period::start)
                .isEqualTo(LocalDate.of(2026, 1, 1));
    }

    @Test
    void noPeriodEndsInThatMonth() {
        assertThat(stagger("1").named(YearMonth.of(2026, 8))).isEmpty();
        assertThat(stagger("3").named(YearMonth.of(2026, 8))).isPresent();
        assertThat(stagger("1").ends())
                .containsExactly(Month.MARCH, Month.JUNE, Month.SEPTEMBER, Month.DECEMBER);
    }

    @Test
    void periodsOfASpan() {
        Calendar calendar = calendar("2026-02-15", "3 6 9 12");
        assertThat(calendar.from(LocalDate.of(2026, 1, 1), LocalDate.of(2026, 7, 1)))
                .extracting(p -> p.name().toString())
                .containsExactly("2026-03", "2026-06", "2026-09");
        assertThat(calendar.from(LocalDate.of(2026, 6, 30), LocalDate.of(2026, 6, 30)))
                .extracting(p -> p.name().toString())
                .containsExactly("2026-06");
        assertThat(calendar.from(LocalDate.of(2026, 1, 1), LocalDate.of(2026, 2, 14))).isEmpty();
        assertThat(calendar.registeredFrom()).isEqualTo(LocalDate.of(2026, 2, 15));
    }

    @Test
    void daysOfAPeriod() {
        Period period = stagger("1").named(YearMonth.of(2026, 9)).orElseThrow();
        assertThat(period.contains(LocalDate.of(2026, 6, 30))).isFalse();
        assertThat(period.contains(LocalDate.of(2026, 7, 1))).isTrue();
        assertThat(period.contains(LocalDate.of(2026, 9, 30))).isTrue();
        assertThat(period.contains(LocalDate.of(2026, 10, 1))).isFalse();
    }
}
