package quarterfold.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import quarterfold.intake.Layout.Dates;

/** Finds how a column writes its dates: every pattern that reads all of them. */
final class DateFinder {
    private static final Pattern TOKEN = Pattern.compile("\\d+|\\p{L}+|[^\\d\\p{L}]");
    private static final String DAY =
            "(?:\\d{1,4}[-/.]\\d{1,2}[-/.]\\d{2,4}|(?:19|20)\\d{6}|\\d{1,2}\\.?[- ]\\p{L}{3,12}\\.?[- ]\\d{2,4}|\\p{L}{3,12}\\.? \\d{1,2}, \\d{4})";
    private static final Pattern LIKE =
            Pattern.compile("(?:\\p{L}{2,10}\\.?,? )?" + DAY + "(?:[T ,].{3,25})?");
    private static final Pattern WITHIN =
            Pattern.compile("(?<![\\d\\p{L}])" + DAY + "(?![\\d\\p{L}])");

    /** Letters of summer times, each with those of the same clocks in winter. */
    private static final Map<String, String> SEASONS = Map.of("BST", "GMT", "CEST", "CET");

    private static final String[] LANGUAGES = {"en", "de", "fr", "es", "it", "nl", "pl"};

    private DateFinder() {}

    static boolean isLike(String text) {
        return text.length() <= 45 && LIKE.matcher(text).matches();
    }

    /** Where texts like dates, without times, stand in a line. */
    static List<MatchResult> within(String line) {
        return WITHIN.matcher(line).results().toList();
    }

    /** One way of reading, and the days it gives, in order of the texts. */
    record Found(Dates dates, List<LocalDate> days) {}

    /**
     * The ways that read all texts, one for each set of days they give.
     *
     * @param nativeDates whether ISO texts are dates whatever the pattern
     */
    static List<Found> find(Collection<String> texts, boolean nativeDates) {
        Set<String> distinct = new LinkedHashSet<>(texts);
        Map<List<LocalDate>, Found> found = new LinkedHashMap<>();
        for (Dates dates : candidates(distinct)) {
            read(dates, distinct, nativeDates)
                    .ifPresent(days -> found.putIfAbsent(days, new Found(dates, days)));
        }
        return List.copyOf(found.values());
    }

    private static Optional<List<LocalDate>> read(
            Dates dates, Collection<String> texts, boolean nativeDates) {
        DateReader reader;
        try {
            reader = new DateReader(dates, ZoneOffset.UTC, nativeDates);
        } catch (IllegalArgumentException | DateTimeException e) {
            return Optional.empty();
        }
        List<LocalDate> days = new ArrayList<>();
        for (String text : texts) {
            Optional<LocalDate> day = reader.read(text);
            if (day.isEmpty() || day.get().getYear() < 1990 || day.get().getYear() > 2100) {
                return Optional.empty();
            }
            days.add(day.get());
        }
        return Optional.of(days);
    }

    private static List<Dates> candidates(Set<String> texts) {
        List<Dates> candidates = new ArrayList<>();
        if (texts.isEmpty()) {
            return candidates;
        }
        String longest = texts.stream().reduce("", (a, b) -> b.length() > a.length() ? b : a);
        String first = texts.iterator().next();
        for (String example : new LinkedHashSet<>(List.of(first, longest))) {
            for (boolean fixed : new boolean[] {true, false}) {
                for (String order : new String[] {"yMd", "dMy", "Mdy"}) {
                    for (String months : new String[] {"MMM", "MMMM"}) {
                        new PatternMaker(order, months, fixed)
                                .make(example)
                                .ifPresent(p -> candidates.addAll(p.inLanguages()));
                    }
                }
            }
        }
        return candidates.stream().distinct().toList();
    }

    /** A pattern, whether it names months, and the zone its text says. */
    private record Made(String pattern, boolean names, Optional<ZoneId> zone) {
        List<Dates> inLanguages() {
            List<Dates> all = new ArrayList<>();
            for (String language : names ? LANGUAGES : new String[] {"en"}) {
                all.add(new Dates(pattern, zone, Locale.forLanguageTag(language)));
            }
            return all;
        }
    }

    /** Makes the pattern of one example, its numbers taken in one order. */
    private static final class PatternMaker {
        private final String order;
        private final String months;
        private final boolean fixed;
        private final StringBuilder pattern = new StringBuilder();
        private int dateParts;
        private int timeParts;
        private boolean names;
        private Optional<ZoneId> zone = Optional.empty();

        PatternMaker(String order, String months, boolean fixed) {
            this.order = order;
            this.months = months;
            this.fixed = fixed;
        }

        Optional<Made> make(String example) {
            Matcher tokens = TOKEN.matcher(example);
            boolean half = example.matches("(?i).*\\b[ap]\\.?m\\.?(?: [a-z]{3,4})?$");
            char before = 0;
            while (tokens.find()) {
                String token = tokens.group();
                boolean good;
                if (Character.isDigit(token.charAt(0))) {
                    good = digits(token, half, before);
                } else if (Character.isLetter(token.charAt(0))) {
                    good = letters(token);
                } else {
                    good = true;
                    mark(token.charAt(0));
                }
                if (!good) {
                    return Optional.empty();
                }
                before = token.charAt(0);
            }
            return dateParts == 3
                    ? Optional.of(new Made(pattern.toString(), names, zone))
                    : Optional.empty();
        }

        private boolean digits(String token, boolean half, char before) {
            if (dateParts == 0 && (token.length() == 8 || token.length() == 14)) {
                pattern.append(
                        switch (order) {
                            case "yMd" -> "yyyyMMdd";
                            case "dMy" -> "ddMMyyyy";
                            default -> "MMddyyyy";
                        });
                pattern.append(token.length() == 14 ? "HHmmss" : "");
                dateParts = 3;
                return true;
            }
            if (dateParts < 3) {
                return datePart(token);
            }
            if (timeParts == 3 && (before == '.' || before == ',')) {
                pattern.append("S".repeat(Math.min(9, token.length())));
                return true;
            }
            if (timeParts >= 2 && (before == '+' || before == '-')) {
                pattern.setLength(pattern.length() - 1);
                pattern.append(token.length() == 4 ? "XX" : "XXX");
                timeParts = 9;
                return true;
            }
            if (timeParts >= 9) {
                pattern.setLength(pattern.length() - 1); // the colon within an offset
                return true;
            }
            if (timeParts > 2 || token.length() > 2) {
                return false;
            }
            char letter = "hms".charAt(timeParts);
            letter = timeParts == 0 && !half ? 'H' : letter;
            pattern.append(letter).append(fixed || timeParts > 0 ? String.valueOf(letter) : "");
            timeParts++;
            return true;
        }

        private boolean datePart(String token) {
            // Where the month is a name, days and years keep their order round it.
            String left = names ? order.replace("M", "") : order;
            char part = left.charAt(names ? dateParts - 1 : dateParts);
            if (names && dateParts == 1 && pattern.indexOf("d") >= 0) {
                part = 'y';
            } else if (names && dateParts == 2) {
                part = pattern.indexOf("y") >= 0 ? 'd' : 'y';
            }
            if ((part == 'y') != (token.length() == 4) && !(part == 'y' && token.length() == 2)) {
                return false;
            }
            if (part != 'y' && token.length() > 2) {
                return false;
            }
            pattern.append(
                    part == 'y'
                            ? (token.length() == 4 ? "yyyy" : "yy")
                            : fixed ? String.valueOf(part).repeat(2) : String.valueOf(part));
            dateParts++;
            return true;
        }

        private boolean letters(String token) {
            if (token.equals("T") && dateParts == 3) {
                pattern.append("'T'");
            } else if (token.equals("Z") && timeParts >= 2) {
                pattern.append("X");
            } else if ((token.equals("UTC") || token.equals("GMT")) && timeParts >= 2) {
                pattern.append('\'').append(token).append('\'');
                zone = Optional.of(ZoneId.of("UTC"));
            } else if (SEASONS.containsKey(token) && timeParts >= 2) {
                String winter = SEASONS.getOrDefault(token, token);
                pattern.append("['%s']['%s']".formatted(token, winter));
                zone =
                        Optional.of(
                                ZoneId.of(winter.equals("GMT") ? "Europe/London" : "Europe/Paris"));
            } else if (token.equalsIgnoreCase("am") || token.equalsIgnoreCase("pm")) {
                pattern.append("a");
            } else if (token.equals("Uhr")) {
                pattern.append("'Uhr'");
            } else if (dateParts < 3 && !names) {
                if (dateParts == 1 && order.charAt(0) == 'M') {
                    return false;
                }
                pattern.append(months);
                names = true;
                dateParts++;
            } else {
                return false;
            }
            return true;
        }

        private void mark(char mark) {
            boolean plain = mark == ' ' || "-/.:,+".indexOf(mark) >= 0;
            pattern.append(plain ? String.valueOf(mark) : "'" + mark + "'");
        }
    }
}
