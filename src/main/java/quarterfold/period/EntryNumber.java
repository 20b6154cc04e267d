package quarterfold.period;

import java.util.Optional;

/** The number of an entry as a person writes it. */
final class EntryNumber {

    private static final int MOST_DIGITS = 18;

    private EntryNumber() {}

    static Optional<Long> of(String text) {
        return text.matches("[0-9]+") && text.length() <= MOST_DIGITS
                ? Optional.of(Long.valueOf(text))
                : Optional.empty();
    }
}
