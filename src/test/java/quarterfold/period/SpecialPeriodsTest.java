package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import quarterfold.law.Law;
import quarterfold.ledger.AnnualAccounting;
import quarterfold.ledger.AnnualAccounting.Instalments;
import quarterfold.ledger.Close;
import quarterfold.ledger.NotifiedPeriod;
import quarterfold.ledger.PaymentsOnAccount;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleSettings;
import quarterfold.ledger.Schemes;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;

/** Periods the months alone do not give: notified, last, annual, with payments on account. */
class SpecialPeriodsTest {

    private static final Law LAW = Law.of("GB");
    private static final List<Month> STAGGER_1 = SampleSettings.months("3 6 9 12");

    private static LocalDate day(String text) {
        return LocalDate.parse(text);
    }

    private static NotifiedPeriod notified(String from, String to, String due) {
        return new NotifiedPeriod(
                day(from),
                day(to),
                Optional.of(due).filter(d -> !d.isEmpty()).map(LocalDate::parse));
    }

    private static Periods periods(String from, String to, NotifiedPeriod... notified) {
        return new Periods(
                day(from),
                Optional.of(to).filter(t -> !t.isEmpty()).map(LocalDate::parse),
                STAGGER_1,
                List.of(notified),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static Periods annual(String registered, List<Month> ends, String from) {
        return new Periods(
                day(registered),
                Optional.empty(),
                ends,
                List.of(),
                Optional.of(
                        new AnnualAccounting(day(from), Instalments.MONTHLY, Amount.of("8000"))),
                Optional.empty(),
                Optional.empty());
    }

    private static Calendar calendar(Periods periods) {
        Calendar calendar = new Calendar(SampleSettings.on(periods), LAW);
        assertThat(calendar.problems()).isEmpty();
        return calendar;
    }

    /** First day, last day and due day of every period from the registration to a day. */
    private static List<String> shown(Calendar calendar, String until) {
        return calendar.from(LocalDate.of(2000, 1, 1), day(until)).stream()
                .map(p -> p.name() + ": " + p.start() + " " + p.end() + " due " + p.due())
                .toList();
    }

    /** T-719: a long first period, notified to 30 June 2026 (VATAC1100). */
    @Test
    void longFirstPeriod() {
        Calendar calendar =
                calendar(periods("2026-02-15", "", notified("2026-02-15", "2026-06-30", "")));
        assertThat(shown(calendar, "2026-12-31"))
                .containsExactly(
                        "2026-06: 2026-02-15 2026-06-30 due 2026-08-07",
                        "2026-09: 2026-07-01 2026-09-30 due 2026-11-07",
                        "2026-12: 2026-10-01 2026-12-31 due 2027-02-07");
        assertThat(calendar.named(YearMonth.of(2026, 3))).isEmpty();
        assertThat(calendar.of(day("2026-03-31"))).isEqualTo(calendar.of(day("2026-06-30")));
    }

    /** T-708, VDSOG400: a period to 28 March 2016 with the published due day, 4 May 2016. */
    @Test
    void periodsThatEndWithinAMonth() {
        Calendar calendar =
                calendar(
                        periods(
                                "2016-01-01",
                                "",
                                notified("2016-01-01", "2016-03-28", "2016-05-04"),
                                notified("2016-03-29", "2016-06-27", "2016-08-03")));
        assertThat(shown(calendar, "2016-09-30"))
                .containsExactly(
                        "2016-03: 2016-01-01 2016-03-28 due 2016-05-04",
                        "2016-06: 2016-03-29 2016-06-27 due 2016-08-03",
                        "2016-09: 2016-06-28 2016-09-30 due 2016-11-07");
        assertThat(calendar.of(day("2016-03-28")).orElseThrow().name())
                .isEqualTo(YearMonth.of(2016, 3));
        assertThat(calendar.of(day("2016-03-29")).orElseThrow().name())
                .isEqualTo(YearMonth.of(2016, 6));
        assertThat(calendar.named(YearMonth.of(2016, 6)).orElseThrow().end())
                .isEqualTo(day("2016-06-27"));
    }

    /** A notified period in the middle shortens the regular one before it. */
    @Test
    void periodsAroundANotifiedOne() {
        assertThat(
                        shown(
                                calendar(
                                        periods(
                                                "2026-01-01",
                                                "",
                                                notified("2026-05-01", "2026-07-31", ""))),
                                "2026-12-31"))
                .containsExactly(
                        "2026-03: 2026-01-01 2026-03-31 due 2026-05-07",
                        "2026-04: 2026-04-01 2026-04-30 due 2026-06-07",
                        "2026-07: 2026-05-01 2026-07-31 due 2026-09-07",
                        "2026-09: 2026-08-01 2026-09-30 due 2026-11-07",
                        "2026-12: 2026-10-01 2026-12-31 due 2027-02-07");
    }

    /**
     * VAT Regulations 1995 reg 25(4); policy paper, The Value Added Tax (Amendment) Regulations
     * 2025: one month from the day of cancellation, and a week more online.
     */
    @ParameterizedTest(name = "registered to {0}: {1} from {2}, due {3}")
    @CsvSource({
        "2026-05-20, 2026-05, 2026-04-01, 2026-06-27",
        "2026-06-30, 2026-06, 2026-04-01, 2026-08-06",
        "2026-07-01, 2026-07, 2026-07-01, 2026-08-08",
        "2026-01-31, 2026-01, 2026-01-01, 2026-03-07",
        "2024-01-31, 2024-01, 2024-01-01, 2024-03-07",
    })
    void theLastPeriodEndsWithTheRegistration(
            LocalDate to, YearMonth name, LocalDate start, LocalDate due) {
        Calendar calendar = calendar(periods("2024-01-01", to.toString()));
        Period last = new Period(name, start, to, due);
        assertThat(calendar.of(to)).contains(last);
        assertThat(calendar.named(name)).contains(last);
        assertThat(calendar.of(to.plusDays(1))).isEmpty();
        assertThat(calendar.named(name.plusMonths(3))).isEmpty();
        assertThat(calendar.from(to, to.plusYears(1))).containsExactly(last);
        assertThat(calendar.from(to.plusDays(1), to.plusYears(1))).isEmpty();
        assertThat(calendar.registeredTo()).contains(to);
    }

    /** VATAC1300: two months after the year, no seven days. */
    @Test
    void yearsUnderAnnualAccounting() {
        Calendar calendar = calendar(annual("2025-10-01", STAGGER_1, "2026-04-01"));
        assertThat(shown(calendar, "2028-03-31"))
                .containsExactly(
                        "2025-12: 2025-10-01 2025-12-31 due 2026-02-07",
                        "2026-03: 2026-01-01 2026-03-31 due 2026-05-07",
                        "2027-03: 2026-04-01 2027-03-31 due 2027-05-31",
                        "2028-03: 2027-04-01 2028-03-31 due 2028-05-31");
        assertThat(calendar.annual(calendar.of(day("2026-03-31")).orElseThrow())).isEmpty();
        assertThat(calendar.annual(calendar.of(day("2026-04-01")).orElseThrow())).isPresent();
    }

    /** VATAAS5100: a first year under four months is due a month after it. February is no 30th. */
    @ParameterizedTest(name = "from {0}, year ends {1}: due {2}")
    @CsvSource({
        "2026-01-01, 3,  2026-04-30",
        "2026-01-01, 4,  2026-06-30",
        "2025-12-01, 3,  2026-05-31",
        "2026-01-01, 12, 2027-02-28",
        "2027-01-01, 12, 2028-02-29",
        "2025-11-01, 1,  2026-02-28",
    })
    void firstYearOfAnnualAccounting(String from, String month, LocalDate due) {
        Calendar calendar = calendar(annual(from, SampleSettings.months(month), from));
        assertThat(calendar.of(day(from)).orElseThrow().due()).isEqualTo(due);
    }

    /** VAT Notice 700/60, VATAC1300: no seven days with payments on account. */
    @Test
    void paymentsOnAccountHaveNoExtraDays() {
        Periods periods =
                new Periods(
                        day("2015-01-01"),
                        Optional.empty(),
                        STAGGER_1,
                        List.of(),
                        Optional.empty(),
                        Optional.of(new PaymentsOnAccount(day("2016-04-01"), Amount.of("2400000"))),
                        Optional.empty());
        Calendar calendar = calendar(periods);
        Period before = calendar.of(day("2016-03-31")).orElseThrow();
        Period first = calendar.of(day("2016-04-01")).orElseThrow();
        assertThat(before.due()).isEqualTo(day("2016-05-07"));
        assertThat(first.due()).isEqualTo(day("2016-07-31"));
        assertThat(calendar.onAccount(before)).isEmpty();
        assertThat(calendar.onAccount(first)).isPresent();
    }

    /** VAT Regulations 1995 reg 99: 31 March, 30 April or 31 May by the periods. */
    @ParameterizedTest(name = "periods ending {0}: month {1}")
    @CsvSource({
        "3 6 9 12,                   MARCH",
        "1 4 7 10,                   APRIL",
        "2 5 8 11,                   MAY",
        "1 2 3 4 5 6 7 8 9 10 11 12, MARCH",
        "7,                          APRIL",
        "12,                         MARCH",
    })
    void taxYearForPartialExemption(String ends, Month month) {
        Calendar calendar = calendar(Periods.of(day("2024-01-01"), SampleSettings.months(ends)));
        assertThat(calendar.partialExemptionYearEnds(day("2026-01-01"))).isEqualTo(month);
    }

    @Test
    void anotherTaxYearWasAgreed() {
        Periods periods =
                new Periods(
                        day("2024-01-01"),
                        Optional.empty(),
                        STAGGER_1,
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(Month.DECEMBER));
        assertThat(calendar(periods).partialExemptionYearEnds(day("2026-01-01")))
                .isEqualTo(Month.DECEMBER);
    }

    @Test
    void settingsThatDoNotFitTogether() {
        TreeMap<LocalDate, String> schemes = new TreeMap<>();
        schemes.put(day("2024-01-01"), "standard");
        schemes.put(day("2026-07-01"), "cash");
        schemes.put(day("2026-10-02"), "standard");
        Periods periods =
                new Periods(
                        day("2024-01-01"),
                        Optional.empty(),
                        STAGGER_1,
                        List.of(notified("2026-03-16", "2026-03-31", "")),
                        Optional.of(
                                new AnnualAccounting(
                                        day("2025-02-01"), Instalments.MONTHLY, Amount.of("1"))),
                        Optional.of(new PaymentsOnAccount(day("2024-06-30"), Amount.of("1"))),
                        Optional.empty());
        Settings settings = SampleSettings.on(periods, new Schemes(schemes, Optional.empty()));
        assertThat(new Calendar(settings, LAW).problems())
                .containsExactly(
                        "[scheme]: found a change of scheme on 2026-07-01, within the period from 2026-04-01 to 2027-01-31; expected the first day of a period, such as 2027-02-01",
                        "[scheme]: found a change of scheme on 2026-10-02, within the period from 2026-04-01 to 2027-01-31; expected the first day of a period, such as 2027-02-01",
                        "[annual_accounting]: found a first day on 2025-02-01, within the period from 2025-01-01 to 2025-03-31; expected the first day of a period, such as 2025-04-01",
                        "[payments_on_account]: found a first day on 2024-06-30, within the period from 2024-04-01 to 2024-06-30; expected the first day of a period, such as 2024-07-01",
                        "[periods]: found two periods that end in 2026-03; expected one, since a period is named by the month of its last day; list the days between under periods too");
    }

    /** Periods follow one another without a gap, so that no day is in two returns or in none. */
    @ParameterizedTest
    @ValueSource(strings = {"3 6 9 12", "1 4 7 10", "2 5 8 11", "1 2 3 4 5 6 7 8 9 10 11 12", "5"})
    void everyDayIsInOnePeriod(String ends) {
        Periods periods =
                new Periods(
                        day("2023-02-27"),
                        Optional.of(day("2026-08-19")),
                        SampleSettings.months(ends),
                        List.of(
                                notified("2023-02-27", "2023-06-11", "2023-07-20"),
                                notified("2024-01-15", "2024-04-30", "")),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty());
        Calendar calendar = new Calendar(SampleSettings.on(periods), LAW);
        for (LocalDate day = day("2023-02-27");
                !day.isAfter(day("2026-08-19"));
                day = day.plusDays(1)) {
            Period period = calendar.of(day).orElseThrow();
            assertThat(period.contains(day)).isTrue();
            assertThat(calendar.of(period.start())).contains(period);
            assertThat(calendar.of(period.end())).contains(period);
        }
        assertThat(calendar.of(day("2023-02-26"))).isEmpty();
        assertThat(calendar.of(day("2026-08-20"))).isEmpty();
    }

    /** A change of stagger after a close: the closed quarters stay if the book lists them. */
    @Test
    void aChangeOfStaggerKeepsWhatIsClosed() {
        Close closed = closed("2026-01-01", "2026-03-31");
        Periods changed = Periods.of(day("2026-01-01"), SampleSettings.months("1 4 7 10"));
        assertThat(new Calendar(SampleSettings.on(changed), LAW).cutAnew(List.of(closed)))
                .contains(closed);
        Periods listed =
                new Periods(
                        day("2026-01-01"),
                        Optional.empty(),
                        SampleSettings.months("1 4 7 10"),
                        List.of(notified("2026-01-01", "2026-03-31", "")),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty());
        Calendar calendar = calendar(listed);
        assertThat(calendar.cutAnew(List.of(closed))).isEmpty();
        assertThat(shown(calendar, "2026-07-31"))
                .containsExactly(
                        "2026-03: 2026-01-01 2026-03-31 due 2026-05-07",
                        "2026-04: 2026-04-01 2026-04-30 due 2026-06-07",
                        "2026-07: 2026-05-01 2026-07-31 due 2026-09-07");
    }

    /** The same name and first day is not enough: a shorter period leaves days to another. */
    @Test
    void aClosedPeriodThatWouldEndEarlierIsCutAnew() {
        Close closed = closed("2026-01-01", "2026-03-31");
        Calendar shorter =
                calendar(
                        periods(
                                "2026-01-01",
                                "",
                                notified("2026-01-01", "2026-03-28", "2026-05-04")));
        assertThat(shorter.cutAnew(List.of(closed))).contains(closed);
        assertThat(calendar(periods("2026-01-01", "2026-03-30")).cutAnew(List.of(closed)))
                .contains(closed);
        assertThat(calendar(periods("2026-01-01", "2026-03-31")).cutAnew(List.of(closed)))
                .isEmpty();
    }

    private static Close closed(String start, String end) {
        return new Close(
                YearMonth.from(day(end)),
                day(start),
                day(end),
                day(end).plusDays(37),
                "nil",
                SampleSettings.GB,
                1,
                0,
                0,
                Map.of(),
                Map.of(),
                Map.of(),
                List.of(),
                List.of(),
                List.of());
    }
}
