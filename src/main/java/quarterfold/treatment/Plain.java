package quarterfold.treatment;

import java.util.Locale;
import java.util.regex.Pattern;

/** Texts as two people may write them: names and numbers by what is the same in both. */
final class Plain {
    private static final Pattern LEADING_ZEROS = Pattern.compile("(?<!\\d)0+(?=\\d)");

    private Plain() {}

    /** Letters and digits alone, small: without regard to spaces, signs and the size of letters. */
    static String name(String text) {
        StringBuilder plain = new StringBuilder();
        text.toLowerCase(Locale.ROOT)
                .codePoints()
                .filter(Character::isLetterOrDigit)
                .forEach(plain::appendCodePoint);
        return plain.toString();
    }

    /**
     * The number of a document, the same without zeros in front of its digits: {@code INV-0042} is
     * {@code inv 42}, and {@code 2026/0093} is {@code 20260093}. A text of signs alone is itself.
     */
    static String number(String text) {
        String plain = LEADING_ZEROS.matcher(name(text)).replaceAll("");
        return plain.isEmpty() ? text.strip() : plain;
    }
}
