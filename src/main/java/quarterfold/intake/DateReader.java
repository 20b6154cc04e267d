package quarterfold.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAccessor;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Reads the dates of one layout into days of the book's zone. For one thread.
 *
 * <p>A pattern of fixed places, such as {@code yyyy-MM-dd'T'HH:mm:ssX}, is read by a loop over the
 * characters, and the day is kept until the text's minute changes; any other pattern by the
 * platform's own formatter, with a memory of the texts met.
 */
final class DateReader {
    private static final int KEPT = 10_000;

    private final Layout.Dates dates;
    private final ZoneId book;
    private final ZoneId written;
    private final boolean nativeDates;
    private final DateTimeFormatter formatter;
    private final Optional<FixedDate> fixed;
    private final Map<String, Optional<LocalDate>> known = new HashMap<>();
    private String lastText = "";
    private long lastMinute = Long.MIN_VALUE;
    private Optional<LocalDate> minuteDay = Optional.empty();
    private Optional<LocalDate> lastDay = Optional.empty();

    /** {@code nativeDates}: ISO texts are dates too, whatever the pattern. */
    DateReader(Layout.Dates dates, ZoneId book, boolean nativeDates) {
        this.dates = dates;
        this.book = book;
        this.nativeDates = nativeDates;
        written = dates.zone().orElse(book);
        formatter = dates.formatter();
        fixed = FixedDate.of(dates.pattern());
    }

    /** A reader of the same dates for another column: each remembers the text it read last. */
    DateReader another() {
        return new DateReader(dates, book, nativeDates);
    }

    /** The day, or nothing where the text is not a date of the pattern or not on the calendar. */
    Optional<LocalDate> read(String text) {
        if (!text.equals(lastText)) {
            lastDay = find(text);
            lastText = text;
        }
        return lastDay;
    }

    private Optional<LocalDate> find(String text) {
        if (fixed.isPresent()) {
            FixedDate date = fixed.get();
            if (date.read(text)) {
                long minute = date.minuteKey();
                if (minute != lastMinute) {
                    minuteDay = Optional.of(day(date));
                    lastMinute = minute;
                }
                return minuteDay;
            }
        }
        Optional<LocalDate> day = known.get(text);
        if (day == null) {
            day = parse(text).filter(d -> d.getYear() > 0);
            if (known.size() >= KEPT) {
                known.clear();
            }
            known.put(text, day);
        }
        return day;
    }

    String expected() {
        return "a date on the calendar written %s, such as %s"
                .formatted(dates.pattern(), dates.example());
    }

    private LocalDate day(FixedDate date) {
        LocalDate day = LocalDate.of(date.year(), date.month(), date.day());
        LocalDateTime time = day.atTime(date.hour(), date.minute());
        if (date.isUtc()) {
            return time.atOffset(ZoneOffset.UTC).atZoneSameInstant(book).toLocalDate();
        }
        return dates.hasTime() ? inBook(time) : day;
    }

    private LocalDate inBook(LocalDateTime local) {
        return written.equals(book)
                ? local.toLocalDate()
                : local.atZone(written).withZoneSameInstant(book).toLocalDate();
    }

    private Optional<LocalDate> parse(String text) {
        Optional<LocalDate> day = parse(text, formatter);
        if (day.isEmpty() && nativeDates && text.length() >= 10 && text.charAt(4) == '-') {
            day =
                    parse(
                            text,
                            text.length() == 10
                                    ? DateTimeFormatter.ISO_LOCAL_DATE
                                    : DateTimeFormatter.ISO_LOCAL_DATE_TIME);
        }
        return day;
    }

    private Optional<LocalDate> parse(String text, DateTimeFormatter by) {
        try {
            TemporalAccessor read =
                    by.parseBest(
                            text,
                            ZonedDateTime::from,
                            OffsetDateTime::from,
                            LocalDateTime::from,
                            LocalDate::from);
            if (read instanceof ZonedDateTime zoned) {
                return Optional.of(zoned.withZoneSameInstant(book).toLocalDate());
            }
            if (read instanceof OffsetDateTime at) {
                return Optional.of(at.atZoneSameInstant(book).toLocalDate());
            }
            return Optional.of(
                    read instanceof LocalDateTime local ? inBook(local) : LocalDate.from(read));
        } catch (DateTimeException notADate) {
            return Optional.empty();
        }
    }
}
