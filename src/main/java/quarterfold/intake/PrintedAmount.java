package quarterfold.intake;

import java.util.Currency;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import quarterfold.money.Amount;

/**
 * An amount as pages may print it, whatever the marks: {@code 1,234.56}, {@code 1.234,56}, {@code 1
 * 234,56}, {@code 1'234.56} and {@code 1234.56}; a whole one also as {@code 1,234.-}, or without
 * decimals beside its currency. Its sign does not matter: credits are printed with and without one.
 */
final class PrintedAmount {
    private static final String GROUP = "[.,'\u2019 ]?";
    private static final String MARK = "[.,\u00b7]";
    private static final String BEFORE = "(?<![0-9])(?<![0-9][.,'\u2019\u00b7])";
    private static final String BEHIND = "(?![0-9])(?![.,'\u2019\u00b7][0-9])";
    private static final Pattern ANY =
            Pattern.compile(
                    BEFORE + "[0-9]{1,15}(?:[.,'\u2019 ][0-9]{3})*" + MARK + "[0-9]{2}" + BEHIND);

    private final Pattern pattern;

    /**
     * @param currency ISO 4217
     */
    PrintedAmount(Amount amount, String currency) {
        String[] parts = amount.toString().replace("-", "").split("\\.", -1);
        StringBuilder whole = new StringBuilder();
        for (int i = 0; i < parts[0].length(); i++) {
            boolean group = i > 0 && (parts[0].length() - i) % 3 == 0;
            whole.append(group ? GROUP : "").append(parts[0].charAt(i));
        }
        String decimals = BEFORE + whole + MARK + parts[1] + BEHIND;
        pattern =
                Pattern.compile(
                        parts[1].equals("00") ? decimals + "|" + plain(whole, currency) : decimals);
    }

    /**
     * A whole amount without decimals, which any number of pieces could be but for its currency.
     */
    private static String plain(CharSequence whole, String currency) {
        String digits = BEFORE + whole;
        String end = BEHIND;
        if (isWhole(currency)) {
            return digits + end;
        }
        String unit = "(?:\\p{Sc}|" + Pattern.quote(currency) + ")";
        return "%s[.,][-\u2013\u2014]|%s\\s?[-\u2212]?\\s?%s%s|%s%s\\s?%s"
                .formatted(digits, unit, digits, end, digits, end, unit);
    }

    private static boolean isWhole(String currency) {
        return Words.isCurrency(currency)
                && Currency.getInstance(currency).getDefaultFractionDigits() == 0;
    }

    /** Whether the text of pages prints it. */
    boolean isIn(String text) {
        return pattern.matcher(text).find();
    }

    /** The largest amount with two decimals that a text prints, as it prints it. */
    static Optional<String> largest(String text) {
        Optional<String> largest = Optional.empty();
        long most = -1;
        Matcher each = ANY.matcher(text);
        while (each.find()) {
            String digits = each.group().replaceAll("[^0-9]", "");
            long value = digits.length() > 17 ? -1 : Long.parseLong(digits);
            if (value > most) {
                most = value;
                largest = Optional.of(each.group());
            }
        }
        return largest;
    }
}
