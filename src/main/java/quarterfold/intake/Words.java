package quarterfold.intake;

import java.util.Currency;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.ledger.StatedRate;
import quarterfold.money.Percent;

/** The vocabularies of codes and percentages that files are checked against. */
final class Words {
    /**
     * ISO 3166-1 alpha-2, and {@code XI} for Northern Ireland as customs and VAT numbers use it.
     */
    private static final Set<String> COUNTRIES =
            Stream.concat(Stream.of(Locale.getISOCountries()), Stream.of("XI"))
                    .collect(Collectors.toUnmodifiableSet());

    /** ISO 4217. */
    private static final Set<String> CURRENCIES =
            Currency.getAvailableCurrencies().stream()
                    .map(Currency::getCurrencyCode)
                    .collect(Collectors.toUnmodifiableSet());

    static final String COUNTRY =
            "a country code of ISO 3166, or XI for Northern Ireland, such as GB";

    private Words() {}

    static boolean isCountry(String text) {
        return COUNTRIES.contains(text);
    }

    static boolean isCurrency(String text) {
        return CURRENCIES.contains(text);
    }

    static boolean isRate(String text) {
        return isShare(text)
                || StatedRate.parse(text).filter(r -> r.percent().isEmpty()).isPresent();
    }

    /** Digits with a decimal point, from 0 to 100; a percent sign may follow. */
    static boolean isShare(String text) {
        return isPlainPercent(digits(text));
    }

    static Percent share(String text) {
        return Percent.of(digits(text));
    }

    private static String digits(String text) {
        return text.endsWith("%") ? text.substring(0, text.length() - 1).strip() : text;
    }

    private static boolean isPlainPercent(String digits) {
        return digits.length() <= 10
                && digits.matches("\\d{1,3}(\\.\\d+)?")
                && Percent.of(digits).compareTo(Percent.HUNDRED) <= 0;
    }
}
