package quarterfold.period;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import quarterfold.ledger.Close;
import quarterfold.ledger.NotifiedPeriod;
import quarterfold.ledger.Periods;
import quarterfold.ledger.SampleLine;
import quarterfold.ledger.SampleSettings;

/** Settings that do not fit the law's tables or what is closed already, and odd first periods. */
class CalendarProblemsTest {

    @TempDir private Path folder;

    private static Calendar calendar(String registered, String ends) {
        return new Calendar(
                SampleSettings.registered(LocalDate.parse(registered), ends), TempBook.LAW);
    }

    /** VAT began on 1 April 1973 (Finance Act 1972), and so do the tables. */
    @Test
    void registeredBeforeTheTables() {
        assertThat(calendar("1973-04-01", "3 6 9 12").problems()).isEmpty();
        assertThat(calendar("1972-01-01", "3 6 9 12").problems())
                .singleElement()
                .asString()
                .startsWith(
                        "[registered_from]: found 1972-01-01, before the tables of the law begin (")
                .endsWith(
                        "); expected a later day, such as the first day of the earliest period that is to be worked out");
    }

    /** Neither the first nor the last day of what is closed may move. */
    @Test
    void closedPeriodsCutInAnotherWay() {
        try (TempBook book = new TempBook(folder, SampleSettings.GB)) {
            book.enter("a.csv", SampleLine.of("sale").on("2026-02-01").gross("12"));
            book.close("2026-03");
            List<Close> closes = book.ledger().closes();
            assertThat(calendar("2003-01-01", "3 6 9 12").cutAnew(closes)).isEmpty();
            assertThat(calendar("2003-01-01", "1 2 3 4 5 6 7 8 9 10 11 12").cutAnew(closes))
                    .as("begins later")
                    .map(Close::period)
                    .contains(YearMonth.of(2026, 3));
            assertThat(calendar("2026-01-02", "3 6 9 12").cutAnew(closes)).isPresent();
            assertThat(notified("2026-01-01", "2026-03-30").cutAnew(closes))
                    .as("ends earlier")
                    .isPresent();
            assertThat(notified("2026-01-01", "2026-03-31").cutAnew(closes)).isEmpty();
        }
    }

    private static Calendar notified(String from, String to) {
        return new Calendar(
                SampleSettings.on(
                        new Periods(
                                LocalDate.of(2026, 1, 1),
                                Optional.empty(),
                                SampleSettings.months("3 6 9 12"),
                                List.of(
                                        new NotifiedPeriod(
                                                LocalDate.parse(from),
                                                LocalDate.parse(to),
                                                Optional.empty())),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty())),
                TempBook.LAW);
    }

    /** A period is found by the month of its last day, whatever day of it that is. */
    @Test
    void namedByAMonthItEndsWithin() {
        Calendar calendar = notified("2026-01-01", "2026-04-15");
        assertThat(calendar.named(YearMonth.of(2026, 4)).orElseThrow())
                .extracting(p -> p.start() + " to " + p.end())
                .isEqualTo("2026-01-01 to 2026-04-15");
        assertThat(calendar.named(YearMonth.of(2026, 3))).isEmpty();
        assertThat(calendar.named(YearMonth.of(2026, 6)).orElseThrow().start())
                .isEqualTo(LocalDate.of(2026, 4, 16));
    }

    /** Reg 99(1)(d): the tax year has the periods that begin in it. */
    @Test
    void periodsOfATaxYear() {
        Calendar calendar = notified("2026-01-01", "2026-04-15");
        TaxYear year = TaxYear.of(LocalDate.of(2026, 5, 1), calendar);
        assertThat(year).hasToString("2026-04-01 to 2027-03-31");
        assertThat(year.periods(calendar))
                .extracting(p -> p.name().toString())
                .containsExactly("2026-06", "2026-09", "2026-12", "2027-03");
    }
}
