package quarterfold.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.Year;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bank holidays in England as GOV.UK, UK bank holidays, lists them (from memory). */
class WorkingDaysTest {

    private static final WorkingDays DAYS = new WorkingDays();

    /** Special ones: VE Day moved in 2020; jubilee and funeral in 2022; coronation in 2023. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "2012, 01-02 04-06 04-09 05-07 06-04 06-05 08-27 12-25 12-26",
        "2013, 01-01 03-29 04-01 05-06 05-27 08-26 12-25 12-26",
        "2014, 01-01 04-18 04-21 05-05 05-26 08-25 12-25 12-26",
        "2019, 01-01 04-19 04-22 05-06 05-27 08-26 12-25 12-26",
        "2020, 01-01 04-10 04-13 05-08 05-25 08-31 12-25 12-28",
        "2021, 01-01 04-02 04-05 05-03 05-31 08-30 12-27 12-28",
        "2022, 01-03 04-15 04-18 05-02 06-02 06-03 08-29 09-19 12-26 12-27",
        "2023, 01-02 04-07 04-10 05-01 05-08 05-29 08-28 12-25 12-26",
        "2024, 01-01 03-29 04-01 05-06 05-27 08-26 12-25 12-26",
        "2025, 01-01 04-18 04-21 05-05 05-26 08-25 12-25 12-26",
        "2026, 01-01 04-03 04-06 05-04 05-25 08-31 12-25 12-28",
        "2027, 01-01 03-26 03-29 05-03 05-31 08-30 12-27 12-28",
    })
    void bankHolidaysThatAreNoWeekend(int year, String days) {
        assertThat(
                        DAYS.holidays(Year.of(year)).stream()
                                .filter(d -> d.getDayOfWeek().getValue() <= 5)
                                .sorted()
                                .map(d -> d.toString().substring(5)))
                .containsExactlyElementsOf(Stream.of(days.split(" ", -1)).toList());
    }

    @Test
    void workingDaysAroundAHoliday() {
        LocalDate easterMonday = LocalDate.of(2026, 4, 6);
        assertThat(DAYS.isWorking(easterMonday)).isFalse();
        assertThat(DAYS.onOrBefore(easterMonday)).isEqualTo(LocalDate.of(2026, 4, 2));
        assertThat(DAYS.onOrBefore(LocalDate.of(2026, 4, 7))).isEqualTo(LocalDate.of(2026, 4, 7));
        assertThat(DAYS.before(LocalDate.of(2026, 4, 7), 1)).isEqualTo(LocalDate.of(2026, 4, 2));
        assertThat(DAYS.after(LocalDate.of(2026, 4, 2), 1)).isEqualTo(LocalDate.of(2026, 4, 7));
        assertThat(DAYS.after(easterMonday, 3)).isEqualTo(LocalDate.of(2026, 4, 9));
    }
}
