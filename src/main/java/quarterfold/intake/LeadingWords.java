package quarterfold.intake;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The words a row begins with, before its first digit: by them such rows are known again. */
final class LeadingWords {
    private static final Pattern WORDS = Pattern.compile("^[^\\d]*\\p{L}[^\\d]*");

    private LeadingWords() {}

    /** Nothing where no letter stands before the first digit. */
    static Optional<String> of(String text) {
        Matcher words = WORDS.matcher(text);
        return words.find() ? Optional.of(words.group().strip()) : Optional.empty();
    }
}
