package quarterfold.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** British Summer Time of 2026 runs from 29 March 01:00 UTC to 25 October 01:00 UTC. */
class DateReaderTest {
    private static final ZoneId LONDON = ZoneId.of("Europe/London");

    private static DateReader reader(String pattern, String zone) {
        Optional<ZoneId> written = zone.isEmpty() ? Optional.empty() : Optional.of(ZoneId.of(zone));
        return new DateReader(new Layout.Dates(pattern, written), LONDON, false);
    }

    @ParameterizedTest
    @CsvSource({
        "2026-09-30T22:59:59Z, 2026-09-30",
        "2026-09-30T23:00:00Z, 2026-10-01",
        "2026-09-30T23:30:00Z, 2026-10-01",
        "2026-01-01T00:30:00Z, 2026-01-01",
        "2026-01-01T23:59:59Z, 2026-01-01",
        "2026-03-28T23:59:59Z, 2026-03-28",
        "2026-03-29T23:00:00Z, 2026-03-30",
        "2026-10-24T23:00:00Z, 2026-10-25",
        "2026-10-25T23:00:00Z, 2026-10-25",
        "2026-10-01T00:30:00+01, 2026-10-01",
        "2026-09-30T19:30:00-05, 2026-10-01"
    })
    void anInstantIsADayInTheBooksZone(String text, LocalDate day) {
        assertThat(reader("yyyy-MM-dd'T'HH:mm:ssX", "").read(text)).contains(day);
    }

    @ParameterizedTest
    @CsvSource({
        "30/09/2026 23:30, UTC, 2026-10-01",
        "30/09/2026 23:30, Europe/London, 2026-09-30",
        "30/09/2026 23:30, '', 2026-09-30",
        "01/10/2026 00:30, Europe/Berlin, 2026-09-30",
        "30/09/2026 19:00, America/New_York, 2026-10-01"
    })
    void aWallClockIsReadInTheLayoutsZone(String text, String zone, LocalDate day) {
        assertThat(reader("dd/MM/yyyy HH:mm", zone).read(text)).contains(day);
    }

    @ParameterizedTest
    @CsvSource({
        "d MMM yyyy, 9 Sep 2026, 2026-09-09",
        "d MMM yyyy, 30 SEP 2026, 2026-09-30",
        "dd.MM.yyyy, 30.09.2026, 2026-09-30",
        "yyyyMMdd, 20260930, 2026-09-30",
        "uuuu-MM-dd, 2026-09-30, 2026-09-30",
        "yyyy-MM-dd HH:mm:ss.SSS, 2026-09-30 23:30:00.123, 2026-09-30",
        "d/M/yy, 3/9/26, 2026-09-03"
    })
    void readsTheLayoutsPattern(String pattern, String text, LocalDate day) {
        assertThat(reader(pattern, "").read(text)).contains(day);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2026-02-29", "2026-13-01", "2026-00-10", "2026-09-31", "2026-09-00", "0000-01-01",
                "2026-9-30", "30-09-2026", "2026-09-30 ", "", "today", "2026-09-3٠"
            })
    void refusesWhatIsNoDayOfTheCalendar(String text) {
        assertThat(reader("yyyy-MM-dd", "").read(text)).isEmpty();
    }

    @Test
    void refusesATimeThatIsNone() {
        DateReader reader = reader("yyyy-MM-dd'T'HH:mm:ssX", "");
        assertThat(reader.read("2026-09-30T10:00:60Z")).isEmpty();
        assertThat(reader.read("2026-09-30T10:00:59Z")).contains(LocalDate.of(2026, 9, 30));
        assertThat(reader.read("2026-09-30T10:00:99Z")).isEmpty();
        assertThat(reader.read("2026-09-30T24:30:00Z")).isEmpty();
    }

    @Test
    void leapDaysAreOfTheCalendar() {
        assertThat(reader("yyyy-MM-dd", "").read("2024-02-29")).contains(LocalDate.of(2024, 2, 29));
        assertThat(reader("yyyy-MM-dd", "").read("2100-02-29")).isEmpty();
    }

    @Test
    void saysWhatItExpects() {
        assertThat(reader("dd/MM/yyyy HH:mm", "").expected())
                .isEqualTo(
                        "a date on the calendar written dd/MM/yyyy HH:mm, such as 30/09/2026 13:45");
    }
}
