package quarterfold.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import quarterfold.ledger.Line;
import quarterfold.ledger.Profile;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.treatment.Context;
import quarterfold.treatment.Treated;

/** How the command line writes figures, days and what files say. */
final class Texts {

    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.UK);

    /** Control characters of both sets, marks without a shape, and separators of lines. */
    private static final Pattern COMMANDING = Pattern.compile("[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}]");

    private Texts() {}

    /** With thousands separated, such as {@code 1,670.00}. */
    static String money(Amount amount) {
        return grouped(amount.toString());
    }

    /** Plain digits with thousands separated. */
    static String grouped(String digits) {
        int point = digits.indexOf('.') < 0 ? digits.length() : digits.indexOf('.');
        StringBuilder text = new StringBuilder(digits);
        for (int i = point - 3; i > (digits.startsWith("-") ? 1 : 0); i -= 3) {
            text.insert(i, ',');
        }
        return text.toString();
    }

    /** Such as {@code 7 November 2026}. */
    static String day(LocalDate day) {
        return DAY.format(day);
    }

    static String count(long number, String one, String many) {
        return grouped(Long.toString(number)) + " " + (number == 1 ? one : many);
    }

    /** Lines of at most so many characters, broken at spaces. */
    static List<String> wrapped(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ", -1)) {
            if (line.length() > 0 && line.length() + 1 + word.length() > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    /** The document's number as a row of a list has it, or else the channel's order. */
    static String document(Line line, int width) {
        return cell(line.document().isEmpty() ? line.order() : line.document(), width);
    }

    /** The party as a row of a list has it, or else the channel. */
    static String party(Line line, int width) {
        Profile profile = line.profile();
        return cell(profile.party().isEmpty() ? profile.channel() : profile.party(), width);
    }

    /** {@link #plain} text, cut at a width. */
    static String cell(String text, int width) {
        String plain = plain(text);
        return plain.codePointCount(0, plain.length()) <= width
                ? plain
                : plain.substring(0, plain.offsetByCodePoints(0, width - 1)) + "…";
    }

    /** {@link #plain} text, what is too long of it left out in its middle, as of a path. */
    static String middle(String text, int width) {
        String plain = plain(text);
        int length = plain.codePointCount(0, plain.length());
        if (length <= width) {
            return plain;
        }
        int head = (width - 1) / 3;
        return plain.substring(0, plain.offsetByCodePoints(0, head))
                + "…"
                + plain.substring(plain.offsetByCodePoints(0, length - (width - 1 - head)));
    }

    /**
     * Text from a file made safe for a terminal: no character that moves the cursor, colours,
     * breaks the line or turns the direction of reading.
     */
    static String plain(String text) {
        return COMMANDING.matcher(text).replaceAll(" ").strip();
    }

    /** The names of sources by their number. */
    static Context.Files files(List<Source> sources) {
        Map<Long, String> names =
                sources.stream().collect(Collectors.toMap(Source::id, Source::name));
        return id -> names.getOrDefault(id, "source " + id);
    }

    /**
     * How an entry in another currency came into sterling, behind what else a row says, such as
     * {@code ; EUR 2,340.00 at 1.1719 EUR for 1 GBP (the tax authority, …)}; else empty.
     */
    static String exchange(Treated treated, Context.Files files) {
        return treated.conversion()
                .map(
                        c ->
                                "; %s %s at %s (%s)"
                                        .formatted(
                                                c.currency(),
                                                money(treated.entry().amounts().money()),
                                                c.quoted(),
                                                plain(c.source(files))))
                .orElse("");
    }

    /** The folder as a person names it, where no name was given too. */
    static Path folder(Path folder) {
        return folder.toString().isEmpty() ? folder.toAbsolutePath() : folder;
    }
}
