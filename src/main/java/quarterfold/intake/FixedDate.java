package quarterfold.intake;

import java.time.Month;
import java.time.chrono.IsoChronology;
import java.util.Optional;

/**
 * A date pattern in which every part has its fixed place: {@code yyyy MM dd}, {@code HH mm ss}, a
 * fraction, literals, and an offset at the end. Reads without making objects; leaves all that is
 * unusual, such as an offset other than {@code Z}, to the platform's formatter. For one thread.
 */
final class FixedDate {
    private static final String PARTS = "yMdHmsS";

    /** One character each: a part's letter where a digit stands, a space where a literal does. */
    private final String parts;

    private final String literals;
    private final boolean offset;
    private int year;
    private int month;
    private int day;
    private int hour;
    private int minute;
    private int second;

    private FixedDate(String parts, String literals, boolean offset) {
        this.parts = parts;
        this.literals = literals;
        this.offset = offset;
    }

    /** The pattern as fixed places, or nothing where it has any other part. */
    static Optional<FixedDate> of(String pattern) {
        String years = pattern.replace('u', 'y');
        String plain = years.replaceAll("X{1,3}$", "");
        StringBuilder parts = new StringBuilder();
        StringBuilder literals = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < plain.length(); i++) {
            char c = plain.charAt(i);
            if (c == '\'') {
                quoted = !quoted;
            } else if (!quoted && PARTS.indexOf(c) >= 0) {
                parts.append(c);
                literals.append(' ');
            } else if (quoted || (!Character.isLetter(c) && "[]{}#".indexOf(c) < 0)) {
                parts.append(' ');
                literals.append(c);
            } else {
                return Optional.empty();
            }
        }
        String form = parts.toString();
        boolean offset = plain.length() < years.length();
        int hours = count(form, 'H');
        boolean fixed =
                !pattern.contains("''")
                        && PARTS.chars().allMatch(letter -> isOneRun(form, letter))
                        && count(form, 'y') == 4
                        && count(form, 'M') == 2
                        && count(form, 'd') == 2
                        && (hours == 2 || (hours == 0 && !offset))
                        && count(form, 'm') == hours
                        && (count(form, 's') == 0 || (count(form, 's') == 2 && hours == 2))
                        && (count(form, 'S') == 0 || count(form, 's') == 2);
        return fixed
                ? Optional.of(new FixedDate(form, literals.toString(), offset))
                : Optional.empty();
    }

    private static int count(String form, int letter) {
        return (int) form.chars().filter(c -> c == letter).count();
    }

    private static boolean isOneRun(String form, int letter) {
        int first = form.indexOf(letter);
        return first < 0 || form.lastIndexOf(letter) - first + 1 == count(form, letter);
    }

    /** Whether the text is of the pattern and on the calendar; its parts are then at hand. */
    boolean read(String text) {
        int places = parts.length();
        if (text.length() != (offset ? places + 1 : places)
                || (offset && text.charAt(places) != 'Z')) {
            return false;
        }
        year = 0;
        month = 0;
        day = 0;
        hour = 0;
        minute = 0;
        second = 0;
        for (int i = 0; i < places; i++) {
            char c = text.charAt(i);
            char part = parts.charAt(i);
            if (part == ' ') {
                if (c != literals.charAt(i)) {
                    return false;
                }
            } else if (c < '0' || c > '9') {
                return false;
            } else {
                add(part, c - '0');
            }
        }
        return year > 0
                && month >= 1
                && month <= 12
                && day >= 1
                && (day <= 28 || day <= lengthOfMonth())
                && hour < 24
                && minute < 60
                && second < 60;
    }

    private void add(char part, int digit) {
        switch (part) {
            case 'y' -> year = year * 10 + digit;
            case 'M' -> month = month * 10 + digit;
            case 'd' -> day = day * 10 + digit;
            case 'H' -> hour = hour * 10 + digit;
            case 'm' -> minute = minute * 10 + digit;
            case 's' -> second = second * 10 + digit;
            default -> {} // a fraction of a second moves no day
        }
    }

    private int lengthOfMonth() {
        return Month.of(month).length(IsoChronology.INSTANCE.isLeapYear(year));
    }

    /** The same for all texts of one minute, and for no other. */
    long minuteKey() {
        return (((year * 12L + month) * 32 + day) * 24 + hour) * 60 + minute;
    }

    /** Whether the time is of UTC. */
    boolean isUtc() {
        return offset;
    }

    int year() {
        return year;
    }

    int month() {
        return month;
    }

    int day() {
        return day;
    }

    int hour() {
        return hour;
    }

    int minute() {
        return minute;
    }
}
