package quarterfold.independent;

import static java.math.RoundingMode.HALF_UP;

import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Made-up exchange rates of some years, as the tax authority publishes them for each calendar month
 * (units for one pound) and the European Central Bank for each working day (units for one euro).
 */
final class RateLists {

    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("dd/MMM/uuuu", Locale.ENGLISH);
    private static final Map<String, Integer> ABOUT =
            Map.of("EUR", 11_700, "USD", 13_400, "CNY", 90_500, "JPY", 1_902_500);

    /** Those in which something is bought or sold. */
    static final List<String> CURRENCIES = List.of("CNY", "EUR", "JPY", "USD");

    private final Map<YearMonth, Map<String, BigDecimal>> months = new TreeMap<>();
    private final Map<LocalDate, Map<String, BigDecimal>> days = new TreeMap<>();

    RateLists(Dice dice, YearMonth first, int number) {
        for (YearMonth month = first;
                month.isBefore(first.plusMonths(number));
                month = month.plusMonths(1)) {
            Map<String, BigDecimal> rates = new TreeMap<>();
            CURRENCIES.forEach(c -> rates.put(c, about(dice, c)));
            months.put(month, rates);
            for (int day = 1; day <= month.lengthOfMonth(); day++) {
                days.put(month.atDay(day), daily(dice));
            }
        }
    }

    private static BigDecimal about(Dice dice, String currency) {
        int middle = ABOUT.getOrDefault(currency, 10_000);
        return BigDecimal.valueOf(middle + dice.between(-middle / 10, middle / 10), 4);
    }

    private static Map<String, BigDecimal> daily(Dice dice) {
        Map<String, BigDecimal> rates = new TreeMap<>();
        CURRENCIES.stream()
                .filter(c -> !c.equals("EUR"))
                .forEach(c -> rates.put(c, about(dice, c)));
        rates.put("GBP", BigDecimal.valueOf(dice.between(83_000, 89_000), 5));
        return rates;
    }

    /**
     * In sterling, with so many decimals: by the rate of the month the day is in (VAT tertiary
     * legislation, Valuation), or of the day, at a weekend of its Friday.
     */
    BigDecimal sterling(
            BigDecimal amount, String currency, LocalDate day, boolean daily, int decimals) {
        if (!daily) {
            return amount.divide(
                    rate(months.getOrDefault(YearMonth.from(day), Map.of()), currency),
                    decimals,
                    HALF_UP);
        }
        Map<String, BigDecimal> rates = days.getOrDefault(working(day), Map.of());
        BigDecimal pounds = amount.multiply(rate(rates, "GBP"));
        return currency.equals("EUR")
                ? pounds.setScale(decimals, HALF_UP)
                : pounds.divide(rate(rates, currency), decimals, HALF_UP);
    }

    private static BigDecimal rate(Map<String, BigDecimal> rates, String currency) {
        return rates.getOrDefault(currency, BigDecimal.ZERO);
    }

    static LocalDate working(LocalDate day) {
        LocalDate found = day;
        while (found.getDayOfWeek() == DayOfWeek.SATURDAY
                || found.getDayOfWeek() == DayOfWeek.SUNDAY) {
            found = found.minusDays(1);
        }
        return found;
    }

    /** The monthly list as the tax authority's open code writes it. */
    String monthly() {
        StringBuilder csv =
                new StringBuilder(
                        "Period,countryName,countryCode,currencyName,currencyCode,rateNew\n");
        months.forEach(
                (month, rates) ->
                        rates.forEach(
                                (currency, rate) ->
                                        csv.append(
                                                "%s to %s,Somewhere,XX,Money,%s,%s%n"
                                                        .formatted(
                                                                DAY.format(month.atDay(1)),
                                                                DAY.format(month.atEndOfMonth()),
                                                                currency,
                                                                rate.toPlainString()))));
        return csv.toString();
    }

    /** The daily list with a column for each currency; none for weekends. */
    String daily() {
        StringBuilder csv = new StringBuilder("Date,CNY,GBP,JPY,USD\n");
        days.forEach(
                (day, rates) -> {
                    if (working(day).equals(day)) {
                        csv.append(day);
                        rates.values().forEach(r -> csv.append(',').append(r.toPlainString()));
                        csv.append('\n');
                    }
                });
        return csv.toString();
    }
}
