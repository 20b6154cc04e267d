package quarterfold.outlook;

import de.focus_shift.jollyday.core.Holiday;
import de.focus_shift.jollyday.core.HolidayCalendar;
import de.focus_shift.jollyday.core.HolidayManager;
import de.focus_shift.jollyday.core.HolidayType;
import de.focus_shift.jollyday.core.ManagerParameters;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.Year;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Bank working days: neither a weekend nor a bank holiday in England (GOV.UK, bank holidays; the
 * tax authority's deadline calculator). For one thread.
 */
final class WorkingDays {

    private static final String ENGLAND = "eng";

    private final HolidayManager holidays =
            HolidayManager.getInstance(ManagerParameters.create(HolidayCalendar.UNITED_KINGDOM));
    private final Map<Year, Set<LocalDate>> known = new HashMap<>();

    boolean isWorking(LocalDate day) {
        return day.getDayOfWeek() != DayOfWeek.SATURDAY
                && day.getDayOfWeek() != DayOfWeek.SUNDAY
                && !holidays(Year.from(day)).contains(day);
    }

    /** The bank holidays of a year that fall on weekdays and weekends alike. */
    Set<LocalDate> holidays(Year year) {
        return known.computeIfAbsent(
                year,
                y ->
                        holidays.getHolidays(y, HolidayType.PUBLIC_HOLIDAY, ENGLAND).stream()
                                .map(Holiday::getDate)
                                .collect(Collectors.toSet()));
    }

    /** The day itself where it is a working day, or else the last one before it. */
    LocalDate onOrBefore(LocalDate day) {
        LocalDate working = day;
        while (!isWorking(working)) {
            working = working.minusDays(1);
        }
        return working;
    }

    /** So many working days before a day. */
    LocalDate before(LocalDate day, int number) {
        return stepped(day, number, -1);
    }

    /** So many working days after a day. */
    LocalDate after(LocalDate day, int number) {
        return stepped(day, number, 1);
    }

    private LocalDate stepped(LocalDate day, int number, int step) {
        LocalDate working = day;
        for (int left = number; left > 0; ) {
            working = working.plusDays(step);
            left -= isWorking(working) ? 1 : 0;
        }
        return working;
    }
}
