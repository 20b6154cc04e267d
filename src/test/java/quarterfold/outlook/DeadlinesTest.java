package quarterfold.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import quarterfold.law.Law;
import quarterfold.ledger.AnnualAccounting;
import quarterfold.ledger.AnnualAccounting.Instalments;
import quarterfold.ledger.NotifiedPeriod;
import quarterfold.ledger.PaymentMethod;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.period.Calendar;
import quarterfold.period.Period;

/** What stands around a day, and what the tables cannot say. */
class DeadlinesTest {

    private static final Law LAW = Law.of("GB");
    private static final Periods QUARTERS =
            Periods.of(LocalDate.of(2020, 1, 1), SampleSettings.months("3 6 9 12"));

    private static LocalDate day(String text) {
        return LocalDate.parse(text);
    }

    private static Deadlines deadlines(Settings settings) {
        return new Deadlines(settings, new Calendar(settings, LAW), LAW);
    }

    private static Deadline deadline(Periods periods, String name, String vat) {
        Settings settings = SampleSettings.on(periods);
        Period period = new Calendar(settings, LAW).named(YearMonth.parse(name)).orElseThrow();
        return deadlines(settings)
                .of(PublishedDeadlinesTest.payable(period, vat), 0, Optional.empty());
    }

    /** VAT Regulations 1995 reg 25(1): due 7 November 2026, the last day it is still to be done. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({
        "2026-09-30, 2026-09",
        "2026-10-01, 2026-09 2026-12",
        "2026-11-07, 2026-09 2026-12",
        "2026-11-08, 2026-12",
        "2019-12-31, ''",
        "2020-01-01, 2020-03",
    })
    void periodsAroundADay(LocalDate day, String names) {
        assertThat(deadlines(SampleSettings.on(QUARTERS)).around(day))
                .extracting(p -> p.name().toString())
                .containsExactlyElementsOf(
                        names.isEmpty() ? List.of() : List.of(names.split(" ", -1)));
    }

    /** The final return is due after the registration has ended. */
    @Test
    void theLastPeriodStaysUntilItIsDue() {
        Periods ended =
                new Periods(
                        QUARTERS.registeredFrom(),
                        Optional.of(day("2026-05-20")),
                        QUARTERS.ends(),
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty());
        Deadlines deadlines = deadlines(SampleSettings.on(ended));
        assertThat(deadlines.around(day("2026-06-27")))
                .extracting(Period::end)
                .containsExactly(day("2026-05-20"));
        assertThat(deadlines.around(day("2026-06-28"))).isEmpty();
        assertThat(deadline(ended, "2026-05", "0").points().orElseThrow().exempt()).isTrue();
    }

    /** Finance Act 2021 Sch 24 and 26 hold for periods that begin on or after 1 January 2023. */
    @Test
    void beforeTheTablesNothingIsGuessed() {
        Deadline before = deadline(QUARTERS, "2022-12", "100");
        assertThat(before.points()).isEmpty();
        assertThat(before.late()).hasSize(4).allMatch(l -> l.penalty().isEmpty());
        assertThat(before.late()).allMatch(l -> l.interest().isPresent());
        Deadline after = deadline(QUARTERS, "2023-03", "100");
        assertThat(after.points()).isPresent();
        assertThat(after.late()).allMatch(l -> l.penalty().isPresent());
    }

    /** GOV.UK, interest rates: the table begins on 6 January 2023. */
    @Test
    void noInterestWithoutARate() {
        assertThat(deadline(QUARTERS, "2022-09", "100").late())
                .extracting(l -> l.interest().isPresent())
                .containsOnly(false);
        LatePayment payment =
                LatePayment.whole(LAW, day("2023-01-01"), day("2023-01-05"), Amount.of("36500"));
        assertThat(payment.interest(day("2023-01-06"))).contains(Amount.of("6"));
        LatePayment earlier =
                LatePayment.whole(LAW, day("2023-01-01"), day("2023-01-04"), Amount.of("36500"));
        assertThat(earlier.interest(day("2023-01-06"))).isEmpty();
    }

    /** CH193140: day 1 is the day after the due day; so is the last day that is not late. */
    @Test
    void theDueDayItselfIsNotLate() {
        LatePayment payment =
                LatePayment.whole(LAW, day("2026-07-01"), day("2026-11-07"), Amount.of("10000"));
        assertThat(payment.penalty(day("2026-11-07"))).contains(Amount.ZERO);
        assertThat(payment.interest(day("2026-11-07"))).contains(Amount.ZERO);
        assertThat(payment.number(day("2026-11-08"))).isEqualTo(1);
        assertThat(payment.interest(day("2026-11-08"))).contains(Amount.of("2.12"));
    }

    @Test
    void aDayOfOnesOwnIsShownInItsPlaceWhereItIsLate() {
        Settings settings = SampleSettings.on(QUARTERS);
        Period period = new Calendar(settings, LAW).named(YearMonth.of(2026, 9)).orElseThrow();
        assertThat(
                        deadlines(settings)
                                .of(
                                        PublishedDeadlinesTest.payable(period, "100"),
                                        0,
                                        Optional.of(day("2026-11-24")))
                                .late())
                .extracting(Deadline.Late::number)
                .containsExactly(1L, 16L, 17L, 31L, 40L);
        assertThat(
                        deadlines(settings)
                                .of(
                                        PublishedDeadlinesTest.payable(period, "100"),
                                        0,
                                        Optional.of(period.due()))
                                .late())
                .hasSize(4);
    }

    @Test
    void theBooksOwnWayToPayComesFirst() {
        Settings settings = SampleSettings.paying(QUARTERS, PaymentMethod.BACS);
        Period period = new Calendar(settings, LAW).named(YearMonth.of(2026, 9)).orElseThrow();
        assertThat(
                        deadlines(settings)
                                .of(
                                        PublishedDeadlinesTest.payable(period, "0"),
                                        0,
                                        Optional.empty())
                                .payments())
                .extracting(p -> p.method().code())
                .containsExactly("bacs", "faster-payment", "direct-debit", "card", "chaps");
    }

    /** CH192070: 8 weeks are 56 days and 20 weeks 140. A short first quarter is a quarter. */
    @ParameterizedTest(name = "{0} to {1}, notified {2}: {3}")
    @CsvSource({
        "2026-02-03, 2026-03-31, no,  QUARTERLY",
        "2026-02-03, 2026-03-30, yes, MONTHLY",
        "2026-02-03, 2026-03-31, yes, QUARTERLY",
        "2026-02-11, 2026-06-30, yes, QUARTERLY",
        "2026-02-10, 2026-06-30, yes, ANNUAL",
    })
    void frequencyOfAPeriod(LocalDate from, LocalDate to, String notified, Frequency expected) {
        Periods periods =
                new Periods(
                        from,
                        Optional.empty(),
                        SampleSettings.months("3 6 9 12"),
                        notified.equals("yes")
                                ? List.of(
                                        new NotifiedPeriod(from, to, Optional.of(to.plusDays(37))))
                                : List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty());
        Deadline.Points points =
                deadline(periods, YearMonth.from(to).toString(), "0").points().orElseThrow();
        assertThat(points.frequency()).isEqualTo(expected);
        assertThat(points.exempt()).isTrue();
    }

    /** VATAAS5100, GOV.UK: the last working day of months 4, 7 and 10; none in a short year. */
    @Test
    void instalmentsOfAYear() {
        Deadline year = deadline(annual("2026-04-01", "3"), "2027-03", "9100");
        assertThat(year.interims())
                .extracting(Interim::due)
                .containsExactly(day("2026-07-31"), day("2026-10-30"), day("2027-01-29"));
        assertThat(year.owed()).isEqualTo(Amount.of("3100"));
        assertThat(year.period().due()).isEqualTo(day("2027-05-31"));
        // 31 May 2027 is the spring bank holiday; the working day before it is Friday
        assertThat(year.lastDay()).isEqualTo(day("2027-05-28"));
        assertThat(year.payments()).allMatch(p -> p.arrivesBy().equals(day("2027-05-28")));
        assertThat(year.payments()).allMatch(p -> p.taken().isEmpty());
        assertThat(year.points().orElseThrow().threshold()).isEqualTo(2);
        assertThat(deadline(annual("2026-01-01", "3"), "2026-03", "0").interims()).isEmpty();
        assertThat(deadline(annual("2025-12-01", "3"), "2026-03", "0").interims()).hasSize(1);
    }

    private static Periods annual(String from, String ends) {
        return new Periods(
                day(from),
                Optional.empty(),
                SampleSettings.months(ends),
                List.of(),
                Optional.of(
                        new AnnualAccounting(day(from), Instalments.QUARTERLY, Amount.of("8000"))),
                Optional.empty(),
                Optional.empty());
    }

    /** CH192210: the months a quarterly filer must be on time in, and the 24 before them. */
    @Test
    void howPointsAreCleared() {
        LatePoints points = new LatePoints(LAW, day("2024-01-01"));
        assertThat(points.complianceEnds(day("2024-08-07"), Frequency.QUARTERLY))
                .isEqualTo(day("2025-08-31"));
        assertThat(points.complianceEnds(day("2024-08-07"), Frequency.ANNUAL))
                .isEqualTo(day("2026-08-31"));
        assertThat(points.complianceEnds(day("2024-08-07"), Frequency.MONTHLY))
                .isEqualTo(day("2025-02-28"));
        assertThat(points.backMonths()).isEqualTo(24);
    }
}
