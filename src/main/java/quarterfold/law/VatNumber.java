package quarterfold.law;

import java.util.Locale;

/**
 * A VAT registration number as written on a document, and what its digits tell.
 *
 * <p>A United Kingdom number is nine digits, or twelve with a branch, with or without the prefix GB
 * or XI; or GD or HA and three digits for government and health bodies (secondary source). With
 * weights 8 to 2 on the first seven digits, their sum plus the last two is a multiple of 97, or is
 * with 55 added in the later series: the tax authority's registration service and reference checker
 * (its own open source). The check tells a slip of the pen, not whether anybody is registered, so a
 * failure is a warning.
 */
public final class VatNumber {

    private static final int BRANCH_DIGITS = 3;
    private static final int DIGITS = 9;

    /** What the digits tell. */
    public enum Status {
        /** Nothing was written. */
        NONE,
        /** A United Kingdom number whose check digits hold. */
        GB,
        /** Meant as a United Kingdom number, but of another shape or with wrong check digits. */
        GB_FAILS,
        /** Another country's, by its prefix. */
        FOREIGN
    }

    private VatNumber() {}

    /**
     * What the digits of a number tell.
     *
     * @param text as written; spaces, dots and hyphens are passed over
     * @param homeCountry whether a number without a prefix is the United Kingdom's
     */
    public static Status status(String text, boolean homeCountry) {
        String plain = text.replaceAll("[\\s.\\-]", "").toUpperCase(Locale.ROOT);
        if (plain.isEmpty()) {
            return Status.NONE;
        }
        boolean prefixed = plain.startsWith("GB") || plain.startsWith("XI");
        boolean otherPrefix =
                plain.length() > 2
                        && Character.isLetter(plain.charAt(0))
                        && Character.isLetter(plain.charAt(1));
        if (!prefixed && (otherPrefix || !homeCountry)) {
            return Status.FOREIGN;
        }
        return checks(prefixed ? plain.substring(2) : plain) ? Status.GB : Status.GB_FAILS;
    }

    private static boolean checks(String digits) {
        if (digits.matches("GD[0-4][0-9]{2}|HA[5-9][0-9]{2}")) {
            return true;
        }
        boolean shape =
                digits.chars().allMatch(c -> c >= '0' && c <= '9')
                        && (digits.length() == DIGITS || digits.length() == DIGITS + BRANCH_DIGITS);
        if (!shape) {
            return false;
        }
        int sum = 0;
        for (int i = 0; i < 7; i++) {
            sum += (8 - i) * (digits.charAt(i) - '0');
        }
        int all = sum + Integer.parseInt(digits.substring(7, DIGITS));
        return all % 97 == 0 || (all + 55) % 97 == 0;
    }
}
