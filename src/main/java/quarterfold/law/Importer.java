package quarterfold.law;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * The importer an import certificate or statement names, by VAT or EORI number, held against a
 * book's VAT number.
 *
 * <p>An EORI number of Great Britain or Northern Ireland is GB or XI and 12 or 15 digits (the tax
 * authority's own checker, open source; 12 or 15 from a secondary source). For a business with a
 * VAT number its first nine digits are that number; the rest, mostly 000, has marked branches, so
 * that another tail is no other importer (secondary source).
 */
public final class Importer {

    private static final Pattern EORI = Pattern.compile("(GB|XI)([0-9]{12}|[0-9]{15})");
    private static final Pattern VAT_NUMBER = Pattern.compile("(GB|XI)?([0-9]{9}|[0-9]{12})");
    private static final int DIGITS = 9;

    /** What a number tells of the importer. */
    public enum Match {
        OURS("the number of this book"),
        /** The first nine digits agree; the tail is not 000. */
        OURS_OTHER_TAIL("the number of this book; its last three digits are not 000"),
        ANOTHER("not the number of this book"),
        /** Neither an EORI number nor a VAT number. */
        UNREADABLE("neither an EORI number, such as GB and 12 digits, nor a VAT number");

        private final String words;

        Match(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        public boolean isOurs() {
            return this == OURS || this == OURS_OTHER_TAIL;
        }
    }

    private Importer() {}

    /**
     * What the number a document prints tells.
     *
     * @param stated as written; spaces, dots and hyphens are passed over
     * @param vatNumber the book's, as written
     */
    public static Match match(String stated, String vatNumber) {
        String plain = plain(stated);
        if (!EORI.matcher(plain).matches() && !VAT_NUMBER.matcher(plain).matches()) {
            return Match.UNREADABLE;
        }
        String digits = digits(plain);
        String ours = digits(plain(vatNumber));
        if (ours.length() < DIGITS || !digits.startsWith(ours.substring(0, DIGITS))) {
            return Match.ANOTHER;
        }
        return digits.length() == DIGITS || digits.substring(DIGITS).startsWith("000")
                ? Match.OURS
                : Match.OURS_OTHER_TAIL;
    }

    private static String plain(String text) {
        return text.replaceAll("[\\s.\\-]", "").toUpperCase(Locale.ROOT);
    }

    private static String digits(String plain) {
        return plain.startsWith("GB") || plain.startsWith("XI") ? plain.substring(2) : plain;
    }
}
